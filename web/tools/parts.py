"""The archive of the core travels whole on a first visit, and in pieces in an update.

Modules are stored as they are, so one that has not changed has the same bytes in every build;
each is a piece, named by its content, and the list at the end of the archive is the last. The
service worker puts an archive together from the pieces of the last one and those that are new.
"""

import hashlib
import json
import re
import zipfile
from pathlib import Path

CORE = "pycore.zip"
# Beside it: the names and lengths of its pieces in their order, and a folder of the pieces.
PIECES_LIST, PIECES_FOLDER = "pycore.json", "pycore"


def cut_archive(archive: Path) -> list[tuple[str, bytes]]:
    """Cut an archive into named pieces; joined in this order they are the archive."""
    content = archive.read_bytes()
    with zipfile.ZipFile(archive) as opened:
        starts = sorted(entry.header_offset for entry in opened.infolist())
        starts.append(opened.start_dir)
    ends = [*starts[1:], len(content)]
    pieces = [content[start:end] for start, end in zip(starts, ends, strict=True)]
    return [(f"{hashlib.sha256(piece).hexdigest()[:16]}.part", piece) for piece in pieces]


def place_core(archive: Path, target: Path) -> None:
    """Put the archive of the core into a folder, whole and in pieces."""
    (target / CORE).write_bytes(archive.read_bytes())
    pieces = cut_archive(archive)
    (target / PIECES_FOLDER).mkdir()
    for name, piece in pieces:
        (target / PIECES_FOLDER / name).write_bytes(piece)
    listed = [(name, len(piece)) for name, piece in pieces]
    (target / PIECES_LIST).write_text(json.dumps(listed, separators=(",", ":")), encoding="utf-8")


def is_piece(name: str) -> bool:
    """Say whether a file of dist/, by its name, is a piece: fetched now and then, never kept."""
    return f"/{PIECES_FOLDER}/" in name


def read_archives(built: Path) -> list[Path]:
    """Give the archives that dist/py imports from.

    The engine's script names them; the module that did was joined into it.
    """
    script = built.parent / "worker.js"
    match = re.search(r"ARCHIVES = (.*);", script.read_text(encoding="utf-8"))
    if not match:
        raise ValueError(f"{script} names no archives")
    return [built / name for name in json.loads(match.group(1))]

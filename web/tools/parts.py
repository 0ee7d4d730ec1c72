"""The archive of the core travels in parts, so that an update fetches only what it changes.

Modules are stored as they are, so one that has not changed has the same bytes in every build,
and the server squeezes a part as a whole. A part ends where a hash of the next module's name
says so, or where it gets too long: a module that grows, comes or goes changes its own part,
seldom the next, and the list at the end of the archive.
"""

import json
import re
import zipfile
import zlib
from pathlib import Path

MODULES_EACH = 5
MOST_BYTES = 60_000


def cut_archive(archive: Path) -> dict[str, bytes]:
    """Cut an archive into named parts; joined in this order they are the archive."""
    content = archive.read_bytes()
    with zipfile.ZipFile(archive) as opened:
        entries = sorted(opened.infolist(), key=lambda entry: entry.header_offset)
        list_starts = opened.start_dir
    starts: dict[int, str] = {}
    for entry in entries:
        code = zlib.crc32(entry.filename.encode())
        part_bytes = entry.header_offset - max(starts, default=0)
        is_end = code % MODULES_EACH == 0 or part_bytes + entry.compress_size > MOST_BYTES
        if not starts or is_end:
            starts[entry.header_offset] = f"core-{code:08x}.part"
    starts[list_starts] = "core-list.part"
    ends = [*list(starts)[1:], len(content)]
    return {
        name: content[start:end] for (start, name), end in zip(starts.items(), ends, strict=True)
    }


def read_archives(built: Path) -> list[list[Path]]:
    """Give, for each archive that dist/py imports from, the files that make it up.

    The engine's script names them; the module that did was joined into it.
    """
    script = built.parent / "worker.js"
    match = re.search(r"ARCHIVES = (.*);", script.read_text(encoding="utf-8"))
    if not match:
        raise ValueError(f"{script} names no archives")
    return [[built / name for name in names] for _, names in json.loads(match.group(1))]

"""An update as what changed since the release before: patches/VERSION.patch, named by that release.

A device that keeps an older release climbs from patch to patch, so those of the release before are
taken along. A patch is a gzip file: the length of its head (4 bytes, the highest first), the head
as JSON, then bsdiff's bytes to add and its new bytes. web/sw.js reads it and checks what it makes.
"""

import gzip
import json
import re
import shutil
import struct
from pathlib import Path
from typing import Any

from bsdiff4 import core as bsdiff

from web.tools.engine_files import CORE
from web.tools.say import Halt

FOLDER, ENDING = "patches", ".patch"
# As in web/sw.js.
MOST_PATCHES = 12


def write_patches(target: Path, before: Path) -> Path | None:
    """Put the patches that lead to a build into it; return the one from the release before.

    Args: the new build, sealed; the folder of the release that is served now.
    None where both are the same release, or where nothing that both have has changed.
    """
    version, older = read_version(target), read_version(before)
    folder = target / FOLDER
    folder.mkdir()
    patch = None if version == older else make_patch(before, target)
    for earlier in find_chain(before / FOLDER, older)[: MOST_PATCHES - 1]:
        shutil.copyfile(earlier, folder / earlier.name)
    if patch is None:
        return None
    path = folder / f"{older}{ENDING}"
    path.write_bytes(patch)
    return path


def find_chain(folder: Path, version: str) -> list[Path]:
    """Give the patches that lead to a version, the nearest first."""
    leading = {read_head(path)["to"]: path for path in sorted(folder.glob(f"*{ENDING}"))}
    chain: list[Path] = []
    while (path := leading.pop(version, None)) is not None:
        chain.append(path)
        version = path.stem
    return chain


def make_patch(before: Path, after: Path) -> bytes | None:
    """Make the patch between two builds; None when no file of both has changed."""
    old, new = list_kept(before), list_kept(after)
    names = [name for name in new if is_patched(name) and old.get(name, new[name]) != new[name]]
    if not names:
        return None
    olds = [read_kept(before, name) for name in names]
    news = [read_kept(after, name) for name in names]
    control, added, fresh = bsdiff.diff(b"".join(olds), b"".join(news))
    numbers = [read_signed(number) for (number,) in struct.iter_unpack("<Q", control)]
    head = {
        "to": read_version(after),
        "files": [(name, len(content)) for name, content in zip(names, news, strict=True)],
        "turns": [numbers[0::3], numbers[1::3], numbers[2::3]],
    }
    written = json.dumps(head, separators=(",", ":")).encode()
    whole = struct.pack(">I", len(written)) + written + added + fresh
    return gzip.compress(whole, compresslevel=9, mtime=0)


def is_patched(name: str) -> bool:
    """Say whether a file may be patched.

    The runtime comes whole: what is squeezed or machine code gains nothing.
    """
    return not name.startswith("py/") or name == f"py/{CORE}"


def read_signed(number: int) -> int:
    """Read a number as bsdiff writes it: the highest bit is the sign."""
    return -(number & (2**63 - 1)) if number >> 63 else number


def read_head(path: Path) -> dict[str, Any]:
    """Read the head of a patch."""
    whole = gzip.decompress(path.read_bytes())
    (length,) = struct.unpack_from(">I", whole)
    return dict(json.loads(whole[4 : 4 + length]))


def read_kept(build: Path, name: str) -> bytes:
    """Read a file by the name under which it is kept."""
    return (build / ("index.html" if name == "./" else name)).read_bytes()


def list_kept(build: Path) -> dict[str, str]:
    """Give the names and hashes of what a build keeps on a device."""
    return dict(json.loads(_find(build, r"FILES = (\[.*?\]);")))


def read_version(build: Path) -> str:
    """Give the name of a build: the hash of what it keeps."""
    return _find(build, r'VERSION = "([0-9a-f]{16})"')


def _find(build: Path, pattern: str) -> str:
    """Find in the service worker of a build what its seal says."""
    worker = build / "sw.js"
    match = worker.is_file() and re.search(pattern, worker.read_text(encoding="utf-8"))
    if not match:
        raise Halt(
            f"{build} is no release of Rungline: it has no sealed sw.js",
            remedy="name the folder that is served now, as it was uploaded",
        )
    return str(match.group(1))

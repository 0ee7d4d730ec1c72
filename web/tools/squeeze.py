"""Brotli and gzip files beside each file, for servers that can send them; kept by content."""

import gzip
import hashlib
import shutil
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

import brotli

from web.tools.places import CACHE

KEPT = CACHE / "squeezed"
PLAIN_ENDINGS = (".png", ".ico", ".br", ".gz", ".woff2", ".patch")
TOO_SMALL_BYTES = 256


def squeeze_folder(target: Path) -> None:
    """Write NAME.br and NAME.gz beside every file that gets smaller by it."""
    KEPT.mkdir(parents=True, exist_ok=True)
    paths = [
        path
        for path in target.rglob("*")
        if path.is_file()
        and not path.name.endswith(PLAIN_ENDINGS)
        and path.stat().st_size >= TOO_SMALL_BYTES
    ]
    # The largest first, so that no worker is left with it at the end.
    paths.sort(key=lambda path: path.stat().st_size, reverse=True)
    missing = [
        path for path in paths if not all(_name_kept(path, e).is_file() for e in ("br", "gz"))
    ]
    if len(missing) > 1:
        with ProcessPoolExecutor() as pool:
            list(pool.map(_squeeze, missing))
    else:
        for path in missing:
            _squeeze(path)
    for path in paths:
        _place(path)


def _squeeze(path: Path) -> None:
    """Squeeze one file both ways into the cache."""
    content = path.read_bytes()
    made = {
        "br": brotli.compress(content, quality=11, lgwin=24),
        "gz": gzip.compress(content, compresslevel=9, mtime=0),
    }
    for ending, squeezed in made.items():
        place = _name_kept(path, ending)
        partial = place.with_suffix(".partial-" + ending)
        partial.write_bytes(squeezed)
        partial.replace(place)


def _place(path: Path) -> None:
    """Put the squeezed forms beside the file where they are smaller."""
    for ending in ("br", "gz"):
        kept = _name_kept(path, ending)
        if kept.stat().st_size < path.stat().st_size:
            shutil.copyfile(kept, path.with_name(f"{path.name}.{ending}"))


def _name_kept(path: Path, ending: str) -> Path:
    """Name the cache file for this content."""
    return KEPT / f"{hashlib.sha256(path.read_bytes()).hexdigest()[:32]}.{ending}"

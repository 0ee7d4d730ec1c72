"""Fill the service worker with what it must keep: every file of the app and its hash."""

import base64
import hashlib
import json
from pathlib import Path

from web.tools.say import Halt

NOT_KEPT = {"sw.js"}


def fill_worker(target: Path) -> int:
    """Write VERSION and FILES into sw.js; return how many files it keeps."""
    files = [
        ("./" if name == "index.html" else name, _hash_file(target / name))
        for name in _list_names(target)
    ]
    listed = json.dumps(files, separators=(",", ":"))
    version = hashlib.sha256(listed.encode()).hexdigest()[:16]
    worker = target / "sw.js"
    text = worker.read_text(encoding="utf-8")
    for blank, value in (("__VERSION__", version), ("__FILES__", listed)):
        if text.count(blank) != 1:
            raise Halt(
                f"web/sw.js must hold {blank} exactly once",
                remedy="put the blank back where the build fills it in",
            )
        text = text.replace(blank, value)
    worker.write_text(text, encoding="utf-8")
    return len(files)


def _list_names(target: Path) -> list[str]:
    """Name every file to keep, with forward slashes, sorted."""
    names = [path.relative_to(target).as_posix() for path in target.rglob("*") if path.is_file()]
    return sorted(name for name in names if name not in NOT_KEPT)


def _hash_file(path: Path) -> str:
    """Hash a file the way a browser's integrity attribute wants it."""
    return "sha256-" + base64.b64encode(hashlib.sha256(path.read_bytes()).digest()).decode()

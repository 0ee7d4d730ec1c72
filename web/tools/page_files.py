"""Which files of web/ are the page itself. Everything is shipped but what is named here."""

import shutil
from collections.abc import Iterator
from pathlib import Path

from web.tools.places import WEB

NOT_SHIPPED_FOLDERS = {"node_modules", "tools", "locks", "licences", "vendor", "py", "types"}
NOT_SHIPPED_FILES = {"package.json", "package-lock.json"}


def list_page_files() -> Iterator[Path]:
    """Give the page's own files, relative to web/, in a fixed order."""
    for path in sorted(WEB.rglob("*")):
        inner = path.relative_to(WEB)
        if path.is_file() and _is_shipped(inner):
            yield inner


def copy_page(target: Path) -> None:
    """Copy the page's own files as they are."""
    for inner in list_page_files():
        place = target / inner
        place.parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(WEB / inner, place)


def _is_shipped(inner: Path) -> bool:
    """Leave out tools, types and dot-files."""
    if inner.parts[0] in NOT_SHIPPED_FOLDERS or any(part[0] in "._" for part in inner.parts):
        return False
    if inner.name in NOT_SHIPPED_FILES or inner.name.startswith("tsconfig"):
        return False
    return not inner.name.endswith((".d.ts", ".d.mts", ".md", ".py", ".mjs"))

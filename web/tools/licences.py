"""licences.txt: one file with the terms of everything that dist/ ships."""

import json
import zipfile
from pathlib import Path

from web.tools.places import MODULES, ROOT, WEB
from web.tools.say import Halt

TEXTS = WEB / "licences"
# What is copied out of each npm package is said in vendor.py; this names its terms.
NPM_TEXTS = {
    "pyodide": TEXTS / "MPL-2.0.txt",
    "lit-html": MODULES / "lit-html" / "LICENSE",
    "idb": MODULES / "idb" / "LICENSE",
}
RULE = "=" * 72


def write_licences(wheels: Path) -> str:
    """Put every licence text under the name and version of what it covers."""
    parts = [("Rungline", (ROOT / "LICENSE").read_text())]
    parts += [_read_npm(name, path) for name, path in NPM_TEXTS.items()]
    found = [_read_wheel(path) for path in sorted(wheels.glob("*.whl"))]
    # typing_extensions is part of CPython's own source and carries the whole of its licence.
    python = next(text for name, text in found if name.startswith("typing_extensions"))
    parts.append(("CPython 3.14 and its standard library", python))
    parts.append(("Libraries inside the runtime", (TEXTS / "runtime-parts.txt").read_text()))
    return "\n".join(f"{RULE}\n{name}\n{RULE}\n\n{text.strip()}\n" for name, text in parts + found)


def _read_npm(name: str, path: Path) -> tuple[str, str]:
    """Read the terms of one npm package; its source is its address-free name and version."""
    about = json.loads((MODULES / name / "package.json").read_text())
    head = f"{name} {about['version']} ({about['license']}); source: the npm package of this name"
    return head, path.read_text()


def _read_wheel(wheel: Path) -> tuple[str, str]:
    """Read the terms that a wheel carries about itself."""
    name, version = wheel.name.split("-")[:2]
    with zipfile.ZipFile(wheel) as archive:
        texts = [
            archive.read(each).decode()
            for each in sorted(archive.namelist())
            if ".dist-info/licenses/" in each
        ]
    if not texts:
        raise Halt(
            f"the wheel {wheel.name} carries no licence text",
            remedy="put its text into web/licences and name it in web/tools/licences.py",
        )
    return f"{name} {version}", "\n".join(texts)

"""What is copied out of the npm packages, file by file."""

import shutil
from pathlib import Path

from web.tools.archives import RUNTIME
from web.tools.places import MODULES

COPIES = {
    "vendor/lit-html": (
        MODULES / "lit-html",
        ("lit-html.js", "directive.js", "directive-helpers.js",
         "directives/live.js", "directives/repeat.js"),
    ),
    "vendor/idb": (MODULES / "idb" / "build", ("index.js",)),
    "py": (RUNTIME, ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm")),
}  # fmt: skip


def copy_vendor(target: Path) -> None:
    """Copy the named files; python_stdlib.zip comes compiled from archives.py instead."""
    for folder, (source, names) in COPIES.items():
        for name in names:
            place = target / folder / name
            place.parent.mkdir(parents=True, exist_ok=True)
            shutil.copyfile(source / name, place)

"""The engine's files in dist/py: its archives, the compiled module, and the name of its build."""

import json
import re
import shutil
import zipfile
from pathlib import Path

from web.tools.say import Halt
from web.tools.stamps import hash_inputs

# Hosts know the type of this ending and squeeze it; of .so they do not.
COMPILED = "pydantic_core.wasm"
CORE = "pycore.zip"
# A module for the worker and the page, into which it is joined.
BUILD = "build.js"


def copy_compiled(wheels: Path, target: Path) -> None:
    """Take the one compiled module out of the wheels, for the browser to compile as it comes."""
    found = [
        archive.read(name)
        for archive in map(zipfile.ZipFile, sorted(wheels.glob("*.whl")))
        for name in archive.namelist()
        if name.endswith(".so")
    ]
    if len(found) != 1:
        raise Halt(
            f"the wheels hold {len(found)} compiled modules, and the engine loads exactly one",
            remedy="look what web/locks/runtime.lock has gained; web/worker.js must load it too",
        )
    (target / COMPILED).write_bytes(found[0])


def place_archives(archives: dict[str, Path], target: Path) -> None:
    """Put the archives into place, and write the module that names them.

    The name of the build is a hash of them: a copy of a started engine fits only this.
    """
    for kind, archive in archives.items():
        shutil.copyfile(archive, target / f"{kind}.zip")
    seen: list[Path | str | bytes] = []
    for path in sorted(path for path in target.iterdir() if path.is_file()):
        seen += [path.name, path]
    # In the order of import.
    named = json.dumps(["site.zip", CORE])
    text = f'export const BUILD = "{hash_inputs(seen)}";\nexport const ARCHIVES = {named};\n'
    (target / BUILD).write_text(text, encoding="utf-8")


def read_archives(built: Path) -> list[Path]:
    """Give the archives that dist/py imports from.

    The engine's script names them; the module that did was joined into it.
    """
    script = built.parent / "worker.js"
    match = re.search(r"ARCHIVES = (.*);", script.read_text(encoding="utf-8"))
    if not match:
        raise ValueError(f"{script} names no archives")
    return [built / name for name in json.loads(match.group(1))]

"""What the engine needs beside its archives: the compiled module, and the name of its build."""

import json
import zipfile
from pathlib import Path

from web.tools.archives import list_archives
from web.tools.say import Halt
from web.tools.stamps import hash_inputs

# Hosts know the type of this ending and squeeze it; of .so they do not.
COMPILED = "pydantic_core.wasm"
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


def write_build(target: Path) -> None:
    """Name the archives in the order of import, and what the engine is made of.

    A copy of a started engine fits only this.
    """
    parts: list[Path | str | bytes] = []
    for path in sorted(target.iterdir()):
        if path.name != BUILD:
            parts += [path.name, path]
    names = json.dumps([path.name for path in list_archives(target)])
    text = f'export const BUILD = "{hash_inputs(parts)}";\nexport const ARCHIVES = {names};\n'
    (target / BUILD).write_text(text, encoding="utf-8")

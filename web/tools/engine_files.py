"""What the engine needs beside its archives: the compiled module, and the name of its build."""

import zipfile
from pathlib import Path

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
    """Name what the engine is made of: a copy of a started engine fits only this."""
    parts: list[Path | str | bytes] = []
    for path in sorted(target.iterdir()):
        if path.name != BUILD:
            parts += [path.name, path]
    (target / BUILD).write_text(f'export const BUILD = "{hash_inputs(parts)}";\n', encoding="utf-8")

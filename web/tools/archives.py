"""The three Python archives of the app, compiled once for each content and kept in .cache."""

import json
import os
import shutil
from pathlib import Path

from web.tools.places import CACHE, LOCKS, MODULES, PYCORE, TOOLS
from web.tools.ready_node import find_node
from web.tools.ready_python import fetch_wheels
from web.tools.say import Halt, announce_step, run_program
from web.tools.stamps import hash_inputs

KINDS = ("python_stdlib", "site", "pycore")
RUNTIME = MODULES / "pyodide"


def fetch_runtime_wheels() -> Path:
    """Return the folder with the wheels that are shipped."""
    return fetch_wheels("runtime", telling="fetching the wheels for the browser")


def make_archives(kept: Path = CACHE / "archives") -> dict[str, Path]:
    """Compile what is not kept yet; return the archive of each kind."""
    keys = {kind: f"{kind}-{hash_inputs(_list_inputs(kind))}" for kind in KINDS}
    missing = [kind for kind in KINDS if not (kept / f"{keys[kind]}.zip").is_file()]
    if missing:
        fetch_runtime_wheels()  # first, so that its own line does not fall into the next one
        with announce_step(f"compiling {', '.join(missing)}"):
            _compile(missing, keys=keys, kept=kept)
    _demand_closed({kind: kept / f"{keys[kind]}.needs" for kind in KINDS})
    return {kind: kept / f"{keys[kind]}.zip" for kind in KINDS}


def run_inside(task: dict[str, object], *, what: str, remedy: str) -> str:
    """Run a Python file inside the runtime in Node; see runtime.mjs for the task."""
    return run_program(
        [find_node(), TOOLS / "runtime.mjs"],
        what=what,
        remedy=remedy,
        text=json.dumps(task, default=str),
    )


def _list_inputs(kind: str) -> list[Path | str | bytes]:
    """Name everything an archive depends on."""
    inputs: list[Path | str | bytes] = [
        TOOLS / "compile_inside.py",
        TOOLS / "runtime.mjs",
        RUNTIME / "pyodide.asm.wasm",
        RUNTIME / "python_stdlib.zip",
    ]
    if kind == "python_stdlib":
        return [*inputs, LOCKS / "stdlib.txt"]
    if kind == "site":
        return [*inputs, LOCKS / "runtime.lock"]
    for path in sorted(PYCORE.rglob("*.py")):
        inputs += [path.relative_to(PYCORE).as_posix(), path]
    return inputs


def _compile(missing: list[str], *, keys: dict[str, str], kept: Path) -> None:
    """Run the compiler inside the runtime and keep what it makes."""
    work = kept / f"work-{os.getpid()}"
    shutil.rmtree(work, ignore_errors=True)
    work.mkdir(parents=True)
    mounts = {
        "/stock": RUNTIME, "/wheels": fetch_runtime_wheels(), "/core": PYCORE,
        "/locks": LOCKS, "/out": work,
    }  # fmt: skip
    run_inside(
        {
            "index": RUNTIME, "mounts": mounts, "script": TOOLS / "compile_inside.py",
            "argument": json.dumps({"wanted": missing}),
        },
        what="the Python archives could not be compiled",
        remedy="read the lines above: they name the file; put it right and run again",
    )  # fmt: skip
    for kind in missing:
        for ending in ("needs", "zip"):
            (work / f"{kind}.{ending}").replace(kept / f"{keys[kind]}.{ending}")
    shutil.rmtree(work)


def _demand_closed(needs: dict[str, Path]) -> None:
    """Refuse a list of standard modules that lacks one which the app can import."""
    shipped = set((LOCKS / "stdlib.txt").read_text().split())
    for kind, path in needs.items():
        lacking = set(path.read_text().split()) - shipped
        if lacking:
            raise Halt(
                f"{kind} imports standard modules that are not shipped: "
                + ", ".join(sorted(lacking)),
                remedy="add their lines to web/locks/stdlib.txt (sorted), or import less",
            )

"""Start tests inside the built runtime in Node: the interpreter and the byte code people get."""

import json
import subprocess
from pathlib import Path

from web.tools.archives import RUNTIME
from web.tools.engine_files import read_archives
from web.tools.places import ROOT, TESTS, TOOLS
from web.tools.ready_node import find_node
from web.tools.ready_python import fetch_wheels


def run_inside(
    index: Path,
    script: Path,
    *,
    argument: object,
    unpack: list[Path],
    mounts: dict[str, Path],
) -> subprocess.CompletedProcess[str]:
    """Run a Python file in the runtime of `index`, these archives and the test tools unpacked."""
    trial = fetch_wheels("trial", telling="fetching the test tools for the browser's Python")
    task = {
        "index": index,
        "mounts": mounts,
        "unpack": [(each, "zip") for each in [*unpack, *sorted(trial.glob("*.whl"))]],
        "script": script,
        "argument": json.dumps(argument),
        "environment": {"RUNGLINE_EXAMPLES": "inside"},
    }
    return subprocess.run(
        [str(find_node()), str(TOOLS / "runtime.mjs")],
        cwd=ROOT,
        input=json.dumps(task, default=str),
        capture_output=True,
        text=True,
        check=False,
    )


def run_tests_inside(
    dist: Path, *words: str, folder: Path = TESTS
) -> subprocess.CompletedProcess[str]:
    """Run pytest with these words inside the built runtime; `folder` is its tests/."""
    project = (ROOT / "pyproject.toml").read_text(encoding="utf-8")
    built = dist / "py"
    return run_inside(
        built,
        TOOLS / "trial_inside.py",
        argument={"project": project, "pytest": words},
        unpack=read_archives(built),
        mounts={
            "/built": built,
            "/stock": RUNTIME,
            "/project/tests": folder,
            "/project/web": ROOT / "web",  # the demo is what some laws are held against
        },
    )


def install_inside(dist: Path, wheel: Path) -> subprocess.CompletedProcess[str]:
    """Install a wheel with micropip in the runtime as its makers ship it; ask it one thing."""
    return run_inside(
        RUNTIME,
        TOOLS / "install_inside.py",
        argument={"wheel": wheel.name},
        unpack=[dist / "py" / "site.zip"],
        mounts={"/wheels": wheel.parent},
    )

"""Get the Python side ready: the project's own environment and the wheels for the browser.

Uses nothing but the standard library: it runs before anything is installed.
"""

import os
import shutil
import subprocess
import sys
from pathlib import Path

from web.tools.places import LOCKS, VENV, WHEELS, find_venv_tool
from web.tools.say import announce_step, run_program
from web.tools.stamps import hash_inputs, is_done, mark_done

# Names the runtime in its own words: CPython 3.14 on the 2026 interface, WebAssembly.
RUNTIME_PLATFORM = (
    "--platform", "pyemscripten_2026_0_wasm32", "--python-version", "3.14",
    "--implementation", "cp", "--abi", "cp314", "--only-binary=:all:",
)  # fmt: skip
NETWORK_REMEDY = (
    "check that the package registries can be reached, then run the same command again; "
    "what is already fetched is kept"
)


def make_environment() -> None:
    """Create .venv when it is missing or the checkout was moved."""
    stamp, key = VENV / "made.stamp", hash_inputs([str(VENV)])
    if is_done(stamp, key) and find_venv_tool("python").exists():
        return
    with announce_step("making the environment .venv"):
        shutil.rmtree(VENV, ignore_errors=True)
        run_program(
            [sys.executable, "-m", "venv", VENV],
            what="Python could not make a virtual environment",
            remedy="install Python's venv module (Debian: apt-get install python3-venv) "
            "and run the same command again",
        )
    mark_done(stamp, key)


def install_lock(name: str, *, telling: str) -> None:
    """Install one lock file into .venv; every file is checked against its hash."""
    lock = LOCKS / f"{name}.lock"
    stamp, key = VENV / f"{name}.stamp", hash_inputs([lock])
    if is_done(stamp, key):
        return
    with announce_step(telling):
        run_program(
            [find_venv_tool("python"), "-m", "pip", "install", "--quiet", "--no-deps",
             "--disable-pip-version-check", "--require-hashes", "-r", lock],
            what=f"the packages of web/locks/{name}.lock could not be installed",
            remedy=NETWORK_REMEDY,
        )  # fmt: skip
    mark_done(stamp, key)


def fetch_wheels(name: str, *, telling: str) -> Path:
    """Fetch the wheels of one lock for the browser's Python; return their folder."""
    lock = LOCKS / f"{name}.lock"
    folder = WHEELS / f"{name}-{hash_inputs([lock])[:12]}"
    wanted = sum(1 for line in lock.read_text().splitlines() if "==" in line)
    if len(list(folder.glob("*.whl"))) == wanted:
        return folder
    with announce_step(telling):
        partial = folder.with_suffix(".partial")
        shutil.rmtree(partial, ignore_errors=True)
        run_program(
            [find_venv_tool("python"), "-m", "pip", "download", "--quiet", "--no-deps",
             "--disable-pip-version-check", "--require-hashes", *RUNTIME_PLATFORM,
             "--dest", partial, "-r", lock],
            what=f"the wheels of web/locks/{name}.lock could not be fetched",
            remedy=NETWORK_REMEDY,
        )  # fmt: skip
        shutil.rmtree(folder, ignore_errors=True)
        partial.rename(folder)
    return folder


def is_inside() -> bool:
    """Say whether this is the Python of .venv."""
    return Path(sys.prefix).resolve() == VENV.resolve()


def continue_inside(script: Path, arguments: list[str]) -> int:
    """Run the same command again with the Python of .venv; its exit code is the answer."""
    command = [str(find_venv_tool("python")), str(script), *arguments]
    sys.stdout.flush()
    if os.name != "nt":
        os.execv(command[0], command)
    return subprocess.run(command, check=False).returncode

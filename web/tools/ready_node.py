"""Get Node, npm and the npm packages ready. Node comes from PyPI where the machine has none."""

import os
import re
import shutil
import subprocess
from pathlib import Path

from web.tools.places import CACHE, MODULES, WEB, find_venv_tool
from web.tools.ready_python import NETWORK_REMEDY, install_lock
from web.tools.say import announce_step, run_program
from web.tools.stamps import hash_inputs, is_done, mark_done

OLDEST_NODE = 20
OLDEST_NPM = 11


def find_node() -> Path:
    """Return a usable Node, installing one into .venv when the machine has none."""
    return _find_pair()[0]


def install_npm_packages() -> None:
    """Install exactly what web/package-lock.json names."""
    node, npm = _find_pair()
    stamp = MODULES / "installed.stamp"
    key = hash_inputs([WEB / "package-lock.json", WEB / ".npmrc"])
    if is_done(stamp, key):
        return
    path = os.pathsep.join([str(node.parent), os.environ.get("PATH", "")])
    with announce_step("installing the npm packages"):
        run_program(
            [npm, "ci", "--no-audit", "--no-fund", "--ignore-scripts"],
            what="npm could not install the packages of web/package-lock.json",
            remedy=NETWORK_REMEDY,
            folder=WEB,
            environment={**os.environ, "PATH": path},
        )
    mark_done(stamp, key)


def _find_pair() -> tuple[Path, Path]:
    """Return Node and npm: the machine's own when new enough, else those of .venv."""
    found = [shutil.which(name) for name in ("node", "npm")]
    if found[0] and found[1] and os.environ.get("RUNGLINE_NODE") != "own":
        node, npm = Path(found[0]), Path(found[1])
        if _read_major(node) >= OLDEST_NODE and _read_major(npm) >= OLDEST_NPM:
            return node, npm
    install_lock("node", telling="installing Node and npm")
    return find_venv_tool("node"), find_venv_tool("npm")


def _read_major(program: Path) -> int:
    """Ask a program for its major version; 0 when it does not answer. Asked once per file."""
    note = CACHE / "versions" / hash_inputs([str(program), str(program.stat().st_mtime_ns)])
    if not note.is_file():
        try:
            said = subprocess.run(
                [str(program), "--version"], capture_output=True, text=True, check=False
            ).stdout
        except OSError:
            said = ""
        match = re.match(r"v?(\d+)\.", said)
        note.parent.mkdir(parents=True, exist_ok=True)
        note.write_text(match.group(1) if match else "0")
    return int(note.read_text())

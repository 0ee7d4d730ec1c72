"""Where things lie. Every other module of the tooling takes its paths from here."""

import os
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PYCORE = ROOT / "pycore"
WEB = ROOT / "web"
TESTS = ROOT / "tests"
LOCKS = WEB / "locks"
TOOLS = WEB / "tools"
GENERATED = WEB / "generated"
MODULES = WEB / "node_modules"

DIST = ROOT / "dist"
VENV = ROOT / ".venv"
CACHE = ROOT / ".cache"
WHEELS = CACHE / "wheels"

_SCRIPTS = VENV / ("Scripts" if os.name == "nt" else "bin")


def find_venv_tool(name: str) -> Path:
    """Return the path of a command inside the project's own environment."""
    return _SCRIPTS / (name + (".exe" if os.name == "nt" else ""))

"""Rungline's one command: python3 build.py serve | check | test | make | bench | release.

Needs Python 3.11 or newer and nothing else; what is missing is fetched on the first run.
"""

import argparse
import importlib
import sys
from pathlib import Path

if sys.version_info < (3, 11):  # noqa: UP036 - an older Python must say so in words
    sys.exit(f"This is Python {sys.version.split()[0]}; Rungline needs 3.11 or newer.")

from web.tools import ready_node, ready_python
from web.tools.say import Halt, tell

COMMANDS = {
    "serve": "build and serve the app on this machine",
    "check": "style, types, floors and the fast tests, in under half a minute",
    "test": "every test, the page in a real browser included",
    "make": "build dist/, the folder to upload",
    "bench": "measure start-up, size and speed; judges nothing",
    "release": "check the version, check everything, build dist/ and say what to upload",
}


def read_arguments(words: list[str]) -> tuple[argparse.Namespace, list[str]]:
    """Read the command line; what follows `test` is handed on to pytest."""
    parser = argparse.ArgumentParser(prog="build.py", description=__doc__)
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")
    for name, telling in COMMANDS.items():
        command = commands.add_parser(name, help=telling, description=telling)
        if name == "serve":
            command.add_argument("--port", type=int, default=None, help="default: 8070")
            command.add_argument("--host", default="127.0.0.1", help="default: 127.0.0.1")
            command.add_argument("--no-open", action="store_true", help="do not open a browser")
        if name in ("make", "release"):
            before = "the folder that is served now, so that devices fetch only what has changed"
            command.add_argument("--before", type=Path, metavar="FOLDER", help=before)
    known, rest = parser.parse_known_args(words)
    if rest and known.command not in ("test", "bench"):
        parser.error(f"unknown arguments: {' '.join(rest)}")
    return known, rest


def get_ready() -> None:
    """Install what every command needs; quick when nothing has changed."""
    ready_python.make_environment()
    ready_python.install_lock("host", telling="installing the Python packages")
    ready_node.install_npm_packages()


def main(words: list[str]) -> int:
    """Get ready, move into .venv and run the command there."""
    known, rest = read_arguments(words)
    try:
        get_ready()
        if not ready_python.is_inside():
            return ready_python.continue_inside(Path(__file__).resolve(), words)
        command = importlib.import_module(f"web.tools.command_{known.command}")
        return int(command.run(known, rest))
    except Halt as halt:
        tell(str(halt))
        return 1
    except KeyboardInterrupt:
        tell("\nStopped.")
        return 130


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))

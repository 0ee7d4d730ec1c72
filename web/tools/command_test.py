"""build.py test"""

import argparse
import os
import subprocess
import sys

from web.tools.make import make_dist
from web.tools.places import ROOT
from web.tools.ready_machine import get_machine_ready
from web.tools.ready_python import fetch_wheels

# Two files at a time: a browser test waits more than it works. A file's tests stay together, and
# files are taken in the order of tests/conftest.py, not by how many tests they have.
LANES = ("--numprocesses=2", "--dist=loadfile", "--no-loadscope-reorder")
# A test that hangs ends its lane, which says where it hung; it is tried once more in a new lane,
# and when that hangs too the run ends. The slowest test takes a fifth of this.
NO_HANGING = (
    *("-o", "faulthandler_timeout=600", "-o", "faulthandler_exit_on_timeout=true"),
    "--max-worker-restart=1",
)


def run(_known: argparse.Namespace, rest: list[str]) -> int:
    """Build the app and run every test against it; further words go to pytest."""
    get_machine_ready()
    fetch_wheels("trial", telling="fetching the test tools for the browser's Python")
    make_dist()
    sys.stdout.flush()
    command = [sys.executable, "-m", "pytest", *LANES, *NO_HANGING, *rest]
    environment = {"RUNGLINE_EXAMPLES": "full", **os.environ}
    return subprocess.run(command, cwd=ROOT, env=environment, check=False).returncode

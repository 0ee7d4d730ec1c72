"""build.py release"""

import argparse
import json

from web.tools import command_check
from web.tools.make import make_dist
from web.tools.places import DIST, WEB
from web.tools.say import Halt, tell
from web.tools.versions import read_core_version


def run(known: argparse.Namespace, rest: list[str]) -> int:
    """Check the version, check everything, build, and say what to upload."""
    version = read_core_version()
    newest = json.loads((WEB / "changes.json").read_text(encoding="utf-8"))[0]["version"]
    if version != newest:
        raise Halt(
            f"pycore/__init__.py says {version}, and the head of web/changes.json says {newest}",
            remedy="give both the number of this release and say there what has changed",
        )
    if command_check.run(known, rest):
        return 1
    make_dist(known.before)
    tell(
        f"\nRungline {version} is in {DIST}\n"
        "Upload the whole folder as it is, the .br and .gz files included, to any "
        "address served over HTTPS.\nsw.js must not be cached by the server or a network in "
        "front of it; everything else may be."
    )
    if not known.before:
        tell(
            "\nNo release before this was named: devices that keep one will fetch all that has "
            "changed whole.\nTo spare them, name the folder that is served now: --before FOLDER."
        )
    return 0

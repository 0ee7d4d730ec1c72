"""build.py bench"""

import argparse
import importlib

from web.tools.make import make_dist
from web.tools.ready_machine import get_machine_ready
from web.tools.say import tell

# Each is a module of tests/bench with a function measure().
MEASUREMENTS = (
    "wire",
    "releases",
    "boot",
    "engines",
    "visit",
    "memory",
    "limits",
    "touch",
    "demo",
    "links",
    "line",
    "looks",
    "lost",
    "diagnose",
    "meter",
    "calibration",
    "fuzz",
)


def run(_known: argparse.Namespace, rest: list[str]) -> int:
    """Run the measurements named (all, when none is); one line of JSON for each figure."""
    get_machine_ready()
    make_dist()
    figures = []
    for name in rest or MEASUREMENTS:
        for figure in importlib.import_module(f"tests.bench.{name}").measure():
            tell(figure.write_line())
            figures.append(figure)
    tell("")
    width = max(len(figure.name) for figure in figures)
    for figure in figures:
        tell(f"{figure.name:{width}}  {figure.value:12,.1f} {figure.unit}")
    return 0

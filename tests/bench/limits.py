"""How long every limit of a large job takes: text in, solved, text out, in the built runtime."""

import json
import statistics
from collections.abc import Iterator
from pathlib import Path

from tests.bench.figures import Figure
from tests.bench.jobs import write_job
from web.tools.archives import run_inside
from web.tools.engine_files import read_archives
from web.tools.places import DIST

ROUNDS = 5
COUNTS = (300, 1000, 2000)
SCRIPT = Path(__file__).with_name("limits_inside.py")


def measure() -> Iterator[Figure]:
    """Ask for all findings of jobs of growing size; the last is the design size."""
    for count in COUNTS:
        middle = statistics.median(time_findings(count))
        yield Figure(f"limits on {count:,} loudspeakers (Node)", middle, "ms")


def time_findings(count: int) -> list[float]:
    """Give the milliseconds of each round."""
    built = DIST / "py"
    said = run_inside(
        {
            "index": built,
            "unpack": [(each, "zip") for each in read_archives(built)],
            "script": SCRIPT,
            "argument": json.dumps({"job": write_job(count), "rounds": ROUNDS}),
        },
        what="the built core could not be timed",
        remedy="read the lines above; the other measurements do not need this one",
    )
    return [float(each) for each in json.loads(said.strip().splitlines()[-1])]

"""Is a group that is given 90 % right nine times of ten: a thousand faults by ngspice.

The tool is followed on every line, and after each reading what its first group was given is
set against whether the fault was in it. Lines, faults and meters: tests/meter/outside/chance.
"""

import os
from collections.abc import Iterator, Sequence
from itertools import pairwise
from statistics import fmean

from tests.bench.figures import Figure
from tests.bench.together import in_two
from tests.meter.outside.chance import First, follow

LINES = int(os.environ.get("RUNGLINE_LINES", "1000"))
MOST_READINGS = 5
AT_ONCE = 50
SHARES = (0.0, 0.3, 0.5, 0.7, 0.85, 0.95, 1.0)


def measure() -> Iterator[Figure]:
    """Cases, mean share and how many were right, by what the first group was given."""
    starts = range(0, LINES, AT_ONCE)
    parts = in_two(_some, [range(start, min(start + AT_ONCE, LINES)) for start in starts])
    found = [one for part in parts for one in part]
    for low, high in pairwise(SHARES):
        here = [one for one in found if low <= one.share < high or one.share == high == 1.0]
        if here:
            yield from _tell(f"first group given {100 * low:.0f} to {100 * high:.0f} %", here)


def _some(seeds: range) -> list[First]:
    return follow(seeds, most=MOST_READINGS)


def _tell(name: str, here: Sequence[First]) -> Iterator[Figure]:
    yield Figure(f"{name}: cases", len(here), "")
    yield Figure(f"{name}: given on average", 100 * fmean(one.share for one in here), "%")
    yield Figure(f"{name}: was right", 100 * fmean(one.right for one in here), "%")

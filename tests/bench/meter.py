"""Random single faults found by the tool, beside plain halving and beside walking the line.

The loads and the meter err evenly up to their tolerance, a law the priors do not use. The last
rows are the calibration: of the answers whose first group was given such a share, how many
were right.
"""

import os
from collections.abc import Iterator, Sequence
from itertools import chain
from statistics import fmean
from typing import NamedTuple

from tests.bench.figures import Figure
from tests.bench.together import in_two
from tests.meter.rounds import Found, by_halving, by_the_tool, by_walking, random_case

COUNTS = (10, 40, 120)
TOLERANCES_PCT = (2.0, 5.0, 10.0)
ROUNDS = int(os.environ.get("RUNGLINE_ROUNDS", "112"))  # nine cells: about 1,000 faults in all
AT_ONCE = 14
SHARES = ((0.0, 0.5), (0.5, 0.8), (0.8, 0.95), (0.95, 1.01))


class Cell(NamedTuple):
    """The same faults looked for in three ways."""

    tool: list[Found]
    halving: list[Found]
    walking: list[Found]


class Piece(NamedTuple):
    """Some rounds: lines of so many loudspeakers, all off by up to `pct`, by these seeds."""

    loudspeakers: int
    pct: float
    seeds: range


def play(piece: Piece) -> Cell:
    """Look for the random faults of some rounds."""
    count, pct, seeds = piece
    cases = [random_case(seed, count=count, pct=pct) for seed in seeds]
    return Cell(
        [by_the_tool(case, to_the_end=False) for case in cases],
        [by_halving(case) for case in cases],
        [by_walking(case) for case in cases],
    )


def measure() -> Iterator[Figure]:
    """Every size at every tolerance, then the calibration over all of them."""
    pieces = [
        Piece(count, pct, range(start, min(start + AT_ONCE, ROUNDS)))
        for count in COUNTS
        for pct in TOLERANCES_PCT
        for start in range(0, ROUNDS, AT_ONCE)
    ]
    played = in_two(play, pieces)
    every: list[Found] = []
    for count in COUNTS:
        for pct in TOLERANCES_PCT:
            here = [next(played) for piece in pieces if piece[:2] == (count, pct)]
            cell = Cell(*(list(chain.from_iterable(way)) for way in zip(*here, strict=True)))
            every.extend(cell.tool)
            yield from _tell(f"{count} loudspeakers, ±{pct:g} %", cell)
    yield from _calibration(every)


def _tell(name: str, cell: Cell) -> Iterator[Figure]:
    said = [found for found in cell.tool if found.said]
    yield Figure(f"{name}: said where", 100 * len(said) / len(cell.tool), "%")
    if said:
        right = fmean(found.same_box for found in said)
        yield Figure(f"{name}: right when it said so", 100 * right, "%")
    for way, found in (("tool", cell.tool), ("halving", cell.halving), ("walking", cell.walking)):
        yield Figure(f"{name}: readings, {way}", fmean(one.readings for one in found), "")


def _calibration(every: Sequence[Found]) -> Iterator[Figure]:
    for low, high in SHARES:
        here = [found for found in every if low <= found.share < high]
        if here:
            name = f"first group given {100 * low:.0f} to {min(100.0, 100 * high):.0f} %"
            yield Figure(f"{name}: cases", len(here), "")
            yield Figure(f"{name}: was right", 100 * fmean(one.right for one in here), "%")

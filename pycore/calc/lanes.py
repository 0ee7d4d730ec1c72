"""Lanes for the runs of a drawing: side by side where they overlap, one under another else."""

from collections.abc import Sequence
from typing import NamedTuple

# Runs that end and start nearer to each other than this share no lane.
APART = 0.75


class Run(NamedTuple):
    """Points drawn in one lane, from where the run leaves another (or the terminals) to its end."""

    above: str | None
    points: tuple[str, ...]
    from_y: float
    to_y: float


def lanes_of(runs: Sequence[Run]) -> list[int]:
    """A lane for each run: the first has lane 0 alone to its end, branches stand right of it."""
    lane_of: dict[str | None, int] = {None: 0}
    taken: list[list[tuple[float, float]]] = []
    lanes: list[int] = []
    for number, run in enumerate(runs):
        lane = 0 if number == 0 else lane_of[run.above] + 1
        while lane < len(taken) and any(_meet(one, run) for one in taken[lane]):
            lane += 1
        while len(taken) <= lane:
            taken.append([])
        taken[lane].append((run.from_y, run.to_y))
        lanes.append(lane)
        lane_of.update(dict.fromkeys(run.points, lane))
    return lanes


def _meet(taken: tuple[float, float], run: Run) -> bool:
    return taken[0] < run.to_y + APART and run.from_y < taken[1] + APART

"""A zone's line laid out for a drawing: down the page by metres, branches in lanes beside it.

Everything here is in the drawing's own units: a row of the list beside it, and a lane. `y` 0
is the top of the first row, which is the terminals'; so what is drawn is to scale, and each
name stands in a row of its own as near as may be to its place.
"""

import math
import statistics
from collections.abc import Sequence
from typing import NamedTuple

from pycore.calc.lanes import Run, lanes_of
from pycore.jobs import Point
from pycore.jobs.tree import children_of, hanging_order

# How many rows a drawing may have for each thing in it: room to tell long from short.
ROOM = 1.25
SPARE_ROWS = 1
# Where everything hangs at one place, one row to each.
TERMINALS_Y = 0.5


class Spot(NamedTuple):
    """A point in the drawing, with where its section comes from. `known`: its length is."""

    point: Point
    lane: int
    y: float
    row: int
    from_lane: int
    from_y: float
    known: bool


class Sketch(NamedTuple):
    """A line laid out. `metres_a_row` None: lengths are missing, so there is no scale."""

    spots: tuple[Spot, ...]
    rows: int
    lanes: int
    metres_a_row: float | None


def sketch_of(line: tuple[Point, ...]) -> Sketch:
    """Lay out a line; a section whose length is not known is drawn as one even step."""
    points = hanging_order(line)
    if not points:
        return Sketch((), 1, 1, None)
    far_m = _reaches(points)
    rows, scale = _scale(points, most=max(far_m.values()))
    ys = {one: TERMINALS_Y + far_m[one] * scale for one in far_m}
    runs = _runs(line, ys)
    lanes = lanes_of(runs)
    lane_of: dict[str | None, int] = {None: 0}
    for run, lane in zip(runs, lanes, strict=True):
        lane_of.update(dict.fromkeys(run.points, lane))
    placed = _rows(points, ys, rows=rows)
    spots = tuple(
        Spot(
            point=point,
            lane=lane_of[point.id],
            y=ys[point.id],
            row=placed[point.id],
            from_lane=lane_of[point.after],
            from_y=ys[point.after],
            known=point.length_m is not None,
        )
        for point in sorted(points, key=lambda one: placed[one.id])
    )
    sure = all(spot.known for spot in spots) and scale > 0
    return Sketch(spots, rows, max(lanes) + 1, 1 / scale if sure else None)


def _reaches(points: Sequence[Point]) -> dict[str | None, float]:
    """How far each point is drawn from the terminals, in metres."""
    step_m = _even_step_m(points)
    far_m: dict[str | None, float] = {None: 0.0}
    for point in points:
        length_m = step_m if point.length_m is None else point.length_m
        far_m[point.id] = far_m[point.after] + length_m
    return far_m


def _even_step_m(points: Sequence[Point]) -> float:
    """What a section of unknown length is drawn as: the middle one of those that are known."""
    known = [point.length_m for point in points if point.length_m]
    return statistics.median(known) if known else 1.0


def _scale(points: Sequence[Point], *, most: float) -> tuple[int, float]:
    """How many rows the drawing has, and how many of them a metre takes."""
    least = len(points) + 1
    if most <= 0:
        return least, 0.0
    wanted = math.ceil(most / _even_step_m(points)) + 1
    rows = max(least, min(wanted, math.ceil(least * ROOM) + SPARE_ROWS))
    return rows, (rows - 1) / most


def _runs(line: tuple[Point, ...], ys: dict[str | None, float]) -> list[Run]:
    """The line as runs: each goes on along its heaviest part, the others leave it."""
    children = children_of(line)
    weights = _weights(line, children)
    runs: list[Run] = []

    def heaviest_first(above: str | None) -> list[Point]:
        return sorted(children.get(above, ()), key=lambda one: -weights[one.id])

    starts: list[tuple[str | None, Point]] = [
        (None, point) for point in reversed(heaviest_first(None))
    ]
    while starts:
        above, point = starts.pop()
        points = [point.id]
        while hanging := heaviest_first(points[-1]):
            starts.extend((points[-1], one) for one in reversed(hanging[1:]))
            points.append(hanging[0].id)
        runs.append(Run(above, tuple(points), ys[above], ys[points[-1]]))
    return runs


def _weights(line: tuple[Point, ...], children: dict[str | None, list[Point]]) -> dict[str, int]:
    """How many points hang on each, itself included."""
    weights: dict[str, int] = {}
    for point in reversed(hanging_order(line)):
        weights[point.id] = 1 + sum(weights[one.id] for one in children.get(point.id, ()))
    return weights


def _rows(
    points: Sequence[Point], ys: dict[str | None, float], *, rows: int
) -> dict[str, int]:  # fmt: skip
    """A row to each point, in the order of their places, as near to them as may be."""
    order = sorted(points, key=lambda one: ys[one.id])
    wanted = [ys[point.id] - TERMINALS_Y - number for number, point in enumerate(order)]
    even = _rising(wanted)
    last = rows - len(order)
    return {
        point.id: number + min(max(round(shift), 1), last)
        for number, (point, shift) in enumerate(zip(order, even, strict=True))
    }


def _rising(values: Sequence[float]) -> list[float]:
    """The numbers that never fall and lie nearest to these, by squares.

    Pool adjacent violators: neighbours that would fall are evened out together (arithmetic).
    """
    blocks: list[tuple[float, int]] = []
    for value in values:
        mean, count = value, 1
        while blocks and blocks[-1][0] > mean:
            before, many = blocks.pop()
            mean = (before * many + mean * count) / (many + count)
            count += many
        blocks.append((mean, count))
    return [mean for mean, count in blocks for _ in range(count)]

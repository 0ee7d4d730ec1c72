"""Hanging new points on a line: at an end, into the run, or into one section of it."""

from typing import NamedTuple

from pycore.edit.change import changed
from pycore.ground.problems import BadCommand
from pycore.jobs import Point

# Sums of typed lengths may miss each other by their last binary digit.
SAME_M = 1e-9


class Way(NamedTuple):
    """How new points join a line.

    `splice`: what hung where the first one hangs now hangs on the last. `ahead_of`: only this
    one does. `cut_in`: they are cut into the cable that is there, so what their sections take
    is taken off the section behind them; sections without a length share what is left evenly.
    """

    splice: bool
    ahead_of: str | None = None
    cut_in: bool = False


def hang(line: tuple[Point, ...], points: tuple[Point, ...], *, way: Way) -> tuple[Point, ...]:
    """The line with the points on it, each behind the one before."""
    after, last = points[0].after, points[-1].id
    behind = _rehung(line, after, way=way)
    if way.cut_in:
        points, rest = _cut_in(behind, points)
        line = tuple(rest if one.id == rest.id else one for one in line)
    if not way.splice and way.ahead_of is None:
        return (*line, *points)
    moved = {one.id for one in behind}
    line = tuple(changed(one, after=last) if one.id in moved else one for one in line)
    at = place_behind(line, after)
    return (*line[:at], *points, *line[at:])


def _rehung(line: tuple[Point, ...], after: str | None, *, way: Way) -> list[Point]:
    """The points that hang on the last new one afterwards."""
    hanging = [one for one in line if one.after == after]
    if way.ahead_of is None:
        return hanging if way.splice else []
    only = [one for one in hanging if one.id == way.ahead_of]
    if not only:
        raise BadCommand("not_behind_that", where={"point": way.ahead_of}, id=way.ahead_of)
    return only


def _cut_in(behind: list[Point], points: tuple[Point, ...]) -> tuple[tuple[Point, ...], Point]:
    """The points on the cable of the one section they divide, and what is left of it."""
    if len(behind) != 1:
        raise BadCommand("no_one_section", where={"field": "cut_in"})
    (there,) = behind
    share_m = _share_m(points, there)
    rest = there
    if there.length_m is not None and share_m is not None:
        rest = changed(there, length_m=share_m)
    return tuple(
        changed(
            point,
            cable=point.cable or there.cable,
            length_m=share_m if point.length_m is None else point.length_m,
        )
        for point in points
    ), rest


def _share_m(points: tuple[Point, ...], there: Point) -> float | None:
    """What the rest of a divided section, and each new one without a length, is long (m).

    None where the section's own length is not known: then theirs are not either.
    """
    if there.length_m is None:
        return None
    open_ends = 1 + sum(point.length_m is None for point in points)
    left_m = there.length_m - sum(point.length_m or 0.0 for point in points)
    if left_m < -SAME_M:
        raise BadCommand("longer_than_section", where={"point": there.id}, length_m=there.length_m)
    return max(0.0, left_m) / open_ends


def hang_on(line: tuple[Point, ...], where: str | None, *, new: str) -> tuple[Point, ...]:
    """The line with everything that hung on one point (None: the terminals) on another."""
    return tuple(changed(one, after=new) if one.after == where else one for one in line)


def place_behind(line: tuple[Point, ...], after: str | None) -> int:
    """Where in the list a point spliced in behind `after` belongs."""
    if after is None:
        return 0
    return next((number + 1 for number, one in enumerate(line) if one.id == after), len(line))

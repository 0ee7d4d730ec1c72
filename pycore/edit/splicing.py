"""Hanging new points on a line: at an end, into the run, or into one section of it."""

from collections.abc import Iterable
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
    is taken off the section behind them.
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
    taken_m = _sum_m(point.length_m for point in points)
    rest_m = None if there.length_m is None or taken_m is None else there.length_m - taken_m
    if rest_m is not None and rest_m < -SAME_M:
        raise BadCommand(
            "longer_than_section", where={"point": there.id}, length_m=there.length_m or 0.0
        )
    rest = changed(there, length_m=None if rest_m is None else max(0.0, rest_m))
    return tuple(
        point if point.cable else changed(point, cable=there.cable) for point in points
    ), rest


def _sum_m(each_m: Iterable[float | None]) -> float | None:
    known = list(each_m)
    return None if None in known else sum(one for one in known if one is not None)


def hang_on(line: tuple[Point, ...], where: str | None, *, new: str) -> tuple[Point, ...]:
    """The line with everything that hung on one point (None: the terminals) on another."""
    return tuple(changed(one, after=new) if one.after == where else one for one in line)


def place_behind(line: tuple[Point, ...], after: str | None) -> int:
    """Where in the list a point spliced in behind `after` belongs."""
    if after is None:
        return 0
    return next((number + 1 for number, one in enumerate(line) if one.id == after), len(line))

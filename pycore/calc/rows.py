"""A row of like loudspeakers, one behind the other, added up: made when somebody opens it."""

from typing import NamedTuple

from pycore.calc.draw_story import Told, told_draws
from pycore.calc.draws import Draw, Lookup, draw_of
from pycore.calc.finding import Finding
from pycore.calc.limits import Loads
from pycore.formulas import power
from pycore.ground.working import Known, Working, computed, step
from pycore.jobs import Point, Zone


class Row(NamedTuple):
    """Points of one line that draw alike, and what each of them draws at its volts."""

    points: tuple[Point, ...]
    line_v: float
    each: Draw


def row_between(loads: Loads, *, first: str, last: str) -> Row | None:
    """The row from one point to another, as they stand in their line; None where it is none."""
    for zone in loads.job.zones:
        ids = [point.id for point in zone.line]
        if first in ids and last in ids:
            points = zone.line[ids.index(first) : ids.index(last) + 1]
            return row_of(loads, zone, points=points)
    return None


def row_of(loads: Loads, zone: Zone, *, points: tuple[Point, ...]) -> Row | None:
    """Some points of a zone as a row; None where they do not all draw alike."""
    line_v = loads.line_v(zone, "override")
    if line_v is None or not points:
        return None
    lookup = Lookup.of(loads.job.kinds)
    draws = {draw_of(point.fitted, lookup, line_v=line_v) for point in points}
    return Row(points, line_v, draws.pop()) if len(draws) == 1 else None


def row_finding(row: Row) -> Finding | None:
    """What a row asks for; None where one of it is not known."""
    if row.each.value is None:
        return None
    count = float(len(row.points))
    return Finding(
        code="row_load",
        what="row_load_w",
        where={"point": row.points[0].id},
        state="override",
        unit="w",
        verdict="note",
        value=power.load_of_like_w(count=count, each_w=row.each.value),
        values={"which": row.points[-1].id, "count": len(row.points)},
    )


def row_working(loads: Loads, row: Row) -> Working:
    """What one of them draws, and so many of them."""
    one = Told(row.points[0].fitted, row.each, row.line_v)
    steps = list(told_draws([one], Lookup.of(loads.job.kinds)))
    each = computed(steps[-1]) if steps else Known(row.each.value or 0.0, "w", "typed")
    inputs = {"count": Known(float(len(row.points)), "count", "typed"), "each_w": each}
    steps.append(step("row_sum", power.load_of_like_w, inputs=inputs))
    return Working(tuple(steps), ("nominal_load",))

"""How many loudspeakers stand on a tap marked for another voltage: counted where it is asked."""

from collections.abc import Iterator

from pycore.calc.draw_story import typed
from pycore.calc.finding import Finding, worst
from pycore.calc.limits import Loads
from pycore.calc.marks import mark_findings
from pycore.formulas import power
from pycore.ground.working import Known, Step, Working, step


def count_finding(loads: Loads) -> Finding:
    """The count over a whole job; over where one of them draws more than it is marked for."""
    wrong = _wrong(loads)
    return Finding(
        code="wrong_rows",
        what="wrong_rows_count",
        where={"job": loads.job.id},
        state=None,
        unit="count",
        verdict=worst([one.verdict for one in wrong]),
        value=power.sum_of_counts(each_count=_by_zone(loads, wrong)),
    )


def count_working(loads: Loads) -> Working:
    """What each wrong row draws on its line, then the loudspeakers zone by zone."""
    wrong = _wrong(loads)
    each = {"each_count": Known(_by_zone(loads, wrong), "count", "elsewhere")}
    counted = step("wrong_rows", power.sum_of_counts, inputs=each)
    return Working((*_row_steps(wrong), counted), ("nominal_load",))


def _row_steps(wrong: tuple[Finding, ...]) -> Iterator[Step]:
    rows = {(one.values["line_v"], one.values["tap_at_v"]): None for one in wrong}
    for line_v, tap_at_v in rows:
        if isinstance(line_v, float) and isinstance(tap_at_v, float):
            inputs = {"line_v": typed(line_v, "v"), "tap_at_v": typed(tap_at_v, "v")}
            yield step("voltage_factor", power.voltage_factor, inputs=inputs)


def _wrong(loads: Loads) -> tuple[Finding, ...]:
    return tuple(one for one in mark_findings(loads) if one.what == "wrong_voltage")


def _by_zone(loads: Loads, wrong: tuple[Finding, ...]) -> tuple[float, ...]:
    """How many of each zone, in the order of the zones; zones without any are left out."""
    points = {one.where["point"] for one in wrong}
    each = (sum(point.id in points for point in zone.line) for zone in loads.job.zones)
    return tuple(float(count) for count in each if count)

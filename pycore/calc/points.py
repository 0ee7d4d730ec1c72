"""What arrives at one point of a line, as findings: volts, watts, cable loss, level."""

from collections.abc import Iterator

from pycore.calc.between import NUMBERS, Ends, ends_of
from pycore.calc.finding import Finding, State
from pycore.calc.limits import STATES
from pycore.calc.solve import Lines
from pycore.ground.units import unit_of
from pycore.jobs import Zone


def point_findings(lines: Lines, point: str) -> Iterator[Finding]:
    """The numbers of one point in both states: a value, what it lies between, or neither."""
    zone = next(
        (one for one in lines.job.zones if any(each.id == point for each in one.line)), None
    )
    if zone is None:
        return
    for state in STATES:
        line = lines.solved.get((zone.id, state))
        ends = dict.fromkeys(NUMBERS, Ends(None))
        if line is not None:
            order = [one.id for one in line.laid.points]
            ends = ends_of(line)[order.index(point)]
        for name in NUMBERS:
            yield _finding(zone, point, name=name, state=state, ends=ends[name])


def _finding(zone: Zone, point: str, *, name: str, state: State, ends: Ends) -> Finding:
    known = any(end is not None for end in ends)
    return Finding(
        code="point_number" if known else "point_number_unknown",
        what=f"point_{name}",
        where={"point": point},
        state=state,
        unit=unit_of(name) or "count",
        verdict="note" if known else "unknown",
        value=ends.value,
        low=ends.low,
        high=ends.high,
        values={"zone": zone.id},
    )

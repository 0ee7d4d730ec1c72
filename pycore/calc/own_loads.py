"""What a zone asks for by itself: a note, since a zone has no maximum of its own.

Its output and the watts that outputs share are judged on all that hangs on them.
"""

from collections.abc import Iterator

from pycore.calc.finding import Finding, State
from pycore.calc.judge import Limit
from pycore.calc.limits import Loads
from pycore.jobs import Zone


def own_loads(loads: Loads) -> Iterator[Limit]:
    """The load of every landed zone; as it is set only where that differs from a page."""
    for zone in loads.job.zones:
        full = _own(loads, zone, state="override")
        as_set = _own(loads, zone, state="set")
        if full is not None:
            yield full
        if as_set is not None and (full is None or full.draw != as_set.draw):
            yield as_set


def _own(loads: Loads, zone: Zone, *, state: State) -> Limit | None:
    asked = loads.asked.get((zone.id, state))
    if asked is None:
        return None
    return Limit(
        what="zone_load_w",
        code="zone_load",
        where={"zone": zone.id},
        state=state,
        draw=asked.override if state == "override" else asked.set,
        most_w=None,
        fraction=loads.job.limits.load_fraction,
        zones=frozenset((zone.id,)),
        values={"unknown_taps": asked.unknown_taps, "line_v": loads.line_v(zone, state)},
    )


def own_load_findings(loads: Loads) -> Iterator[Finding]:
    """The same as findings: told, never judged."""
    for load in own_loads(loads):
        yield Finding(
            code="zone_load",
            what="zone_load_w",
            where=load.where,
            state=load.state,
            unit="w",
            verdict="note",
            value=load.draw.value,
            low=load.draw.low,
            high=load.draw.high,
            values=load.values,
        )

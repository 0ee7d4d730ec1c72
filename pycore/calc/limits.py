"""Every limit of a job and the load on it, in both states."""

from collections.abc import Iterator
from typing import NamedTuple

from pycore.calc.attenuators import rating_w, stands_too_high
from pycore.calc.draws import NOTHING, Draw, Lookup, exactly
from pycore.calc.finding import State
from pycore.calc.judge import Limit
from pycore.calc.zone_loads import ZoneLoad, load_of_zone
from pycore.ground.units import true_voltage
from pycore.jobs import Amplifier, Job, Output, Zone

STATES: tuple[State, State] = ("override", "set")


class Loads(NamedTuple):
    """What every zone asks, by state: the output it asks it of, and how much there."""

    job: Job
    outputs: dict[str, Output]
    zones: dict[str, Zone]
    asked: dict[tuple[str, State], ZoneLoad]
    landed: dict[tuple[str, State], tuple[str, ...]]

    def line_v(self, zone: Zone, state: State) -> float | None:
        """The volts a zone stands at in a state; None when it is landed nowhere."""
        output = self.outputs.get(output_of(zone, state) or "")
        return true_voltage(output.line_v) if output else None

    def harder_state(self, zone: Zone) -> State | None:
        """The state in which a zone's line has more volts; override where both have as many."""
        volts = {state: self.line_v(zone, state) for state in STATES}
        landed = [state for state in STATES if volts[state] is not None]
        return max(landed, key=lambda state: volts[state] or 0.0, default=None)


def output_of(zone: Zone, state: State) -> str | None:
    """The output that drives a zone: in the override state the one it is moved to for a page."""
    return (zone.page_output or zone.output) if state == "override" else zone.output


def loads_of(job: Job) -> Loads:
    """Add up every zone of a job once."""
    outputs = {output.id: output for amplifier in job.amplifiers for output in amplifier.outputs}
    loads = Loads(job, outputs, {zone.id: zone for zone in job.zones}, {}, {})
    lookup = Lookup.of(job.kinds)
    added: dict[tuple[str, float], ZoneLoad] = {}
    for zone in job.zones:
        for state in STATES:
            line_v = loads.line_v(zone, state)
            if line_v is None:
                continue
            if (zone.id, line_v) not in added:
                added[zone.id, line_v] = load_of_zone(zone, job.kinds, lookup=lookup, line_v=line_v)
            loads.asked[zone.id, state] = added[zone.id, line_v]
            output = output_of(zone, state) or ""
            loads.landed[output, state] = (*loads.landed.get((output, state), ()), zone.id)
    return loads


def limits_of(loads: Loads) -> tuple[Limit, ...]:
    """Every limit of the job, each with the load on it."""
    found: list[Limit] = []
    for amplifier in loads.job.amplifiers:
        pools = {state: tuple(_pool_limits(loads, amplifier, state=state)) for state in STATES}
        for output in amplifier.outputs:
            for state in STATES:
                own = _output_limit(loads, output, state=state)
                found.append(own._replace(shared=_shared_by(amplifier, output, pools=pools[state])))
                if output.min_load_ohm is not None:
                    found.append(_impedance_limit(own, output, min_load_ohm=output.min_load_ohm))
        for state in STATES:
            found.extend(pools[state])
    for zone in loads.job.zones:
        found.extend(_attenuator_limits(loads, zone))
    return tuple(found)


def _shared_by(amplifier: Amplifier, output: Output, *, pools: tuple[Limit, ...]) -> Limit | None:
    """The pool an output takes its watts from; None where it shares none, or nobody knows."""
    each = zip(amplifier.pools or (), pools, strict=False)
    return next((limit for pool, limit in each if output.id in pool.outputs), None)


def load_on(loads: Loads, output: str, *, state: State) -> Draw:
    """What all zones on an output ask of it in a state."""
    total = NOTHING
    for zone in loads.landed.get((output, state), ()):
        asked = loads.asked[zone, state]
        total = total.plus(asked.override if state == "override" else asked.set)
    return total


def _output_limit(loads: Loads, output: Output, *, state: State) -> Limit:
    zones = frozenset(loads.landed.get((output.id, state), ()))
    draw = load_on(loads, output.id, state=state)
    unknown = sum(loads.asked[zone, state].unknown_taps for zone in zones)
    return Limit(
        what="output_load_w",
        code="output_load",
        where={"output": output.id},
        state=state,
        draw=draw,
        most_w=output.max_w,
        fraction=loads.job.limits.load_fraction,
        zones=zones,
        values={"unknown_taps": unknown, "line_v": true_voltage(output.line_v)},
    )


def _impedance_limit(own: Limit, output: Output, *, min_load_ohm: float) -> Limit:
    """The same load against the least ohms the output may see."""
    return own._replace(
        what="output_impedance_ohm",
        code="impedance",
        line_v=true_voltage(output.line_v),
        min_load_ohm=min_load_ohm,
    )


def _pool_limits(loads: Loads, amplifier: Amplifier, *, state: State) -> Iterator[Limit]:
    """Each pool; where nobody knows whether several outputs share watts, that is said."""
    for number, pool in enumerate(amplifier.pools or ()):
        yield _pool_limit(
            loads, amplifier, state=state, number=number, outputs=pool.outputs, most_w=pool.w
        )._replace(
            draw=_pool_draw(loads, pool.outputs, state=state).plus(exactly(pool.other_w or 0.0))
        )
    if amplifier.pools is None and len(amplifier.outputs) > 1:
        every = tuple(output.id for output in amplifier.outputs)
        limit = _pool_limit(loads, amplifier, state=state, number=0, outputs=every, most_w=None)
        yield limit._replace(code="pool_not_known")


def _pool_limit(
    loads: Loads,
    amplifier: Amplifier,
    *,
    state: State,
    number: int,
    outputs: tuple[str, ...],
    most_w: float | None,
) -> Limit:
    zones = [zone for one in outputs for zone in loads.landed.get((one, state), ())]
    feeds = [one for one in amplifier.outputs if one.id in outputs]
    several = len(amplifier.pools or ()) > 1
    return Limit(
        what="pool_load_w",
        code="pool_load",
        where={"amplifier": amplifier.id},
        state=state,
        draw=_pool_draw(loads, outputs, state=state),
        most_w=most_w,
        fraction=loads.job.limits.load_fraction,
        zones=frozenset(zones),
        feeds=tuple(_output_limit(loads, one, state=state) for one in feeds),
        values={"outputs": len(outputs), "which": number if several else None},
    )


def _pool_draw(loads: Loads, outputs: tuple[str, ...], *, state: State) -> Draw:
    total = NOTHING
    for output in outputs:
        total = total.plus(load_on(loads, output, state=state))
    return total


def _attenuator_limits(loads: Loads, zone: Zone) -> Iterator[Limit]:
    """Each attenuator by the tap sum below it at full line volts, where they are highest."""
    state = loads.harder_state(zone)
    line_v = loads.line_v(zone, state) if state else None
    if state is None or line_v is None:
        return
    for point, (facts, carried) in loads.asked[zone.id, state].attenuators.items():
        too_high = stands_too_high(facts, line_v)
        yield Limit(
            what="attenuator_load_w",
            code="attenuator_volts_over" if too_high else "attenuator_load",
            where={"point": point},
            state=state,
            draw=carried,
            most_w=rating_w(facts, line_v),
            forbidden=too_high,
            fraction=loads.job.limits.load_fraction,
            zones=frozenset(),
            point=point,
            values={
                "zone": zone.id,
                "line_v": line_v,
                "rated_w": facts.rated_w,
                "rated_at_v": facts.rated_at_v,
            },
        )

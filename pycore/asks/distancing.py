"""The ask `distance`: a short read from one end or both, on a cable that need not be drawn."""

import math
from collections.abc import Mapping

from pycore.asks.explain import step_answer
from pycore.asks.meter_answers import MeasuredDistance
from pycore.asks.meter_bodies import DistanceBody
from pycore.asks.meter_question import number_in
from pycore.calc import priors
from pycore.calc.pairs import pair_of
from pycore.formulas import meter
from pycore.ground.problems import BadCommand
from pycore.ground.units import Manner, show
from pycore.ground.words import say
from pycore.ground.working import Equation, Known, Step, computed, step

UNITS = {
    "near_ohm": "ohm",
    "far_ohm": "ohm",
    "leads_ohm": "ohm",
    "route_m": "m",
    "conductor_c": "c",
    "tolerance_pct": "pct",
}
USUAL_C = 20.0


def distance(body: DistanceBody, manner: Manner) -> MeasuredDistance:
    """The ask `distance`."""
    typed = {
        name: number_in(getattr(body, name), unit, manner=manner, field=name)
        for name, unit in UNITS.items()
    }
    if not (typed["near_ohm"] or 0.0) > 0:
        raise BadCommand("reading_unread", where={"field": "near_ohm"}, text=body.near_ohm)
    conductor_c = typed["conductor_c"]
    pair = pair_of(body.cable, USUAL_C if conductor_c is None else conductor_c)
    loop = Known(pair.loop_ohm_per_km, "ohm_per_km", "catalogue")
    steps = _lead_steps(typed)
    near = computed(steps[0])
    if typed["far_ohm"] is None:
        steps.append(_step("short_distance", meter.short_distance_m, near=near, loop=loop))
        own_ohm = None
    else:
        own_ohm = _both_ends(steps, typed, near=near, loop=loop)
    metres = next(one.result for one in steps if one.equation.unit == "m")
    steps.append(_error_step(steps, typed, metres=metres, loop=loop))
    return _answer(steps, metres=metres, own_ohm=own_ohm, manner=manner)


def _lead_steps(typed: Mapping[str, float | None]) -> list[Step]:
    """Each reading without its leads, or the problem that only leads were read."""
    steps = []
    leads_ohm = typed["leads_ohm"] or 0.0
    for name in ("near_ohm", "far_ohm"):
        read_ohm = typed[name]
        if read_ohm is None:
            continue
        inputs = {
            "read_ohm": Known(read_ohm, "ohm", "typed"),
            "leads_ohm": Known(leads_ohm, "ohm", "typed"),
        }
        made = step("leads_off", meter.without_leads_ohm, inputs=inputs)
        if made.result <= 0:
            raise BadCommand("reading_is_leads", where={"field": name})
        steps.append(made)
    return steps


def _step(code: str, equation: Equation, *, near: Known, loop: Known) -> Step:
    return step(code, equation, inputs={"read_ohm": near, "loop_ohm_per_km": loop})


def _both_ends(
    steps: list[Step], typed: Mapping[str, float | None], *, near: Known, loop: Known
) -> float:
    """Two readings of one short: its place and its own ohms."""
    route_m = typed["route_m"]
    if not route_m:
        raise BadCommand("length_needed", where={"field": "route_m"})
    inputs = {
        "near_ohm": near,
        "far_ohm": computed(steps[1]),
        "route_m": Known(route_m, "m", "typed"),
        "loop_ohm_per_km": loop,
    }
    steps.append(step("two_end_distance", meter.two_end_short_m, inputs=inputs))
    own = step("two_end_own", meter.two_end_fault_ohm, inputs=inputs)
    steps.append(own)
    return own.result


def _error_step(
    steps: list[Step], typed: Mapping[str, float | None], *, metres: float, loop: Known
) -> Step:
    """How far it may be off. From both ends the two errors meet by halves, and the cable's
    falls out in the middle of the route."""
    said = typed["tolerance_pct"]
    pct = max(priors.METER_PCT if said is None else said, priors.LEAST_PCT)
    reads = [one.result for one in steps if one.code == "leads_off"]
    loose_ohm = math.hypot(*(one * pct / 100 + priors.METER_OHM for one in reads)) / len(reads)
    from_m = (typed["route_m"] or 0.0) / 2 if len(reads) > 1 else 0.0
    inputs = {
        "meter_ohm": Known(loose_ohm, "ohm", "assumed"),
        "loop_ohm_per_km": loop,
        "distance_m": Known(abs(metres - from_m), "m", "computed"),
        "cable_fraction": Known(priors.CABLE_PCT / 100, "fraction", "assumed"),
    }
    return step("distance_error", meter.distance_error_m, inputs=inputs)


def _answer(
    steps: list[Step], *, metres: float, own_ohm: float | None, manner: Manner
) -> MeasuredDistance:
    error_m = steps[-1].result
    low_m, high_m = max(metres - error_m, 0.0), metres + error_m
    ends = {"low": show(low_m, "m", manner=manner), "high": show(high_m, "m", manner=manner)}
    return {
        "metres": metres,
        "low": low_m,
        "high": high_m,
        "own_ohm": own_ohm,
        "shown": show(metres, "m", manner=manner),
        "range": say("meter_title", "band", values=ends, language=manner.language),
        "own_shown": show(own_ohm, "ohm", manner=manner) if own_ohm is not None else "",
        "steps": [step_answer(one, manner) for one in steps],
    }

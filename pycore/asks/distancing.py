"""The ask `distance`: a short or a break in metres, on a bare pair or on a drawn line."""

import math
from collections.abc import Mapping

from pycore.asks.distance_answer import (
    Copper,
    Told,
    answer_of,
    believed,
    copper_of,
    leads_off,
    loose_of,
    tolerance_of,
    typed_in,
)
from pycore.asks.distancing_line import break_on_line, short_on_line
from pycore.asks.meter_bodies import DistanceBody
from pycore.asks.record_answers import MeasuredDistance
from pycore.calc import priors
from pycore.calc.pairs import Pair, pair_of
from pycore.calc.wiring import TEST_HZ
from pycore.formulas import cable, meter
from pycore.ground.problems import BadCommand
from pycore.ground.units import Manner, show
from pycore.ground.working import Known, Step, computed, step

# How far the capacitance of a pair of the usual make may be off (common practice, no source).
CAPACITANCE_PCT = 20.0
# No pair has as little or as much between its conductors, pF/m (common practice, no source; one of
# the usual make has 45 to 85).
LEAST_PF_PER_M, MOST_PF_PER_M = 10.0, 1000.0


def distance(body: DistanceBody, manner: Manner) -> MeasuredDistance:
    """The ask `distance`.

    Raises BadCommand `break_at_1k`, `cable_needed`, or what no line can read.
    """
    typed = typed_in(body, manner)
    if body.fault == "break" and body.quantity != "z_1k_ohm":
        raise BadCommand("break_at_1k", where={"field": "quantity"})
    return answer_of(believed(_told(body, typed, manner=manner), body, manner=manner), manner)


def _told(body: DistanceBody, typed: Mapping[str, float | None], *, manner: Manner) -> Told:
    """On the drawn line, or on a bare pair."""
    if body.where is not None:
        on_line = break_on_line if body.fault == "break" else short_on_line
        return on_line(body, typed, manner=manner)
    if body.cable is None:
        raise BadCommand("cable_needed", where={"field": "cable"})
    copper = copper_of(body, typed)
    pair = pair_of(body.cable, copper.heat_c, said=copper.said)
    if body.fault == "break":
        return _break(typed, pair, manner=manner)
    made = _loop_steps(pair, tone=body.quantity == "z_1k_ohm" and typed["far_ohm"] is None)
    return _short(typed, made, copper=copper)


def _loop_steps(pair: Pair, *, tone: bool) -> list[Step]:
    """How the cable's own ohms came to be, its heat among them; for a tone with its inductance.

    From both ends the short's own ohms are there, too, and they add to the cable's resistance, not
    to its impedance: what inductance does is then left out. It is 1 % of the way from the middle
    with 1.5 mm² and 8 % with 4 mm² where the short has none.
    """
    if not tone:
        return list(pair.steps)
    inputs = {
        "loop_ohm_per_km": computed(pair.steps[-1]),
        "hz": Known(TEST_HZ, "hz", "assumed"),
        "inductance_uh_per_m": Known(pair.inductance_uh_per_m, "uh_per_m", pair.said[0]),
    }
    return [*pair.steps, step("loop_at_tone", cable.loop_at_tone_ohm_per_km, inputs=inputs)]


def _short(typed: Mapping[str, float | None], made: list[Step], *, copper: Copper) -> Told:
    loop = computed(made[-1])
    steps = leads_off(typed)
    near = computed(steps[0])
    own_ohm = None
    if typed["far_ohm"] is None:
        inputs = {"read_ohm": near, "loop_ohm_per_km": loop}
        steps.append(step("short_distance", meter.short_distance_m, inputs=inputs))
    else:
        own_ohm = _both_ends(steps, typed, loop=loop)
    metres = next(one.result for one in steps if one.equation.unit == "m")
    steps.append(_error_step(steps, typed, metres=metres, loop=loop))
    error_m = steps[-1].result
    if typed["far_ohm"] is not None:
        _look_at_ends(steps, typed, metres=metres, error_m=error_m, loop_ohm_per_km=made[-1].result)
    steps = [*made, *steps]
    return Told.on_pair(metres, error_m=error_m, steps=steps, own_ohm=own_ohm, copper=copper)


def _route(typed: Mapping[str, float | None]) -> Known:
    route_m = typed["route_m"]
    if not route_m:
        raise BadCommand("length_needed", where={"field": "route_m"})
    return Known(route_m, "m", "typed")


def _both_ends(steps: list[Step], typed: Mapping[str, float | None], *, loop: Known) -> float:
    """Two readings of one short: its place and its own ohms."""
    inputs = {
        "near_ohm": computed(steps[0]),
        "far_ohm": computed(steps[1]),
        "route_m": _route(typed),
        "loop_ohm_per_km": loop,
    }
    steps.append(step("two_end_distance", meter.two_end_short_m, inputs=inputs))
    own = step("two_end_own", meter.two_end_fault_ohm, inputs=inputs)
    steps.append(own)
    return own.result


def _look_at_ends(
    steps: list[Step],
    typed: Mapping[str, float | None],
    *,
    metres: float,
    error_m: float,
    loop_ohm_per_km: float,
) -> None:
    """A short lies on its route, and both ends together read no less than the whole loop.

    Raises BadCommand `ends_disagree` where they do by more than meter and cable leave open.
    """
    route_m = typed["route_m"] or 0.0
    reads = [one.result for one in steps if one.code == "leads_off"]
    loop_ohm = loop_ohm_per_km * route_m / 1000
    loose_ohm = sum(loose_of(one, typed) for one in reads)
    short_of = loop_ohm * (1 - priors.CABLE_PCT / 100) - sum(reads)
    if not -error_m <= metres <= route_m + error_m or short_of > loose_ohm:
        raise BadCommand("ends_disagree", where={"field": "far_ohm"})


def _error_step(
    steps: list[Step], typed: Mapping[str, float | None], *, metres: float, loop: Known
) -> Step:
    """How far it may be off. From both ends the two errors meet by halves, and the cable's
    falls out in the middle of the route."""
    reads = [one.result for one in steps if one.code == "leads_off"]
    loose_ohm = math.hypot(*(loose_of(one, typed) for one in reads)) / len(reads)
    from_m = (typed["route_m"] or 0.0) / 2 if len(reads) > 1 else 0.0
    inputs = {
        "meter_ohm": Known(loose_ohm, "ohm", "assumed"),
        "loop_ohm_per_km": loop,
        "distance_m": Known(abs(metres - from_m), "m", "computed"),
        "cable_fraction": Known(priors.CABLE_PCT / 100, "fraction", "assumed"),
    }
    return step("distance_error", meter.distance_error_m, inputs=inputs)


def _break(typed: Mapping[str, float | None], pair: Pair, *, manner: Manner) -> Told:
    """A bare pair that ends too soon is a capacitor as long as what is left of it."""
    steps = leads_off(typed)
    if typed["far_ohm"] is None:
        metres = _open_pair(steps, typed, pair=pair)
    else:
        metres = _open_at_both_ends(steps, typed, manner=manner)
    error_m = steps[-1].result
    return Told.on_pair(
        metres, error_m=error_m, steps=steps, own_ohm=None, assumptions=("nothing_on_pair",)
    )


def _open_pair(steps: list[Step], typed: Mapping[str, float | None], *, pair: Pair) -> float:
    """By what the cable's capacitance is said to be; the metres."""
    inputs = {
        "hz": Known(TEST_HZ, "hz", "assumed"),
        "capacitance_pf_per_m": Known(pair.capacitance_pf_per_m, "pf_per_m", "catalogue"),
        "read_ohm": computed(steps[0]),
    }
    told = step("open_distance", meter.open_pair_m, inputs=inputs)
    loose = {
        "distance_m": computed(told),
        "meter_fraction": Known(tolerance_of(typed), "fraction", "assumed"),
        "cable_fraction": Known(CAPACITANCE_PCT / 100, "fraction", "assumed"),
    }
    steps += [told, step("open_error", meter.open_pair_error_m, inputs=loose)]
    return told.result


def _open_at_both_ends(
    steps: list[Step], typed: Mapping[str, float | None], *, manner: Manner
) -> float:
    """By how the route divides between its two ends: the cable falls out; the metres.

    Raises BadCommand `no_such_pair` where both together have what no cable has.
    """
    both = {
        "route_m": _route(typed),
        "near_ohm": computed(steps[0]),
        "far_ohm": computed(steps[1]),
    }
    told = step("two_end_break", meter.two_end_break_m, inputs=both)
    near_ohm, far_ohm = (one.result for one in steps if one.code == "leads_off")
    whole_ohm = 1 / (1 / near_ohm + 1 / far_ohm)
    # the length of one picofarad a metre that reads so is, over the route, picofarads a metre
    pf_per_m = meter.open_pair_m(hz=TEST_HZ, capacitance_pf_per_m=1.0, read_ohm=whole_ohm)
    pf_per_m /= typed["route_m"] or 1.0
    if not LEAST_PF_PER_M <= pf_per_m <= MOST_PF_PER_M:
        shown = show(pf_per_m, "pf_per_m", manner=manner)
        raise BadCommand("no_such_pair", where={"field": "near_ohm"}, capacitance=shown)
    loose = {**both, "meter_fraction": Known(tolerance_of(typed), "fraction", "assumed")}
    steps += [told, step("distance_error", meter.two_end_break_error_m, inputs=loose)]
    return told.result

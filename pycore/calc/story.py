"""How the numbers of the limits came to be, step by step, by the same equations."""

from collections.abc import Callable, Iterator
from typing import Literal

from pycore.calc.check import Checked
from pycore.calc.draws import Draw, Lookup, possible_taps
from pycore.calc.finding import Finding, State
from pycore.calc.judge import Limit
from pycore.calc.limits import Loads, output_of
from pycore.calc.zone_loads import Part, parts_of
from pycore.formulas import power
from pycore.ground.units import true_voltage
from pycore.ground.working import Known, Step, Working, computed, step

Bound = Literal["value", "low", "high"]


def typed(value: float, unit: str, label: str = "") -> Known:
    """A number a person put into the job."""
    return Known(value=value, unit=unit, origin="typed", label=label)


def load_working(checked: Checked, limit: Limit) -> Working:
    """The sum behind a load in watts, or in ohms: the low and the high where it is a range."""
    bounds: list[Bound] = ["value"]
    if limit.draw.value is None:
        bounds = ["low"] if limit.draw.high is None else ["low", "high"]
    # ohms are smallest where watts are most: tell them in the order low, high of the finding
    ohms = limit.what == "output_impedance_ohm"
    steps: list[Step] = []
    for bound in reversed(bounds) if ohms else bounds:
        steps.extend(_load_steps(checked, limit, bound))
    return Working(tuple(steps), _assumptions(limit))


def _load_steps(checked: Checked, limit: Limit, bound: Bound) -> Iterator[Step]:
    parts = list(_parts_on(checked.loads, limit))
    for line_v, part in _one_of_each(parts):
        yield from _draw_steps(checked.loads, part, line_v)
    groups: dict[tuple[str, float], list[float]] = {}
    for zone, _, part in parts:
        drawn = _bound(part.draw, bound)
        if drawn:
            share = _bound_share(part, bound) if limit.state == "set" else 1.0
            groups.setdefault((zone, share), []).append(drawn)
    sums: list[Known] = []
    for (zone, share), each in groups.items():
        each_w = Known(tuple(each), "w", "computed")
        made = step(f"zone_sum_{bound}", power.sum_of_draws_w, {"each_w": each_w}, zone=zone)
        yield made
        if share != 1.0:
            felt = {"load_w": computed(made), "share": Known(share, "factor", "computed")}
            made = step("zone_felt", power.felt_load_w, felt, zone=zone)
            yield made
        sums.append(computed(made))
    yield from _total_steps(checked, limit, sums)


def _total_steps(checked: Checked, limit: Limit, sums: list[Known]) -> Iterator[Step]:
    other_w = _other_w(checked, limit)
    if other_w:
        sums = [*sums, typed(other_w, "w")]
    each = tuple(one.value for one in sums if isinstance(one.value, float))
    total = step("total", power.sum_of_draws_w, {"each_w": Known(each, "w", "computed")})
    yield total
    if limit.what == "output_impedance_ohm" and limit.line_v is not None and total.result:
        ohms = {"line_v": typed(limit.line_v, "v"), "load_w": computed(total)}
        yield step("impedance", power.impedance_of_watts_ohm, ohms)


def _parts_on(loads: Loads, limit: Limit) -> Iterator[tuple[str, float, Part]]:
    """Every point that makes up a limit's load, with its zone's name and volts."""
    lookup = Lookup.of(loads.job.kinds)
    state: State = limit.state
    for zone in loads.job.zones:
        line_v = loads.line_v(zone, state)
        inside = zone.id in limit.zones or limit.values.get("zone") == zone.id
        if line_v is None or not inside or output_of(zone, state) is None:
            continue
        for part in parts_of(zone, loads.job.kinds, lookup, line_v):
            if limit.point is None or limit.point in part.attenuators:
                yield zone.name, line_v, part


def _one_of_each(parts: list[tuple[str, float, Part]]) -> Iterator[tuple[float, Part]]:
    """One part for each different way of drawing, so that a like tap is explained once."""
    met: set[object] = set()
    for _, line_v, part in parts:
        fitted = part.point.fitted
        key: object = (line_v, part.draw)
        if fitted.is_ in ("loudspeaker", "existing") and part.draw.high != 0 and key not in met:
            met.add(key)
            yield line_v, part


def _draw_steps(loads: Loads, part: Part, line_v: float) -> Iterator[Step]:
    fitted = part.point.fitted
    volts = typed(line_v, "v", "line")
    if fitted.is_ == "existing":
        if fitted.ohm is not None and fitted.w is None:
            ohms = typed(fitted.ohm, "ohm", "measured")
            inputs = {"line_v": volts, "direct_ohm": ohms}
            yield step("draw_existing", power.draw_of_resistance_w, inputs)
        return
    if fitted.is_ != "loudspeaker":
        return
    if fitted.direct_ohm is not None:
        inputs = {"line_v": volts, "direct_ohm": typed(fitted.direct_ohm, "ohm")}
        yield step("draw_direct", power.draw_of_resistance_w, inputs)
        return
    kind = Lookup.of(loads.job.kinds).kind(fitted)
    taps = possible_taps(fitted, kind, line_v)
    origin: Literal["typed", "catalogue"] = "typed" if fitted.tap_w is not None else "catalogue"
    for tap_w, at_v in {min(taps), max(taps)} if taps else ():
        tap = {"tap_w": Known(tap_w, "w", origin), "line_v": volts}
        at = {"tap_at_v": Known(true_voltage(at_v), "v", origin)}
        made = step("draw_tap", power.draw_of_tap_w, {**tap, **at})
        yield made
        if kind is not None and kind.tap_means == "delivered" and kind.transformer_loss_db:
            loss = Known(kind.transformer_loss_db, "db", "catalogue")
            grossed = {"tap_w": computed(made), "transformer_loss_db": loss}
            yield step("draw_grossed_up", power.drawn_of_delivered_w, grossed)


def _bound(draw: Draw, bound: Bound) -> float | None:
    return {"value": draw.value, "low": draw.low, "high": draw.high}[bound]


def _bound_share(part: Part, bound: Bound) -> float:
    return part.share[0] if bound == "low" else part.share[1]


def _other_w(checked: Checked, limit: Limit) -> float:
    amplifier = limit.where.get("amplifier")
    pools = next((one.pools for one in checked.job.amplifiers if one.id == amplifier), None)
    which = limit.values.get("which")
    if not pools:
        return 0.0
    return pools[which if isinstance(which, int) else 0].other_w or 0.0


def _assumptions(limit: Limit) -> tuple[str, ...]:
    always = ["nominal_load", "bypassed" if limit.state == "override" else "as_set"]
    if limit.draw.value is None or limit.draw.low != limit.draw.high:
        always.append("range_of_taps")
    if limit.what == "attenuator_load_w":
        always.append("no_relief")
    return tuple(always)


def voltage_working(finding: Finding) -> Working:
    """The factor of a wrong voltage row."""
    line_v, tap_at_v = finding.values["line_v"], finding.values["tap_at_v"]
    assert isinstance(line_v, float)
    assert isinstance(tap_at_v, float)
    inputs = {"line_v": typed(line_v, "v"), "tap_at_v": typed(tap_at_v, "v")}
    made = step("voltage_factor", power.voltage_factor, inputs)
    return Working((made,), ("nominal_load",))


def direct_working(finding: Finding) -> Working:
    """The watts of a low-impedance selector straight across the line."""
    line_v, direct_ohm = finding.values["line_v"], finding.values["direct_ohm"]
    assert isinstance(line_v, float)
    assert isinstance(direct_ohm, float)
    inputs = {"line_v": typed(line_v, "v"), "direct_ohm": typed(direct_ohm, "ohm")}
    return Working((step("draw_direct", power.draw_of_resistance_w, inputs),), ("nominal_load",))


def fits_working(checked: Checked, finding: Finding) -> Working:
    """The first limit with as many more as fit to the rating, and with one more than that."""
    values = finding.values
    limit = next((one for one in checked.limits if _is_first(one, finding)), None)
    each_w, count = values["each_w"], values["to_rating"]
    if limit is None or limit.draw.value is None or each_w is None or count is None:
        return Working((), ("counted_by_trial",))
    load = Known(limit.draw.value, "w", "computed")
    each = Known(float(each_w), "w", "computed")
    steps = [
        step(
            code,
            power.load_with_more_w,
            {"load_w": load, "count": Known(float(more), "count", "computed"), "each_w": each},
        )
        for code, more in (("with_all", int(count)), ("with_one_more", int(count) + 1))
    ]
    return Working(tuple(steps), ("counted_by_trial", "at_the_end"))


def _is_first(limit: Limit, finding: Finding) -> bool:
    values = finding.values
    place = next(iter(limit.where.values()))
    wanted = (values["first_what"], values["first_id"], values["first_state"])
    return (limit.what, place, limit.state) == wanted


BY_WHAT: dict[str, Callable[[Finding], Working]] = {
    "wrong_voltage": voltage_working,
    "direct_load_w": direct_working,
}


def working_of(checked: Checked, finding: Finding) -> Working:
    """How a finding's number came to be; no steps where it is a mark, not a number."""
    for limit in checked.limits:
        here = (limit.what, limit.where, limit.state, limit.values.get("which"))
        if here == (finding.what, finding.where, finding.state, finding.values.get("which")):
            return load_working(checked, limit)
    if finding.what in BY_WHAT:
        return BY_WHAT[finding.what](finding)
    if finding.what == "what_fits":
        return fits_working(checked, finding)
    return Working((), ())

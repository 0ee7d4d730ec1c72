"""How a load came to be: what each tap draws, what controls leave of it, and the sum."""

from collections.abc import Iterator
from typing import Literal, NamedTuple

from pycore.calc.attenuators import AttenuatorFacts, share_felt
from pycore.calc.check import Checked
from pycore.calc.draw_story import Told, told_draws, typed
from pycore.calc.draws import Draw, Lookup
from pycore.calc.judge import Limit
from pycore.calc.limits import Loads, output_of
from pycore.calc.said import of_control, rating
from pycore.calc.zone_loads import Part, parts_of
from pycore.formulas import power
from pycore.ground.working import Known, Step, Working, computed, step
from pycore.jobs import Attenuator, Zone

Bound = Literal["value", "low", "high"]
TOTAL: dict[Bound, str] = {"value": "total", "low": "total_low", "high": "total_high"}


class Carried(NamedTuple):
    """A point that makes up a load, in its zone at its volts."""

    zone: Zone
    line_v: float
    part: Part


class Sums(NamedTuple):
    """What is added up for a bound, and the draws (W) told so far."""

    checked: Checked
    limit: Limit
    bound: Bound
    told_w: frozenset[float]

    def known(self, each_w: tuple[float, ...]) -> Known:
        """Terms of a sum: each is told above, or stands in the job as it is."""
        above = all(one in self.told_w for one in each_w)
        return Known(each_w, "w", "computed" if above else "told")


def load_working(checked: Checked, limit: Limit) -> Working:
    """The sum behind a load in watts, or in ohms: where it is a range, its low and high first."""
    return load_steps(checked, limit, bounds=_bounds(limit))


def load_steps(checked: Checked, limit: Limit, *, bounds: tuple[Bound, ...]) -> Working:
    """The same for some of its bounds, in this order."""
    carried = tuple(_carried(checked.loads, limit))
    told = (Told(one.part.point.fitted, one.part.draw, one.line_v) for one in carried)
    steps = [*_rating_steps(checked.loads, limit), *told_draws(told, Lookup.of(checked.job.kinds))]
    for bound in bounds:
        told_w = {made.result for made in steps}
        sums = Sums(checked, limit, bound, frozenset(told_w))
        steps.extend(_sum_steps(sums, carried=carried))
    return Working(tuple(steps), _assumptions(limit))


def _rating_steps(loads: Loads, limit: Limit) -> Iterator[Step]:
    """What a control may carry on a line of fewer volts than it is marked for."""
    rated_w, rated_at_v = (rating(loads, limit, name=name) for name in ("rated_w", "rated_at_v"))
    line_v = limit.values.get("line_v")
    if limit.most_w is None or rated_w is None or limit.most_w == rated_w.value:
        return
    if rated_at_v is not None and isinstance(line_v, float):
        known = {"rated_w": rated_w, "line_v": typed(line_v, "v"), "rated_at_v": rated_at_v}
        yield step("control_rating", power.rating_at_lower_voltage_w, inputs=known)


def _bounds(limit: Limit) -> tuple[Bound, ...]:
    """What has to be told, in the order low, high, value of the finding."""
    value, low, high = limit.draw
    if value is not None and low == high:
        return ("value",)
    if high is None:
        return ("low",)
    # ohms are lowest where watts are highest
    ends: tuple[Bound, Bound] = ("low", "high")
    if limit.what == "output_impedance_ohm":
        ends = ("high", "low")
    return ends if value is None else (*ends, "value")


def _carried(loads: Loads, limit: Limit) -> Iterator[Carried]:
    """Every point that makes up a limit's load."""
    lookup = Lookup.of(loads.job.kinds)
    for zone in loads.job.zones:
        line_v = loads.line_v(zone, limit.state)
        inside = zone.id in limit.zones or limit.values.get("zone") == zone.id
        if line_v is None or not inside or output_of(zone, limit.state) is None:
            continue
        for part in parts_of(zone, loads.job.kinds, lookup=lookup, line_v=line_v):
            if limit.point is None or limit.point in part.attenuators:
                yield Carried(zone, line_v, part)


def _sum_steps(adding: Sums, *, carried: tuple[Carried, ...]) -> Iterator[Step]:
    """Zone by zone and control by control, then all together."""
    checked, limit, bound, _ = adding
    lessens = limit.state == "set" and limit.point is None
    groups: dict[tuple[str, tuple[str, ...]], list[float]] = {}
    zones = {one.zone.id: one.zone for one in carried}
    for one in carried:
        drawn = _bound(one.part.draw, bound)
        if drawn:
            key = (one.zone.id, one.part.attenuators if lessens else ())
            groups.setdefault(key, []).append(drawn)
    sums: list[Known] = []
    for (zone, controls), each in groups.items():
        each_w = {"each_w": adding.known(tuple(each))}
        made = step(f"zone_sum_{bound}", power.sum_of_draws_w, inputs=each_w, zone=zones[zone].name)
        yield made
        for control in controls:
            felt = tuple(_felt_steps(checked, zones[zone], control=control, load=made, bound=bound))
            yield from felt
            made = felt[-1] if felt else made
        sums.append(computed(made))
    yield from _total_steps(checked, limit, sums=sums, bound=bound)


def _felt_steps(
    checked: Checked, zone: Zone, *, control: str, load: Step, bound: Bound
) -> Iterator[Step]:
    """What the line feels of a load below one control, as it stands; none where it feels all."""
    fitted = next(point.fitted for point in zone.line if point.id == control)
    assert isinstance(fitted, Attenuator)
    facts, _ = checked.loads.asked[zone.id, "set"].attenuators[control]
    least, most = share_felt(fitted, facts)
    share = Known(least if bound == "low" else most, "factor", "typed")
    if share.value == 1.0:
        return
    if not fitted.off:
        told = tuple(_share_steps(fitted, facts))
        yield from told
        share = computed(told[-1])
    code = "control_off" if fitted.off else "zone_felt"
    felt = {"load_w": computed(load), "share": share}
    yield step(code, power.felt_load_w, inputs=felt, zone=zone.name, control=fitted.label)


def _share_steps(fitted: Attenuator, facts: AttenuatorFacts) -> Iterator[Step]:
    """The share of a load that its line feels through a control, by its setting and own loss."""
    level = Known(fitted.set_db, "db", "typed")
    if facts.insertion_db:
        own = of_control(fitted, facts, name="insertion_db")
        losses = {"set_db": level, "insertion_db": Known(facts.insertion_db, "db", own)}
        made = step("control_level", power.below_control_db, inputs=losses, control=fitted.label)
        yield made
        level = computed(made)
    inputs = {"setting_db": level}
    yield step("control_share", power.reflected_share, inputs=inputs, control=fitted.label)


def _total_steps(
    checked: Checked, limit: Limit, *, sums: list[Known], bound: Bound
) -> Iterator[Step]:
    other_w = _other_w(checked, limit)
    if other_w:
        sums = [*sums, typed(other_w, "w")]
    if len(sums) == 1 and sums[0].origin == "computed":
        load = sums[0]  # told already
    else:
        each = tuple(one.value for one in sums if isinstance(one.value, float))
        inputs = {"each_w": Known(each, "w", "told" if other_w else "computed")}
        total = step(TOTAL[bound], power.sum_of_draws_w, inputs=inputs)
        yield total
        load = computed(total)
    if limit.what == "output_impedance_ohm" and limit.line_v is not None and load.value:
        ohms = {"line_v": typed(limit.line_v, "v"), "load_w": load}
        yield step("impedance", power.impedance_of_watts_ohm, inputs=ohms)


def _bound(draw: Draw, bound: Bound) -> float | None:
    return {"value": draw.value, "low": draw.low, "high": draw.high}[bound]


def _other_w(checked: Checked, limit: Limit) -> float:
    amplifier = limit.where.get("amplifier")
    pools = next((one.pools for one in checked.job.amplifiers if one.id == amplifier), None)
    which = limit.values.get("which")
    if not pools:
        return 0.0
    return pools[which if isinstance(which, int) else 0].other_w or 0.0


def _assumptions(limit: Limit) -> tuple[str, ...]:
    always = ["nominal_load"]
    if limit.what == "attenuator_load_w":
        always.append("no_relief")
    else:
        always.append("bypassed" if limit.state == "override" else "as_set")
    if limit.draw.value is None or limit.draw.low != limit.draw.high:
        always.append("range_of_taps")
    return tuple(always)

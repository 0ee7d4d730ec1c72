"""How a finding's number came to be, step by step, by the same equations that made it."""

from collections.abc import Callable, Iterator

from pycore.calc.check import Checked
from pycore.calc.draw_story import typed
from pycore.calc.finding import Finding
from pycore.calc.judge import Limit
from pycore.calc.load_story import load_working
from pycore.formulas import power
from pycore.ground.working import Known, Step, Working, computed, step


def voltage_working(finding: Finding) -> Working:
    """The factor of a wrong voltage row."""
    line_v, tap_at_v = finding.values["line_v"], finding.values["tap_at_v"]
    assert isinstance(line_v, float)
    assert isinstance(tap_at_v, float)
    inputs = {"line_v": typed(line_v, "v"), "tap_at_v": typed(tap_at_v, "v")}
    made = step("voltage_factor", power.voltage_factor, inputs=inputs)
    return Working((made,), ("nominal_load",))


def direct_working(finding: Finding) -> Working:
    """The watts of a low-impedance selector straight across the line."""
    line_v, direct_ohm = finding.values["line_v"], finding.values["direct_ohm"]
    assert isinstance(line_v, float)
    assert isinstance(direct_ohm, float)
    inputs = {"line_v": typed(line_v, "v"), "direct_ohm": typed(direct_ohm, "ohm")}
    return Working(
        (step("draw_direct", power.draw_of_resistance_w, inputs=inputs),), ("nominal_load",)
    )


def fits_working(checked: Checked, finding: Finding) -> Working:
    """The first limit with as many more as fit to the rating, and with one more than that."""
    limit = next((one for one in checked.limits if _is_first(one, finding)), None)
    steps = () if limit is None else tuple(_fit_steps(limit, finding))
    return Working(steps, ("counted_by_trial", "at_the_end"))


def _fit_steps(limit: Limit, finding: Finding) -> Iterator[Step]:
    """The load at its most: a count is only as good as the worst case."""
    each_w, count = finding.values["each_most_w"], finding.values["to_rating"]
    if limit.draw.high is None or each_w is None or count is None:
        return
    load = Known(limit.draw.high, "w", "computed")
    for code, more in (("with_all", int(count)), ("with_one_more", int(count) + 1)):
        inputs = {
            "load_w": load,
            "count": Known(float(more), "count", "computed"),
            "each_w": Known(float(each_w), "w", "computed"),
        }
        made = step(code, power.load_with_more_w, inputs=inputs)
        yield made
        if limit.what == "output_impedance_ohm" and limit.line_v is not None and made.result:
            ohms = {"line_v": typed(limit.line_v, "v"), "load_w": computed(made)}
            yield step("impedance", power.impedance_of_watts_ohm, inputs=ohms)


def _is_first(limit: Limit, finding: Finding) -> bool:
    place = next(iter(limit.where.values()))
    here = (limit.what, place, limit.state, limit.values.get("which"))
    names = ("first_what", "first_id", "first_state", "first_which")
    return here == tuple(finding.values[name] for name in names)


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

"""How a finding's number came to be, step by step, by the same equations that made it."""

from collections.abc import Callable

from pycore.calc.check import Checked
from pycore.calc.draw_story import typed
from pycore.calc.finding import Finding
from pycore.calc.fits_story import fits_working
from pycore.calc.load_story import load_working
from pycore.calc.own_loads import own_loads
from pycore.formulas import power
from pycore.ground.working import Working, step


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


def metered_working(finding: Finding) -> Working:
    """The least ohms an output can bear, where nothing printed says so; a reading is no outcome."""
    most_w, line_v = finding.values.get("least_of_w"), finding.values.get("line_v")
    if not isinstance(most_w, float) or not isinstance(line_v, float):
        return Working((), ())
    inputs = {"line_v": typed(line_v, "v"), "load_w": typed(most_w, "w")}
    return Working((step("meter_least", power.impedance_of_watts_ohm, inputs=inputs),), ())


BY_WHAT: dict[str, Callable[[Finding], Working]] = {
    "wrong_voltage": voltage_working,
    "direct_load_w": direct_working,
    "meter_reading": metered_working,
}


def working_of(checked: Checked, finding: Finding) -> Working:
    """How a finding's number came to be; no steps where it is a mark, not a number."""
    for limit in (*checked.limits, *own_loads(checked.loads)):
        here = (limit.what, limit.where, limit.state, limit.values.get("which"))
        if here == (finding.what, finding.where, finding.state, finding.values.get("which")):
            return load_working(checked, limit)
    if finding.what in BY_WHAT:
        return BY_WHAT[finding.what](finding)
    if finding.what == "what_fits":
        return fits_working(checked, finding)
    return Working((), ())

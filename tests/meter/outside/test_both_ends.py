"""A short with ohms of its own, read from both ends by ngspice: metres and ohms come back."""

import pytest

from pycore.calc.distances import distance_of
from tests.meter.lines import line_a
from tests.meter.outside.spice import Injected, MeterAt, read_all
from tests.meter.outside.test_injected import LINE_A
from tests.meter.taken import taken, told_by


@pytest.mark.parametrize(
    ("at", "place", "own_ohm"), [(6, 0.4, 0.5), (3, 0.8, 0.0), (9, 0.1, 1.2), (1, 0.5, 0.3)]
)
def test_both_ends_tell_where_and_what_the_short_is(at: int, place: float, own_ohm: float) -> None:
    fault = Injected("short", at, own_ohm, place)
    near, far = read_all(LINE_A, fault, [MeterAt(), MeterAt(10, "back")], hz=1000.0)
    readings = [
        taken("zone", near, tolerance_pct=1.0), taken("s10", far, looking="back", tolerance_pct=1.0)
    ]  # fmt: skip
    told = told_by(line_a(), readings, load_pct=0.0)
    node = told.site.circuits.wired.node_of[f"s{at}"]
    [short] = [one for one in told.suspects if one.key == ("short", node, "", -1)]
    found = distance_of(told.site, short, evidence=told.proof.evidence)
    assert found is not None
    assert found.ends == 2
    start_m = 0.0 if at == 1 else 30.0 + 10.0 * (at - 2)
    true_m = start_m + place * LINE_A.metres[at - 1]
    assert found.metres == pytest.approx(true_m, abs=0.1)
    assert found.low_m < true_m < found.high_m
    assert found.own_ohm == pytest.approx(own_ohm, abs=0.01)
    one_end = told_by(line_a(), readings[:1], load_pct=0.0)
    if own_ohm:  # from one end its ohms are taken for cable
        [same] = [one for one in one_end.suspects if one.key == short.key]
        seen = distance_of(one_end.site, same, evidence=one_end.proof.evidence)
        assert seen is not None
        assert seen.metres > found.metres

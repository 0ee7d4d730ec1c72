"""Every fault in the list is solved on the real tree: the quick answer is the full one.

The full answer builds the fault into the circuit and hangs it from the meter anew; the quick
one updates a single solution. Both are asked of every fault, at several places, at 1 kHz and
at direct current, on a line with branches and controls.
"""

import math

import pytest

from pycore.calc.diagnosis import faults_of
from pycore.calc.effects import Change
from pycore.calc.faults import Fault
from pycore.calc.predict import expect_all, look
from pycore.calc.priors import FAMILY_WEIGHTS
from pycore.calc.probe import Stand
from pycore.calc.second import Changed
from pycore.calc.site import Given, Site, site_of
from pycore.calc.wiring import DIRECT_HZ, TEST_HZ, Condition, Controls
from pycore.jobs import Job
from tests.meter.lines import AWG_16, job_of, speaker

TAPS = [{"w": 10.0, "at_v": 70.7}, {"w": 5.0, "at_v": 70.7}, {"w": 10.0, "at_v": 100.0}]
KINDS = {
    "loudspeakers": [
        {"id": "box", "name": "Box", "taps": [*TAPS, {"ohm": 8.0, "at_v": 70.7}]},
    ]
}


def branched() -> Job:
    """Six loudspeakers on two branches, one behind a control; a second zone beside."""
    more = {"cable": "pair", "length_m": 20.0}
    kind = {"fitted": {"kind": "box"}}
    control = {
        "is": "attenuator", "label": "C", "set_db": -6.0, "off": False,
        "form": "autotransformer", "insertion_db": 0.5,
    }  # fmt: skip
    points = [
        speaker(1, after=None, tap_w=5.0, at_v=70.7, **more, **kind),
        speaker(2, after="s1", tap_w=5.0, at_v=70.7, **more, **kind),
        {"id": "c", "after": "s2", "fitted": control, **more},
        speaker(3, after="c", tap_w=10.0, at_v=70.7, **more, **kind),
        speaker(4, after="s3", tap_w=5.0, at_v=70.7, **more),
        speaker(5, after="s1", tap_w=5.0, at_v=70.7, joint_ohm=0.2, **more),
        speaker(6, after="s5", tap_w=5.0, at_v=70.7, **more),
    ]
    beside = {
        "id": "other", "name": "Other", "output": "out",
        "line": [{**speaker(9, after=None, tap_w=30.0, at_v=70.7, **more), "id": "o1"}],
    }  # fmt: skip
    return job_of(points, line_v=70.7, cable=AWG_16, kinds=KINDS, zones=[beside])


def stands(site: Site) -> list[Stand]:
    """Meters at the amplifier's end and at boxes, both ways."""
    node_of = site.circuits.wired.node_of
    made = [Stand(0, "out", frozenset(), bare=False)]
    made += [Stand(node_of[one], "out", frozenset(), bare=False) for one in ("zone", "s2", "c")]
    made += [Stand(node_of[one], "back", frozenset(), bare=False) for one in ("s4", "s6", "s3")]
    made.append(Stand(node_of["s1"], "out", frozenset({node_of["s5"]}), bare=True))
    return made


def fully(site: Site, fault: Fault, stand: Stand, condition: Condition) -> float:
    """The reading with the fault built into the circuit."""
    change = fault.change
    if change.how == "copper":
        condition = condition._replace(cable_factor=change.one)
        change = Change("nothing", 0)
    if change.how == "nothing":
        return 1 / abs(site.circuits.probe(condition, stand).seen_s)
    seen_s = abs(Changed(site.circuits, change).probe(condition, stand).seen_s)
    return 1 / seen_s if seen_s > 1e-8 else 1e8


@pytest.mark.parametrize("controls", ["open", "set", "override"])
@pytest.mark.parametrize("hz", [TEST_HZ, DIRECT_HZ])
def test_the_quick_answer_is_the_full_one_for_every_fault(controls: Controls, hz: float) -> None:
    site = site_of(branched(), {"zone": "zone"}, given=Given(10.0, None))
    condition = Condition(hz, controls, 20.0)
    faults = [one for one in faults_of(site) if one.change.how not in ("swap", "series")]
    for stand in stands(site):
        scope = look(site.circuits, condition, stand=stand, each_fraction=0.1, rough=False)
        for fault, quick in zip(faults, expect_all(scope, faults), strict=True):
            full = fully(site, fault, stand, condition)
            ohm = math.exp(quick.log_ohm)
            if min(full, ohm) > 1e6:
                continue  # open either way: what is left is the stub of a broken pair
            assert ohm == pytest.approx(full, rel=1e-5), (fault, stand)


@pytest.mark.parametrize("place", ["zone", "s1", "s5"])
def test_a_string_of_loudspeakers_is_seen_as_built_so(place: str) -> None:
    site = site_of(branched(), {"zone": "zone"}, given=Given(10.0, None))
    condition = Condition(TEST_HZ, "override", 20.0)
    fault = Fault("series", 0, Change("series", site.circuits.wired.node_of[place]), 1.0)
    for stand in stands(site)[:2]:  # the stubs that are left hanging differ by their picofarads
        scope = look(site.circuits, condition, stand=stand, each_fraction=0.1, rough=False)
        quick = math.exp(expect_all(scope, [fault])[0].log_ohm)
        assert quick == pytest.approx(fully(site, fault, stand, condition), rel=2e-3)


def test_six_loudspeakers_wired_in_series_read_six_thousand_ohms() -> None:
    # 6 × 5 W at 70.7 V: 999.7 Ω each, 5,998 Ω one behind the other instead of 167 Ω (arithmetic)
    points = [
        speaker(n, after=f"s{n - 1}" if n > 1 else None, tap_w=5.0, at_v=70.7, length_m=0.0)
        for n in range(1, 7)
    ]
    site = site_of(
        job_of(points, line_v=70.7, cable=AWG_16), {"zone": "zone"}, given=Given(10.0, None)
    )
    stand = Stand(1, "out", frozenset(), bare=False)
    scope = look(
        site.circuits, Condition(TEST_HZ, "open", 20.0), stand=stand, each_fraction=0.1, rough=False
    )
    fault = Fault("series", 1, Change("series", 1), 1.0)
    string, healthy = (math.exp(one.log_ohm) for one in expect_all(scope, [fault, HEALTHY]))
    assert string == pytest.approx(6 * 999.698, rel=1e-5)
    assert healthy == pytest.approx(166.6, abs=0.05)


HEALTHY = Fault("healthy", 0, Change("nothing", 0), 1.0)


def test_a_line_landed_as_another_zone_reads_as_that_zone() -> None:
    site = site_of(branched(), {"zone": "zone"}, given=Given(10.0, None))
    condition = Condition(TEST_HZ, "open", 20.0)
    swapped = next(one for one in faults_of(site) if one.family == "wrong_zone")
    stand = stands(site)[1]
    scope = look(site.circuits, condition, stand=stand, each_fraction=0.1, rough=False)
    other = Stand(site.circuits.wired.node_of["other"], "out", frozenset(), bare=False)
    expected = 1 / abs(site.circuits.probe(condition, other).seen_s)
    assert math.exp(expect_all(scope, [swapped])[0].log_ohm) == pytest.approx(expected, rel=1e-9)
    assert dict(swapped.detail) == {"other": "other"}


def test_every_family_that_may_occur_is_in_the_list() -> None:
    site = site_of(branched(), {"zone": "zone"}, given=Given(10.0, None))
    assert {one.family for one in faults_of(site)} == {"healthy", *FAMILY_WEIGHTS}


def test_a_loudspeaker_is_tried_on_every_other_tap_of_its_kind_and_on_low_impedance() -> None:
    site = site_of(branched(), {"zone": "zone"}, given=Given(10.0, None))
    node = site.circuits.wired.node_of["s1"]
    own = [one for one in faults_of(site) if one.node == node]
    taps = {tuple(value for _, value in one.detail) for one in own if one.family == "tap"}
    # 10 W at 100 V draws 5 W at 70.7 V, as its present tap does: no other reading
    assert taps == {(10.0, 70.7)}
    assert [dict(one.detail) for one in own if one.family == "direct"] == [{"direct_ohm": 8.0}]


def test_an_unknown_tap_is_not_guessed_but_widens_the_reading() -> None:
    points = [
        speaker(1, after=None, tap_w=5.0, at_v=70.7, length_m=10.0, cable="pair"),
        speaker(
            2, after="s1", tap_w=5.0, at_v=70.7, length_m=10.0, cable="pair",
            fitted={"tap_w": None, "tap_at_v": None, "kind": "box"},
        ),
    ]  # fmt: skip
    job = job_of(points, line_v=70.7, cable=AWG_16, kinds=KINDS)
    site = site_of(job, {"zone": "zone"}, given=Given(0.0, None))
    assert "taps_of_kind" in site.circuits.wired.assumed
    scope = look(
        site.circuits,
        Condition(TEST_HZ, "open", 20.0),
        stand=Stand(1, "out", frozenset(), bare=False),
        each_fraction=0.0,
        rough=False,
    )
    [healthy] = expect_all(scope, [HEALTHY])
    # 5 W and a tap of 5 or 10 W: 7.5 ± 2.5 W of 12.5 W, a fifth
    assert math.sqrt(healthy.variance) == pytest.approx(2.5 / 12.5, rel=0.02)
    assert not [one for one in faults_of(site) if one.family == "tap" and one.node == 3]

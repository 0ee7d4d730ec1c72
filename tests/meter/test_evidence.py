"""What counts as evidence, and for how much: baselines, other zones, ears, volts, amperes,
legs to earth; and how leads and heat are taken off."""

import math

import pytest

from pycore.calc.effects import Change
from pycore.calc.probe import Stand
from pycore.calc.site import Given, site_of
from pycore.calc.wiring import TEST_HZ, Condition
from pycore.jobs import Job
from tests.meter.at import AT_20, load_change, reads, scope_at, site_at
from tests.meter.lines import AWG_16, MM2_1_5, chain, job_of, line_a, line_b, speaker
from tests.meter.taken import first_of, heard, share_of, taken, told_by
from tests.meter.test_faults import branched

HEALTHY_B = 102.697


def dead_on_b(place: str) -> float:
    """What line B reads with one loudspeaker dead."""
    site = site_at(line_b())
    scope = scope_at(site, "zone", looking="out", condition=AT_20)
    return reads(scope, load_change(site, place, to_w=0.0, at_v=100.0))


def test_one_dead_of_forty_shows_against_a_baseline_and_not_without() -> None:
    # against ±10 % one of N shows only below 11, against ±2 % below 51 (arithmetic)
    read = dead_on_b("s20")
    blind = told_by(line_b(), [taken("zone", read)])
    assert first_of(blind)[0] == "healthy"
    before = taken("zone", HEALTHY_B, at="2025-01-01", baseline=True, id="before")
    sharp = told_by(line_b(), [taken("zone", read)], baselines=[before])
    assert share_of(sharp, "healthy") < share_of(blind, "healthy") / 2
    assert share_of(sharp, "dead") > 2 * share_of(blind, "dead")


def test_what_a_baseline_shares_with_a_reading_falls_out() -> None:
    # all loudspeakers 15 % high, then and now: nothing has changed
    before = taken("zone", HEALTHY_B * 1.15, at="2025-01-01", baseline=True, id="before")
    told = told_by(line_b(), [taken("zone", HEALTHY_B * 1.15)], baselines=[before])
    assert first_of(told)[0] == "healthy"
    assert share_of(told, "dead") < 0.05


def test_the_newest_baseline_of_the_same_setting_counts() -> None:
    old = taken("zone", 200.0, at="2024-01-01", baseline=True, id="old")
    new = taken("zone", HEALTHY_B, at="2025-01-01", baseline=True, id="new")
    elsewhere = taken("s5", 300.0, at="2026-01-01", baseline=True, id="elsewhere")
    told = told_by(line_b(), [taken("zone", HEALTHY_B)], baselines=[new, old, elsewhere])
    assert first_of(told)[0] == "healthy"


def three_zones() -> Job:
    """Three like zones on one output."""
    zones = [
        {
            "id": f"zone{number}", "name": f"Zone {number}", "output": "out",
            "line": [
                {**one, "id": f"z{number}{one['id']}",
                 "after": f"z{number}{one['after']}" if one["after"] else None}
                for one in chain(10, tap_w=5.0, at_v=70.7, first_m=30.0, step_m=10.0)
            ],
        }
        for number in (2, 3)
    ]  # fmt: skip
    points = chain(10, tap_w=5.0, at_v=70.7, first_m=30.0, step_m=10.0)
    return job_of(points, line_v=70.7, cable=AWG_16, zones=zones)


def test_all_zones_reading_high_alike_is_taken_off_each() -> None:
    alone = told_by(three_zones(), [taken("zone", 101.5 * 1.2)])
    assert share_of(alone, "healthy") < 0.35
    others = [taken("zone2", 101.5 * 1.2), taken("zone3", 101.5 * 1.19)]
    alike = told_by(three_zones(), [taken("zone", 101.5 * 1.2), *others])
    assert alike.alike.zones == ("zone2", "zone3")
    assert math.exp(alike.alike.bias) == pytest.approx(1.15, abs=0.05)
    assert share_of(alike, "healthy") > 0.6


def test_one_other_zone_or_one_with_a_fault_of_its_own_says_nothing_of_all() -> None:
    told = told_by(three_zones(), [taken("zone", 101.5), taken("zone2", 101.5 * 1.2)])
    assert told.alike.zones == ()
    broken = [taken("zone2", 500.0), taken("zone3", 101.5 * 1.2)]
    assert told_by(three_zones(), [taken("zone", 101.5), *broken]).alike.zones == ()


def test_leads_are_taken_off_before_a_short_is_placed() -> None:
    told = told_by(line_a(), [taken("zone", 1.9 + 0.5)], leads_ohm=0.5)
    assert first_of(told)[0] == "short"
    assert told.meants[0].value == pytest.approx(1.9)
    near = share_of(told, "short", "s5") + share_of(told, "short", "s6")
    farther = told_by(line_a(), [taken("zone", 1.9 + 0.5)])
    assert near > share_of(farther, "short", "s5") + share_of(farther, "short", "s6")


def test_a_warm_line_is_compared_with_warm_copper() -> None:
    # the same short at the last loudspeaker, 3.24 Ω at 20 °C, reads 12 % more at 50 °C
    site = site_at(line_a())
    short = Change("short", site.circuits.wired.node_of["s10"], 1.0, 0.0)
    cold, warm = (
        reads(
            scope_at(site, "zone", looking="out", condition=AT_20._replace(conductor_c=at)), short
        )
        for at in (20.0, 50.0)
    )
    assert warm == pytest.approx(cold * (234.5 + 50) / (234.5 + 20), rel=5e-3)
    told = [
        told_by(line_a(), [taken("zone", read, tolerance_pct=1.0, temperature_c=at)])
        for read, at in ((cold, 20.0), (warm, 50.0))
    ]
    at_last = [share_of(one, "short", "s10") for one in told]
    assert at_last[0] == pytest.approx(at_last[1], abs=0.05)


def test_ears_find_a_break_without_a_meter() -> None:
    ears = [heard(f"s{n}", "well") for n in range(1, 6)]
    ears += [heard(f"s{n}", "silent") for n in range(6, 11)]
    told = told_by(line_a(), ears)
    assert first_of(told) == ("cut", "s6")
    assert told.settled


def test_one_silent_among_many_that_play_is_dead() -> None:
    ears = [heard(f"s{n}", "silent" if n == 4 else "well") for n in range(1, 11)]
    told = told_by(line_a(), ears)
    assert first_of(told) == ("dead", "s4")


def test_one_loud_and_the_rest_weak_is_a_selector_on_low_impedance() -> None:
    ears = [heard(f"s{n}", "loud" if n == 3 else "weak") for n in range(1, 11)]
    assert first_of(told_by(line_a(), ears)) == ("direct", "s3")


def test_weak_beyond_a_place_is_a_bad_joint() -> None:
    ears = [heard(f"s{n}", "well" if n < 7 else "weak") for n in range(1, 11)]
    assert first_of(told_by(line_a(), ears)) == ("joint", "s7")


def test_what_was_not_heard_is_not_assumed() -> None:
    told = told_by(line_a(), [heard("s10", "silent")])
    places = {one.key[1] for one in told.suspects[:10]}
    assert len(places) > 5  # a break anywhere before it, or itself


def test_ears_and_a_meter_together_settle_what_neither_does_alone() -> None:
    site = site_at(line_a())
    scope = scope_at(site, "zone", looking="out", condition=AT_20)
    read = reads(scope, load_change(site, "s4", to_w=0.0, at_v=70.7))
    alone = told_by(line_a(), [taken("zone", read)])
    assert share_of(alone, "dead", "s4") < 0.2
    both = told_by(line_a(), [taken("zone", read), heard("s4", "silent"), heard("s5", "well")])
    assert first_of(both) == ("dead", "s4")


def test_volts_near_and_far_on_one_tone_find_a_bad_joint() -> None:
    site = site_of(line_a(), {"zone": "zone"}, given=Given(10.0, None))
    node = site.circuits.wired.node_of["s6"]
    joint = Change("joint", node, 40.0)
    from pycore.calc.second import Changed

    probe = Changed(site.circuits, joint).probe(
        Condition(TEST_HZ, "set", 20.0), Stand(0, "out", frozenset(), bare=False)
    )
    far = {
        n: abs(probe.flow.at[probe.node_at[site.circuits.wired.node_of[f"s{n}"]]]) for n in (5, 6)
    }
    readings = [
        taken("zone", 10.0, quantity="volts", controls="set"),
        taken("s5", 10.0 * far[5], quantity="volts", controls="set"),
        taken("s6", 10.0 * far[6], quantity="volts", controls="set"),
    ]
    told = told_by(line_a(), readings, complaint="weak_beyond")
    assert first_of(told) == ("joint", "s6")
    assert share_of(told, "joint", "s6") > 0.8


def test_far_volts_without_near_ones_are_not_weighed_and_that_is_said() -> None:
    told = told_by(line_a(), [taken("s6", 9.0, quantity="volts", id="far")])
    assert told.collected.notes["far"] == ("no_near_volts",)
    assert not told.proof.evidence


def test_amperes_need_volts_beside_them_and_then_are_ohms() -> None:
    amps = taken("zone", 0.05, quantity="amps", controls="set", id="amps")
    alone = told_by(line_a(), [amps])
    assert alone.collected.notes["amps"] == ("amps_alone",)
    volts = taken("zone", 10.0, quantity="volts", controls="set", id="volts")
    both = told_by(line_a(), [amps, volts])
    assert [one.meant.value for one in both.proof.evidence] == [pytest.approx(200.0)]
    assert first_of(both) == ("cut", "s6")


def test_a_leg_to_earth_is_found_by_halves() -> None:
    whole = taken("zone", 2000.0, quantity="earth_ohm")
    told = told_by(line_a(), [whole])
    assert share_of(told, "earthed") + share_of(told, "wet") > 0.9
    half = taken("s6", 50e6, quantity="earth_ohm")
    told = told_by(line_a(), [whole, half])
    beyond = sum(share_of(told, "earthed", f"s{n}") for n in range(6, 11))
    before = sum(share_of(told, "earthed", f"s{n}") for n in range(1, 6))
    assert before > 5 * beyond


def test_an_ohmmeter_behind_a_control_is_not_believed() -> None:
    told = told_by(branched(), [taken("zone", 5.0, quantity="dc_ohm", id="direct")])
    assert told.collected.notes["direct"] == ("controls_hide",)
    bypassed = taken("zone", 5.0, quantity="dc_ohm", controls="override", id="direct")
    assert told_by(branched(), [bypassed]).proof.evidence


def test_a_control_left_off_is_seen_with_controls_open_and_gone_when_bypassed() -> None:
    site = site_of(branched(), {"zone": "zone"}, given=Given(10.0, None))
    stand = Stand(site.circuits.wired.node_of["zone"], "out", frozenset(), bare=False)
    control = site.circuits.wired.node_of["c"]
    from pycore.calc.effects import seen_with

    probe = site.circuits.probe(Condition(TEST_HZ, "open", 20.0), stand)
    off = 1 / abs(seen_with(probe, Change("control", control, 0.0, 0.0), direct=False))
    told = told_by(branched(), [taken("zone", off)], complaint="zone_silent")
    assert share_of(told, "control_off") > 0.2
    whole = 1 / abs(site.circuits.probe(Condition(TEST_HZ, "override", 20.0), stand).seen_s)
    again = [taken("zone", off), taken("zone", whole, controls="override")]
    told = told_by(branched(), again, complaint="zone_silent")
    assert share_of(told, "cut") < 0.2  # a break would show in either state


def test_a_complaint_raises_what_it_stands_for_and_rules_nothing_out() -> None:
    plain = told_by(line_a(), [])
    named = told_by(line_a(), [], complaint="hum_with_rain")
    assert share_of(named, "earthed") > 3 * share_of(plain, "earthed")
    assert share_of(named, "cut") > 0


def test_a_thinner_cable_than_drawn_shows_on_a_heavy_line() -> None:
    points = [
        speaker(n, after=f"s{n - 1}" if n > 1 else None, tap_w=30.0, at_v=100.0,
                length_m=60.0, cable="pair")
        for n in range(1, 9)
    ]  # fmt: skip
    job = job_of(points, line_v=100.0, cable=MM2_1_5)
    site = site_of(job, {"zone": "zone"}, given=Given(10.0, None))
    stand = Stand(1, "out", frozenset(), bare=False)
    thin = Condition(TEST_HZ, "open", 20.0, cable_factor=1.54)
    read = 1 / abs(site.circuits.probe(thin, stand).seen_s)
    before = 1 / abs(site.circuits.probe(thin._replace(cable_factor=1.0), stand).seen_s)
    told = told_by(job, [taken("zone", read, tolerance_pct=1.0)], load_pct=1.0)
    assert read > 1.05 * before
    assert share_of(told, "cable") > share_of(told, "healthy")

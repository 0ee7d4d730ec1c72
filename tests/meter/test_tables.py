"""What meters read on two lines that were worked out by hand and by other programs before.

Line A: 10 × 5 W at 70.7 V, 16 AWG stranded at 20 °C, 30 m and 9 × 10 m. Line B: 40 × 2.5 W at
100 V, 1.5 mm² class 5, 25 m and 39 × 6 m. The numbers are arithmetic on ASTM B258 gauge 16
with ASTM B496 stranding and IEC 60028 copper (A), and on IEC 60228:2004 table 3 (B, second hand):
nodal analysis of the same lines outside this project, printed to the digits given here.
"""

import pytest

from pycore.calc.effects import Change
from pycore.calc.predict import Scope
from pycore.calc.site import Site
from pycore.calc.wiring import Condition
from pycore.formulas import meter
from tests.meter.at import (
    AT_20,
    DIRECT_AT_20,
    load_change,
    reads,
    scope_at,
    site_at,
    strap_change,
)
from tests.meter.lines import line_a, line_b

HEALTHY_A = 101.539
BREAKS_A = [1000.43, 500.71, 334.18, 250.96, 201.07, 167.83, 144.12, 126.35, 112.56]


def amplifier_end(site: Site, condition: Condition = AT_20) -> Scope:
    """A meter at the amplifier's end, the home run lifted."""
    return scope_at(site, "zone", looking="out", condition=condition)


def node(site: Site, number: int) -> int:
    """The node of a loudspeaker."""
    return site.circuits.wired.node_of[f"s{number}"]


def test_both_lines_read_what_they_should_with_their_cable() -> None:
    # of line B the pair's inductance and capacitance were not printed: they move it by 0.012 Ω
    assert reads(amplifier_end(site_at(line_a()))) == pytest.approx(HEALTHY_A, abs=5e-4)
    assert reads(amplifier_end(site_at(line_b()))) == pytest.approx(102.693, abs=0.012)


@pytest.mark.parametrize(("after", "ohm"), list(enumerate(BREAKS_A, start=1)))
def test_line_a_broken_after_each_loudspeaker(after: int, ohm: float) -> None:
    site = site_at(line_a())
    broken = Change("cut", node(site, after + 1), 0.0)
    assert reads(amplifier_end(site), broken) == pytest.approx(ohm, abs=6e-3)


def test_line_a_broken_before_the_first_reads_its_own_capacitance() -> None:
    site = site_at(line_a())
    broken = Change("cut", node(site, 1), 1.0)
    # 30 m at 63 pF/m and 1 kHz: 84 kΩ; 25 m: 101.05 kΩ (arithmetic)
    assert reads(amplifier_end(site), broken) == pytest.approx(84_209, rel=1e-3)
    back_m = meter.open_pair_m(hz=1000.0, capacitance_pf_per_m=63.0, read_ohm=101_051.0)
    assert back_m == pytest.approx(25.0, rel=1e-4)


def test_line_b_broken_near_its_end_moves_by_two_and_a_half_per_cent() -> None:
    site = site_at(line_b())
    for after, ohm in ((38, 107.85), (39, 105.20)):
        broken = Change("cut", node(site, after + 1), 0.0)
        assert reads(amplifier_end(site), broken) == pytest.approx(ohm, abs=0.012)


def test_a_single_break_is_confirmed_from_the_far_end() -> None:
    site = site_at(line_a())
    broken = Change("cut", node(site, 6), 0.5)
    near = reads(amplifier_end(site), broken)
    far = reads(scope_at(site, "s10", looking="back", condition=AT_20), broken)
    assert near == pytest.approx(201.1, abs=0.06)
    assert far == pytest.approx(200.3, abs=0.06)
    assert 70.7**2 / near + 70.7**2 / far == pytest.approx(49.8, abs=0.06)


@pytest.mark.parametrize(
    ("at", "ohm", "loop_ohm"),
    [(1, 0.815, 0.806), (3, 1.358, 1.344), (5, 1.899, 1.881), (10, 3.239, 3.225)],
)
def test_line_a_shorted_at_a_loudspeaker(at: int, ohm: float, loop_ohm: float) -> None:
    site = site_at(line_a())
    short = Change("short", node(site, at), 1.0, 0.0)
    assert reads(amplifier_end(site), short) == pytest.approx(ohm, abs=6e-4)
    loop = meter.short_distance_m(read_ohm=loop_ohm, loop_ohm_per_km=26.875)
    assert loop == pytest.approx(20 + 10 * at, abs=0.05)


@pytest.mark.parametrize(("at", "reads_m"), [(10, 107.0), (5, 68.5)])
def test_windings_on_the_way_make_a_short_look_nearer_at_direct_current(
    at: int, reads_m: float
) -> None:
    site = site_at(line_a())
    short = Change("short", node(site, at), 1.0, 0.0)
    ohm = reads(amplifier_end(site, DIRECT_AT_20), short)
    looks_m = meter.short_distance_m(read_ohm=ohm, loop_ohm_per_km=26.875)
    assert looks_m == pytest.approx(reads_m, abs=0.6)


@pytest.mark.parametrize(("winding", "ohm"), [(0.05, 6.54), (0.10, 11.6)])
def test_an_ohmmeter_on_line_a_reads_windings_only(winding: float, ohm: float) -> None:
    site = site_at(line_a())
    direct = DIRECT_AT_20._replace(load_factor=0.05 / winding)
    assert reads(amplifier_end(site, direct)) == pytest.approx(ohm, abs=0.06)
    each = meter.winding_ohm(load_ohm=999.698, winding_fraction=winding)
    assert each == pytest.approx(999.698 * winding)


@pytest.mark.parametrize(
    ("to_w", "at_first", "at_last"),
    [
        (0.0, 112.83, 112.56),
        (2.5, 106.88, 106.76),
        (7.5, 96.71, 96.82),
        (10.0, 92.32, 92.54),
        (20.0, 78.16, 78.71),
        (30.0, 67.79, 68.60),
    ],
)
def test_line_a_with_one_loudspeaker_on_another_tap(
    to_w: float, at_first: float, at_last: float
) -> None:
    site = site_at(line_a())
    for place, ohm in (("s1", at_first), ("s10", at_last)):
        change = load_change(site, place, to_w=to_w, at_v=70.7)
        assert reads(amplifier_end(site), change) == pytest.approx(ohm, abs=6e-3)


@pytest.mark.parametrize(
    ("ohm", "at_first", "at_last", "slack"), [(8.0, 8.27, 10.50, 6e-3), (16.0, 14.8, 16.9, 0.06)]
)
def test_line_a_with_a_selector_on_low_impedance(
    ohm: float, at_first: float, at_last: float, slack: float
) -> None:
    site = site_at(line_a())
    for place, read in (("s1", at_first), ("s10", at_last)):
        change = strap_change(site, place, ohm=ohm)
        assert reads(amplifier_end(site), change) == pytest.approx(read, abs=slack)


def test_one_loudspeaker_made_for_25_volts_asks_for_eight_times_its_watts() -> None:
    site = site_at(line_a())
    change = load_change(site, "s1", to_w=5.0, at_v=25.0)
    # 85 W in all, 58.8 Ω without cable
    more_w = change.one * 70.7**2
    assert 50 + more_w == pytest.approx(84.988, abs=1e-3)
    assert 70.7**2 / (50 + more_w) == pytest.approx(58.814, abs=1e-3)
    # with its 0.8 Ω of home run
    assert reads(amplifier_end(site), change) == pytest.approx(58.814 + 1.2, abs=0.6)


@pytest.mark.parametrize(
    ("read", "tolerance", "accepted"),
    [
        (200.0, 0.05, {5}),
        (200.0, 0.10, {5}),
        (200.0, 0.15, {5}),
        (115.0, 0.05, {9}),
        (115.0, 0.10, {8, 9}),
        (115.0, 0.15, {8, 9, 10}),
    ],
)
def test_a_tolerance_decides_which_breaks_a_reading_accepts(
    read: float, tolerance: float, accepted: set[int]
) -> None:
    inside = set()
    for after, ohm in enumerate([*BREAKS_A, HEALTHY_A], start=1):
        low = meter.band_low_ohm(expected_ohm=ohm, tolerance_fraction=tolerance)
        high = meter.band_high_ohm(expected_ohm=ohm, tolerance_fraction=tolerance)
        if low <= read <= high:
            inside.add(after)
    assert inside == accepted


def test_a_short_read_from_both_ends() -> None:
    # 1.45 and 2.05 Ω on 120 m of 26.875 Ω/km: 48.837 m and 0.1375 Ω (arithmetic)
    read = {"near_ohm": 1.45, "far_ohm": 2.05, "route_m": 120.0, "loop_ohm_per_km": 26.875}
    assert meter.two_end_short_m(**read) == pytest.approx(48.837, abs=5e-4)
    assert meter.two_end_fault_ohm(**read) == pytest.approx(0.1375, abs=5e-5)


def test_copper_read_warm_reads_more() -> None:
    # line A's whole loop, 3.225 Ω at 20 °C, by IEC 60228 Annex B (254.5 / 284.5): 3.60 at 50 °C
    site = site_at(line_a())
    short = Change("short", node(site, 10), 1.0, 0.0)
    warm = reads(
        amplifier_end(site, DIRECT_AT_20._replace(conductor_c=50.0, load_factor=1e-9)), short
    )
    assert warm == pytest.approx(3.225 * 284.5 / 254.5, abs=6e-3)

"""Lines short enough for a formula, against that formula (arithmetic unless it says more)."""

import cmath
import math
from typing import Any

import pytest

from pycore.calc.line import line_findings
from pycore.calc.network import solve
from pycore.calc.solve import point_rows
from pycore.formulas import level
from pycore.jobs import Job
from tests.samples.lines import make_chain
from tests.samples.solved import solve_job

# no inductance and no capacitance: closed forms for resistances alone
BARE = {"inductance_uh_per_m": 0.0, "capacitance_pf_per_m": 0.0}


def value_of(job: Job, what: str) -> float:
    """The value of the one finding of a kind (in the override state where there are two)."""
    found = [one for one in line_findings(job) if one.what == what and one.state == "override"]
    assert len(found) == 1
    assert found[0].value is not None
    return found[0].value


def lumped(length_m: float, load_w: float, *, line_v: float, **cable: Any) -> Job:
    """One load at the end of a line."""
    return make_chain([(length_m, load_w)], line_v=line_v, cable={**BARE, **cable})


@pytest.mark.parametrize(
    ("loss_db", "volts_ratio", "volts", "watts", "of_load", "of_all"),
    [
        (0.1, 0.988553, 0.011447, 0.022763, 0.011579, 0.011447),
        (0.5, 0.944061, 0.055939, 0.108749, 0.059254, 0.055939),
        (1.0, 0.891251, 0.108749, 0.205672, 0.122018, 0.108749),
        (3.0, 0.707946, 0.292054, 0.498813, 0.412538, 0.292054),
    ],
)
def test_one_loss_has_many_names(
    loss_db: float, volts_ratio: float, volts: float, watts: float, of_load: float, of_all: float
) -> None:
    assert math.isclose(level.loss_db(from_v=1.0, at_v=volts_ratio), loss_db, abs_tol=1e-5)
    assert math.isclose(level.volts_lost_fraction(loss_db=loss_db), volts, abs_tol=1e-6)
    assert math.isclose(level.watts_lost_fraction(loss_db=loss_db), watts, abs_tol=1e-6)
    assert math.isclose(level.loop_of_load_fraction(loss_db=loss_db), of_load, abs_tol=1e-6)
    assert math.isclose(level.loop_of_all_fraction(loss_db=loss_db), of_all, abs_tol=1e-6)


def test_ten_per_cent_means_three_things() -> None:
    assert math.isclose(level.loss_db(from_v=1.0, at_v=0.9), 0.915150, abs_tol=1e-6)
    assert math.isclose(level.loss_db(from_v=1.0, at_v=math.sqrt(0.9)), 0.457575, abs_tol=1e-6)
    assert math.isclose(level.loss_db(from_v=1.1, at_v=1.0), 0.827854, abs_tol=1e-6)
    # wire 5 % of the line's impedance: a trade-press rule, second hand
    assert math.isclose(level.loss_db(from_v=1.05, at_v=1.0), 0.423786, abs_tol=1e-6)


def test_the_explanatory_formula_for_half_a_decibel() -> None:
    # NFPA 72-2025, explanatory formula for audio circuits (second hand): 59.25 V² / (R P) feet,
    # R in ohms per 1000 feet of pair; twice the 7.95 of NFPA 70 chapter 9, table 8 (18 AWG of 7
    # strands, uncoated, 75 °C), 70.7 V, 100 W: 186.3 ft
    constant = 1000 * level.loop_of_load_fraction(loss_db=0.5)
    assert math.isclose(constant, 59.254, abs_tol=0.001)
    feet = constant * 70.7**2 / (15.9 * 100)
    assert math.isclose(feet, 186.3, abs_tol=0.05)
    ohm_per_km = 15.9 / 0.3048
    job = lumped(feet * 0.3048, 100, line_v=70.7, loop_ohm_per_km=ohm_per_km)
    assert math.isclose(value_of(job, "zone_loss_db"), 0.5, abs_tol=1e-9)


@pytest.mark.parametrize(
    ("awg", "length_m"), [(18, 69.31), (16, 110.20), (14, 175.23), (12, 278.63), (10, 443.04)]
)
def test_half_a_decibel_of_stranded_gauge_at_100_watts(awg: int, length_m: float) -> None:
    job = lumped(length_m, 100, line_v=70.7, awg=awg, stranded=True)
    assert math.isclose(value_of(job, "zone_loss_db"), 0.5, rel_tol=2e-4)


@pytest.mark.parametrize(
    ("area_mm2", "length_m", "loss_db"),
    [
        # Arithmetic on IEC 60228:2004 table 2 (class 2, second hand)
        (0.75, 120.93, 0.5),
        (1.0, 163.68, 0.5),
        (1.5, 244.85, 0.5),
        (2.5, 399.82, 0.5),
        (4.0, 642.67, 0.5),
        (1.5, 504.21, 1.0),
        (1.5, 459.14, 0.915150),
    ],
)
def test_metric_cable_at_100_volts(area_mm2: float, length_m: float, loss_db: float) -> None:
    job = lumped(length_m, 100, line_v=100.0, area_mm2=area_mm2, **{"class": 2})
    assert math.isclose(value_of(job, "zone_loss_db"), loss_db, rel_tol=2e-4)


def test_low_voltage_reaches_nowhere() -> None:
    job = lumped(28.89, 30, line_v=25.0, awg=18, stranded=True)
    assert math.isclose(value_of(job, "zone_loss_db"), 0.5, rel_tol=3e-4)


def test_ten_equal_loudspeakers_are_a_ladder() -> None:
    # cosh θ = 1 + r g / 2, V_k / V_0 = cosh((N − k + ½) θ) / cosh((N + ½) θ)
    job = make_chain([(10.0, 5.0)] * 10, cable={**BARE, "loop_ohm_per_km": 26.875})
    rows = [row for row in point_rows(job) if row["state"] == "override"]
    theta = math.acosh(1 + 0.26875 * 5 / 70.7**2 / 2)
    for number, row in enumerate(rows, start=1):
        share = math.cosh((10 - number + 0.5) * theta) / math.cosh(10.5 * theta)
        assert isinstance(row["volts_v"], float)
        assert math.isclose(row["volts_v"], 70.7 * share, rel_tol=1e-13)
    assert math.isclose(float(rows[-1]["volts_v"] or 0), 69.66742273, abs_tol=1e-8)
    assert math.isclose(value_of(job, "zone_loss_db"), 0.12779338, abs_tol=1e-8)


def test_two_thousand_equal_loudspeakers_are_a_ladder_too() -> None:
    job = make_chain([(0.5, 1.0)] * 2000, cable={**BARE, "loop_ohm_per_km": 26.875})
    theta = math.acosh(1 + 0.0134375 * 1 / 70.7**2 / 2)
    share = math.cosh(0.5 * theta) / math.cosh(2000.5 * theta)
    assert math.isclose(
        value_of(job, "zone_loss_db"), level.loss_db(from_v=1, at_v=share), rel_tol=1e-9
    )


def test_many_small_loads_become_an_even_one() -> None:
    # an evenly spread load: V_end / V_0 = 1 / cosh √(R/Z), Z_in = √(R Z) coth √(R/Z)
    count = 4000
    job = make_chain([(0.1, 100 / count)] * count, cable={**BARE, "loop_ohm_per_km": 26.875})
    loop_ohm, load_ohm = 26.875 * 0.1 * count / 1000, 70.7**2 / 100
    root = math.sqrt(loop_ohm / load_ohm)
    assert math.isclose(
        value_of(job, "zone_loss_db"),
        level.loss_db(from_v=math.cosh(root), at_v=1),
        rel_tol=1e-3,
    )
    ours = value_of(job, "zone_impedance_ohm")
    assert math.isclose(ours, math.sqrt(loop_ohm * load_ohm) / math.tanh(root), rel_tol=1e-3)


def test_lumping_all_load_at_the_end_says_too_much_loss() -> None:
    pair = {"awg": 16, **BARE}
    spread = make_chain([(40.0, 5.0), *[(8.0, 5.0)] * 19], cable=pair, conductor_c=30.0)
    at_end = make_chain([(192.0, 100.0)], cable=pair, conductor_c=30.0)
    assert math.isclose(value_of(spread, "zone_loss_db"), 0.551, abs_tol=5e-4)
    assert math.isclose(value_of(at_end, "zone_loss_db"), 0.885, abs_tol=5e-4)


@pytest.mark.parametrize(
    ("awg", "loss_db"),
    [
        (22, 2.0825),
        (20, 1.3486),
        (18, 0.8647),
        (16, 0.5507),
        (14, 0.3492),
        (12, 0.2207),
        (10, 0.1393),
    ],
)
def test_the_sizing_example(awg: int, loss_db: float) -> None:
    # 20 × 5 W, 70.7 V, 40 m and 19 × 8 m, 30 °C, stranded, 0.63 µH/m and 63 pF/m
    cable = {"awg": awg, "stranded": True, "inductance_uh_per_m": 0.63, "capacitance_pf_per_m": 63}
    job = make_chain([(40.0, 5.0), *[(8.0, 5.0)] * 19], cable=cable, conductor_c=30.0)
    assert math.isclose(value_of(job, "zone_loss_db"), loss_db, abs_tol=1.1e-4)


def test_a_cable_alone_is_a_capacitor() -> None:
    cable = {"loop_ohm_per_km": 26.875, "inductance_uh_per_m": 0.63, "capacitance_pf_per_m": 63.0}
    job = make_chain([(25.0, 0.0)], cable=cable)
    ours = value_of(job, "zone_impedance_ohm")
    assert math.isclose(ours, 101.1e3, rel_tol=1e-3)
    solved, _ = solve_job(job, hz=1000.0, state="override")
    assert math.isclose(math.degrees(cmath.phase(1 / solved.flow.out_s[0])), -90, abs_tol=0.01)


@pytest.mark.parametrize(
    ("hz", "share"), [(20, 0.3162), (40, 0.5547), (60, 0.7071), (100, 0.8575), (200, 0.9578)]
)
def test_a_magnetizing_inductance_shunts_the_bass(hz: float, share: float) -> None:
    # a loudspeaker with X = R at 60 Hz put straight into the network
    job = make_chain([(0.0, 5.0)], cable={"awg": 16})
    solved, _ = solve_job(job, hz=float(hz), state="override")
    load_s = solved.network.load_s[1]
    shunted = solved.network.with_load(1, load_s - 1j * load_s * 60 / hz)
    assert math.isclose(abs(1 / solve(shunted).out_s[0]) * abs(load_s), share, abs_tol=1e-4)

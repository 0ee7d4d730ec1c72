"""Lines whose numbers are printed here to many digits: worked out once with 0.017241 Ω·mm²/m
for copper and the inductance and capacitance of wires 2.6 mm apart (arithmetic)."""

import math

import pytest

from pycore.calc.finding import Finding
from pycore.calc.line import line_findings
from pycore.calc.network import solve
from pycore.calc.prepared import prepare
from pycore.calc.section import skin_factor
from pycore.calc.solve import point_rows, solve_lines
from pycore.formulas import cable, level
from pycore.jobs import Job
from tests.samples.lines import make_chain
from tests.samples.solved import solve_job

SPACING = 2.6e-3 / cable.diameter_of_gauge_m(awg=16)
INDUCTANCE = cable.inductance_of_pair_uh_per_m(spacing_factor=SPACING)
CAPACITANCE = cable.capacitance_of_pair_pf_per_m(spacing_factor=SPACING, permittivity_factor=3)
FIVE = [(60.0, 30.0), (45.0, 15.0), (45.0, 15.0), (80.0, 7.5), (120.0, 30.0)]
# 16 AWG stranded at 35 °C by a resistivity of 0.017241: 28.4596 Ω/km of loop
LOOP_OHM_PER_KM = 58 * 0.017241 * 28.460265


def five(*, direct: bool = False, hz_ohm: float = LOOP_OHM_PER_KM) -> Job:
    """The five loudspeakers."""
    pair = {"inductance_uh_per_m": INDUCTANCE, "capacitance_pf_per_m": CAPACITANCE}
    bare = {"inductance_uh_per_m": 0.0, "capacitance_pf_per_m": 0.0}
    return make_chain(FIVE, cable={"loop_ohm_per_km": hz_ohm, **(bare if direct else pair)})


def test_the_gauge_at_its_heat_is_the_pair_used() -> None:
    lines = solve_lines(make_chain(FIVE, cable={"awg": 16, "stranded": True}, conductor_c=35.0))
    assert math.isclose(lines.pairs["c"].loop_ohm_per_km, 28.4596, rel_tol=3e-5)
    assert math.isclose(LOOP_OHM_PER_KM, 28.4596, abs_tol=1e-4)


def test_five_loudspeakers_at_1_khz() -> None:
    rows = [row for row in point_rows(five()) if row["state"] == "override"]
    volts = [68.488032, 67.355934, 66.482793, 65.384657, 64.071831]
    losses = [0.276095, 0.420871, 0.534203, 0.678871, 0.855046]
    watts = [28.1522, 13.6146, 13.2639, 6.4147, 24.6386]
    for row, volts_v, loss_db, watts_w in zip(rows, volts, losses, watts, strict=True):
        assert math.isclose(float(row["volts_v"] or 0), volts_v, abs_tol=1.5e-6)
        assert math.isclose(float(row["loss_db"] or 0), loss_db, abs_tol=1e-6)
        assert math.isclose(float(row["watts_w"] or 0), watts_w, abs_tol=1e-4)
    seen_ohm = 1 / solve_job(five(), hz=1000.0, state="override")[0].flow.out_s[0]
    assert math.isclose(seen_ohm.real, 54.579163, abs_tol=2e-6)
    assert math.isclose(seen_ohm.imag, 0.090197, abs_tol=1e-6)


def test_five_loudspeakers_by_resistance_alone() -> None:
    rows = [row for row in point_rows(five(direct=True)) if row["state"] == "override"]
    volts = [68.4881271, 67.3556512, 66.4820373, 65.3831763, 64.0699266]
    for row, volts_v in zip(rows, volts, strict=True):
        assert math.isclose(float(row["volts_v"] or 0), volts_v, abs_tol=2e-6)


def test_five_loudspeakers_at_10_khz_without_skin_effect() -> None:
    # told without skin effect: the core is given copper that has the told ohms at 10 kHz
    pair = solve_lines(five()).pairs["c"]
    factor = pair.series_ohm_per_m(10_000.0).real * 1000 / pair.loop_ohm_per_km
    treble = five(hz_ohm=_loop_for_treble(LOOP_OHM_PER_KM))
    solved, _ = solve_job(treble, hz=10_000.0, state="override")
    assert 1.01 < factor < 1.02
    volts = [68.477705, 67.382795, 66.556433, 65.530228, 64.259465]
    for node, volts_v in enumerate(volts, start=1):
        assert math.isclose(abs(solved.flow.at[node]) * 70.7, volts_v, abs_tol=2e-6)
    seen_ohm = 1 / solved.flow.out_s[0]
    assert math.isclose(seen_ohm.real, 54.418476, abs_tol=2e-6)
    assert math.isclose(seen_ohm.imag, 0.919855, abs_tol=1e-6)


def _loop_for_treble(wanted_ohm_per_km: float) -> float:
    """The direct resistance whose 10 kHz resistance is the wanted one."""
    loop = wanted_ohm_per_km
    for _ in range(60):
        loop = wanted_ohm_per_km / skin_factor(hz=10_000.0, ohm_per_m=loop / 2000)
    return loop


PAIR_A = {"loop_ohm_per_km": 26.875, "inductance_uh_per_m": 0.63, "capacitance_pf_per_m": 63.0}


def line_a(watts: list[float] | None = None) -> Job:
    """Ten loudspeakers of 5 W: 16 AWG stranded, 30 m and 9 × 10 m, 20 °C."""
    runs = [(30.0 if not number else 10.0, 5.0) for number in range(10)]
    if watts is not None:
        runs = [(length_m, w) for (length_m, _), w in zip(runs, watts, strict=True)]
    return make_chain(runs, cable=PAIR_A)


def finding(job: Job, what: str) -> Finding:
    """The finding of a kind in the override state."""
    return next(one for one in line_findings(job) if (one.what, one.state) == (what, "override"))


def test_what_a_healthy_line_reads_and_loses() -> None:
    assert math.isclose(finding(line_a(), "zone_impedance_ohm").value or 0, 101.539, abs_tol=1e-3)
    output = finding(line_a(), "output_line_impedance_ohm")
    assert output.value == finding(line_a(), "zone_impedance_ohm").value
    assert math.isclose(finding(line_a(), "zone_loss_db").value or 0, 0.174, abs_tol=5e-4)


def test_what_a_long_thin_line_reads_and_loses() -> None:
    # 40 × 2.5 W at 100 V, IEC 60228:2004 table 3 (class 5, second hand) 1.5 mm², 25 m and
    # 39 × 6 m, 20 °C; the pair's inductance and capacitance were not printed with the result,
    # so its last digits are open
    pair = {"area_mm2": 1.5, "class": 5, "inductance_uh_per_m": 0.63, "capacitance_pf_per_m": 63.0}
    runs = [(25.0, 2.5), *[(6.0, 2.5)] * 39]
    job = make_chain(runs, cable=pair, line_v=100.0)
    assert math.isclose(finding(job, "zone_impedance_ohm").value or 0, 102.693, abs_tol=0.012)
    assert math.isclose(finding(job, "zone_loss_db").value or 0, 0.32347, abs_tol=5e-4)
    lumped = level.loss_db(from_v=1 + 26.6 * 0.259 / 100, at_v=1.0)
    assert math.isclose(lumped, 0.5787, abs_tol=1e-4)


@pytest.mark.parametrize(
    ("after", "ohm"),
    list(
        enumerate(
            [1000.43, 500.71, 334.18, 250.96, 201.07, 167.83, 144.12, 126.35, 112.56], start=1
        )
    ),
)
def test_what_a_line_reads_that_is_broken_after_a_loudspeaker(after: int, ohm: float) -> None:
    runs = [(30.0 if not number else 10.0, 5.0) for number in range(after)]
    shorter = make_chain(runs, cable=PAIR_A)
    assert math.isclose(finding(shorter, "zone_impedance_ohm").value or 0, ohm, abs_tol=0.01)
    # a break leaves up to its section's length of cable behind, which is a capacitor
    solved, _ = solve_job(line_a(), hz=1000.0, state="override")
    broken = prepare(solved.network, lifted=False).terminals_with_joint(after + 1, math.inf)
    assert math.isclose(1 / abs(broken), ohm, abs_tol=0.03)


@pytest.mark.parametrize(
    ("watts", "first_ohm", "last_ohm"),
    [
        (0.0, 112.83, 112.56),
        (2.5, 106.88, 106.76),
        (7.5, 96.71, 96.82),
        (10.0, 92.32, 92.54),
        (20.0, 78.16, 78.71),
        (30.0, 67.79, 68.60),
    ],
)
def test_what_a_line_reads_with_one_wrong_tap(
    watts: float, first_ohm: float, last_ohm: float
) -> None:
    for place, ohm in ((0, first_ohm), (9, last_ohm)):
        taps = [5.0] * 10
        taps[place] = watts
        ours = finding(line_a(taps), "zone_impedance_ohm").value or 0
        assert math.isclose(ours, ohm, abs_tol=0.006)


def test_an_eight_ohm_strap_is_told_at_either_end() -> None:
    solved, _ = solve_job(line_a(), hz=1000.0, state="override")
    for node, ohm, strap_w in ((1, 8.27, 509), (10, 10.50, 308)):
        strapped = solved.network.with_load(node, 1 / 8)
        flow = solve(strapped)
        assert math.isclose(1 / abs(flow.out_s[0]), ohm, abs_tol=0.005)
        assert math.isclose(abs(flow.at[node] * 70.7) ** 2 / 8, strap_w, abs_tol=0.5)


@pytest.mark.parametrize(
    ("stretch_m", "watts", "losses"),
    [(300.0, 250.0, (1.2957, 2.2090)), (300.0, 25.0, (0.137, 0.091))],
)
def test_heavy_loads_lose_treble_and_light_ones_gain_it(
    stretch_m: float, watts: float, losses: tuple[float, float]
) -> None:
    # 12 AWG stranded, 20 °C, wires 4 mm apart, permittivity 3; told without skin effect
    spacing = 4e-3 / cable.diameter_of_gauge_m(awg=12)
    pair = {
        "inductance_uh_per_m": cable.inductance_of_pair_uh_per_m(spacing_factor=spacing),
        "capacitance_pf_per_m": cable.capacitance_of_pair_pf_per_m(
            spacing_factor=spacing, permittivity_factor=3
        ),
    }
    whole = make_chain([(stretch_m, watts)], cable={"awg": 12, "stranded": True, **pair})
    loop = solve_lines(whole).pairs["c"].loop_ohm_per_km
    flat = make_chain(
        [(stretch_m, watts)], cable={"loop_ohm_per_km": _loop_for_treble(loop), **pair}
    )
    told = (finding(whole, "zone_loss_db").value, finding(flat, "zone_loss_10k_db").value)
    tolerance = 1e-4 if watts == 250.0 else 1e-3
    for ours, printed in zip(told, losses, strict=True):
        assert math.isclose(ours or 0, printed, abs_tol=tolerance)
    # with its skin effect the same copper loses a little more
    assert (finding(whole, "zone_loss_10k_db").value or 0) > (told[1] or 0)
    code = "zone_loss_10k_more_heavy" if watts == 250.0 else "zone_loss_10k_same"
    assert finding(whole, "zone_loss_10k_db").code == code

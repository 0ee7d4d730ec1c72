"""What taps draw, in ohms, watts and amperes, against figures worked out by hand."""

import math

import pytest

from pycore.formulas import level, power
from tests.drawn import about, drawn, found, output, speaker, zone

# Every figure in this file: Ohm's law and Joule's law, exact arithmetic, unless said beside it.
EXACT = 1e-5
ROOT_V = 100 / math.sqrt(2)


@pytest.mark.parametrize(
    ("tap_w", "ohm"),
    [
        (0.25, 19_993.96),
        (0.5, 9_996.98),
        (1, 4_998.49),
        (2.5, 1_999.396),
        (5, 999.698),
        (7.5, 666.465),
        (10, 499.849),
        (15, 333.233),
        (30, 166.616),
        (60, 83.308),
        (100, 49.985),
    ],
)
def test_ohms_of_a_tap_on_70_7_volts(tap_w: float, ohm: float) -> None:
    assert power.impedance_of_watts_ohm(line_v=70.7, load_w=tap_w) == about(ohm, rel=EXACT)


@pytest.mark.parametrize(("tap_w", "ohm"), [(1, 5000), (5, 1000), (10, 500), (100, 50)])
def test_ohms_on_the_exact_root_are_the_round_figures_of_the_trade(
    tap_w: float, ohm: float
) -> None:
    # "5000 through the watts": common practice, no source; the arithmetic is exact
    assert power.impedance_of_watts_ohm(line_v=ROOT_V, load_w=tap_w) == about(ohm)


@pytest.mark.parametrize(
    ("tap_w", "ohm"),
    [(1, 10_000), (2.5, 4_000), (6, 1_666.667), (10, 1_000), (30, 333.333), (100, 100)],
)
def test_ohms_of_a_tap_on_100_volts(tap_w: float, ohm: float) -> None:
    assert power.impedance_of_watts_ohm(line_v=100, load_w=tap_w) == about(ohm, rel=EXACT)


@pytest.mark.parametrize(("tap_w", "ohm"), [(1, 625), (5, 125), (10, 62.5), (30, 20.833)])
def test_ohms_of_a_tap_on_25_volts(tap_w: float, ohm: float) -> None:
    assert power.impedance_of_watts_ohm(line_v=25, load_w=tap_w) == about(ohm, rel=2e-5)


@pytest.mark.parametrize(
    ("marked_v", "line_v", "factor", "change_db"),
    [
        (70.7, 100, 2.00060, 3.012),
        (100, 70.7, 0.49985, -3.012),
        (25, 70.7, 7.99758, 9.030),
        (70.7, 25, 0.12504, -9.030),
        (25, 100, 16, 12.041),
    ],
)
def test_a_tap_on_another_voltage_draws_by_the_square(
    marked_v: float, line_v: float, factor: float, change_db: float
) -> None:
    times = power.voltage_factor(line_v=line_v, tap_at_v=marked_v)
    assert times == about(factor, rel=4e-5)
    assert power.level_of_power_ratio_db(factor=times) == about(change_db, abs=5e-4)
    drawn_w = power.draw_of_tap_w(tap_w=5, line_v=line_v, tap_at_v=marked_v)
    assert drawn_w == about(5 * times)


@pytest.mark.parametrize(
    ("ohm", "watts"),
    [
        (4, (156.25, 1249.62, 2500)),
        (8, (78.125, 624.811, 1250)),
        (16, (39.06, 312.41, 625)),
    ],
)
def test_a_low_impedance_selector_takes_what_the_line_gives(
    ohm: float, watts: tuple[float, ...]
) -> None:
    for line_v, expected_w in zip((25, 70.7, 100), watts, strict=True):
        taken_w = power.draw_of_resistance_w(line_v=line_v, direct_ohm=ohm)
        assert taken_w == about(expected_w, rel=1e-4)


@pytest.mark.parametrize(
    ("rated_w", "least_70_ohm", "least_100_ohm"),
    [(60, 83.308, 166.667), (120, 41.654, 83.333), (240, 20.827, 41.667), (500, 9.997, 20)],
)
def test_the_least_load_of_an_amplifier_is_that_of_all_its_watts(
    rated_w: float, least_70_ohm: float, least_100_ohm: float
) -> None:
    for line_v, ohm in ((70.7, least_70_ohm), (100, least_100_ohm)):
        least = power.impedance_of_watts_ohm(line_v=line_v, load_w=rated_w)
        assert least == about(ohm, rel=4e-5)


@pytest.mark.parametrize(("line_v", "amperes"), [(25, 4.0), (70.7, 1.4144), (100, 1.0)])
def test_amperes_of_a_hundred_watts(line_v: float, amperes: float) -> None:
    conductance_s = level.conductance_of_watts_s(load_w=100, line_v=line_v)
    assert conductance_s * line_v == about(amperes, abs=5e-5)


def test_nine_at_70_volts_and_one_at_25_draw_85_watts() -> None:
    # nine 5 W taps for 70.7 V and one 5 W tap for 25 V on a 70.7 V line
    taps = [speaker(5.0)] * 9 + [speaker(5.0, 25.0)]
    job = drawn([output(max_w=120.0, min_load_ohm=41.6)], zone("hall", *taps))
    assert found(job, "output_load_w:o1:override").value == about(84.988, abs=5e-4)
    ohms = found(job, "output_impedance_ohm:o1:override").value
    assert ohms == about(58.814, abs=5e-4)


@pytest.mark.parametrize(("loss_db", "times"), [(0.5, 1.1220), (1.0, 1.2589), (1.5, 1.4125)])
def test_delivered_watts_draw_more_by_the_transformers_loss(loss_db: float, times: float) -> None:
    # definition of the decibel for powers, ISO 80000-8: 10 log10, from memory
    made = power.drawn_of_delivered_w(tap_w=1.0, transformer_loss_db=loss_db)
    assert made == about(times, abs=5e-5)


@pytest.mark.parametrize(
    ("set_db", "share", "ohm_times"), [(-3, 0.50119, 1.9953), (-6, 0.25119, 3.9811)]
)
def test_an_autotransformer_lightens_its_line(
    set_db: float, share: float, ohm_times: float
) -> None:
    # ideal transformer: ohms go with the square of the ratio, exact arithmetic
    left = power.reflected_share(setting_db=set_db)
    assert left == about(share, abs=5e-6)
    assert 1 / left == about(ohm_times, abs=5e-5)

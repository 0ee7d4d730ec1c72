"""Copper by gauge, against ASTM B258, IEC 60028, ASTM B33, B496 and NBS Handbook 100."""

import math

import pytest

from pycore.calc.pairs import tin_factor_of
from pycore.formulas import cable, conductors
from pycore.ground.units.gauge import gauge_area_mm2, read_gauge, show_gauge

GAUGES = range(-3, 41)
METRES_PER_MIL = 0.0254e-3
KM_PER_KFT = 0.3048  # exact, international foot


def test_copper_at_20_degrees_is_one_58th() -> None:
    # IEC 60028 (second hand): 1/58 Ω·mm²/m = 17.2414 Ω/km for 1 mm²
    assert math.isclose(cable.resistance_of_area_ohm_per_km(area_mm2=1), 17.2414, abs_tol=1e-4)
    # NBS Handbook 100, its resistivity by mass and density: 0.15328 Ω·g/m² over 8.89 g/cm³
    assert math.isclose(17.2414, 1000 * 0.15328 / 8.89, rel_tol=3e-5)


@pytest.mark.parametrize(("celsius", "factor"), [(75, 0.82229), (40, 0.9271), (0, 1.0853)])
def test_a_reading_comes_back_to_20_degrees(celsius: float, factor: float) -> None:
    # IEC 60228, Annex B: 254.5 / (234.5 + t)
    hot = cable.heated_ohm_per_km(ohm_per_km=1.0, conductor_c=celsius)
    assert math.isclose(1 / hot, 254.5 / (234.5 + celsius), rel_tol=1e-4)
    assert math.isclose(1 / hot, factor, abs_tol=1e-4)


def test_from_20_to_75_degrees_copper_gains_a_fifth() -> None:
    # IEC 60028 (second hand): 1 + 0.00393 × 55
    hot = cable.heated_ohm_per_km(ohm_per_km=1.0, conductor_c=75)
    assert math.isclose(hot, 1.21615, abs_tol=1e-9)
    # NFPA 70 chapter 9, table 8, note 2: 0.00323 per kelvin at 75 °C (second hand)
    assert math.isclose(0.00393 / hot, 0.0032315, abs_tol=1e-6)


def test_each_gauge_is_a_39th_root_of_92_thinner() -> None:
    # ASTM B258: 92^(1/39)
    ratio = cable.diameter_of_gauge_m(awg=15) / cable.diameter_of_gauge_m(awg=16)
    assert math.isclose(ratio, 1.1229322, abs_tol=1e-7)


@pytest.mark.parametrize(
    ("awg", "mils"),
    [
        # Arithmetic by the formula of ASTM B258, to a hundredth; its table rounds to a tenth
        (24, 20.10),
        (22, 25.35),
        (20, 31.96),
        (18, 40.30),
        (16, 50.82),
        (14, 64.08),
        (12, 80.81),
        (10, 101.90),
        (8, 128.49),
        (6, 162.02),
    ],
)
def test_the_diameter_of_a_gauge(awg: int, mils: float) -> None:
    ours = cable.diameter_of_gauge_m(awg=awg) / METRES_PER_MIL
    assert math.isclose(ours, mils, abs_tol=0.01)


@pytest.mark.parametrize(
    ("awg", "circular_mils", "area_mm2"),
    [
        # Arithmetic by the formula of ASTM B258; to three figures the areas of 18 to 12 AWG are
        # those printed in NFPA 70 chapter 9, table 8
        (18, 1624.3, 0.8230),
        (16, 2582.7, 1.3087),
        (14, 4106.7, 2.0809),
        (12, 6529.9, 3.3088),
        (10, 10383.0, 5.2612),
    ],
)
def test_the_copper_of_a_gauge(awg: int, circular_mils: float, area_mm2: float) -> None:
    ours_mm2 = cable.area_of_gauge_mm2(awg=awg)
    assert math.isclose(ours_mm2, area_mm2, abs_tol=1e-4)
    # one circular mil is π/4 square mil
    assert math.isclose(ours_mm2 / (math.pi / 4 * 0.0254**2), circular_mils, abs_tol=0.1)


@pytest.mark.parametrize(
    ("awg", "ohm_per_kft", "ohm_per_km"),
    [
        # Ω/kft of solid gauges at 20 °C after NBS Handbook 100, as a textbook reprints it (second
        # hand); Ω/km by arithmetic from IEC 60028 and ASTM B258
        (18, 6.385, 20.948),
        (16, 4.016, 13.174),
        (14, 2.525, 8.285),
        (12, 1.588, 5.211),
        (10, 0.9989, 3.277),
    ],
)
def test_the_resistance_of_a_solid_gauge(awg: int, ohm_per_kft: float, ohm_per_km: float) -> None:
    area_mm2 = cable.area_of_gauge_mm2(awg=awg)
    ours = cable.resistance_of_area_ohm_per_km(area_mm2=area_mm2)
    assert math.isclose(ours, ohm_per_km, abs_tol=0.001)
    assert math.isclose(ours * KM_PER_KFT, ohm_per_kft, abs_tol=0.001)


def test_stranding_adds_two_per_cent() -> None:
    # ASTM B496, concentric lay; ASTM B8 alike, from memory
    assert conductors.LAY_FACTOR == 1.02
    assert cable.stranded_ohm_per_km(ohm_per_km=10, lay_factor=1.02) == 10.2


@pytest.mark.parametrize(
    ("inches", "factor"),
    [
        # ASTM B33-04, table 2, rows 0.103 to 0.290 in, 0.0201 to 0.103 in and 0.0111 to 0.0201 in:
        # 0.15776, 0.15940 and 0.16279 over 0.15328 Ω·g/m²
        (0.0202, 1.03993),
        (0.1029, 1.03993),
        (0.0112, 1.06204),
        (0.0200, 1.06204),
        (0.1040, 1.02923),
    ],
)
def test_tinning_adds_by_the_thickness_of_the_wire(inches: float, factor: float) -> None:
    ours, _ = tin_factor_of(inches * 0.0254)
    assert math.isclose(ours, factor, abs_tol=1e-5)


def test_the_finest_tinned_wires_are_told_to_be_from_memory() -> None:
    assert tin_factor_of(0.1e-3)[1].seen == "memory"


@pytest.mark.parametrize("awg", GAUGES)
def test_a_gauge_that_is_typed_is_the_copper_the_formulas_count_with(awg: int) -> None:
    assert gauge_area_mm2(awg) == cable.area_of_gauge_mm2(awg=awg)
    written = show_gauge(gauge_area_mm2(awg))
    assert written is not None
    assert read_gauge(f"{written} AWG") == gauge_area_mm2(awg)
    assert show_gauge(gauge_area_mm2(awg) * 1.001) is None

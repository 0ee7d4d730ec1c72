"""Inductance, capacitance and skin effect of a pair."""

import math

import pytest

from pycore.calc.pairs import pair_of
from pycore.calc.section import skin_factor
from pycore.formulas import cable
from pycore.jobs import CableKind
from pycore.jobs.catalogue_cables import (
    USUAL_CAPACITANCE_PF_PER_M,
    USUAL_INDUCTANCE_UH_PER_M,
    USUAL_PERMITTIVITY_FACTOR,
    USUAL_SPACING_FACTOR,
)


def solid_ohm_per_m(awg: int) -> float:
    """One solid copper conductor at 20 °C."""
    area_mm2 = cable.area_of_gauge_mm2(awg=awg)
    return cable.resistance_of_area_ohm_per_km(area_mm2=area_mm2) / 1000


@pytest.mark.parametrize(("hz", "depth_mm"), [(1e3, 2.0898), (1e4, 0.6608), (2e4, 0.4673)])
def test_the_depth_of_the_skin(hz: float, depth_mm: float) -> None:
    # Arithmetic: √(2 ρ / (ω μ0)) with IEC 60028 copper. A flat surface, a wire far thicker
    # than its skin, resists as ρ over the skin: the factor grows to radius / (2 depth) + 1/4.
    assert math.isclose(
        math.sqrt(2 / 58e6 / (2 * math.pi * hz * 4e-7 * math.pi)) * 1000, depth_mm, abs_tol=1e-4
    )
    radius_mm = 400 * depth_mm
    ohm_per_m = 1 / 58 / (math.pi * radius_mm**2)
    factor = skin_factor(hz=hz, ohm_per_m=ohm_per_m)
    assert math.isclose(factor, radius_mm / 2 / depth_mm + 0.25, rel_tol=1e-4)


@pytest.mark.parametrize(
    ("awg", "hz", "factor"),
    [
        # Arithmetic (Bessel functions of a solid round wire, 20 °C)
        (12, 1e3, 1.0012),
        (12, 1e4, 1.1106),
        (12, 2e4, 1.3530),
        (18, 2e4, 1.03),
        (16, 2e4, 1.07),
        (14, 2e4, 1.17),
        (10, 2e4, 1.65),
    ],
)
def test_skin_effect_of_solid_gauges(awg: int, hz: float, factor: float) -> None:
    ours = skin_factor(hz=hz, ohm_per_m=solid_ohm_per_m(awg))
    assert math.isclose(ours, factor, abs_tol=5e-5 if factor < 1.36 and awg == 12 else 5e-3)


def test_at_1_khz_skin_effect_is_nothing_and_is_left_out() -> None:
    for awg in (18, 16, 14, 12, 10):
        assert skin_factor(hz=1e3, ohm_per_m=solid_ohm_per_m(awg)) <= 1.0031
    kind = CableKind(id="c", name="pair", awg=10, stranded=False, metal="copper")
    pair = pair_of(kind, 20.0)
    assert pair.series_ohm_per_m(1000.0).real == pair.loop_ohm_per_km / 1000
    assert pair.series_ohm_per_m(10_000.0).real > 1.1 * pair.loop_ohm_per_km / 1000


def test_skin_effect_passes_from_one_reckoning_to_the_other_without_a_step() -> None:
    # the flat-surface rule takes over where 2e-7 π f / r passes 1e6
    at = 2e-7 * math.pi * 1e4 / 1e6
    one, other = (
        skin_factor(hz=1e4, ohm_per_m=at * 1.001),
        skin_factor(hz=1e4, ohm_per_m=at * 0.999),
    )
    assert math.isclose(one, other, rel_tol=2e-3)
    assert one < other


def test_the_pair_of_16_gauge_wires_2_6_mm_apart() -> None:
    # Arithmetic: 630.04 nH/m and 62.98 pF/m at 2.6 mm between centres, permittivity 3
    spacing = 2.6e-3 / cable.diameter_of_gauge_m(awg=16)
    ours = cable.inductance_of_pair_uh_per_m(spacing_factor=spacing)
    assert math.isclose(ours, 0.63004, abs_tol=1e-5)
    ours = cable.capacitance_of_pair_pf_per_m(spacing_factor=spacing, permittivity_factor=3)
    assert math.isclose(ours, 62.98, abs_tol=0.01)


def test_the_usual_pair_is_the_one_its_source_describes() -> None:
    inductance = cable.inductance_of_pair_uh_per_m(spacing_factor=USUAL_SPACING_FACTOR)
    assert math.isclose(inductance, USUAL_INDUCTANCE_UH_PER_M, rel_tol=0.01)
    capacitance = cable.capacitance_of_pair_pf_per_m(
        spacing_factor=USUAL_SPACING_FACTOR, permittivity_factor=USUAL_PERMITTIVITY_FACTOR
    )
    assert math.isclose(capacitance, USUAL_CAPACITANCE_PF_PER_M, rel_tol=0.01)
    # jacketed pairs lie at 84 to 120 Ω (arithmetic over usual figures)
    own_ohm = cable.own_impedance_ohm(
        inductance_uh_per_m=USUAL_INDUCTANCE_UH_PER_M,
        capacitance_pf_per_m=USUAL_CAPACITANCE_PF_PER_M,
    )
    assert 84 <= own_ohm <= 120


@pytest.mark.parametrize("spacing", [1.0, 0.5])
def test_wires_that_would_lie_inside_each_other_are_no_pair(spacing: float) -> None:
    if spacing < 1:
        with pytest.raises(ValueError):
            cable.inductance_of_pair_uh_per_m(spacing_factor=spacing)
    else:
        with pytest.raises(ZeroDivisionError):
            cable.capacitance_of_pair_pf_per_m(spacing_factor=spacing, permittivity_factor=3)

"""Cables as kinds of a job, against NFPA 70 (the NEC) chapter 9 table 8 and IEC 60228."""

import math
from typing import Any

import pytest

from pycore.calc.pairs import Pair, pair_of
from pycore.ground.words.en_line import CABLES
from pycore.jobs import CableKind
from pycore.jobs.catalogue_cables import FIGURE_SOURCES, cable_kinds

KM_PER_KFT = 0.3048


def made(conductor_c: float, **fields: Any) -> Pair:
    """The pair of a kind with these fields."""
    plain = {"id": "c", "name": "pair", "metal": "copper"}
    return pair_of(CableKind.model_validate({**plain, **fields}), conductor_c)


@pytest.mark.parametrize(
    ("awg", "stranded", "uncoated", "coated"),
    [
        # NFPA 70 chapter 9, table 8, columns uncoated and coated copper, rows by gauge and number
        # of strands (1 or 7), direct-current resistance at 75 °C, Ω/kft; by transcriptions of it
        (18, False, 7.77, 8.08),
        (18, True, 7.95, 8.45),
        (16, False, 4.89, 5.08),
        (16, True, 4.99, 5.29),
        (14, False, 3.07, 3.19),
        (14, True, 3.14, 3.26),
        (12, False, 1.93, 2.01),
        (12, True, 1.98, 2.05),
        (10, False, 1.21, 1.26),
        (10, True, 1.24, 1.29),
        (8, False, 0.764, 0.786),
        (8, True, 0.778, 0.809),
        (6, True, 0.491, 0.510),
    ],
)
def test_a_gauge_at_75_degrees_is_that_of_the_code_s_table(
    awg: int, stranded: bool, uncoated: float, coated: float
) -> None:
    for tinned, printed in ((False, uncoated), (True, coated)):
        pair = made(75.0, awg=awg, stranded=stranded, tinned=tinned)
        one_ohm_per_kft = pair.loop_ohm_per_km / 2 * KM_PER_KFT
        assert math.isclose(one_ohm_per_kft, printed, rel_tol=0.0055)


@pytest.mark.parametrize(
    ("awg", "ohm_per_kft"),
    [
        # Arithmetic from ASTM B258, IEC 60028 and 2 % stranding, at 75 °C
        (18, 7.920),
        (16, 4.981),
        (14, 3.133),
        (12, 1.970),
        (10, 1.239),
        (8, 0.779),
        (6, 0.490),
    ],
)
def test_a_stranded_gauge_by_arithmetic(awg: int, ohm_per_kft: float) -> None:
    pair = made(75.0, awg=awg, stranded=True)
    assert math.isclose(pair.loop_ohm_per_km / 2 * KM_PER_KFT, ohm_per_kft, abs_tol=0.0006)


def test_the_code_s_table_is_hot_not_cold() -> None:
    # NFPA 70 chapter 9, table 8, row 18 AWG of 7 strands, uncoated: 7.95 Ω/kft at 75 °C is 6.537
    # at 20 °C
    cold = made(20.0, awg=18, stranded=True).loop_ohm_per_km / 2 * KM_PER_KFT
    assert math.isclose(7.95 / 1.21615, 6.537, abs_tol=0.001)
    assert math.isclose(cold, 6.537, rel_tol=0.005)
    assert not math.isclose(cold, 7.95, rel_tol=0.1)


@pytest.mark.parametrize(
    ("area_mm2", "plain", "tinned", "fine", "fine_tinned"),
    [
        # IEC 60228:2004, rows by nominal area, most Ω/km at 20 °C, by a reprint (second hand):
        # tables 1 and 2 (classes 1 and 2) plain, and coated (from memory); table 3 (class 5)
        # plain and coated
        (0.5, 36.0, 36.7, 39.0, 40.1),
        (0.75, 24.5, 24.8, 26.0, 26.7),
        (1.0, 18.1, 18.2, 19.5, 20.0),
        (1.5, 12.1, 12.2, 13.3, 13.7),
        (2.5, 7.41, 7.56, 7.98, 8.21),
        (4.0, 4.61, 4.70, 4.95, 5.09),
        (6.0, 3.08, 3.11, 3.30, 3.39),
        (10.0, 1.83, 1.84, 1.91, 1.95),
    ],
)
def test_a_metric_cable_has_the_most_ohms_its_class_may_have(
    area_mm2: float, plain: float, tinned: float, fine: float, fine_tinned: float
) -> None:
    for strand_class in (1, 2):
        fields = {"area_mm2": area_mm2, "class": strand_class}
        assert made(20.0, **fields).loop_ohm_per_km == 2 * plain
        assert made(20.0, tinned=True, **fields).loop_ohm_per_km == 2 * tinned
    fields = {"area_mm2": area_mm2, "class": 5}
    assert made(20.0, **fields).loop_ohm_per_km == 2 * fine
    assert made(20.0, tinned=True, **fields).loop_ohm_per_km == 2 * fine_tinned


def test_a_size_no_table_prints_is_reckoned_from_the_next_smaller() -> None:
    pair = made(20.0, area_mm2=2.0, **{"class": 2})
    assert math.isclose(pair.loop_ohm_per_km, 2 * 12.1 * 1.5 / 2.0, rel_tol=1e-12)
    assert "size_between" in pair.assumptions


def test_copper_clad_aluminium_resists_half_as_much_again() -> None:
    # 62 to 68 % of the conductivity of copper, second hand: 1.47 to 1.61 times the ohms
    copper, clad = made(20.0, awg=16), made(20.0, awg=16, metal="copper_clad_aluminium")
    assert 1.47 <= clad.loop_ohm_per_km / copper.loop_ohm_per_km <= 1.62
    assert "clad_lowest" in clad.assumptions


def test_a_measured_loop_is_taken_as_measured_at_20_degrees() -> None:
    assert math.isclose(made(20.0, loop_ohm_per_km=26.875).loop_ohm_per_km, 26.875)
    hot = made(75.0, loop_ohm_per_km=26.875)
    assert math.isclose(hot.loop_ohm_per_km, 26.875 * 1.21615)
    assert "loop_at_20" in hot.assumptions


def test_what_is_not_known_of_a_cable_is_said() -> None:
    bare = made(30.0, awg=16)
    assert bare.loop_ohm_per_km == made(30.0, awg=16, stranded=True).loop_ohm_per_km
    assert {"strands_not_known", "pair_usual"} <= set(bare.assumptions)
    assert bare.inductance_uh_per_m == 0.63
    assert bare.capacitance_pf_per_m == 63.0
    metric = made(30.0, area_mm2=1.5)
    assert metric.loop_ohm_per_km == made(30.0, area_mm2=1.5, **{"class": 5}).loop_ohm_per_km
    assert "class_not_known" in metric.assumptions
    assert "heat_outside" in made(150.0, awg=16).assumptions


def test_the_catalogue_names_a_source_for_every_figure() -> None:
    kinds = cable_kinds(CABLES)
    assert [kind.awg for kind in kinds if kind.awg] == [22, 20, 18, 16, 14, 12, 10]
    areas = [kind.area_mm2 for kind in kinds if kind.area_mm2]
    assert areas == [0.5, 0.75, 1.0, 1.5, 2.5, 4.0, 6.0]
    for kind in kinds:
        sources = FIGURE_SOURCES["awg" if kind.awg is not None else "mm2"]
        given = {name for name, value in kind if value is not None}
        assert given - {"id", "name", "metal"} == set(sources)
        assert all(source.name for source in sources.values())


def test_the_catalogue_grows_from_thin_to_thick() -> None:
    for family in ("awg", "area_mm2"):
        pairs = [pair_of(one, 20.0) for one in cable_kinds(CABLES) if getattr(one, family)]
        ohms = [pair.loop_ohm_per_km for pair in pairs]
        assert ohms == sorted(ohms, reverse=True)
        assert len(set(ohms)) == len(ohms)

"""What people type, and what is made of it. The unit of a field is the end of its name."""

import pytest

from pycore.ground.problems import BadText
from pycore.ground.units import (
    Manner,
    read,
    show,
    show_beside,
    show_most,
    show_typed,
    true_voltage,
    unit_of,
)
from tests.drawn import about, as_read

POINT = Manner("en", "m", ".", "")
COMMA = Manner("en", "m", ",", "")
FEET = Manner("en", "ft", ".", "")


@pytest.mark.parametrize(
    ("text", "unit", "number"),
    [
        ("7,5", "w", 7.5),
        ("7.5 W", "w", 7.5),
        ("7.5W", "w", 7.5),
        (" 7.5  watts ", "w", 7.5),
        (".5", "w", 0.5),
        ("0,500", "w", 0.5),
        ("1 500", "w", 1500.0),
        ("1\u202f500,5", "w", 1500.5),
        ("2 kW", "w", 2000.0),
        ("+5", "w", 5.0),
        ("−5", "db", -5.0),
        ("-6 dB", "db", -6.0),
        ("70.7 V", "v", 70.7),
        ("100V", "v", 100.0),
        ("20", "m", 20.0),
        ("20 ft", "m", 6.096),
        ("20'", "m", 6.096),
        ("20' 6\"", "m", 6.2484),
        ("20 ft 6 in", "m", 6.2484),
        ("1.5 km", "m", 1500.0),
        ("8 Ω", "ohm", 8.0),
        ("8 \u2126", "ohm", 8.0),
        ("8 ohms", "ohm", 8.0),
        ("1 k", "ohm", 1000.0),
        ("2 MΩ", "ohm", 2e6),
        ("2 mΩ", "ohm", 0.002),
        ("50 F", "c", 10.0),
        ("30 °C", "c", 30.0),
        ("1,5 mm²", "mm2", 1.5),
        ("1.5 mm2", "mm2", 1.5),
        ("16 AWG", "awg", 16.0),
        ("AWG 16", "awg", 16.0),
        ("80", "fraction", 0.8),
        ("80 %", "fraction", 0.8),
        ("1 %", "fraction", 0.01),
        ("6", "count", 6.0),
        ("6 ×", "count", 6.0),
        ("6x", "count", 6.0),
    ],
)
def test_a_number_is_read_as_it_is_meant(text: str, unit: str, number: float) -> None:
    assert read(text, unit, manner=POINT) == about(number)
    assert read(text, unit, manner=COMMA) == about(number)


@pytest.mark.parametrize("text", ["", " ", "\u00a0"])
def test_nothing_typed_is_not_known(text: str) -> None:
    assert read(text, "w", manner=POINT) is None


@pytest.mark.parametrize(
    ("text", "unit", "code"),
    [
        ("1,500", "w", "number_ambiguous"),
        ("12,345", "m", "number_ambiguous"),
        ("1,500.5", "w", "number_unread"),
        ("1_000", "w", "number_unread"),
        ("1e3", "w", "number_unread"),
        ("1'500", "w", "number_unread"),
        ("7..5", "w", "number_unread"),
        ("5.", "w", "number_unread"),
        ("5-10", "w", "number_unread"),
        ("٣", "w", "number_unread"),
        ("٧٫٥", "w", "number_unread"),
        ("५", "w", "number_unread"),
        ("½", "w", "number_unread"),
        ("five", "w", "number_unread"),
        ("NaN", "w", "number_unread"),
        ("inf", "w", "number_unread"),
        ("1e999", "w", "number_unread"),
        ("0x10", "w", "number_unread"),
        ("W", "w", "number_unread"),
        ("5 W each", "w", "unit_unread"),
        ("20 ft", "w", "unit_unread"),
        ("5 mm2", "w", "unit_unread"),
        ("0 dB-6", "db", "two_numbers"),
        ("5 W 10 W", "w", "two_numbers"),
        ("20 ft 6", "m", "two_numbers"),
        ("16/2", "awg", "unit_unread"),
        ("1,5", "awg", "number_not_whole"),
        ("6.5", "count", "number_not_whole"),
        ("0.8", "fraction", "share_unclear"),
        ("1", "fraction", "share_unclear"),
        ("5" * 50, "w", "number_unread"),
    ],
)
def test_anything_else_is_refused_by_a_plain_problem(text: str, unit: str, code: str) -> None:
    with pytest.raises(BadText) as refused:
        read(text, unit, manner=POINT)
    assert refused.value.code == code


def test_a_comma_and_three_figures_is_asked_about_by_both_readings() -> None:
    for manner, text, small in ((POINT, "1,500", "1.5"), (COMMA, "1.500", "1,5")):
        with pytest.raises(BadText) as asked:
            read(text, "w", manner=manner)
        assert asked.value.values == {"text": text, "small": small, "large": "1500"}


def test_a_point_and_three_figures_is_a_decimal_where_the_point_is_one() -> None:
    assert read("1.500", "w", manner=POINT) == about(1.5)


def test_a_bare_length_is_in_the_persons_own_unit() -> None:
    # the international foot is 0.3048 m exactly
    assert read("20", "m", manner=FEET) == about(6.096)
    assert read("20 m", "m", manner=FEET) == about(20.0)


@pytest.mark.parametrize(
    ("value", "unit", "text"),
    [
        (7.5, "w", "7.5 W"),
        (999.698, "ohm", "1000 Ω"),
        (49.985, "ohm", "50 Ω"),
        (0.0, "w", "0 W"),
        (0.004, "db", "0.004 dB"),
        (0.0004, "db", "under 0.001 dB"),
        (-0.0004, "db", "under 0.001 dB"),
        # halves away from nothing, whatever the binary figure is
        (0.125, "db", "0.13 dB"),
        (1.005, "db", "1.01 dB"),
        (-2.345, "db", "−2.35 dB"),
        (1.0625, "ohm", "1.06 Ω"),
        (102.5, "ohm", "103 Ω"),
        # sums of taps in full, other watts to three figures, to a tenth from 100 to 1000 W
        (107.5, "w", "107.5 W"),
        (102.5, "w", "102.5 W"),
        (178.75, "w", "178.75 W"),
        (1031.25, "w", "1031.25 W"),
        (0.1 + 0.2, "w", "0.3 W"),
        (107.4837, "w", "107.5 W"),
        (240.072, "w", "240.1 W"),
        (24.7487, "w", "24.7 W"),
        (-0.05, "db", "−0.05 dB"),
        (0.4237, "db", "0.42 dB"),
        (1.125, "fraction", "113 %"),
        (7.99758, "factor", "×8"),
        (12_345.6, "w", "12 346 W"),
        (9_999.0, "w", "9999 W"),
        (-12_345.6, "w", "−12 346 W"),
        (20_000.0, "ohm", "20 kΩ"),
        (101_050.0, "ohm", "101 kΩ"),
        (9_950.0, "ohm", "9950 Ω"),
        (0.012345, "a", "0.0123 A"),
    ],
)
def test_a_computed_number_is_shown_in_three_figures(value: float, unit: str, text: str) -> None:
    assert as_read(show(value, unit, manner=POINT)) == text


@pytest.mark.parametrize(
    ("value", "unit", "marks", "text"),
    [
        (0.502, "db", (0.5, 1.0), "0.502 dB"),
        (0.5002, "db", (0.5, 1.0), "0.5002 dB"),
        (1.0004, "db", (0.5, 1.0), "1.0004 dB"),
        (0.5, "db", (0.5, 1.0), "0.5 dB"),
        (0.4237, "db", (0.5, 1.0), "0.42 dB"),
        (0.8002, "fraction", (1.0, 0.8), "80.02 %"),
        (0.8, "fraction", (1.0, 0.8), "80 %"),
        (300.004, "w", (300.0, 240.0), "300.004 W"),
        (49.985, "ohm", (50.0,), "49.99 Ω"),
        # a limit of more figures than are usual: what is past it must not read as short of it
        (0.1234, "db", (0.123, 0.246), "0.1234 dB"),
        (41.664, "ohm", (41.67,), "41.66 Ω"),
        (125.3412, "w", (125.33, 100.264), "125.34 W"),
        (0.1226, "db", (0.123, 0.246), "0.12 dB"),
    ],
)
def test_what_is_close_to_its_limit_is_told_from_it(
    value: float, unit: str, marks: tuple[float, ...], text: str
) -> None:
    assert as_read(show_beside(value, unit, marks=marks, manner=POINT)) == text


@pytest.mark.parametrize(
    ("value_m", "manner", "text"),
    [
        (87.46, POINT, "87.4 m"),
        (87.5, POINT, "87.5 m"),
        (1234.9, POINT, "1234 m"),
        (9.999, POINT, "9.99 m"),
        (12.192, FEET, "40 ft"),
        (26.67, FEET, "87.5 ft"),
        (26.66, FEET, "87.4 ft"),
        (0.0, POINT, "0 m"),
    ],
)
def test_the_most_that_is_allowed_is_never_rounded_up(
    value_m: float, manner: Manner, text: str
) -> None:
    assert as_read(show_most(value_m, "m", manner=manner)) == text


def test_feet_and_commas_are_for_printing_only() -> None:
    assert show_typed(6.096, "m", manner=FEET) == "20\u00a0ft"
    assert show_typed(7.5, "w", manner=COMMA) == "7,5\u00a0W"
    assert show(0.4237, "db", manner=COMMA) == "0,42\u00a0dB"


@pytest.mark.parametrize(
    ("text", "area_mm2"), [("18 AWG", 0.823), ("awg 12", 3.31), ("4/0 AWG", 107.2)]
)
def test_copper_may_be_typed_as_a_gauge(text: str, area_mm2: float) -> None:
    # ASTM B258, the table of areas, three figures (from memory)
    assert read(text, "mm2", manner=FEET) == about(area_mm2, rel=1e-3)


def test_copper_typed_as_a_gauge_is_printed_as_that_gauge() -> None:
    for text in ("18 AWG", "4/0 AWG"):
        area_mm2 = read(text, "mm2", manner=COMMA)
        assert area_mm2 is not None
        assert as_read(show_typed(area_mm2, "mm2", manner=COMMA)) == text
    assert as_read(show_typed(0.823, "mm2", manner=POINT)) == "0.823 mm²"


def test_a_bare_number_that_could_be_a_gauge_is_asked_back_where_gauges_are_usual() -> None:
    assert read("16", "mm2", manner=POINT) == 16
    assert read("6", "mm2", manner=FEET) == 6
    with pytest.raises(BadText, match="gauge_unclear"):
        read("16", "mm2", manner=FEET)


def test_a_printed_number_is_never_one_the_parser_asks_about() -> None:
    assert show_typed(3.125, "w", manner=COMMA) == "3,1250\u00a0W"
    assert read("3,1250 W", "w", manner=COMMA) == about(3.125)


@pytest.mark.parametrize(("marked", "true"), [(70, 70.7), (70.7, 70.7), (71, 70.7), (100, 100)])
def test_the_70_volt_marks_are_one_voltage(marked: float, true: float) -> None:
    # 70, 70.7, 71 and 100 through root 2: common practice, no source
    assert true_voltage(marked) == true


@pytest.mark.parametrize(
    ("field", "unit"),
    [
        ("changes.max_w", "w"),
        ("points.0.length_m", "m"),
        ("changes.load_fraction", "fraction"),
        ("thinnest_mm2", "mm2"),
        ("ohm", "ohm"),
        ("loop_ohm_per_km", "ohm_per_km"),
        ("name", None),
        ("", None),
    ],
)
def test_the_unit_of_a_field_is_the_end_of_its_name(field: str, unit: str | None) -> None:
    assert unit_of(field) == unit

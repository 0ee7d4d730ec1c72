"""The one printer and the one parser: what is printed is read back, what is typed never raises."""

import math
import re

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from pycore.ground.plain import kept_together
from pycore.ground.problems import BadText
from pycore.ground.units import (
    Manner,
    as_typed,
    read,
    read_run,
    same_voltage,
    show,
    show_beside,
    show_typed,
    true_voltage,
    unit_of,
)
from pycore.ground.units.table import TYPED, WRITTEN
from pycore.ground.words import ENGLISH, say
from tests.strategies import MANNERS

WHOLE = ("count", "awg")
# Not printed with a unit of their own: lengths are printed in metres or feet.
PRINTED = sorted(set(TYPED) - set(WHOLE))
ODD = st.text(st.sampled_from("0123456789.,_ -+−'\"eEkMmWwΩ%٣५½\u00a0\u200fft"), max_size=12)


@given(st.sampled_from(PRINTED), MANNERS, st.floats(0.001, 100_000))
@example("w", Manner("en", "m", ",", ""), 3.125)
@example("w", Manner("en", "m", ",", ""), 123.456)
def test_what_is_printed_of_a_typed_number_reads_back(
    unit: str, manner: Manner, value: float
) -> None:
    text = show_typed(value, unit, manner=manner)
    again = read(text, unit, manner=manner)
    assert again is not None
    assert again == pytest.approx(value, rel=1e-6)


@given(
    st.sampled_from(("w", "db", "ohm")),
    st.integers(1, 99_999),
    st.integers(0, 3),
    st.sampled_from((-1, 1)),
    st.floats(-6.0, -0.5),
)
@example("db", 123, 3, 1, -2.5)
@example("ohm", 4167, 2, -1, -4.0)
def test_no_number_reads_as_if_it_lay_on_the_other_side_of_its_limit(
    unit: str, figures: int, decimals: int, side: int, far: float
) -> None:
    manner = Manner("en", "m", ".", "")
    mark = figures / 10**decimals
    value = mark * (1 + side * 10**far)
    text = show_beside(value, unit, marks=(mark,), manner=manner)
    told = read(text, unit, manner=manner)
    limit = read(show_typed(mark, unit, manner=manner), unit, manner=manner)
    assert told is not None
    assert limit is not None
    assert told > limit if side > 0 else told < limit


@given(st.sampled_from(WHOLE), MANNERS, st.integers(0, 10_000))
def test_whole_numbers_read_back_as_they_were(unit: str, manner: Manner, value: int) -> None:
    assert read(show_typed(value, unit, manner=manner), unit, manner=manner) == value
    assert read(show(value, "count", manner=manner), unit, manner=manner) == value


@given(st.sampled_from(sorted(set(PRINTED) - {"db", "fraction"})), MANNERS, st.floats(0.01, 9000))
def test_a_computed_number_reads_back_to_three_figures(
    unit: str, manner: Manner, value: float
) -> None:
    again = read(show(value, unit, manner=manner), unit, manner=manner)
    assert again is not None
    assert again == pytest.approx(value, rel=0.0051)


@given(st.floats(-200, 200), MANNERS)
def test_a_level_is_never_printed_as_nothing_when_there_is_some(
    value_db: float, manner: Manner
) -> None:
    text = show(value_db, "db", manner=manner)
    assert (text == "0\u00a0dB") == (value_db == 0)
    if abs(value_db) >= 0.1:
        again = read(text, "db", manner=manner)
        assert again == pytest.approx(value_db, abs=0.0051)


@given(st.sampled_from(sorted(TYPED)), MANNERS, ODD | st.text(max_size=60))
def test_any_text_is_a_number_or_a_plain_problem(unit: str, manner: Manner, text: str) -> None:
    try:
        number = read(text, unit, manner=manner)
    except BadText as problem:
        assert problem.code  # noqa: PT017 - either outcome is right, another exception is not
    else:
        assert number is None or math.isfinite(number)
        assert (number is None) == (text.replace("\u00a0", " ").strip() == "")


@given(st.sampled_from(sorted(WRITTEN)), MANNERS, st.floats(allow_nan=False))
def test_every_number_can_be_printed(unit: str, manner: Manner, value: float) -> None:
    assert show(value, unit, manner=manner).strip()
    if math.isfinite(value):
        assert show_typed(value, unit, manner=manner).strip()


BREAKING = re.compile(r"\d (?:W|V|A|m|ft|Ω|kΩ|MΩ|dB|Hz|kHz|°C|mm²|AWG|%|S|Ω/km|µH/m|pF/m)(?!\w)")


@given(st.sampled_from(sorted(WRITTEN)), MANNERS, st.floats(-1e6, 1e6))
def test_no_line_ends_between_a_number_and_its_unit(
    unit: str, manner: Manner, value: float
) -> None:
    assert " " not in show(value, unit, manner=manner).removeprefix("−").removeprefix("under ")
    assert " " not in show_typed(value, unit, manner=manner)
    assert "\u00a0" not in as_typed(value, unit, manner=manner)


@pytest.mark.parametrize("space", [" ", "\u00a0", "\u202f", "\u2009", ""])
def test_whatever_space_stands_before_a_unit_it_is_read(space: str) -> None:
    point = Manner("en", "m", ".", "")
    assert read(f"70.7{space}V", "v", manner=point) == 70.7
    assert read(f"12{space}000{space}W", "w", manner=point) == 12_000
    assert read_run(f"20{space}x{space}4{space}m", manner=point) == (20, 4.0)


def test_no_sentence_of_ours_breaks_between_a_number_and_its_unit() -> None:
    said = [
        (table, code, text)
        for table, texts in ENGLISH.items()
        if table != "catalogue"  # names of kinds are copied into jobs, letter by letter
        for code, text in texts.items()
    ]
    assert [one for one in said if BREAKING.search(kept_together(one[2]))] == []
    assert say("assumption", "direct_copper", language="en").count("\u00a0") == 2


@given(st.sampled_from(sorted(WRITTEN)), st.sampled_from(("tap", "rated_at", "x")))
def test_the_end_of_a_name_is_its_unit(unit: str, stem: str) -> None:
    assert unit_of(f"points.0.{stem}_{unit}") == unit
    assert unit_of(unit) == unit
    assert unit_of(stem) is None


@given(st.floats(1, 1000), st.floats(1, 1000))
def test_marks_that_stand_for_one_voltage_are_one_both_ways(one: float, other: float) -> None:
    assert same_voltage(one, other) == same_voltage(other, one)
    assert same_voltage(one, true_voltage(one))
    assert true_voltage(true_voltage(one)) == true_voltage(one)

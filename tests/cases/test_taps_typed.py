"""The taps of one row of a selector, typed and printed as one text."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pycore.ground.problems import BadText
from pycore.ground.units import Manner, TapText, read_taps, show_taps
from tests.strategies import MANNERS

POINT = Manner("en", "m", ".", "")
COMMA = Manner("en", "m", ",", "")
ROW = [TapText(10.0, None), TapText(5.0, None), TapText(2.5, None)]


@pytest.mark.parametrize(
    "text",
    [
        "10 / 5 / 2.5",
        "10/5/2,5 W",
        "10 5 2.5 W",
        "10 W 5 W 2.5 W",
        "10, 5, 2,5",
        "10, 5, 2.5 W",
        "10; 5; 2,5",
        " 10 /5/ 2.5 watts ",
        "10\n5\n2.5",
    ],
)
def test_a_row_is_read_however_its_taps_are_parted(text: str) -> None:
    assert read_taps(text, manner=POINT) == ROW
    assert read_taps(text, manner=COMMA) == ROW


def test_taps_are_parted_by_commas_where_that_is_the_only_sense() -> None:
    assert [tap.w for tap in read_taps("6,3,1.5", manner=POINT)] == [6.0, 3.0, 1.5]
    assert [tap.w for tap in read_taps("30,15,5", manner=POINT)] == [30.0, 15.0, 5.0]


def test_one_comma_may_part_two_taps_or_be_a_decimal_sign_and_is_asked_back() -> None:
    with pytest.raises(BadText) as why:
        read_taps("15,30", manner=POINT)
    assert (why.value.code, why.value.values["one"]) == ("taps_unclear", "15.30")
    assert why.value.values["several"] == "15 / 30"
    # where the person's decimal sign is a comma there is nothing to ask
    assert read_taps("7,5", manner=COMMA) == [TapText(7.5, None)]


@pytest.mark.parametrize(
    "text", ["30 / 8 Ω", "30 W / 8 ohm", "30/8R", "30 8 ohms", "8 \u2126 / 30"]
)
def test_the_low_impedance_position_is_told_by_its_unit(text: str) -> None:
    assert set(read_taps(text, manner=POINT)) == {TapText(30.0, None), TapText(None, 8.0)}


def test_nothing_typed_is_no_tap_and_the_same_tap_twice_is_one() -> None:
    assert read_taps("  ", manner=POINT) == []
    assert read_taps("5 / 5 W / 5,0", manner=POINT) == [TapText(5.0, None)]


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("10 / five", "number_unread"),
        ("10 V", "unit_unread"),
        ("10 / 0", "tap_zero"),
        ("10 / -5", "tap_zero"),
        ("1,500 / 5", "number_ambiguous"),
        ("/".join("123456789" * 3), "taps_too_many"),
        ("9" * 300, "taps_too_many"),
    ],
)
def test_what_is_no_row_of_taps_is_said(text: str, code: str) -> None:
    with pytest.raises(BadText) as why:
        read_taps(text, manner=POINT)
    assert why.value.code == code


WATTS = st.integers(1, 60_000).map(lambda milliwatts: TapText(milliwatts / 100, None))
OHMS = st.sampled_from([TapText(None, 4.0), TapText(None, 8.0), TapText(None, 12.5)])


@given(st.lists(WATTS, max_size=8, unique=True), st.lists(OHMS, max_size=1), MANNERS)
def test_a_printed_row_reads_back(
    watts: list[TapText], ohms: list[TapText], manner: Manner
) -> None:
    row = [*watts, *ohms]
    text = show_taps(row, manner=manner)
    assert read_taps(text, manner=manner) == row, text


@given(st.text(max_size=40), MANNERS)
def test_any_text_is_a_row_or_a_plain_problem(text: str, manner: Manner) -> None:
    try:
        taps = read_taps(text, manner=manner)
    except BadText as problem:
        assert problem.code  # noqa: PT017 - either outcome is right, another exception is not
    else:
        assert all((tap.w is None) != (tap.ohm is None) for tap in taps)

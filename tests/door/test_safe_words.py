"""The words that keep people safe: each is there where its act is, and nothing certifies."""

import re

import pytest

from pycore.ground.words import ENGLISH
from tests.house.files import ROOT

PAGE = ENGLISH["page"]
# What follows when a verdict of "over" is left alone: it trips, burns, or is only quieter.
FOLLOWS = re.compile(r"\b(trips?|burns?|overheats?|quieter|silent|harmed)\b")
PROMISES = re.compile(r"\b(safe to|certif\w+|guarante\w+|approved|compliant)\b", re.IGNORECASE)
# The one sentence with such a word in it says that nothing is certified.
DENIES = "It certifies nothing"


def every_text() -> list[tuple[str, str]]:
    """All words of the tool, each with the name of its table and its code."""
    return [
        (f"{name}.{code}", text) for name, table in ENGLISH.items() for code, text in table.items()
    ]


def source(part: str) -> str:
    """One file of the page as text."""
    return (ROOT / "web" / part).read_text(encoding="utf-8")


def test_no_word_certifies_anything() -> None:
    promising = [(code, text) for code, text in every_text() if PROMISES.search(text)]
    assert [code for code, text in promising if not text.startswith(DENIES)] == []
    assert [code for code, _ in promising] == ["meter_sheet.not_for"]


def test_every_verdict_that_something_is_beyond_its_limit_says_what_follows() -> None:
    findings = ENGLISH["finding"]
    beyond = {code for code in findings if re.search(r"_over(_bounded)?$", code)}
    beyond |= {"voltage_above", "direct_across_line", "tap_not_allowed"}
    assert len(beyond) > 8
    assert [code for code in sorted(beyond) if not FOLLOWS.search(findings[code])] == []


@pytest.mark.parametrize("code", [code for code in ENGLISH["finding"] if code.endswith("_near")])
def test_near_is_worded_no_reserve(code: str) -> None:
    assert ENGLISH["finding"][code].startswith("No reserve")


def test_too_much_cable_loss_harms_nothing() -> None:
    for code in ("zone_loss_near", "zone_loss_over", "zone_loss_over_bounded"):
        assert "quieter; nothing is harmed" in ENGLISH["finding"][code]


def test_below_the_least_load_it_is_flat_and_inside_the_tolerance_it_is_left_off() -> None:
    verdicts, remedies = ENGLISH["meter_verdict"], ENGLISH["meter_remedy"]
    assert verdicts["do_not_connect"].startswith("Do not connect.")
    assert verdicts["at_the_limit"].startswith("At the limit")
    assert remedies["at_the_limit"] == (
        "Null the leads, lift the other zones, measure again; leave it off."
    )


def test_a_reading_in_order_is_as_expected_and_what_it_cannot_see_is_said() -> None:
    assert ENGLISH["meter_verdict"]["as_expected"].startswith("As expected")
    assert {"wrong_row", "polarity", "earthed_leg"} <= ENGLISH["meter_blind"].keys()
    assert "judges no line" in ENGLISH["meter_verdict"]["agrees_as_set"]


def test_heard_in_a_page_is_never_heard_in_an_emergency() -> None:
    assert "nothing of an emergency" in ENGLISH["finding"]["page_ok"]
    assert "“heard in an emergency”" in PAGE["safety.not_for"]


def test_a_higher_voltage_is_offered_only_with_all_that_must_be_redone() -> None:
    for words in (ENGLISH["choice"]["rescue_higher_voltage"], ENGLISH["what_if"]["caution"]):
        assert all(part in words.lower() for part in ("every tap", "every control", "wiring class"))


def test_before_the_first_act_the_line_is_dead_and_the_fire_panel_asked_about() -> None:
    cautions = ENGLISH["meter_caution"]
    for words in (
        f"{cautions['prove_dead']} {cautions['fire_panel']}",
        PAGE["ladder.before_touch"],
    ):
        assert re.search(r"lock(ed)? (the amplifier )?off", words, re.IGNORECASE)
        assert "dead at the box" in words
        assert "fire panel" in words
        assert "leave" in words
        assert "retest" in words


@pytest.mark.parametrize("part", ["ladder_bench.js", "point_bench.js", "swap_bench.js"])
def test_the_caution_stands_wherever_a_hand_goes_to_the_line(part: str) -> None:
    assert "${beforeTouch()}" in source(f"parts/{part}")


def test_what_hangs_overhead_is_cautioned_where_a_loudspeaker_is_changed() -> None:
    assert 'say("safety.overhead")' in source("parts/swap_bench.js")


def test_every_word_of_safety_is_shown_on_the_screen_about() -> None:
    shown = source("parts/about.js")
    assert [code for code in PAGE if code.startswith("safety.") and f'"{code}"' not in shown] == []

"""Readings taken alike that contradict each other: what was read last is judged."""

from typing import Any

import pytest

from tests.meter.asked import ask, plain, reading
from tests.meter.lines import line_a

LINE = line_a(output={"min_load_ohm": 83.0})


def said(*values: Any, **more: Any) -> dict[str, Any]:
    """What is said of readings of the zone, kept in this order."""
    readings = [
        {**reading(value, **more), "id": f"r{number}"} for number, value in enumerate(values, 1)
    ]
    return ask("diagnose", job=plain(LINE), where={"zone": "zone"}, readings=readings)


def test_a_short_read_after_a_sound_line_is_told_and_ranked_as_a_short() -> None:
    told = said("101.5", "5.3")
    assert (told["headline"], told["verdict"]) == ("Do not connect", "over")
    assert told["bundles"][0]["fault"] == "short"
    assert [one["code"] for one in told["expected"]] == ["set_aside", "do_not_connect"]


def test_both_readings_are_named_with_the_one_that_counts() -> None:
    told = said("101.5", "5.3")
    [pair] = told["contradictions"]
    assert pair["readings"] == ["r1", "r2"]
    assert "read 102 Ω then, 5.3 Ω now. The line has changed between" in pair["words"]
    [aside, _] = told["expected"]
    assert (aside["mark"], aside["verdict"], aside["band"]) == ("set aside", "note", None)
    assert aside["remedy"].startswith("Remove it")


@pytest.mark.parametrize("before", [("175", "5.3", "5.3"), ("101.5", "95", "5.3"), ("5.3",)])
def test_what_was_set_aside_weighs_nothing(before: tuple[str, ...]) -> None:
    told, alone = said(*before), said(*(one for one in before if one == "5.3"))
    assert [one["words"] for one in told["bundles"]] == [one["words"] for one in alone["bundles"]]
    assert told["headline"] == alone["headline"]


def test_after_the_repair_the_old_short_no_longer_says_do_not_connect() -> None:
    told = said("5.3", "101.5")
    assert told["headline"] == "As expected"
    assert [one["code"] for one in told["expected"]] == ["set_aside", "as_expected"]
    assert "Do not connect" not in str(told["expected"])


@pytest.mark.parametrize("now", ["0", "OL"])
def test_a_short_and_an_open_line_contradict_a_number(now: str) -> None:
    told = said("101.5", now)
    assert [one["readings"] for one in told["contradictions"]] == [["r1", "r2"]]
    assert told["bundles"][0]["fault"] == said(now)["bundles"][0]["fault"]


def test_what_the_tolerance_of_the_meter_joins_is_not_set_aside() -> None:
    # 5 % either way each time: 101.5 to 106.6 and 104.5 to 115.5 ohm have readings in common
    told = said("101.5", "110", tolerance_pct=5.0)
    assert told["contradictions"] == []
    assert "set_aside" not in [one["code"] for one in told["expected"]]
    apart = said("101.5", "113", tolerance_pct=5.0)
    assert [one["readings"] for one in apart["contradictions"]] == [["r1", "r2"]]


def test_readings_taken_otherwise_contradict_nothing_by_themselves() -> None:
    windings = {**reading("5.3", quantity="dc_ohm"), "id": "r2"}
    told = ask("diagnose", job=plain(line_a()), where={"zone": "zone"},
               readings=[reading("101.5"), windings])  # fmt: skip
    assert "set_aside" not in [one["code"] for one in told["expected"]]

"""A control that cannot be bypassed stays in a meter's way: nobody is asked to bypass it."""

from typing import Any

import pytest

from tests.meter.asked import ask, plain
from tests.meter.test_faults import branched
from tests.meter.test_records import kept

# By what is written of the control: whether a page can bypass it.
CAN, UNKNOWN, CANNOT = True, None, False


def job_with(*overrides: bool | None) -> dict[str, Any]:
    """A line of six with a control for each, one behind the other."""
    job = plain(branched())
    line = job["zones"][0]["line"]
    at = next(place for place, one in enumerate(line) if one["id"] == "c")
    first = line[at]
    made = []
    for number, override in enumerate(overrides):
        fitted = {**first["fitted"], "override": override, "label": f"Dial {number + 1}"}
        after = f"c{number - 1}" if number else first["after"]
        made.append({**first, "id": f"c{number}", "after": after, "fitted": fitted})
    line[at : at + 1] = made
    for one in line:
        if one.get("after") == "c":
            one["after"] = made[-1]["id"]
    return job


def steps_of(*overrides: bool | None) -> dict[str, dict[str, Any]]:
    """The first test of that line, by step."""
    told = ask("first_test", job=job_with(*overrides), since="2026-03-02")
    zone = next(one for one in told["zones"] if one["zone"] == "zone")
    return {step["code"]: step for step in zone["steps"]}


@pytest.mark.parametrize("override", [CAN, UNKNOWN])
def test_a_control_that_can_be_bypassed_is_for_the_ohmmeter_and_proved_by_a_page(
    override: bool | None,
) -> None:
    steps = steps_of(override)
    assert steps["direct"]["words"].startswith("Bypass every control")
    assert steps["direct"]["reading"] == {"quantity": "dc_ohm", "controls": "override"}
    assert "Ω" in steps["direct"]["expects"]
    assert list(steps)[-1] == "impedance_override"
    assert "Override off again" in steps["impedance_open"]["words"]


def test_where_none_can_be_bypassed_nobody_is_asked_to() -> None:
    steps = steps_of(CANNOT)
    assert "impedance_override" not in steps
    words = [step["words"] for step in steps.values()]
    assert not any("Bypass every" in each or "Override off" in each for each in words)
    direct = steps["direct"]
    assert direct["words"].startswith("Cannot be bypassed: Dial 1. Leave full up.")
    assert "hides what lies behind" in direct["words"]
    assert direct["reading"] == {"quantity": "dc_ohm", "controls": "open"}
    assert direct["expects"] == "neither a short nor open"
    assert "sees through a control" in steps["impedance_open"]["words"]


def test_where_only_some_can_be_bypassed_the_others_are_named_and_left_full_up() -> None:
    steps = steps_of(CAN, CANNOT)
    assert "Dial 2 cannot: leave full up" in steps["direct"]["words"]
    assert "Dial 1" not in steps["direct"]["words"]
    assert steps["direct"]["reading"]["controls"] == "open"
    assert "Dial 2 cannot: leave full up" in steps["impedance_override"]["words"]


def test_an_ohmmeter_behind_a_control_that_stays_in_is_noted_and_judges_nothing() -> None:
    job = job_with(CANNOT)
    read = kept("r1", 3.0, quantity="dc_ohm")
    told = ask("first_test", job={**job, "readings": [read]}, since="2026-03-02")
    zone = next(one for one in told["zones"] if one["zone"] == "zone")
    record = next(step["record"] for step in zone["steps"] if step["code"] == "direct")
    assert record["reading"] == "r1"
    assert record["verdict"] not in ("ok", "over", "near")


def test_what_cannot_be_measured_is_not_told_as_what_it_should_read() -> None:
    def told(*overrides: bool | None) -> set[tuple[str, str]]:
        heads = ask("expected", job=job_with(*overrides), where={"zone": "zone"})["heads"]
        return {(one["quantity"], one["controls"]) for one in heads}

    tones = {("z_1k_ohm", "open"), ("z_1k_ohm", "set")}
    bypassed = {("z_1k_ohm", "override")}
    assert told(CAN) == tones | bypassed | {("dc_ohm", "override")}
    assert told(CAN, CANNOT) == tones | bypassed
    assert told(CANNOT) == tones


def test_the_sheet_asks_for_no_bypass_either_and_says_which_control_it_is() -> None:
    told = ask("sheet", job=job_with(CANNOT), which="test")
    titles = [one["title"] for one in told["tables"] if one["title"].startswith("Zone")]
    assert not any("bypassed" in each or "ohmmeter" in each for each in titles)
    ends = next(one for one in told["tables"] if "at the amplifier" in one["title"])
    assert ends["notes"][0].startswith("Cannot be bypassed: Dial 1.")
    assert not any("bypassed" in row[0]["shown"] for row in ends["rows"])


def test_everything_the_amplifiers_end_should_read_is_one_line_each() -> None:
    for job in (job_with(CAN), job_with(CANNOT), plain(branched())):
        heads = ask("expected", job=job, where={"zone": "zone"})["heads"]
        titles = [one["title"] for one in heads]
        assert len(set(titles)) == len(titles)

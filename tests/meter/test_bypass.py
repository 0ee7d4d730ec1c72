"""A control that cannot be bypassed stays in a meter's way: nobody is asked to bypass it."""

from typing import Any

import pytest

from tests.meter.asked import ask, plain
from tests.meter.lines import AWG_16, job_of, speaker
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


def test_bypassed_is_no_way_the_controls_of_a_line_can_stand_where_none_can_be() -> None:
    def stances(*overrides: bool | None) -> list[str]:
        told = ask("expected", job=job_with(*overrides), where={"zone": "zone"})
        return list(told["controls"])

    assert stances(CANNOT) == ["open", "set"]
    assert stances(CAN, CANNOT) == stances(UNKNOWN) == ["open", "override", "set"]


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


def two_behind_controls(*overrides: bool | None, form: str = "autotransformer") -> dict[str, Any]:
    """Two boxes of 10 W at 100 V with no cable to speak of, each behind a control of its own."""
    points = []
    for number, override in enumerate(overrides, start=1):
        fitted = {
            "is": "attenuator", "label": f"Dial {number}", "set_db": -6.0, "off": False,
            "form": form, "insertion_db": 0.5, "override": override,
        }  # fmt: skip
        points.append({"id": f"c{number}", "after": None, "length_m": 0.0, "fitted": fitted})
        points.append(speaker(number, after=f"c{number}", tap_w=10.0, at_v=100.0, length_m=0.0))
    return plain(job_of(points, line_v=100.0, cable=AWG_16))


def should_read(job: dict[str, Any], controls: str) -> float:
    """Ohms at 1 kHz at the amplifier's end of the zone."""
    heads = ask("expected", job=job, where={"zone": "zone"})["heads"]
    one = next(
        each for each in heads if each["quantity"] == "z_1k_ohm" and each["controls"] == controls
    )
    return float(one["band"]["value"])


def test_what_a_control_that_stays_in_loses_is_in_what_is_read_with_the_others_bypassed() -> None:
    # 10 W at 100 V is 1,000 Ω. Half a decibel in voltage squared is 10^0.05 = 1.1220 (decibel,
    # ISO 80000-3): behind an autotransformer that stays in a box reads 1,122.0 Ω.
    both = pytest.approx(1000.0 / 2, rel=1e-4)
    one_stays = pytest.approx(1 / (1 / 1000.0 + 1 / 1122.02), rel=1e-4)
    stay = pytest.approx(1122.02 / 2, rel=1e-4)
    assert should_read(two_behind_controls(CAN, UNKNOWN), "override") == both
    assert should_read(two_behind_controls(CAN, CANNOT), "override") == one_stays
    assert should_read(two_behind_controls(CANNOT, CANNOT), "open") == stay
    # A pad takes its half decibel in heat: the line feels the whole box (arithmetic).
    assert should_read(two_behind_controls(CAN, CANNOT, form="pad"), "override") == both


def test_a_reading_with_the_others_bypassed_is_judged_with_what_the_one_that_stays_loses() -> None:
    job = two_behind_controls(CAN, CANNOT)
    keep = {
        "do": "keep_reading", "id": "r1", "at": "2026-06-01", "where": {"zone": "zone"},
        "looking": "out", "quantity": "z_1k_ohm", "controls": "override", "tolerance_pct": 5.0,
        "instrument": "m", "read_ohm": 529.0,
    }  # fmt: skip
    job = ask("edit", job=job, command=keep)["job"]
    due = job["readings"][0]["due"]["value"]
    assert due == pytest.approx(1 / (1 / 1000.0 + 1 / 1122.02), rel=1e-3)


def test_a_control_that_stays_in_may_be_left_off_whatever_a_page_bypasses() -> None:
    def suspected(override: bool | None) -> set[tuple[str, str]]:
        read = {"id": "r1", "where": {"zone": "zone"}, "quantity": "z_1k_ohm",
                "value": 1000.0, "controls": "override"}  # fmt: skip
        job = two_behind_controls(CAN, override)
        told = ask("diagnose", job=job, where={"zone": "zone"}, readings=[read])
        return {(one["fault"], str(one["where"].get("point"))) for group in told["groups"]
                for one in group["suspects"]}  # fmt: skip

    assert ("control_off", "c2") in suspected(CANNOT)
    assert ("control_off", "c2") not in suspected(CAN)
    assert ("override_fails", "c2") in suspected(CAN)
    assert ("override_fails", "c2") not in suspected(CANNOT)


def test_an_ohmmeter_sees_only_the_winding_of_a_control_that_stays_though_others_are_bypassed() -> (
    None
):
    def notes(*overrides: bool | None) -> list[str]:
        read = {"id": "r1", "where": {"zone": "zone"}, "quantity": "dc_ohm",
                "value": 30.0, "controls": "override"}  # fmt: skip
        told = ask(
            "diagnose", job=two_behind_controls(*overrides), where={"zone": "zone"}, readings=[read]
        )
        return list(told["expected"][0]["notes"])

    behind = "A control that cannot be bypassed hides the line from an ohmmeter"
    assert notes(CAN, CANNOT)[0].startswith(behind)
    assert not any("hides the line" in each for each in notes(CAN, CAN))

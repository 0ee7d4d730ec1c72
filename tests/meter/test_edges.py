"""What instruments can show that is no plain number, and readings that say little or clash."""

import math
from typing import Any

import pytest

from tests.meter.asked import ask, plain, reading
from tests.meter.lines import line_a
from tests.meter.taken import taken, told_by
from tests.meter.test_faults import branched

BEHIND = "Anything behind a control that is turned down: its load hardly shows."


def said(*readings: dict[str, Any], **more: Any) -> dict[str, Any]:
    """The diagnosis of line A."""
    job = more.pop("job", None) or line_a()
    answer = ask("diagnose", job=plain(job), where={"zone": "zone"}, readings=readings, **more)
    assert "problem" not in answer, answer
    return answer


# What is shown, of what, and as what it is sorted before anything is divided by it.
SHOWN = [
    (0.0, "z_1k_ohm", "short"), (-3.0, "z_1k_ohm", "short"), (1e12, "z_1k_ohm", "open"),
    (0.0, "dc_ohm", "short"), (-0.2, "dc_ohm", "short"), (1e12, "dc_ohm", "open"),
    (0.0, "volts", "short"), (-5.0, "volts", "nothing"), (0.0, "amps", "short"),
    (-1.0, "amps", "nothing"), (0.0, "earth_ohm", "number"), (1e12, "earth_ohm", "number"),
    (-1.0, "earth_ohm", "nothing"),
]  # fmt: skip


@pytest.mark.parametrize(("value", "quantity", "sign"), SHOWN)
@pytest.mark.parametrize("place", ["zone", "s1", "s10"])
@pytest.mark.parametrize("looking", ["out", "back"])
def test_whatever_is_shown_is_sorted_and_never_divided_by(
    value: float, quantity: str, sign: str, place: str, looking: str
) -> None:
    told = told_by(line_a(), [taken(place, value, quantity=quantity, looking=looking)])
    assert told.meants[0].sign == sign
    assert all(math.isfinite(one.share) for one in told.suspects)
    assert math.fsum(one.share for one in told.suspects) == pytest.approx(1.0)


@pytest.mark.parametrize("value", [math.inf, math.nan])
def test_what_is_no_number_at_all_is_open_or_nothing(value: float) -> None:
    told = told_by(line_a(), [taken("zone", value)])
    assert told.meants[0].sign == ("open" if math.isinf(value) else "nothing")
    assert math.fsum(one.share for one in told.suspects) == pytest.approx(1.0)


@pytest.mark.parametrize(("leads", "sign"), [(0.3, "short"), (0.31, "short"), (0.29, "number")])
def test_no_more_than_the_leads_is_a_short_wherever_it_is_read(leads: float, sign: str) -> None:
    told = told_by(line_a(), [taken("s3", 0.3)], leads_ohm=leads)
    assert told.meants[0].sign == sign


def test_of_a_meter_that_may_be_all_wrong_nothing_is_inferred() -> None:
    blank = said()
    told = said(reading(12.0, tolerance_pct=100.0))
    assert [one["share"] for one in told["groups"]] == pytest.approx(
        [one["share"] for one in blank["groups"]]
    )
    assert told["expected"][0]["verdict"] == "unknown"
    assert told["expected"][0]["band"] is None or told["expected"][0]["code"] == "tolerance_all"


def test_no_reading_is_better_than_half_a_per_cent() -> None:
    perfect = said(reading(101.5, tolerance_pct=0.0))["expected"][0]
    half = said(reading(101.5, tolerance_pct=0.5))["expected"][0]
    assert perfect["band"] == half["band"]
    assert any("0.5" in one for one in perfect["notes"])


def test_two_readings_that_clash_are_named_and_a_third_is_not_set_aside() -> None:
    third = {**reading(101.5), "id": "r3", "where": {"point": "s10"}, "looking": "back"}
    again = {**reading(55.0), "id": "r2"}
    told = said(reading(101.5), third, again)
    # the third, read from the far end, still fits the sound line: that is told after these two
    pair = told["contradictions"][0]
    assert sorted(pair["readings"]) == ["r1", "r2"]
    assert "102 Ω" in pair["words"]
    assert "55 Ω" in pair["words"]
    assert "S10" not in pair["words"]
    assert "Zone: impedance meter, 1 kHz" in pair["words"]
    assert "r1" not in pair["words"]
    assert [one["code"] == "set_aside" for one in told["expected"]] == [True, False, False]


def test_readings_of_two_places_that_no_fault_joins_are_named() -> None:
    low = {**reading(5.0, tolerance_pct=2.0), "id": "r2", "where": {"point": "s5"}}
    fine = {**reading(500.0, tolerance_pct=2.0), "id": "r3", "where": {"point": "s9"}}
    told = said(reading(101.5, tolerance_pct=2.0), low, fine, load_tolerance_pct=2.0)
    assert {"r2"} <= {each for one in told["contradictions"] for each in one["readings"]}
    assert ["r1", "r2"] in [sorted(one["readings"]) for one in told["contradictions"]]


def test_behind_controls_as_they_stand_nothing_was_seen_and_that_is_said() -> None:
    as_set = reading(150.0, controls="set")
    assert BEHIND in said(as_set, job=branched())["cannot_see"]
    past = {**reading(120.0, controls="override"), "id": "r2"}
    assert BEHIND not in said(as_set, past, job=branched())["cannot_see"]
    assert BEHIND not in said(past, job=branched())["cannot_see"]
    assert BEHIND not in said(as_set)["cannot_see"]  # a line without controls


def test_with_controls_as_set_and_not_bypassed_it_is_never_as_expected() -> None:
    job = branched()
    heads = ask("expected", job=plain(job), where={"zone": "zone"})["heads"]
    [band] = [
        one["band"] for one in heads
        if one["where"] == {"zone": "zone"} and one["controls"] == "set"
        and one["quantity"] == "z_1k_ohm"
    ]  # fmt: skip
    told = said(reading(band["value"], controls="set"), job=job)
    assert told["verdict"] != "ok"
    assert told["expected"][0]["verdict"] != "ok"

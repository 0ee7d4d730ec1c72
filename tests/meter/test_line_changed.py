"""A kept reading is judged by what the line had to read then, not by what was changed since."""

from typing import Any

import pytest

from tests.meter.asked import ask, plain
from tests.meter.lines import line_a

LEAST_OHM = 83.0
KEEP = {
    "do": "keep_reading", "id": "k1", "at": "2026-06-01", "where": {"zone": "zone"},
    "looking": "out", "quantity": "z_1k_ohm", "controls": "override", "tolerance_pct": 5.0,
    "instrument": "m",
}  # fmt: skip


def edited(job: dict[str, Any], **command: Any) -> dict[str, Any]:
    """The job after a command."""
    answer = ask("edit", job=job, command=command)
    assert "problem" not in answer, answer
    return dict(answer["job"])


def kept(read_ohm: float, **more: Any) -> dict[str, Any]:
    """Line A with a reading kept, the least load of its output known."""
    job = plain(line_a(output={"min_load_ohm": LEAST_OHM}))
    return edited(job, **{**KEEP, "read_ohm": read_ohm, **more})


def turned(job: dict[str, Any], *, tap_w: float = 2.5, count: int = 10) -> dict[str, Any]:
    """The job with the taps of its first loudspeakers turned to other watts."""
    speakers = [one["id"] for one in job["zones"][0]["line"]
                if one["fitted"]["is"] == "loudspeaker"]  # fmt: skip
    for point in speakers[:count]:
        job = edited(job, do="set_tap", point=point, tap_w=tap_w, tap_at_v=70.7)
    return job


def record(job: dict[str, Any]) -> dict[str, Any]:
    """What is told of the last reading on any visit."""
    return dict(ask("records", job=job, where={"zone": "zone"})["records"][-1])


def asked_again(job: dict[str, Any]) -> dict[str, Any]:
    """The diagnosis of what is kept, as the page asks for it."""
    names = ("id", "at", "where", "quantity", "value", "controls", "tolerance_pct", "baseline")
    readings = [{name: one[name] for name in names} for one in job["readings"]]
    return ask("diagnose", job=job, where={"zone": "zone"}, readings=readings)


def metered(job: dict[str, Any]) -> list[str]:
    """The codes of what the meter said, as findings of the job."""
    found = ask("findings", job=job)["findings"]
    return [one["code"] for one in found if one["what"] == "meter_reading"]


def test_keeping_a_reading_writes_down_what_was_to_be_read() -> None:
    job = kept(101.5)
    [due] = [one["due"] for one in job["readings"]]
    heads = ask("expected", job=job, where={"zone": "zone"})["heads"]
    band = next(one["band"] for one in heads if one["where"] == {"zone": "zone"})
    assert due == {name: float(f"{band[name]:.4g}") for name in ("value", "low", "high")}


@pytest.mark.parametrize("quantity", ["earth_ohm", "foreign_v", "volts", "amps", "plays"])
def test_where_no_number_is_due_none_is_kept(quantity: str) -> None:
    said = {"read_ohm": 5e6, "foreign_v": 0.1, "read_v": 7.0, "read_a": 0.1, "heard": "well"}
    job = edited(plain(line_a()), **{**KEEP, **said, "quantity": quantity})
    assert job["readings"][0].get("due") is None


def test_a_page_cannot_write_down_itself_what_was_due() -> None:
    job = plain(line_a())
    command = {**KEEP, "read_ohm": 101.5, "due": {"value": 5.0, "low": 4.0, "high": 6.0}}
    assert ask("edit", job=job, command=command)["problem"]["code"]


def test_a_good_reading_stays_what_it_was_when_a_tap_is_turned_later() -> None:
    was = record(kept(101.5))
    assert (was["verdict"], was["mark"]) == ("ok", "as expected")
    now = record(turned(kept(101.5)))
    assert (now["verdict"], now["code"], now["mark"]) == ("note", "line_changed",
                                                          "of the line before")  # fmt: skip
    assert now["band"] == was["band"]
    assert "it was to read 102 Ω then (as expected), now 202 Ω" in now["words"]
    assert now["remedy"] == "Read it again."


def test_a_bad_reading_is_not_made_good_by_a_later_tap() -> None:
    job = kept(190.0)
    assert record(job)["mark"] == "too high"
    after = record(turned(job))
    assert (after["verdict"], after["code"]) == ("note", "line_changed")
    assert "(too high)" in after["words"]
    assert asked_again(turned(job))["verdict"] == "unknown"


def test_what_turns_back_is_the_line_that_was_read() -> None:
    job = kept(101.5)
    assert record(turned(turned(job), tap_w=5.0))["code"] == "as_expected"


def test_a_change_no_meter_could_repeat_leaves_the_reading_as_it_is() -> None:
    # one of ten from 5 W to 4.5 W: 1 % of the load, and a meter repeats within 2 %
    assert record(turned(kept(101.5), tap_w=4.5, count=1))["code"] == "as_expected"


def test_a_reading_of_the_line_before_does_not_feed_the_ranking() -> None:
    job = turned(kept(190.0))
    told = asked_again(job)
    nothing = ask("diagnose", job=job, where={"zone": "zone"}, readings=[])
    assert [one["share"] for one in told["groups"]] == [one["share"] for one in nothing["groups"]]
    assert told["headline"] == "The line has changed: read it again"
    assert "The line has changed since" in told["reason"]


def test_a_reading_without_what_was_due_is_judged_by_the_line_as_it_is() -> None:
    job = turned(kept(101.5))
    old = {**job, "readings": [{**one, "due": None} for one in job["readings"]]}
    assert record(old)["mark"] == "too low"


def test_a_line_read_as_heavy_as_it_was_drawn_is_free_once_it_is_lighter() -> None:
    heavy = turned(plain(line_a(output={"min_load_ohm": LEAST_OHM})), tap_w=7.5)
    job = edited(heavy, **{**KEEP, "read_ohm": 68.0})
    assert metered(job) == ["meter_too_low"]
    assert metered(turned(job)) == []
    assert record(turned(job))["code"] == "line_changed"


def test_no_change_of_taps_takes_back_do_not_connect_of_a_fault() -> None:
    for read_ohm, code in ((0.0, "meter_short"), (5.3, "meter_too_low")):
        job = turned(kept(read_ohm))
        assert metered(job) == [code]
        assert asked_again(job)["headline"] == "Do not connect"
    assert "No change of taps mends what was read" in record(turned(kept(5.3)))["notes"][0]


def test_a_baseline_of_the_line_before_judges_no_reading_of_today() -> None:
    job = turned(kept(101.5, baseline=True))
    job = edited(job, **{**KEEP, "id": "k2", "at": "2026-06-02", "read_ohm": 203.0})
    last = next(one for one in ask("records", job=job, where={"zone": "zone"})["records"]
                if one["reading"] == "k2")  # fmt: skip
    assert last["code"] == "as_expected"
    assert last["notes"] == []
    assert asked_again(job)["odds"] == ask(
        "diagnose", job=plain(line_a()), where={"zone": "zone"})["odds"]  # fmt: skip


def test_a_reading_of_the_line_before_makes_no_baseline() -> None:
    job = turned(kept(101.5))
    offers = ask("records", job=job, where={"zone": "zone"})["offers"]
    assert offers["2026-06-01"]["readings"] == []
    command = {"do": "mark_baseline", "readings": ["k1"], "baseline": True}
    refused = ask("edit", job=job, command=command)
    assert refused["problem"]["code"] == "baseline_not_judged"


def test_a_kept_reading_can_be_handed_back_whole_and_the_job_says_what_was_due() -> None:
    job = turned(kept(101.5))
    [whole] = job["readings"]
    invented = {**whole, "due": {"value": 202.0, "low": 190.0, "high": 220.0}}
    for one in (whole, invented):
        told = ask("diagnose", job=job, where={"zone": "zone"}, readings=[one])
        assert [each["code"] for each in told["expected"]] == ["line_changed"]


def test_a_step_of_a_first_test_is_open_again_when_the_line_has_changed() -> None:
    job = turned(kept(101.5, controls="open"))
    told = ask("first_test", job=job, since="2026-06-01")
    [step] = [one for one in told["zones"][0]["steps"]
              if one["record"] and one["record"]["reading"] == "k1"]  # fmt: skip
    assert step["record"]["code"] == "line_changed"
    refused = ask("edit", job=job, command={"do": "mark_baseline", "readings": ["k1"],
                  "baseline": True, "first_test_since": "2026-06-01"})  # fmt: skip
    assert refused["problem"]["code"].startswith("baseline_not")


def test_the_working_of_an_old_band_says_that_it_was_kept() -> None:
    job = turned(kept(101.5))
    reading = {name: job["readings"][0][name] for name in
               ("id", "at", "where", "quantity", "value", "controls", "tolerance_pct")}  # fmt: skip
    told = ask("expected_working", job=job, where={"zone": "zone"}, reading=reading)
    assert any("the line was to read 102 Ω" in one for one in told["assumptions"])


def test_a_link_takes_along_what_was_due() -> None:
    job = kept(101.5)
    back = ask("read_link", text=ask("write_link", job=job)["text"])["job"]
    assert back["readings"][0]["due"] == job["readings"][0]["due"]


def test_a_line_too_heavy_as_drawn_says_that_what_hangs_on_it_is_too_much() -> None:
    heavy = turned(plain(line_a(output={"min_load_ohm": LEAST_OHM})), tap_w=7.5)
    told = asked_again(edited(heavy, **{**KEEP, "read_ohm": 68.0}))
    assert told["headline"] == "Do not connect"
    assert told["bundles"][0]["fault"] == "healthy"
    assert "what hangs on it is too much" in told["reason"]
    faulty = asked_again(kept(60.0))
    assert faulty["headline"] == "Do not connect"
    assert "what hangs on it" not in faulty["reason"]

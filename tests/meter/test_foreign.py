"""Foreign volts: found before anything else, kept with the job, and no evidence of any fault.

Up to 1 V counts as none: common practice, no source. That a line is proved dead before it is
measured is the order of every first test (common practice, no source).
"""

import json
from typing import Any

import pytest

from pycore.carry.link import read_link, write_link
from pycore.door import handle
from pycore.edit import apply, read_command
from pycore.jobs import Job, Reading
from tests.carry.acts import BASE
from tests.carry.test_merge import merged, with_records
from tests.meter.asked import ask, plain, reading
from tests.meter.lines import line_a
from tests.meter.taken import taken, told_by
from tests.meter.test_faults import branched
from tests.meter.test_records import first_test, kept, records

NONE, LIVE = "foreign_none", "foreign_live"


def volts(name: str, value: Any, **more: Any) -> dict[str, Any]:
    """Foreign volts of the zone at the amplifier's end, as they are kept."""
    return kept(name, value, quantity="foreign_v", controls="set", **more)


def steps_of(*readings: dict[str, Any]) -> dict[str, Any]:
    """The steps of a first test of line A by their codes."""
    told = first_test(*readings)
    return {step["code"]: step for step in told["zones"][0]["steps"]}


def test_the_first_test_asks_for_foreign_volts_as_a_reading() -> None:
    step = steps_of()["foreign"]
    assert step["reading"] == {"quantity": "foreign_v", "controls": "set"}
    assert step["expects"] == "none: at most 1 V"
    assert step["stop"] == ""


@pytest.mark.parametrize(
    ("read", "code", "verdict"),
    [(0.0, NONE, "ok"), (0.4, NONE, "ok"), (1.0, NONE, "ok"), (1.01, LIVE, "over"),
     (40.0, LIVE, "over"), (230.0, LIVE, "over"), (1e12, LIVE, "over")],
)  # fmt: skip
def test_up_to_one_volt_counts_as_none_and_above_it_everything_stops(
    read: float, code: str, verdict: str
) -> None:
    steps = steps_of(volts("r1", read))
    record = steps["foreign"]["record"]
    assert (record["code"], record["verdict"]) == (code, verdict)
    assert steps["isolated"]["stop"] == ""
    later = [steps[code]["stop"] for code in ("foreign", "controls", "earth", "direct")]
    assert all(one.startswith("Stop") == (code == LIVE) for one in later)
    if code == LIVE:
        assert "Touch nothing" in record["remedy"]
        assert record["words"].startswith("Stop")
    assert any("common practice, no source" in note for note in record["notes"])


def test_once_it_is_found_and_gone_the_test_goes_on() -> None:
    steps = steps_of(volts("r1", 48.0), volts("r2", 0.1))
    assert steps["foreign"]["record"]["shown"] == "0.1 V"
    assert all(one["stop"] == "" for one in steps.values())
    again = steps_of(volts("r2", 0.1), volts("r1", 48.0))
    assert again["earth"]["stop"]


def test_without_it_a_first_test_is_not_whole() -> None:
    others = (
        kept("r1", 2e6, quantity="earth_ohm"), kept("r2", 6.5, quantity="dc_ohm"),
        kept("r3", 101.0),
    )  # fmt: skip
    assert not first_test(*others)["whole"]
    assert first_test(volts("r0", 0.0), *others)["whole"]


def test_a_record_of_it_says_what_it_is_without_controls_it_has_nothing_to_do_with() -> None:
    [told] = records(volts("r1", 1e12))["records"]
    assert told["title"] == "Zone: foreign volts"
    assert told["what"] == "foreign volts"
    assert told["how"] == ""
    assert told["shown"] == "more than the meter can show"


def keep(**said: Any) -> Job:
    """Line A with foreign volts written down."""
    command = {
        "do": "keep_reading", "id": "r1", "at": "2026-11-25", "where": {"zone": "zone"},
        "looking": "out", "quantity": "foreign_v", "controls": "set", **said,
    }  # fmt: skip
    return apply(line_a(), read_command(json.dumps(command)))


@pytest.mark.parametrize(
    ("said", "value"),
    [({"foreign_v": 0.0}, 0.0), ({"foreign_v": -24.0}, 24.0), ({"over_range": True}, 1e12)],
)
def test_it_is_kept_without_the_sign_of_the_leads(said: dict[str, Any], value: float) -> None:
    [one] = keep(**said).readings
    assert (one.quantity, one.value) == ("foreign_v", value)
    dropped = apply(keep(**said), read_command('{"do": "drop_reading", "reading": "r1"}'))
    assert dropped.readings == ()


@pytest.mark.parametrize("text", ["-24", "24 V", "24", "0,2", "OL", "1e400", "volts", "1,500", "∞"])
def test_whatever_is_typed_for_it_is_read_or_is_a_problem_with_a_remedy(text: str) -> None:
    job, where = plain(line_a()), {"zone": "zone"}
    told = ask("diagnose", job=job, where=where, readings=[reading(text, quantity="foreign_v")])
    if "problem" in told:
        assert told["problem"]["remedy"]
        assert text in ("1e400", "volts", "1,500")
    else:
        live = told["expected"][0]["code"] == LIVE
        assert live == (text != "0,2")
        assert told["expected"][0]["shown"] in (
            "24 V",
            "0.2 V",
            "more than the meter can show",
        )


@pytest.mark.parametrize("value", ["1e400", "NaN", "Infinity", '"well"', "null", "-1", "1e13"])
def test_a_hostile_value_is_refused_at_the_door(value: str) -> None:
    job = {**plain(line_a()), "readings": [volts("r1", 77.125)]}
    request = {"n": 1, "ask": "findings", "manner": {"language": "en"}, "body": {"job": job}}
    text = json.dumps(request)
    assert "problem" not in json.loads(handle(text))
    assert json.loads(handle(text.replace("77.125", value)))["problem"]["remedy"]


def odds(*readings: Any) -> list[tuple[object, float]]:
    """Every suspect with its share."""
    return [(one.key, one.share) for one in told_by(line_a(), readings).suspects]


def foreign(place: str, value: float, **more: Any) -> Any:
    """Foreign volts of a place."""
    return taken(place, value, quantity="foreign_v", controls="set", **more)


@pytest.mark.parametrize("value", [0.0, 0.9, 70.7, 1e12])
@pytest.mark.parametrize("place", ["zone", "out", "s4"])
def test_it_moves_no_odds_at_all(value: float, place: str) -> None:
    ohms = taken("zone", 201.0)
    assert odds(foreign(place, value), ohms) == odds(ohms)


def test_it_is_neither_the_near_volts_of_a_far_reading_nor_makes_amperes_ohms() -> None:
    far = taken("s10", 60.0, quantity="volts", controls="set")
    amps = taken("zone", 0.35, quantity="amps", controls="set")
    told = told_by(line_a(), [foreign("zone", 70.7), far, amps])
    assert told.proof.evidence == []
    assert told.collected.notes[far.id] == ("no_near_volts",)
    assert told.collected.notes[amps.id] == ("amps_alone",)


def test_the_next_reading_is_the_same_with_a_dead_line_and_none_with_a_live_one() -> None:
    ohms = taken("zone", 201.0)
    plainly, dead = told_by(line_a(), [ohms]), told_by(line_a(), [ohms, foreign("zone", 0.2)])
    assert plainly.next is not None
    assert dead.next is not None
    assert dead.next.test == plainly.next.test
    assert told_by(line_a(), [ohms, foreign("zone", 12.0)]).next is None


def test_a_live_line_goes_before_all_else_that_was_found() -> None:
    job = plain(line_a(output={"min_load_ohm": 83.3}))
    low = reading(50.0)
    fed = {**reading("24", quantity="foreign_v"), "id": "r2"}
    told = ask("diagnose", job=job, where={"zone": "zone"}, readings=[low, fed])
    assert told["headline"] == "Stop: the line is not dead"
    assert told["verdict"] == "over"
    assert told["reason"].startswith("Read: 24 V. Touch nothing on it.")
    assert told["next"] is None
    assert told["next_reason"].startswith("Nothing more is measured")
    gone = {**fed, "id": "r3", "value": "0.1"}
    after = ask("diagnose", job=job, where={"zone": "zone"}, readings=[low, fed, gone])
    assert after["headline"] == "Do not connect"


def test_the_latest_of_each_place_counts_and_another_zone_is_its_own_matter() -> None:
    job = branched()
    here, there = (zone.id for zone in job.zones)

    def live(*readings: Any) -> bool:
        return told_by(job, readings, where={"zone": here}).live

    assert live(foreign(here, 9.0))
    assert live(foreign(job.zones[0].line[1].id, 9.0), foreign(here, 0.0))
    assert live(foreign(job.zones[0].output or "", 9.0))
    assert not live(foreign(there, 9.0))
    assert not live(foreign(here, 9.0, at="2026-01-01"), foreign(here, 0.0, at="2026-01-02"))
    assert live(foreign(here, 0.0, at="2026-01-01"), foreign(here, 9.0, at="2026-01-02"))


def test_it_travels_in_a_link_and_is_united_by_a_merge() -> None:
    job = keep(foreign_v=40.0)
    assert read_link(write_link(job, "0.1.0")).job.readings == job.readings
    one, other = (
        Reading.model_validate(volts(name, 0.3, where={"zone": BASE.zones[0].id}))
        for name in ("r1", "r2")
    )
    result = merged(with_records(BASE, one), with_records(BASE, other), BASE)
    assert {each.id for each in result.readings} == {"r1", "r2"}

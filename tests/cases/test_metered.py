"""What a meter said of a line that must not be connected reaches its zone and its job."""

from typing import Any

import pytest

from pycore.jobs import Job
from tests.meter.asked import ask, plain
from tests.meter.lines import line_a

LEAST_OHM = 83.0


def kept(name: str, value: float, **more: Any) -> dict[str, Any]:
    """A reading of the zone at the amplifier's end, kept with the job."""
    return {
        "id": name, "at": "2026-06-01", "where": {"zone": "zone"}, "looking": "out",
        "quantity": "z_1k_ohm", "value": value, "controls": "override", "tolerance_pct": 5.0,
        "instrument": "m", "baseline": False, **more,
    }  # fmt: skip


def seen(*readings: dict[str, Any], job: Job | None = None) -> dict[str, Any]:
    """The findings and faces of line A with these readings."""
    whole = {**plain(job or line_a(output={"min_load_ohm": LEAST_OHM})), "readings": [*readings]}
    answer = ask("findings", job=whole)
    assert "problem" not in answer, answer
    return answer


def metered(answer: dict[str, Any]) -> list[dict[str, Any]]:
    """The findings of the meter."""
    return [one for one in answer["findings"] if one["what"] == "meter_reading"]


def test_a_reading_below_the_least_load_leads_the_zone_and_the_job() -> None:
    faces = seen(kept("r1", 5.3))["faces"]
    assert (faces["job"]["verdict"], faces["job"]["headline"]) == (
        "over",
        "The meter says: do not connect",
    )
    words = "The meter says: do not connect. Zone reads 5.3 Ω, below the 83 Ω this output can bear."
    assert faces["job"]["reason"] == words
    for place in ("zone", "out", "amp"):
        assert faces["things"][place]["verdict"] == "over"
        assert faces["things"][place]["reason"] == words
    assert faces["things"]["zone"]["verdict_words"] == "do not connect"


@pytest.mark.parametrize(
    "reading",
    [
        kept("r1", 0.0),
        kept("r1", 0.0, quantity="dc_ohm"),
        kept("r1", 0.0, where={"point": "s4"}),
        kept("r1", 0.0, where={"output": "out"}),
    ],
)
def test_a_short_is_told_wherever_and_by_whatever_it_was_read(reading: dict[str, Any]) -> None:
    [finding] = metered(seen(reading))
    assert finding["code"] == "meter_short"
    assert finding["remedy"].startswith("Leave the amplifier off")


def test_what_is_read_last_in_the_same_way_counts() -> None:
    assert metered(seen(kept("r1", 5.3), kept("r2", 101.5))) == []
    assert len(metered(seen(kept("r1", 101.5), kept("r2", 5.3)))) == 1
    # with the controls as they stand it is another line that the meter sees
    assert len(metered(seen(kept("r1", 5.3), kept("r2", 101.5, controls="set")))) == 1


def test_what_is_sound_or_was_never_measured_finds_nothing() -> None:
    assert metered(seen()) == []
    assert metered(seen(kept("r1", 101.5))) == []
    far = kept("r1", 5.3, where={"point": "s9"}, looking="back")  # a part of the line only
    assert metered(seen(far)) == []


def test_where_the_least_load_is_not_known_only_a_short_is_told() -> None:
    unknown = line_a()
    assert metered(seen(kept("r1", 5.3), job=unknown)) == []
    [finding] = metered(seen(kept("r1", 0.0), job=unknown))
    assert finding["limit"] is None


def test_a_least_load_worked_out_from_watts_is_printed_short_and_opens() -> None:
    job = {**plain(line_a(output={"max_w": 75.0})), "readings": [kept("r1", 5.3)]}
    [finding] = metered(ask("findings", job=job))
    # 70.7 V squared over 75 W
    assert finding["shown"]["limit"] == "66.6 Ω"
    [made] = ask("working", job=job, finding=finding["id"])["steps"]
    assert (made["title"], made["result"]) == ("The least this output can bear", "66.6 Ω")


def test_an_overload_leads_a_zone_whose_cable_also_loses_too_much() -> None:
    job = plain(line_a(output={"max_w": 40.0}, limits={"loss_db": 0.03}))  # 50 W on it
    faces = ask("findings", job=job)["faces"]
    findings = {one["what"]: one["verdict"] for one in ask("findings", job=job)["findings"]}
    assert (findings["zone_loss_db"], findings["output_load_w"]) == ("over", "over")
    assert "too much" in faces["things"]["zone"]["reason"]
    assert faces["things"]["zone"]["verdict_words"] == "too much"
    assert faces["job"]["headline"] == "Too much"


def volts(name: str, value: float, **more: Any) -> dict[str, Any]:
    """Foreign volts at the lifted end of the zone."""
    return kept(name, value, quantity="foreign_v", controls="set", **more)


def test_a_line_that_was_found_live_leads_the_zone_and_the_job_before_all_else() -> None:
    answer = seen(kept("r1", 5.3), volts("r2", 48.0))
    faces = answer["faces"]
    assert faces["job"]["headline"] == "The meter says: the line is not dead"
    words = "Stop: the line at Zone is not dead. Touch nothing on it: 48 V was read, where 1 V is"
    words += " the most."
    for place in ("zone", "out", "amp"):
        assert faces["things"][place]["verdict"] == "over"
        assert faces["things"][place]["reason"] == words
    assert faces["things"]["zone"]["verdict_words"] == "not dead"
    first = answer["findings"][0]
    assert (first["what"], first["value"], first["unit"]) == ("foreign_v", 48.0, "v")
    assert first["remedy"].startswith("Find where it comes from")
    assert [one["what"] for one in answer["findings"]].index("meter_reading") == 1


def test_volts_more_than_the_meter_can_show_are_no_number_but_a_live_line() -> None:
    answer = seen(volts("r1", 1e12, where={"point": "s4"}))
    first = answer["findings"][0]
    assert (first["code"], first["value"]) == ("meter_live_beyond", None)
    assert answer["faces"]["things"]["zone"]["verdict"] == "over"


def test_volts_are_judged_by_what_was_read_last_at_their_place() -> None:
    def live(*readings: dict[str, Any]) -> list[str]:
        return [one["code"] for one in seen(*readings)["findings"] if one["what"] == "foreign_v"]

    assert live(volts("r1", 0.4)) == []
    assert live(volts("r1", 48.0), volts("r2", 0.1)) == []
    assert live(volts("r1", 0.1), volts("r2", 48.0)) == ["meter_live"]
    elsewhere = volts("r2", 0.1, where={"point": "s4"})
    assert live(volts("r1", 48.0), elsewhere) == ["meter_live"]

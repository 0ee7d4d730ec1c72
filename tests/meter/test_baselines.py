"""A baseline is made only of what is in order: the core refuses, whatever a page asks.

Line A reads 101.5 ohm at 1 kHz with its cable (independent ladder solver, `tests/meter/outside`).
"""

from typing import Any

import pytest

from tests.meter.asked import ask, plain
from tests.meter.lines import line_a
from tests.meter.test_records import kept

DAY = "2026-03-02"
WHOLE = (
    kept("r0", 0.2, quantity="foreign_v", controls="set"),
    kept("r1", 2e6, quantity="earth_ohm"),
    kept("r2", 6.5, quantity="dc_ohm"),
    kept("r3", 101.0),
)


def mark(*readings: dict[str, Any], ids: list[str] | None = None, **more: Any) -> dict[str, Any]:
    """What the door answers to a command that makes readings the baseline."""
    job = {**plain(line_a()), "readings": list(readings)}
    marked = ids or [one["id"] for one in readings]
    command = {"do": "mark_baseline", "readings": marked, "baseline": True, **more}
    return ask("edit", job=job, command=command)


def baselines(answer: dict[str, Any]) -> list[str]:
    """The readings that are marked in an answer."""
    return [one["id"] for one in answer["job"]["readings"] if one["baseline"]]


def test_readings_in_order_become_the_baseline() -> None:
    assert baselines(mark(*WHOLE, first_test_since=DAY)) == ["r0", "r1", "r2", "r3"]


# 124 ohm is 22 % above line A: what one dead of six reads; 5 kohm is a leg that touches earth
@pytest.mark.parametrize(
    ("value", "quantity"), [(124.0, "z_1k_ohm"), (250.0, "z_1k_ohm"), (5e3, "earth_ohm")]
)
def test_a_reading_out_of_order_is_refused_and_named(value: float, quantity: str) -> None:
    problem = mark(kept("r1", value, quantity=quantity))["problem"]
    assert problem["code"] == "baseline_not_in_order"
    assert "Zone" in problem["words"]
    assert problem["remedy"]


def test_what_is_in_order_is_no_baseline_beside_something_red_of_that_day() -> None:
    red = kept("r4", 5e3, quantity="earth_ohm")
    assert mark(*WHOLE, red, ids=["r3"])["problem"]["code"] == "baseline_not_in_order"
    another_day = {**red, "at": "2026-03-01"}
    assert baselines(mark(*WHOLE, another_day, ids=["r3"])) == ["r3"]


def test_a_reading_measured_again_hinders_nothing_but_is_no_baseline_itself() -> None:
    was, again = kept("r1", 124.0), kept("r2", 101.0)
    assert baselines(mark(was, again, ids=["r2"])) == ["r2"]
    assert mark(was, again)["problem"]["code"] == "baseline_not_in_order"


def test_a_loudspeaker_heard_to_be_silent_hinders_the_baseline() -> None:
    silent = kept("h", "silent", quantity="plays", where={"point": "s3"})
    problem = mark(kept("r1", 101.0), silent, ids=["r1"])["problem"]
    assert "S3: heard silent" in problem["words"]
    well = {**silent, "value": "well"}
    assert baselines(mark(kept("r1", 101.0), well, ids=["r1"])) == ["r1"]


def test_what_cannot_be_judged_is_no_baseline() -> None:
    problem = mark(kept("r1", 101.0, tolerance_pct=100.0))["problem"]
    assert problem["code"] == "baseline_not_judged"


def test_a_first_test_names_the_steps_a_zone_still_lacks() -> None:
    problem = mark(*WHOLE[1:], first_test_since=DAY)["problem"]
    assert problem["code"] == "baseline_not_whole"
    assert "No foreign volts" in problem["words"]


def test_a_reading_cannot_be_kept_as_a_baseline_at_once_either() -> None:
    command = {**kept("r1", 0), "do": "keep_reading", "read_ohm": 124.0, "baseline": True}
    command.pop("value")
    problem = ask("edit", job=plain(line_a()), command=command)["problem"]
    assert problem["code"] == "baseline_not_in_order"


def test_records_and_the_first_test_say_what_they_offer_and_why_not() -> None:
    def told(name: str, *readings: dict[str, Any], **more: Any) -> dict[str, Any]:
        return ask(name, job={**plain(line_a()), "readings": list(readings)}, **more)

    line = {"where": {"zone": "zone"}}
    assert told("records", *WHOLE, **line)["offers"][DAY]["readings"] == ["r0", "r1", "r2", "r3"]
    red = told("records", *WHOLE, kept("r4", 124.0), **line)["offers"][DAY]
    assert red["readings"] == []
    assert "124 Ω" in red["why"]
    zone = told("first_test", *WHOLE, kept("r4", 124.0), since=DAY)["zones"][0]
    assert zone["baseline"]["readings"] == []
    assert "124 Ω" in zone["baseline"]["why"]

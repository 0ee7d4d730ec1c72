"""A line known only by a count: what is typed of the instrument counts there as anywhere else."""

from typing import Any

import pytest

from tests.meter.asked import ask, said_of

ABOUT = {"count": "10", "tap_w": "5", "line_v": "70.7"}


def told(value: Any, *, ask_for: str = "diagnose", **more: Any) -> dict[str, Any]:
    """What is said of one reading of a line of about ten."""
    one = {
        "id": "r1", "where": {"zone": "about-zone"}, "value": value, "quantity": "z_1k_ohm", **more,
    }  # fmt: skip
    if ask_for == "expected_working":
        return ask(ask_for, about=ABOUT, reading=one)
    return ask(ask_for, about=ABOUT, readings=[one])


@pytest.mark.parametrize(("typed", "number"), [("2", 2.0), ("2,5 %", 2.5), ("10%", 10.0)])
def test_a_typed_tolerance_counts_like_a_number_and_unlike_none(typed: str, number: float) -> None:
    said = told("120", tolerance_pct=typed)
    assert said == told("120", tolerance_pct=number)
    assert said["expected"][0]["band"] != told("120")["expected"][0]["band"]
    assert [one["share"] for one in said["groups"]] != [
        one["share"] for one in told("120")["groups"]
    ]


def test_a_sharper_meter_is_given_a_narrower_band_by_what_the_tolerances_add_up_to() -> None:
    # 20 % for the guessed count, 10 % for loudspeakers, and the meter's own (common practice)
    wide, sharp = told("100", tolerance_pct="10"), told("100", tolerance_pct="1")
    bands = [one["expected"][0]["band"]["tolerance"] for one in (wide, sharp)]
    assert bands[0] - bands[1] == pytest.approx(0.09, abs=1e-9)


@pytest.mark.parametrize(("typed", "number"), [("60", 60.0), ("-10 °C", -10.0), ("140 °F", 60.0)])
def test_a_typed_temperature_of_the_cable_counts_too(typed: str, number: float) -> None:
    said = told("1.2", temperature_c=typed)
    assert said == told("1.2", temperature_c=number)
    cold = told("1.2")
    reads = [one["expected"][0]["band"]["value"] for one in (said, cold)]
    assert (reads[0] > reads[1]) == (number > 30)  # the job's own 30 °C where nothing is typed


def test_nothing_typed_is_what_is_usual() -> None:
    assert told("120", tolerance_pct="", temperature_c=" ") == told("120", tolerance_pct=5.0)


@pytest.mark.parametrize(
    ("field", "typed"),
    [("tolerance_pct", "good"), ("tolerance_pct", "-2"), ("tolerance_pct", "1e400"),
     ("tolerance_pct", "2000"), ("temperature_c", "warm"), ("temperature_c", "500"),
     ("temperature_c", "-273"), ("tolerance_pct", "1,500"), ("leads_ohm", "-1"),
     ("leads_ohm", "long"), ("leads_ohm", "1k")],
)  # fmt: skip
def test_what_cannot_be_is_a_problem_at_its_field(field: str, typed: str) -> None:
    problem = told("120", **{field: typed})["problem"]
    assert problem["where"] == {"field": f"readings.0.{field}"}
    assert problem["remedy"]


def test_the_working_of_its_band_says_that_the_tolerance_was_typed() -> None:
    def meter_step(**more: Any) -> str:
        steps = told("120", ask_for="expected_working", **more)["steps"]
        return str(
            [one for step in steps for one in step["inputs"] if one["name"] == "meter tolerance"]
        )

    assert "entered" in meter_step(tolerance_pct="2")
    assert "entered" not in meter_step()
    assert "entered" not in meter_step(tolerance_pct="")


@pytest.mark.parametrize(
    ("typed", "less"), [("0.3", 0.3), ("0,3 Ω", 0.3), ("300 mΩ", 0.3), ("", 0.0)]
)
def test_typed_leads_are_taken_off_and_no_more_than_leads_is_a_short(
    typed: str, less: float
) -> None:
    said, plainly = told(1.5, leads_ohm=typed), told(1.5 - less)
    assert said["expected"][0]["deviation"] == plainly["expected"][0]["deviation"]
    assert said["groups"] == plainly["groups"]
    if less:
        short = told(0.3, leads_ohm=typed)["expected"][0]
        assert any("short" in note for note in short["notes"])
    assert told("OL", leads_ohm=typed)["groups"] == told("OL")["groups"]
    volts: dict[str, Any] = {"quantity": "volts", "where": {"zone": "about-zone"}}
    assert told("50", leads_ohm=typed, **volts)["expected"][0]["shown"] == "50 V"


def test_what_is_found_on_a_bare_count_is_found_by_a_rough_count_and_says_what_it_rests_on() -> (
    None
):
    # 10 of 5 W at 70.7 V are 100 ohm; what reads a thousand times that is no longer connected
    found = told("99999")
    assert found["headline"] == "Found, by a rough count"
    assert found["reason"].startswith(found["groups"][0]["suspects"][0]["words"])
    assert "This rests on the count as it was typed" in found["reason"]
    open_yet = told("168")
    assert open_yet["headline"] != "Found, by a rough count"
    assert "count as it was typed" not in open_yet["reason"]


def test_the_same_found_on_a_drawn_line_is_found_without_a_rough_count() -> None:
    drawn = said_of("99999")
    assert drawn["headline"] == "Found"
    assert "count as it was typed" not in drawn["reason"]

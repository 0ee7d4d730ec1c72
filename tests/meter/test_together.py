"""Alike faults that no reading so far tells apart lead the list together.

Six of 10 W on 100 V are 167 ohm by Ohm's law; with one of them dead 200 ohm, a fifth more.
"""

from typing import Any

import pytest

from pycore.jobs import Job
from tests.meter.asked import ask, plain, reading
from tests.meter.lines import chain, job_of

SIX_OHM, FIVE_OHM = 100.0**2 / 60, 100.0**2 / 50


def six() -> Job:
    """Six of 10 W on 100 V, on thick cable."""
    points = chain(6, tap_w=10.0, at_v=100.0, first_m=20.0, step_m=8.0)
    return job_of(points, line_v=100.0, cable={"area_mm2": 1.5, "class": 5})


def told(*values: float, **more: Any) -> dict[str, Any]:
    """What is said of readings at the amplifier's end."""
    readings = [reading(value, id=f"r{number}") for number, value in enumerate(values)]
    where = {"zone": "zone"}
    answer = ask("diagnose", job=plain(six()), where=where, readings=readings, **more)
    assert "problem" not in answer, answer
    return answer


def test_one_dead_of_six_leads_though_each_of_them_is_less_likely_than_nothing() -> None:
    answer = told(FIVE_OHM * 1.01)
    lead = answer["bundles"][0]
    healthy = next(one for one in answer["bundles"] if one["fault"] == "healthy")
    assert lead["words"] == "One of these 6 is dead: S1, S2, S3, S4, S5, S6."
    assert all(group["share"] < healthy["share"] for group in answer["groups"][1:])
    assert answer["headline"] == "Most likely"
    assert answer["reason"] == lead["words"]


def test_bundles_are_the_same_groups_so_that_shares_stay_what_they_were() -> None:
    answer = told(FIVE_OHM * 1.01)
    groups = answer["groups"]
    listed = sorted(number for one in answer["bundles"] for number in one["groups"])
    assert listed == sorted(set(listed))
    for one in answer["bundles"]:
        if len(one["groups"]) == len(one["places"]):
            summed = sum(groups[number]["share"] for number in one["groups"])
            assert one["share"] == pytest.approx(summed, rel=1e-12)


@pytest.mark.parametrize("percent", [-40, -25, -16, 16, 18, 20.8, 25, 40, 80])
def test_outside_its_band_nothing_is_wrong_is_never_said_alone(percent: float) -> None:
    answer = told(SIX_OHM * (1 + percent / 100))
    assert answer["expected"][0]["verdict"] in ("near", "over")
    assert answer["headline"] != "As expected"
    if answer["bundles"][0]["fault"] == "healthy":
        assert "outside its band" in answer["reason"]
        assert answer["expected"][0]["words"] in answer["reason"]


def test_what_the_readings_tell_apart_is_not_told_as_one() -> None:
    at_four = reading(100.0**2 / 20, id="r1", where={"point": "s4"})  # two of three
    where = {"zone": "zone"}
    readings = [reading(FIVE_OHM, id="r0"), at_four]
    answer = ask("diagnose", job=plain(six()), where=where, readings=readings)
    dead = [one for one in answer["bundles"] if one["fault"] == "dead"]
    assert {place["point"] for place in dead[0]["places"]} == {"s4", "s5", "s6"}


def test_in_its_band_it_is_as_expected_and_says_what_that_does_not_rule_out() -> None:
    answer = told(SIX_OHM * 1.14)
    assert answer["expected"][0]["code"] == "as_expected"
    assert answer["headline"] == "As expected, or one of 6 is missing"
    assert "One missing of 6 loudspeakers cannot be told apart" in answer["reason"]


def test_without_lengths_or_cable_no_place_is_claimed_for_a_short() -> None:
    about = {"count": "10", "tap_w": "5", "line_v": "70.7"}
    readings = [reading("1.2", where={"zone": "about-zone"})]
    answer = ask("diagnose", about=about, readings=readings)
    assert answer["reason"].startswith("A short, somewhere on the line.")
    assert "not known and were taken as usual" in answer["reason"]
    assert len(answer["bundles"][0]["places"]) == 10
    assert answer["next"] is not None


def test_a_short_on_cable_nobody_knows_has_no_metres() -> None:
    job = plain(six())
    job["zones"][0]["line"][0].pop("cable")
    where = {"zone": "zone"}
    answer = ask("diagnose", job=job, where=where, readings=[reading("0.8")])
    shorts = [one for group in answer["groups"] for one in group["suspects"]]
    assert any(one["fault"] == "short" for one in shorts)
    assert all(one["distance"] is None for one in shorts if one["fault"] == "short")

"""What a line should read can be opened: each step is the one that made the band."""

from typing import Any

import pytest

from pycore.calc.expected import VIEWS, View, band_at, bands, stand_for, tolerances_of
from pycore.calc.expected_story import Looked, tell_band
from pycore.calc.site import Given, site_of
from pycore.calc.wiring import DIRECT_HZ, TEST_HZ, Condition, Controls
from pycore.jobs import Job
from tests.meter.asked import ask, plain, reading
from tests.meter.at import site_at
from tests.meter.lines import AWG_16, chain, job_of, line_a, line_b
from tests.meter.test_faults import branched


def steps_of(job: Job, place: str, view: View, condition: Condition) -> dict[str, float]:
    """The results of a band's steps by code, and the band beside them."""
    site = site_of(job, {"zone": "zone"}, given=Given(10.0, None))
    tolerances = tolerances_of(site, meter_fraction=0.05)
    stand = stand_for(site, site.circuits.wired.node_of[place], view=view)
    band, square = band_at(site, condition, stand=stand, tolerances=tolerances)
    looked = Looked(site.circuits, condition, stand, square, tolerances, frozenset())
    found = {one.code: one.result for one in tell_band(looked)}
    ends = {"value": band.value, "low": band.low, "high": band.high, "whole": band.tolerance}
    return {**found, **{name: one or 0.0 for name, one in ends.items()}}


@pytest.mark.parametrize("controls", ["open", "set", "override"])
@pytest.mark.parametrize("hz", [TEST_HZ, DIRECT_HZ])
@pytest.mark.parametrize("view", VIEWS)
def test_the_steps_end_in_the_band_that_is_shown(controls: Controls, hz: float, view: View) -> None:
    job, condition = branched(), Condition(hz, controls, 20.0)
    site = site_at(job)
    table = bands(site, condition, tolerances=tolerances_of(site, meter_fraction=0.05))[view]
    for place in ("s1", "s2", "s4", "s6"):
        found = steps_of(job, place, view, condition)
        shown = table[site.circuits.wired.node_of[place]]
        assert found["meter_sees"] == pytest.approx(shown.value, rel=1e-9)
        assert found["meter_low"] == pytest.approx(shown.low, rel=1e-9)
        assert found["meter_high"] == pytest.approx(shown.high, rel=1e-9)
        assert found["meter_tolerance"] == pytest.approx(shown.tolerance, rel=1e-9)
        assert found["value"] == pytest.approx(found["meter_sees"], rel=1e-12)
        assert found["low"] == pytest.approx(found["meter_low"], rel=1e-12)


def test_taps_nobody_knows_have_a_step_of_their_own() -> None:
    points = chain(4, tap_w=5.0, at_v=70.7, first_m=30.0, step_m=10.0)
    del points[2]["fitted"]["tap_w"], points[2]["fitted"]["tap_at_v"]
    job = job_of(points, line_v=70.7, cable=AWG_16)
    found = steps_of(job, "zone", "out", Condition(TEST_HZ, "open", 20.0))
    assert found["meter_unknown"] > 0.05
    assert found["meter_load"] == pytest.approx(0.10 + found["meter_unknown"])
    assert found["meter_high"] == pytest.approx(found["high"], rel=1e-12)


def opened(job: Job, **more: Any) -> dict[str, Any]:
    """The ask, of a zone."""
    body = {"job": plain(job), "where": {"zone": "zone"}, **more}
    return ask("expected_working", **body)


# Reference values worked out apart from the core, by a full nodal solve: 101.54 and 102.69 Ω
# with the cable in it, 99.97 and 100.00 Ω without; cable 26.875 Ω/km at 20 °C.
@pytest.mark.parametrize(
    ("job", "bare", "whole"),
    [(line_a(), "100 Ω", "102 Ω"), (line_b(), "100 Ω", "103 Ω")],
)
def test_a_number_opens_from_the_taps_to_the_band(job: Job, bare: str, whole: str) -> None:
    told = opened(job)
    shown = {one["title"]: one for one in told["steps"]}
    assert shown["By watts alone, without cable"]["result"] == bare
    sees = shown["With the cable in it: what the meter sees"]
    assert sees["result"] == whole
    assert told["result"].startswith(f"{whole}; ")
    assert told["title"].endswith("impedance meter, 1 kHz, controls at 0 dB")
    added = shown["Everything the meter sees, its watts added up"]["put_in"]
    assert added in ("10 × 5 W", "40 × 2.5 W")
    assert all(one["source"] and one["formula"] and one["put_in"] for one in told["steps"])
    head = ask("expected", job=plain(job), where={"zone": "zone"})["heads"][1]["band"]
    assert f"{head['shown']}; {head['range']}" == told["result"]


def test_where_a_number_came_from_is_said_of_each() -> None:
    said = opened(line_a(), meter_tolerance_pct=2.0)
    [whole] = [one for one in said["steps"] if one["title"].startswith("Meter, loudspeakers")]
    origins = {one["name"]: one["origin"] for one in whole["inputs"]}
    assert origins["meter tolerance"] != origins["load tolerance"]
    usual = opened(line_a())
    [whole] = [one for one in usual["steps"] if one["title"].startswith("Meter, loudspeakers")]
    assert {one["name"]: one["origin"] for one in whole["inputs"]}["meter tolerance"] == origins[
        "load tolerance"
    ]


@pytest.mark.parametrize("view", VIEWS)
def test_a_column_of_a_box_opens_with_its_own_number(view: View) -> None:
    told = opened(branched(), at="s3", view=view)
    boxes = ask("expected", job=plain(branched()), where={"zone": "zone"})["boxes"]
    [box] = [one for one in boxes if one["point"] == "s3"]
    assert told["result"] == f"{box[view]['shown']}; {box[view]['range']}"
    assert told["title"].startswith("S3, ")


def test_at_direct_current_the_windings_are_told() -> None:
    told = opened(line_a(), quantity="dc_ohm")
    assert (
        "An ohmmeter finds 2 to 10 % of a loudspeaker's impedance (common practice)."
        in (told["assumptions"])
    )
    titles = [one["title"] for one in told["steps"]]
    assert "By windings alone, as they usually are, without cable" in titles


def test_a_reading_of_the_day_opens_by_the_band_it_was_judged_by() -> None:
    job = line_a()
    taken = reading(110.0, tolerance_pct=2.0)
    judged = ask("diagnose", job=plain(job), where={"zone": "zone"}, readings=[taken])
    told = opened(job, reading=taken)
    band = judged["expected"][0]["band"]
    assert told["result"] == f"{band['shown']}; {band['range']}"


def test_a_reading_with_a_baseline_opens_by_the_baseline() -> None:
    kept = {**reading(104.0), "id": "b", "at": "2026-01-01", "tolerance_pct": 5.0}
    kept |= {"looking": "out", "lifted": [], "controls": "open", "baseline": True}
    job = Job.model_validate_json(__import__("json").dumps({**plain(line_a()), "readings": [kept]}))
    told = opened(job, reading=reading(110.0))
    assert [one["title"] for one in told["steps"]] == [
        "The least that still agrees with the baseline",
        "The most that still agrees with the baseline",
    ]
    assert told["result"] == "104 Ω; 102 Ω to 106 Ω"


def test_a_reading_without_a_band_is_a_problem_with_a_remedy() -> None:
    told = opened(line_a(), reading=reading(2.0, quantity="volts"))
    assert told["problem"]["code"] == "meter_no_band"
    assert told["problem"]["remedy"]
    nowhere = opened(line_a(), at="gone")
    assert nowhere["problem"]["code"] == "not_here"


def test_a_line_nobody_has_drawn_opens_too() -> None:
    about = {"count": "10", "tap_w": "5", "line_v": "70,7"}
    told = ask("expected_working", about=about)
    assert "problem" not in told, told
    assert told["steps"]
    assert any("guess" in one for one in told["assumptions"])

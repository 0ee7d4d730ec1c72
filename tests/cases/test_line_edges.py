"""Odd inputs: nothing crashes, nothing lies. What the models refuse is refused at the door."""

import json
import math
from typing import Any

import pytest
from pydantic import ValidationError

from pycore.calc.choice import choose_cable, longest_run
from pycore.calc.line import line_findings
from pycore.calc.line_story import line_working
from pycore.calc.section import NO_CABLE, exact_section, with_joint
from pycore.calc.solve import point_rows, solve_lines
from pycore.ground.problems import BadCommand, BrokenJob
from pycore.ground.words.en_line import CABLES as NAMES
from pycore.jobs import Job
from pycore.jobs.catalogue_cables import cable_kinds
from tests.samples.halls import attenuator, job_of, row_of, told
from tests.samples.lines import make_chain, read_job, speaker
from tests.samples.solved import solve_job

PAIR = {"loop_ohm_per_km": 26.875, "inductance_uh_per_m": 0.63, "capacitance_pf_per_m": 63.0}
STOCK = cable_kinds(NAMES)


def look(job: Job) -> None:
    """Ask everything there is to ask of a job's lines; every number is finite or None."""
    for finding in line_findings(job):
        story = line_working(job, finding)
        numbers = [finding.value, finding.low, finding.high, *(s.result for s in story.steps)]
        assert all(number is None or math.isfinite(number) for number in numbers), finding.id
    for row in point_rows(job):
        for name in ("volts_v", "watts_w", "loss_db", "level_db"):
            number = row[name]
            assert number is None or math.isfinite(float(number))
    choose_cable(job, "z", stocked=STOCK)
    longest_run(job, "z")


def test_no_length_is_the_same_volts_to_the_last_digit() -> None:
    job = make_chain([(0.0, 30.0), (0.0, 5.0)], cable=PAIR)
    assert row_of(job, "p1")["volts_v"] == 70.7
    assert row_of(job, "p1")["loss_db"] == 0.0
    look(job)


def test_a_section_without_length_or_frequency_is_plain() -> None:
    assert exact_section(1 + 1j, 1j, length_m=0.0) == NO_CABLE
    assert exact_section(0.02 + 0j, 0j, length_m=50.0).series_ohm == 1.0
    assert with_joint(NO_CABLE, 0.3).series_ohm == 0.3


@pytest.mark.parametrize("length_m", [-10.0, math.inf, math.nan, 1e7, 10_001.0])
def test_a_length_no_line_can_have_is_refused(length_m: float) -> None:
    good = make_chain([(10.0, 5.0)], cable=PAIR).model_dump_json(by_alias=True)
    bad = good.replace('"length_m":10.0', f'"length_m":{json.dumps(length_m)}')
    assert bad != good
    with pytest.raises(ValidationError):
        Job.model_validate_json(bad)


@pytest.mark.parametrize("number", ["1e999", "NaN", "Infinity", '"7,5"', '"1_000"', "-5.0"])
def test_a_tap_that_is_no_plain_number_is_refused(number: str) -> None:
    good = make_chain([(10.0, 5.0)], cable=PAIR).model_dump_json(by_alias=True)
    bad = good.replace('"tap_w":5.0', f'"tap_w":{number}')
    assert bad != good
    with pytest.raises(ValidationError):
        Job.model_validate_json(bad)


def test_sections_of_10_km_and_runs_over_100_km_do_not_overflow() -> None:
    whole = make_chain([(10_000.0, 5.0)] * 11, cable=PAIR)
    look(whole)
    assert told(whole).code == "zone_loss_too_long"
    assert told(whole).verdict == "unknown"
    look(make_chain([(10_000.0, 5.0)] * 9, cable=PAIR))


def test_a_cable_no_shop_sells_does_not_overflow() -> None:
    odd = {"loop_ohm_per_km": 1e6, "inductance_uh_per_m": 100.0, "capacitance_pf_per_m": 1e5}
    look(make_chain([(10_000.0, 5.0), (10_000.0, 1e9)] * 4, cable=odd))
    fine = {"loop_ohm_per_km": 1e-3, "inductance_uh_per_m": 0.0, "capacitance_pf_per_m": 0.0}
    look(make_chain([(10_000.0, 5.0)], cable=fine))


def test_a_tap_of_0_watts_is_silent_and_not_judged() -> None:
    job = make_chain([(50.0, 30.0), (400.0, 0.0)], cable=PAIR)
    assert row_of(job, "p1")["watts_w"] == 0.0
    assert told(job).values["point"] == "p0"
    look(job)


def test_no_loudspeakers_is_an_open_line() -> None:
    junction = {
        "id": "n",
        "length_m": 25.0,
        "cable": "c",
        "fitted": {"is": "junction", "label": ""},
    }
    job = job_of([junction])
    assert [one.what for one in line_findings(job) if one.what == "zone_loss_db"] == []
    found = told(job, "zone_impedance_ohm")
    assert (found.code, found.value) == ("zone_impedance_open", None)
    look(job)
    empty = job_of([])
    assert line_findings(empty) == ()
    look(empty)


def test_one_loudspeaker_has_no_neighbour_to_differ_from() -> None:
    whats = {one.what for one in line_findings(make_chain([(5.0, 5.0)], cable=PAIR))}
    assert not whats & {"zone_spread_db", "zone_loss_nearest_db"}


def test_two_thousand_in_a_row_and_in_a_star() -> None:
    look(make_chain([(1.0, 0.1)] * 2000, cable=PAIR))
    points = [{**speaker(n, length_m=5.0, tap_w=0.1), "after": None} for n in range(2000)]
    look(job_of(points))


def test_all_off_is_heard_nowhere() -> None:
    points = [attenuator(None, off=True), {**speaker(0, length_m=5.0, tap_w=5.0), "after": "v"}]
    look(job_of(points))
    points = [speaker(0, length_m=5.0, tap_w=5.0, fitted={"connected": False})]
    look(job_of(points))
    assert told(job_of(points), "zone_impedance_ohm").code == "zone_impedance_open"


def test_a_tap_of_another_voltage_is_computed_never_re_rated() -> None:
    # 25 V part on 70.7 V: × 7.99758; 70.7 V part on 100 V: × 2.00060 (arithmetic)
    low = make_chain([(0.0, 5.0)], cable=PAIR).model_dump(mode="json", by_alias=True)
    low["zones"][0]["line"][0]["fitted"]["tap_at_v"] = 25.0
    assert row_of(read_job(low), "p0")["watts_w"] == pytest.approx(5 * 7.99758, rel=1e-6)
    low["zones"][0]["line"][0]["fitted"]["tap_at_v"] = 70.7
    low["amplifiers"][0]["outputs"][0]["line_v"] = 100.0
    assert row_of(read_job(low), "p0")["watts_w"] == pytest.approx(5 * 2.00060, rel=1e-5)


def test_an_output_of_an_odd_voltage_is_taken_as_it_is() -> None:
    job = make_chain([(0.0, 5.0)], cable=PAIR, line_v=85.0)
    assert row_of(job, "p0")["volts_v"] == 85.0
    look(job)


@pytest.mark.parametrize("conductor_c", [-60.0, 200.0])
def test_heat_and_cold_at_the_edge_of_the_model_are_said(conductor_c: float) -> None:
    job = make_chain([(50.0, 5.0)], cable=PAIR, conductor_c=conductor_c)
    look(job)
    assert "heat_outside" in line_working(job, told(job)).assumptions


@pytest.mark.parametrize("conductor_c", [-234.5, 251.0])
def test_heat_no_cable_survives_is_refused(conductor_c: float) -> None:
    with pytest.raises(ValidationError):
        make_chain([(50.0, 5.0)], cable=PAIR, conductor_c=conductor_c)


def test_rings_orphans_and_doubled_ids_are_problems_that_name_the_point() -> None:
    points: list[dict[str, Any]] = [speaker(n, length_m=5.0, tap_w=5.0) for n in range(3)]
    for change, code in (({"after": "p2"}, "loop"), ({"after": "nowhere"}, "orphan")):
        with pytest.raises(BrokenJob) as refused:
            job_of([{**points[0], **change}, *points[1:]])
        assert refused.value.code == code
        assert refused.value.where["point"] in ("p0", "p1", "p2")
    with pytest.raises(BrokenJob) as refused:
        job_of([*points, points[1]])
    assert refused.value.where == {"id": "p1"}


def test_the_order_of_points_in_a_job_means_nothing() -> None:
    points = [speaker(n, length_m=5.0 + n, tap_w=5.0) for n in range(6)]
    forward, backward = job_of(points), job_of(points[::-1])
    assert told(forward) == told(backward)


def test_huge_watts_compute() -> None:
    job = make_chain([(100.0, 1e9)], cable=PAIR)
    look(job)
    assert told(job).verdict == "over"


def test_a_limit_of_nothing_no_cable_can_keep() -> None:
    job = make_chain([(10.0, 5.0)], cable={"loop_ohm_per_km": 26.875}, loss_db=0.0)
    assert told(job).verdict == "over"
    choice = choose_cable(job, "z", stocked=STOCK)
    assert choice.whole is None
    assert all(not rescue.passes for rescue in choice.rescues)
    assert longest_run(job, "z").stretch == pytest.approx(0.0, abs=1e-6)


def test_a_rise_is_told_as_a_rise() -> None:
    # a light load on a long capacitive cable stands higher at its end than at the terminals
    cable = {"loop_ohm_per_km": 0.1, "inductance_uh_per_m": 0.7, "capacitance_pf_per_m": 200.0}
    job = make_chain([(3000.0, 0.1)], cable=cable)
    found = told(job)
    assert (found.value or 0) < -0.005
    assert found.verdict == "ok"
    assert told(job, "zone_loss_10k_db").code == "zone_loss_10k_less"


def test_a_zone_that_is_not_there_is_a_problem() -> None:
    with pytest.raises(BadCommand):
        choose_cable(make_chain([(5.0, 5.0)], cable=PAIR), "nowhere", stocked=STOCK)


def test_a_pair_without_inductance_or_capacitance_given_is_taken_as_usual() -> None:
    job = make_chain([(50.0, 5.0)], cable={"awg": 16})
    pair = solve_lines(job).pairs["c"]
    assert (pair.inductance_uh_per_m, pair.capacitance_pf_per_m) == (0.63, 63.0)
    story = line_working(job, told(job))
    assert {"pair_usual", "strands_not_known"} <= set(story.assumptions)


def test_a_section_past_any_signal_passes_nothing_and_breaks_nothing() -> None:
    section = exact_section(2000 + 6000j, 6e-3j, length_m=10_000.0)
    assert all(math.isfinite(abs(part)) for part in section)
    odd = {"loop_ohm_per_km": 1e6, "inductance_uh_per_m": 100.0, "capacitance_pf_per_m": 1e5}
    solved, _ = solve_job(make_chain([(10_000.0, 5.0)], cable=odd), hz=1e4, state="override")
    assert abs(solved.flow.at[1]) < 1e-100


def test_a_line_behind_a_control_that_is_off_is_seen_by_no_meter() -> None:
    # nothing of it reaches the terminals, and no cable stands before the control: not "not known"
    behind = {**speaker(0, length_m=5.0, tap_w=5.0), "after": "v"}
    job = job_of([attenuator(None, off=True), behind])
    for what, name in (
        ("zone_impedance_ohm", "zone_impedance"),
        ("output_line_impedance_ohm", "output_line"),
    ):
        hidden = told(job, what, state="set")
        assert (hidden.code, hidden.verdict, hidden.value) == (f"{name}_hidden", "note", None)
        assert told(job, what).code == f"{name}_reads"
    look(job)


def test_what_a_line_should_read_is_unknown_while_a_tap_is() -> None:
    for taps_w, code, verdict in (
        ([5.0, 5.0], "reads", "note"),
        ([5.0, None], "unknown", "unknown"),
        ([], "open", "note"),
    ):
        points = [speaker(n, length_m=5.0, tap_w=tap_w) for n, tap_w in enumerate(taps_w)]
        if not points:
            points = [speaker(0, length_m=5.0, tap_w=5.0, fitted={"connected": False})]
        for what, name in (
            ("zone_impedance_ohm", "zone_impedance"),
            ("output_line_impedance_ohm", "output_line"),
        ):
            found = told(job_of(points), what)
            assert (found.code, found.verdict) == (f"{name}_{code}", verdict)


def test_what_lies_between_two_ohms_is_not_called_unknown() -> None:
    # a length nobody entered: its loads are seen with no cable before them, or not at all
    points = [speaker(0, length_m=5.0, tap_w=5.0), speaker(1, length_m=None, tap_w=5.0)]
    for what, name in (
        ("zone_impedance_ohm", "zone_impedance"),
        ("output_line_impedance_ohm", "output_line"),
    ):
        found = told(job_of(points), what)
        assert (found.code, found.value, found.verdict) == (f"{name}_between", None, "unknown")
        # Ohm's law: 70.7² / 10 is 499.8 ohm, 70.7² / 5 is 999.7; the near cable adds a little
        assert found.low == pytest.approx(499.8, rel=0.01)
        assert found.high == pytest.approx(999.7, rel=0.01)

"""The numbers of a single point: those of the table of points, and their workings say how."""

import itertools
import math
import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pycore.calc.between import NUMBERS
from pycore.calc.line_loss import loss_finding
from pycore.calc.point_story import point_working
from pycore.calc.points import point_findings
from pycore.calc.solve import rows_of, solve_lines
from pycore.ground.words import has
from pycore.jobs import Job
from tests.samples.patchy import make_patchy

JOBS = st.builds(
    lambda seed, count, gaps: make_patchy(random.Random(seed), count, gaps=gaps),
    st.integers(0, 10**6),
    st.integers(1, 14),
    st.sampled_from([0.0, 0.1, 0.4]),
)


@given(JOBS)
def test_each_number_is_the_one_in_the_table(job: Job) -> None:
    lines = solve_lines(job)
    for row in rows_of(lines):
        told = {one.what: one for one in point_findings(lines, row["point"])}
        states = [one for one in point_findings(lines, row["point"]) if one.state == row["state"]]
        for one in states:
            number = row[one.what.removeprefix("point_")]  # type: ignore[literal-required]
            assert one.value in (None, number)
            if one.value is None and number is not None:
                # what hangs beyond an unknown section is one of the two ends
                assert number == (one.high if one.what == "point_loss_db" else one.low)
        assert set(told) == {f"point_{name}" for name in NUMBERS}


@given(JOBS)
def test_the_last_step_of_its_working_gives_it(job: Job) -> None:
    lines = solve_lines(job)
    for zone in job.zones:
        for point in zone.line:
            for finding in point_findings(lines, point.id):
                story = point_working(lines, finding)
                ends = [finding.low, finding.high, finding.value]
                wanted = [one for one in ends if one is not None]
                if not wanted:
                    assert story.steps == ()
                    continue
                last = story.steps[-1]
                assert last.result == pytest.approx(wanted[-1], rel=1e-9, abs=1e-9)
                for end in wanted:
                    assert any(
                        math.isclose(end, step.result, rel_tol=1e-9, abs_tol=1e-9)
                        for step in story.steps
                    ), finding.id
                assert last.equation.unit == finding.unit
                assert all(has("step", step.code) for step in story.steps)


@given(JOBS)
def test_every_step_is_its_equation_run_on_its_inputs(job: Job) -> None:
    lines = solve_lines(job)
    for zone in job.zones:
        for point in zone.line[-1:]:
            for finding in point_findings(lines, point.id):
                for step in point_working(lines, finding).steps:
                    numbers = {name: known.value for name, known in step.inputs.items()}
                    told = eval(step.equation.text, {**vars(math), "sum": math.fsum}, numbers)
                    assert math.isclose(told, step.result, rel_tol=1e-12, abs_tol=1e-300)


def test_behind_a_control_that_stands_off_the_working_says_so() -> None:
    job = make_patchy(random.Random(8), 8, gaps=0.0)
    lines = solve_lines(job)
    silent = [row["point"] for row in rows_of(lines) if row["volts_v"] == 0]
    assert silent
    for point in silent:
        told = [one for one in point_findings(lines, point) if one.what == "point_volts_v"]
        codes = [point_working(lines, one).steps[-1].code for one in told if one.value == 0]
        assert codes
        assert set(codes) == {"point_off"}


@given(JOBS)
def test_the_headline_of_a_zone_is_the_worst_of_its_points(job: Job) -> None:
    """The least and the most that the zone can lose are those of points told one by one."""
    lines = solve_lines(job)
    for (zone, state), line in lines.solved.items():
        head = loss_finding(line, 0.5) if state == "override" else None
        if head is None:
            continue
        heard = {line.laid.id_of(node) for node in line.laid.heard}
        told = [
            one
            for point in heard
            for one in point_findings(lines, str(point))
            if one.what == "point_loss_db" and one.state == "override"
        ]
        for end in ("value", "low", "high"):
            number = getattr(head, end)
            each = [getattr(one, end) for one in told]
            if number is not None and any(one is not None for one in each):
                assert number == max(one for one in each if one is not None), (zone, end)


@given(JOBS)
def test_a_number_lies_between_its_ends(job: Job) -> None:
    lines = solve_lines(job)
    for zone in job.zones:
        for point in zone.line:
            for one in point_findings(lines, point.id):
                known = [end for end in (one.low, one.value, one.high) if end is not None]
                for less, more in itertools.pairwise(known):
                    assert less <= more + 1e-9 * max(1.0, abs(more)), one.id

"""What is shown is what was run, for every finding about a line, whatever is missing."""

import math
import random

from hypothesis import given
from hypothesis import strategies as st

from pycore.calc.line import findings_of, line_findings
from pycore.calc.line_story import line_working, working_in
from pycore.calc.solve import solve_lines
from pycore.ground.words import en_line, has, say
from pycore.jobs import Job
from tests.samples.patchy import make_patchy

JOBS = st.builds(
    lambda seed, count, gaps: make_patchy(random.Random(seed), count, gaps=gaps),
    st.integers(0, 10**6),
    st.integers(1, 14),
    st.sampled_from([0.0, 0.05, 0.2, 0.6]),
)
WHATS = {
    "zone_loss_db", "zone_loss_10k_db", "zone_loss_nominal_db", "zone_loss_nearest_db",
    "zone_spread_db", "zone_quietest_db", "zone_wasteful_section", "zone_impedance_ohm",
    "output_line_impedance_ohm",
}  # fmt: skip


@given(JOBS)
def test_the_last_step_of_a_working_is_the_number_of_its_finding(job: Job) -> None:
    lines = solve_lines(job)
    for finding in findings_of(lines):
        story = working_in(lines, finding)
        if finding.value is not None:
            assert story.steps[-1].result == finding.value, finding.id
            assert story.steps[-1].equation.unit == finding.unit
        # where it lies in a range, with one number in it or not, both its ends are told
        results = [step.result for step in story.steps]
        for bound in (finding.low, finding.high):
            assert bound is None or bound in results, finding.id


@given(JOBS)
def test_every_step_is_its_equation_run_on_its_inputs(job: Job) -> None:
    lines = solve_lines(job)
    for finding in findings_of(lines):
        for step in working_in(lines, finding).steps:
            numbers = {name: known.value for name, known in step.inputs.items()}
            told = eval(step.equation.text, {**vars(math), "sum": math.fsum}, numbers)
            assert math.isclose(told, step.result, rel_tol=1e-12, abs_tol=1e-300)


@given(JOBS)
def test_the_watts_of_a_working_balance(job: Job) -> None:
    lines = solve_lines(job)
    for finding in findings_of(lines):
        found = {step.code: step.result for step in working_in(lines, finding).steps}
        if "line_balance" in found:
            assert math.isclose(found["line_in"], found["line_balance"], rel_tol=1e-9)
        if "line_path" in found and finding.value is not None:
            assert math.isclose(found["line_path"], finding.value, rel_tol=1e-9, abs_tol=1e-12)


@given(JOBS)
def test_every_code_has_words(job: Job) -> None:
    lines = solve_lines(job)
    for finding in findings_of(lines):
        assert finding.what in WHATS
        assert has("finding", finding.code)
        assert has("title", finding.what)
        story = working_in(lines, finding)
        assert all(has("assumption", code) for code in story.assumptions)
        for step in story.steps:
            assert say("step", step.code, values=step.values, language="en")
            for name in step.inputs:
                assert has("name", name), name


@given(JOBS)
def test_the_same_job_gives_the_same_findings(job: Job) -> None:
    assert line_findings(job) == line_findings(job)
    for finding in line_findings(job)[:3]:
        assert line_working(job, finding) == working_in(solve_lines(job), finding)


def test_every_word_about_lines_can_be_met() -> None:
    """No dead words: each code is met in many jobs, but for those named here."""
    met: set[str] = set()
    steps: set[str] = set()
    for seed in range(400):
        gaps = (0.0, 0.05, 0.3)[seed % 3]
        lines = solve_lines(make_patchy(random.Random(seed), 12, gaps=gaps))
        for finding in findings_of(lines):
            met.add(finding.code)
            steps.update(step.code for step in working_in(lines, finding).steps)
    rare = {"zone_loss_too_long", "zone_loss_not_entered", "zone_loss_10k_more"}
    rare |= {"zone_impedance_hidden", "output_line_hidden"}
    assert set(en_line.FINDINGS) - met <= rare
    cables = {code for code in en_line.STEPS if code.startswith("cable_")}
    assert set(en_line.STEPS) - steps <= cables | {"line_controls"}


def test_both_ends_are_told_where_one_number_stands_in_a_range() -> None:
    """Rare in jobs made by chance, so many are looked through."""
    met: set[str] = set()
    for seed in range(300):
        lines = solve_lines(make_patchy(random.Random(seed), 10, gaps=0.05))
        for finding in findings_of(lines):
            value, low, high = finding.value, finding.low, finding.high
            if value is None or low is None or high is None or low == high:
                continue
            results = [step.result for step in working_in(lines, finding).steps]
            assert {low, high} <= set(results), finding.id
            assert results[-1] == value
            met.add(finding.what)
    assert met == {"zone_loss_db", "zone_impedance_ohm", "output_line_impedance_ohm"}

"""Every number has a working, and the working ends in that number."""

import math

import pytest
from hypothesis import given

from pycore.asks.explain import working
from pycore.asks.requests import WorkingBody
from pycore.calc.check import Checked, check_job
from pycore.calc.finding import Finding
from pycore.calc.line_story import working_in
from pycore.calc.story import working_of
from pycore.ground.units import Manner
from pycore.ground.working import Working
from pycore.jobs import Job
from tests.strategies import MANNERS, jobs

# What a person reads off a part or a control: there is nothing to work out.
MARKS = {"tap_offered", "heard_in_page", "high_pass_hz", "drive", "wiring_class", "zone_landed"}

LOADS = {"zone_load_w", "output_load_w", "pool_load_w", "attenuator_load_w", "output_impedance_ohm"}


def story_of(checked: Checked, finding: Finding) -> Working:
    """The working as the ask `working` finds it."""
    told = working_of(checked, finding)
    return told if told.steps else working_in(checked.lines, finding)


def ends_of(finding: Finding) -> list[float]:
    """The numbers of a finding in the order they are told: low, high, and the value last."""
    value, low, high = finding.value, finding.low, finding.high
    if value is not None and (low is None or low == high):
        return [value]
    return [one for one in (low, high, value) if one is not None]


@given(jobs())
def test_the_last_step_of_a_working_is_the_number_of_its_finding(job: Job) -> None:
    checked = check_job(job)
    for finding in checked.findings:
        if finding.what in MARKS or finding.what == "what_fits" or not ends_of(finding):
            continue
        told = story_of(checked, finding)
        assert told.steps, f"{finding.id} has no working"
        last = told.steps[-1]
        assert last.equation.unit in (finding.unit, "w"), finding.id
        if last.equation.unit == finding.unit:
            assert last.result == pytest.approx(ends_of(finding)[-1], rel=1e-9, abs=1e-9)


@given(jobs())
def test_both_ends_of_a_range_are_told(job: Job) -> None:
    checked = check_job(job)
    for finding in checked.findings:
        if finding.what not in LOADS:
            continue
        results = [made.result for made in story_of(checked, finding).steps]
        for end in ends_of(finding):
            told = any(math.isclose(end, one, rel_tol=1e-9, abs_tol=1e-9) for one in results)
            assert told, f"{end} of {finding.id} is not in its working"


@given(jobs())
def test_a_step_shows_what_it_ran(job: Job) -> None:
    checked = check_job(job)
    for finding in checked.findings:
        for made in story_of(checked, finding).steps:
            again = made.equation(**{name: known.value for name, known in made.inputs.items()})
            assert again == made.result


@given(jobs(), MANNERS)
def test_every_working_can_be_printed(job: Job, manner: Manner) -> None:
    for finding in check_job(job).findings:
        told = working(WorkingBody(job=job, finding=finding.id), manner)
        assert told["title"]
        for made in told["steps"]:
            assert made["title"]
            assert made["result"]
            assert "_" not in made["formula"] + made["put_in"], made

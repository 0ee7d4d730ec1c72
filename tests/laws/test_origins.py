"""Where a number of a working came from is said truly."""

import json
import math
import random
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from pycore.asks.opened import Opened, open_finding
from pycore.calc.between import NUMBERS
from pycore.calc.check import Checked, check_job
from pycore.calc.limits import STATES
from pycore.calc.parts_of_limit import part_findings
from pycore.ground.words import ENGLISH
from pycore.ground.working import Known, Step, Working
from pycore.jobs import Job
from pycore.jobs.catalogue import DEFAULT_LIMITS
from tests.samples.patchy import make_patchy
from tests.strategies import jobs

DEMO = Path(__file__).parents[2] / "web" / "demo.json"
PATCHY = st.builds(
    lambda seed, count, gaps: make_patchy(random.Random(seed), count, gaps=gaps),
    st.integers(0, 10**6),
    st.integers(1, 10),
    st.sampled_from([0.0, 0.1, 0.4]),
)


def opened(job: Job) -> Iterator[Opened]:
    """Everything of a job that can be opened, with its working."""
    checked = check_job(job)
    for wanted in ids_of(checked):
        yield open_finding(checked, wanted)


def ids_of(checked: Checked) -> list[str]:
    """The ids of all findings, of the parts of loads, and of the numbers of every point."""
    points = [point.id for zone in checked.job.zones for point in zone.line]
    return [
        *(one.id for one in checked.findings),
        *(one.id for one, _ in part_findings(checked)),
        *(f"point_{name}:{one}:{state}" for one in points for name in NUMBERS for state in STATES),
        f"wrong_rows_count:{checked.job.id}",
    ]


def terms(known: Known) -> tuple[float, ...]:
    """The number, or the terms of a sum."""
    return known.value if isinstance(known.value, tuple) else (known.value,)


def stands_above(number: float, steps: list[Step]) -> bool:
    """Whether one of the steps gives the number."""
    return any(math.isclose(number, one.result, rel_tol=1e-9, abs_tol=1e-12) for one in steps)


def untrue(story: Working) -> Iterator[str]:
    """The inputs that are called computed above and are not."""
    for place, made in enumerate(story.steps):
        before = list(story.steps[:place])
        for name, known in made.inputs.items():
            if known.origin == "computed":
                for number in terms(known):
                    if not stands_above(number, before):
                        yield f"{made.code}.{name} = {number}"


@given(st.one_of(jobs(), PATCHY))
@settings(max_examples=60)
def test_what_is_said_to_be_computed_above_is_the_result_of_an_earlier_step(job: Job) -> None:
    for finding, story in opened(job):
        assert list(untrue(story)) == [], finding.id


def test_the_same_of_everything_in_the_demo() -> None:
    job = Job.model_validate_json(DEMO.read_text())
    met: set[str] = set()
    count = 0
    for finding, story in opened(job):
        assert list(untrue(story)) == [], finding.id
        count += len(story.steps)
        met |= {known.origin for made in story.steps for known in made.inputs.values()}
    assert count > 1000
    assert met >= {"typed", "start", "catalogue", "computed", "solved", "elsewhere"}
    assert met <= set(ENGLISH["origin"])


def origins(job: Job, what: str) -> dict[str, str]:
    """Where each input of a finding's working came from, by its name."""
    checked = check_job(job)
    (first, *_) = (one.id for one in checked.findings if one.what == what)
    return {
        name: known.origin
        for made in open_finding(checked, first).story.steps
        for name, known in made.inputs.items()
    }


@pytest.mark.parametrize(("joint_ohm", "origin"), [(None, "absent"), (0.0, "typed")])
def test_joints_nobody_entered_are_said_to_be_none(joint_ohm: float | None, origin: str) -> None:
    job = json.loads(DEMO.read_text())
    for zone in job["zones"]:
        for point in zone["line"]:
            point["joint_ohm"] = joint_ohm
    assert origins(Job.model_validate_json(json.dumps(job)), "zone_loss_db")["joint_ohm"] == origin


@pytest.mark.parametrize("name", ["loss_db", "conductor_c"])
def test_a_limit_is_called_entered_only_where_it_is_no_longer_the_one_at_the_start(
    name: str,
) -> None:
    raw = json.loads(DEMO.read_text())
    for zone in raw["zones"]:
        zone.pop("loss_db", None)
    start = getattr(DEFAULT_LIMITS, name)
    for value, origin in ((start, "start"), (start + 1, "typed")):
        raw["limits"][name] = value
        assert origins(Job.model_validate_json(json.dumps(raw)), "zone_loss_db")[name] == origin


@pytest.mark.parametrize(
    ("own", "wanted"),
    [({}, "catalogue"), ({"rated_w": 24.0, "rated_at_v": 100.0}, "typed")],
)
def test_what_a_control_may_carry_is_of_its_kind_unless_it_was_entered(
    own: dict[str, float], wanted: str
) -> None:
    raw = json.loads(DEMO.read_text())
    for amplifier in raw["amplifiers"]:
        for output in amplifier["outputs"]:
            output["line_v"] = 70.7
    for zone in raw["zones"]:
        for point in zone["line"]:
            if point["fitted"]["is"] == "attenuator":
                point["fitted"] |= {"kind": "control_10w", "rated_w": None, "rated_at_v": None}
                point["fitted"] |= own
    found = origins(Job.model_validate_json(json.dumps(raw)), "attenuator_load_w")
    assert (found["rated_w"], found["rated_at_v"]) == (wanted, wanted)

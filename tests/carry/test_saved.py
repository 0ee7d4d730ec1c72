"""Jobs in files: one or all, of this version or an older one, and a bad one costs no other."""

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import BaseModel

from pycore.carry import steps
from pycore.carry.prints import print_of, same_content
from pycore.carry.saved import MOST_JOBS, open_all, open_saved, save, save_all
from pycore.carry.steps import Step, climb
from pycore.ground.problems import BadText, NewerJob, Problem, TooLarge
from pycore.jobs import Job
from tests.samples.travellers import make_traveller
from tests.strategies import jobs

JOB = make_traveller(4, free_labels=False, ticked=True)


class JobOfVersion0(BaseModel):
    """A made-up older job: its name was its title, and it had no limits."""

    format: str
    version: int
    id: str
    title: str


class JobOfVersionMinus1(BaseModel):
    """One older still, whose title was a list of words."""

    format: str
    version: int
    id: str
    words: list[str]


def climb_to_0(old: JobOfVersionMinus1) -> dict[str, Any]:
    """The made-up step to version 0."""
    return {"format": old.format, "version": 0, "id": old.id, "title": " ".join(old.words)}


def climb_to_1(old: JobOfVersion0) -> dict[str, Any]:
    """The made-up step to version 1."""
    limits = {"loss_db": 0.5, "load_fraction": 0.8, "conductor_c": 30.0}
    return {"format": old.format, "version": 1, "id": old.id, "name": old.title, "rev": 0,
            "limits": limits, "kinds": {}}  # fmt: skip


MADE_UP = {0: Step(JobOfVersion0, climb_to_1), -1: Step(JobOfVersionMinus1, climb_to_0)}
OLD = {"format": "rungline-job", "version": 0, "id": "k7f1", "title": "Old hall"}


@given(jobs())
def test_a_saved_job_opens_equal(job: Job) -> None:
    assert open_saved(save(job)) == job
    assert open_all(save(job)).jobs == (job,)


@given(st.lists(jobs(), max_size=3))
def test_all_jobs_open_equal_and_in_order(some: list[Job]) -> None:
    assert open_all(save_all(tuple(some))) == (tuple(some), ())


def test_a_bad_job_among_several_is_told_and_the_others_open() -> None:
    raw = json.loads(save_all((JOB, JOB, JOB)))
    raw["jobs"][1]["limits"]["load_fraction"] = 7
    raw["jobs"][1]["name"] = "The \u202ebad one"
    opened = open_all(json.dumps(raw))
    assert opened.jobs == (JOB, JOB)
    (refused,) = opened.refused
    assert (refused.place, refused.name) == (1, "The bad one")
    assert refused.problem.code == "number_too_large"


@pytest.mark.parametrize(
    ("changes", "code"),
    [
        ({"version": 2}, "jobs_newer"),
        ({"format": "else"}, "not_a_job"),
        ({"jobs": {}}, "list_expected"),
        ({"jobs": [1]}, "object_expected"),
        ({"more": 1}, "field_unknown"),
        ({"jobs": [{}] * 501}, "jobs_too_many"),
    ],
)
def test_a_file_of_jobs_that_is_none_says_why(changes: dict[str, Any], code: str) -> None:
    raw = json.loads(save_all((JOB,)))
    with pytest.raises(Problem) as caught:
        open_all(json.dumps(raw | changes))
    assert caught.value.code == code


def test_more_jobs_than_can_be_read_back_are_not_written() -> None:
    large = make_traveller(2000, free_labels=True, ticked=True)
    with pytest.raises(TooLarge) as caught:
        save_all((large,) * 12)
    assert caught.value.code == "jobs_too_large"
    small = make_traveller(1, free_labels=False, ticked=False)
    assert len(open_all(save_all((small,) * MOST_JOBS)).jobs) == MOST_JOBS
    with pytest.raises(TooLarge) as caught:
        save_all((small,) * (MOST_JOBS + 1))
    assert caught.value.code == "jobs_too_many"


def test_a_file_of_several_jobs_is_not_taken_for_one() -> None:
    with pytest.raises(BadText) as caught:
        open_saved(save_all((JOB,)))
    assert caught.value.code == "several_jobs"


def test_a_job_of_a_later_version_is_refused_kindly() -> None:
    with pytest.raises(NewerJob) as caught:
        open_saved(save(JOB).replace('"version": 1', '"version": 2'))
    assert caught.value.code == "job_newer"


def test_an_old_job_climbs_to_the_present(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("pycore.carry.saved.climb", climb_made_up)
    assert open_saved(json.dumps(OLD)).name == "Old hall"
    assert open_saved(save(JOB)) == JOB


def climb_made_up(text: str, version: int, *, newest: int) -> str:
    """Climb with the made-up steps."""
    return climb(text, version, newest=newest, steps=MADE_UP)


def test_each_step_is_climbed_in_turn() -> None:
    older = {"format": "rungline-job", "version": -1, "id": "k7f1", "words": ["Old", "hall"]}
    climbed = climb(json.dumps(older), -1, newest=1, steps=MADE_UP)
    assert climbed == climb(json.dumps(OLD), 0, newest=1, steps=MADE_UP)


def test_an_old_job_that_breaks_its_own_version_is_refused_before_any_step() -> None:
    with pytest.raises(BadText) as caught:
        climb(json.dumps(OLD | {"title": 3}), 0, newest=1, steps=MADE_UP)
    assert (caught.value.code, caught.value.where) == ("text_expected", {"field": "title"})


def test_a_version_without_a_step_says_so() -> None:
    with pytest.raises(BadText) as caught:
        open_saved(json.dumps(OLD))
    assert caught.value.code == "job_too_old"
    assert steps.STEPS == {}


@given(jobs(), jobs())
def test_prints_tell_content_and_nothing_else(one: Job, other: Job) -> None:
    copy = one.model_copy(update={"id": "copy", "rev": one.rev + 3, "saved_at": "2026-11-25"})
    assert same_content(one, copy)
    differ = one.model_dump(exclude={"id", "rev"}) != other.model_dump(exclude={"id", "rev"})
    assert same_content(one, other) != differ
    assert len(print_of(one)) == 24

"""A job that leaves comes back the same."""

from hypothesis import given

from pycore.carry.saved import open_saved, save
from pycore.jobs import Job
from tests.strategies import jobs


@given(jobs())
def test_a_saved_job_opens_as_it_was(job: Job) -> None:
    assert open_saved(save(job)) == job


@given(jobs())
def test_saving_twice_writes_the_same_text(job: Job) -> None:
    text = save(job)
    assert save(open_saved(text)) == text


@given(jobs())
def test_a_saved_text_says_first_what_it_is(job: Job) -> None:
    head = "".join(save(job).split())[:40]
    assert head.startswith('{"format":"rungline-job","version":1,')

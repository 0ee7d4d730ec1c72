"""What a change reaches, judged again without the rest, is what looking at everything says."""

from hypothesis import assume, given
from hypothesis import strategies as st

from pycore.calc.check import check_job
from pycore.calc.finding import Finding
from pycore.calc.ripple import EVERYTHING, reach_of, rejudge
from pycore.jobs import Job
from tests.command_strategies import Things, commands, of_fitting, of_hanging
from tests.laws.test_commands import outcome
from tests.strategies import jobs

# Counted by trial elsewhere; all home runs together are only told of a whole job.
ELSEWHERE = ("what_fits", "output_line_impedance_ohm")


def whole(job: Job) -> dict[str, Finding]:
    """All findings of a job that a ripple tells of, by id."""
    found = check_job(job).findings
    return {one.id: one for one in found if one.what not in ELSEWHERE}


@given(jobs(), st.data())
def test_nothing_that_changes_is_missed_and_nothing_is_told_wrongly(
    job: Job, data: st.DataObject
) -> None:
    after = outcome(job, data.draw(commands(job)))
    assume(isinstance(after, Job))
    assert isinstance(after, Job)
    reach = reach_of(job, after)
    now = rejudge(after, reach, base=rejudge(job, reach)).findings
    before, then = whole(job), whole(after)
    told = {name: one for name, one in now.items() if one.what not in ELSEWHERE}
    assert told == {name: then[name] for name in told}
    assert {name for name, one in then.items() if before.get(name) != one} <= set(told)


@given(jobs(), st.data())
def test_a_change_at_one_point_reaches_no_more_than_its_zone(job: Job, data: st.DataObject) -> None:
    things = Things(job)
    after = outcome(job, data.draw(of_fitting(things) | of_hanging(things)))
    assume(isinstance(after, Job))
    assert isinstance(after, Job)
    reach = reach_of(job, after)
    assert reach != EVERYTHING
    assert reach.zones is not None
    assert len(reach.zones) <= 2

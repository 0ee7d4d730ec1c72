"""What a command may do to a job, and what it may not."""

from hypothesis import assume, given
from hypothesis import strategies as st

from pycore.edit import apply, read_command
from pycore.ground.problems import Problem
from pycore.ground.words import has
from pycore.jobs import Job
from pycore.jobs.tree import hanging_order
from tests.command_strategies import commands
from tests.strategies import Raw, jobs, words_of

ALIKE = {"rev", "readings", "ticks", "saved_at", "base"}


def done(job: Job, raw: Raw) -> Job:
    """The job after a command that comes as text."""
    return apply(job, read_command(words_of(raw)))


def outcome(job: Job, raw: Raw) -> Job | Problem:
    """The job after a command, or why it does not fit; anything else raised is a fault."""
    try:
        return done(job, raw)
    except Problem as problem:
        return problem


def tried(job: Job, data: st.DataObject) -> Job:
    """The job after a few commands, those that do not fit left out."""
    for _ in range(3):
        after = outcome(job, data.draw(commands(job)))
        if isinstance(after, Job):
            job = after
        else:
            assert has("problem", after.code), after.code
    return job


@given(jobs(), st.data())
def test_a_command_gives_a_job_that_opens_again_or_a_problem(job: Job, data: st.DataObject) -> None:
    after = tried(job, data)
    assert Job.model_validate_json(after.model_dump_json()) == after
    for zone in after.zones:
        assert len(hanging_order(zone.line)) == len(zone.line)


@given(jobs(), st.data())
def test_a_command_never_touches_the_job_it_was_given(job: Job, data: st.DataObject) -> None:
    before = job.model_dump_json()
    after = tried(job, data)
    assert job.model_dump_json() == before
    assert after.id == job.id
    assert after.rev >= job.rev


@given(jobs(), st.data())
def test_each_command_counts_one(job: Job, data: st.DataObject) -> None:
    after = outcome(job, data.draw(commands(job)))
    assert isinstance(after, Problem) or after.rev == job.rev + 1


@given(jobs(), st.data())
def test_undo_brings_back_all_but_what_was_measured_since(job: Job, data: st.DataObject) -> None:
    after = tried(job, data)
    restored = done(after, {"do": "restore", "past": job.model_dump(mode="json")})
    assert restored.model_dump(exclude=ALIKE) == job.model_dump(exclude=ALIKE)
    assert restored.rev == after.rev + 1
    assert restored.readings == after.readings


@given(jobs(), st.data())
def test_a_tick_lives_only_on_the_tap_it_was_given_for(job: Job, data: st.DataObject) -> None:
    after = tried(job, data)
    taps = {
        point.id: (point.fitted.tap_w, point.fitted.tap_at_v)
        for zone in after.zones
        for point in zone.line
        if point.fitted.is_ == "loudspeaker"
    }
    if after.rev > job.rev:
        assert all(taps[tick.point] == (tick.tap_w, tick.tap_at_v) for tick in after.ticks)
    assert set(after.ticks) <= set(job.ticks)


@given(jobs(), st.data())
def test_taking_out_what_was_just_spliced_in_leaves_the_line_as_it_was(
    job: Job, data: st.DataObject
) -> None:
    assume(job.zones)
    zone = data.draw(st.sampled_from(job.zones))
    after = data.draw(st.sampled_from([None, *(point.id for point in zone.line)]))
    hanging = [point for point in zone.line if point.after == after]
    cable = hanging[0].cable if hanging else None
    new: Raw = {"id": "new1", "after": after, "length_m": 0.0, "cable": cable}
    new["fitted"] = {"is": "junction", "label": "box"}
    more = done(job, {"do": "add_points", "zone": zone.id, "points": [new], "splice": True})
    assume(len(hanging) < 2)
    less = done(more, {"do": "remove_point", "point": "new1", "tail": "join"})
    assert less.zones == job.zones


@given(jobs(), st.data())
def test_joining_through_keeps_the_length_to_everything_behind(
    job: Job, data: st.DataObject
) -> None:
    points = [point.id for zone in job.zones for point in zone.line]
    assume(points)
    gone = data.draw(st.sampled_from(points))
    after = outcome(job, {"do": "remove_point", "point": gone, "tail": "join"})
    if isinstance(after, Problem):
        assert after.code == "junction_stays"
        return
    before, behind = reaches(job), reaches(after)
    assert {one for one in before if one not in behind} <= {gone}
    assert behind == {one: before[one] for one in behind}


def reaches(job: Job) -> dict[str, float | None]:
    """How far each point is from its terminals, in metres; None where a length is not known."""
    found: dict[str | None, float | None] = {None: 0.0}
    for zone in job.zones:
        for point in hanging_order(zone.line):
            so_far, length_m = found[point.after], point.length_m
            known = so_far is not None and length_m is not None
            found[point.id] = (so_far or 0.0) + (length_m or 0.0) if known else None
    return {one: reach for one, reach in found.items() if one is not None}

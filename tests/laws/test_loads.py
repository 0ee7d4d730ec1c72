"""What holds of every load, whatever the job."""

import math
from collections.abc import Callable

from hypothesis import assume, given
from hypothesis import strategies as st

from pycore.calc.check import check_job
from pycore.calc.draws import Draw
from pycore.calc.finding import Finding
from pycore.calc.judge import judge_load
from pycore.calc.limits import limits_of, load_on, loads_of
from pycore.edit import apply, read_command
from pycore.jobs import Job
from tests.strategies import MOST_W, Raw, jobs, raw_jobs, words_of

# No command that adds load may move a verdict to the left.
WORSE = ("ok", "near", "unknown", "over")
FRACTIONS = st.sampled_from((0.5, 0.8, 1.0))
WATTS = st.floats(0, 1000)


def done(job: Job, command: Raw) -> Job:
    """The job after a command."""
    return apply(job, read_command(words_of(command)))


def loads_in(job: Job) -> dict[str, Draw]:
    """The load on every limit by the finding's name."""
    return {
        f"{limit.what} {limit.where} {limit.state} {limit.values.get('which')}": limit.draw
        for limit in limits_of(loads_of(job))
    }


def alike(one: Draw, other: Draw) -> bool:
    """Whether two loads are the same but for the last bits of a sum."""
    pairs = zip(one, other, strict=True)
    return all(
        a == b or (a is not None and b is not None and math.isclose(a, b, rel_tol=1e-12))
        for a, b in pairs
    )


def judged_in(job: Job) -> dict[str, str]:
    """The verdict on every limit of watts and ohms."""
    whats = ("output_load_w", "pool_load_w", "output_impedance_ohm", "attenuator_load_w")
    return {one.id: one.verdict for one in check_job(job).findings if one.what in whats}


def worsened(job: Job, change: Callable[[Job], Job]) -> None:
    """Assert that a change that adds load improves no verdict."""
    before, after = judged_in(job), judged_in(change(job))
    for one, verdict in before.items():
        assert WORSE.index(after[one]) >= WORSE.index(verdict), one


@given(jobs(), st.sampled_from((0.5, 5.0, 60.0)), st.data())
def test_one_loudspeaker_more_improves_no_verdict(
    job: Job, tap_w: float, data: st.DataObject
) -> None:
    assume(job.zones)
    zone = data.draw(st.sampled_from(job.zones))
    after = data.draw(st.sampled_from([None, *(point.id for point in zone.line)]))
    fitted = {"is": "loudspeaker", "tap_w": tap_w, "tap_at_v": 70.7, "label": "more"}
    point = {"id": "more", "after": after, "fitted": {**fitted, "connected": True}}
    command = {"do": "add_points", "zone": zone.id, "points": [point], "splice": False}
    worsened(job, lambda one: done(one, command))


@given(jobs(), st.data())
def test_connecting_a_loudspeaker_improves_no_verdict(job: Job, data: st.DataObject) -> None:
    points = [p.id for z in job.zones for p in z.line if p.fitted.is_ == "loudspeaker"]
    assume(points)
    point = data.draw(st.sampled_from(points))
    without = done(job, {"do": "disconnect", "point": point})
    worsened(without, lambda one: done(one, {"do": "connect", "point": point}))


@given(jobs())
def test_a_page_asks_at_least_what_the_controls_leave_as_they_stand(job: Job) -> None:
    moved = {one for z in job.zones if z.page_output for one in (z.output, z.page_output)}
    loads = loads_of(job)
    for output in loads.outputs:
        if output not in moved:
            page, as_set = (load_on(loads, output, state=one) for one in ("override", "set"))
            assert page.low >= as_set.low * (1 - 1e-12)
            assert page.high is None or (as_set.high or 0.0) <= page.high * (1 + 1e-12)


@given(raw_jobs(), st.randoms(use_true_random=False))
def test_the_order_in_which_things_are_written_changes_no_load(raw: Raw, chance: object) -> None:
    shuffle: Callable[[list[Raw]], None] = chance.shuffle  # type: ignore[attr-defined]
    before = loads_in(Job.model_validate_json(words_of(raw)))
    shuffle(raw["zones"])
    for zone in raw["zones"]:
        shuffle(zone["line"])
    after = loads_in(Job.model_validate_json(words_of(raw)))
    assert before.keys() == after.keys()
    assert all(alike(before[one], after[one]) for one in before)


@given(jobs())
def test_a_load_lies_between_its_least_and_its_most(job: Job) -> None:
    for draw in loads_in(job).values():
        assert draw.low >= 0
        assert draw.high is None or draw.low <= draw.high * (1 + 1e-12)
        assert draw.value is None or draw.low <= draw.value * (1 + 1e-12)
        assert None in (draw.value, draw.high) or (draw.value or 0) <= (draw.high or 0) + 1e-9


@given(jobs())
def test_a_load_of_known_taps_on_a_known_maximum_is_never_unknown(job: Job) -> None:
    for limit in limits_of(loads_of(job)):
        if limit.most_w is not None and limit.draw.low == limit.draw.high:
            assert limit.verdict() in ("ok", "near", "over")
        if limit.most_w is None and limit.min_load_ohm is None and not limit.forbidden:
            assert limit.verdict() == "unknown"


@given(WATTS, WATTS, MOST_W, FRACTIONS)
def test_more_watts_are_never_judged_better(one: float, two: float, most: float, f: float) -> None:
    small, large = sorted((one, two))
    verdicts = [judge_load(Draw(w, w, w), most, fraction=f) for w in (small, large)]
    assert WORSE.index(verdicts[0]) <= WORSE.index(verdicts[1])


@given(WATTS, WATTS, MOST_W, FRACTIONS)
def test_a_range_is_judged_by_its_ends(one: float, two: float, most: float, f: float) -> None:
    low, high = sorted((one, two))
    ends = {judge_load(Draw(w, w, w), most, fraction=f) for w in (low, high)}
    whole = judge_load(Draw(None, low, high), most, fraction=f)
    if whole in ("over", "ok"):
        assert ends == {whole}
    elif whole == "near":
        assert "over" not in ends
    else:
        assert "over" in ends
        assert judge_load(Draw(low, low, low), most, fraction=f) != "over"


@given(jobs())
def test_every_finding_of_a_job_has_a_name_of_its_own(job: Job) -> None:
    findings: tuple[Finding, ...] = check_job(job).findings
    assert len({one.id for one in findings}) == len(findings)

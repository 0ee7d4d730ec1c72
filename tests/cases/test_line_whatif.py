"""What if: before and after are the findings of the job as it is and as it would be."""

import pytest

from pycore.calc.check import check_job
from pycore.calc.finding import Finding
from pycore.calc.whatif import Change, Compared, MoreAtEnd, OtherTap, OtherVoltage, what_if
from pycore.ground.problems import BadCommand
from pycore.jobs import Job
from tests.samples.halls import PAIR, attenuator, job_of
from tests.samples.lines import make_chain, speaker

FIVE = make_chain([(30.0, 10.0)] * 5, cable=PAIR)


def compared(job: Job, change: Change) -> dict[str, Compared]:
    """Every finding before and after, by its id."""
    return {one.id: one for one in what_if(job, change).compared}


def value(finding: Finding | None) -> float:
    """A finding's value, which is there."""
    assert finding is not None
    assert finding.value is not None
    return finding.value


def test_a_swap_of_the_amplifier_doubles_every_watt() -> None:
    # 70.7 V taps on 100 V: × 2.00060 (arithmetic)
    found = compared(FIVE, OtherVoltage("o", 100.0))
    load = found["output_load_w:o:override"]
    assert value(load.after) == pytest.approx(2.00060 * value(load.before), rel=1e-5)
    loss = found["zone_loss_db:z:override"]
    assert value(loss.after) == pytest.approx(value(loss.before))


def test_before_is_the_job_as_it_is_and_after_the_changed_one() -> None:
    change = OtherTap("z", 20.0, 70.7)
    told = what_if(FIVE, change)
    now = {finding.id: finding for finding in check_job(FIVE).findings}
    then = {finding.id: finding for finding in check_job(told.job).findings}
    for one in told.compared:
        assert one.before == now.get(one.id)
        assert one.after == then.get(one.id)
    assert all(point.fitted.tap_w == 20.0 for point in told.job.zones[0].line)  # type: ignore[union-attr]


def test_every_loudspeaker_at_another_tap_leaves_controls_alone() -> None:
    points = [attenuator(None), {**speaker(0, length_m=5.0, tap_w=5.0), "after": "v"}]
    points[1]["fitted"]["direct_ohm"] = 8.0
    told = what_if(job_of(points), OtherTap("z", 2.5, 70.7))
    control, tapped = told.job.zones[0].line
    assert control == job_of(points).zones[0].line[0]
    assert (tapped.fitted.tap_w, tapped.fitted.direct_ohm) == (2.5, None)  # type: ignore[union-attr]


def test_more_at_the_end_hang_one_behind_the_other_like_the_last() -> None:
    change = MoreAtEnd("z", 3, 10.0, 70.7, None, None)
    found = compared(FIVE, change)
    eight = check_job(make_chain([(30.0, 10.0)] * 8, cable=PAIR))
    wanted = {one.id: one for one in eight.findings}
    for name in ("zone_loss_db:z:override", "output_load_w:o:override"):
        assert value(found[name].after) == pytest.approx(value(wanted[name]), rel=1e-12)
    added = what_if(FIVE, change).job.zones[0].line[5:]
    assert [point.after for point in added] == ["p4", "+0", "+1"]


def test_more_on_an_empty_zone_hang_on_the_terminals() -> None:
    told = what_if(job_of([]), MoreAtEnd("z", 1, 10.0, 70.7, 12.0, "c"))
    (point,) = told.job.zones[0].line
    assert (point.after, point.length_m, point.cable) == (None, 12.0, "c")


@pytest.mark.parametrize(
    "change",
    [
        OtherVoltage("nowhere", 100.0),
        OtherTap("nowhere", 5.0, 70.7),
        MoreAtEnd("z", 0, 5.0, 70.7, None, None),
        MoreAtEnd("z", 100_000, 5.0, 70.7, None, None),
    ],
)
def test_what_cannot_be_tried_is_a_problem(change: Change) -> None:
    with pytest.raises(BadCommand):
        what_if(FIVE, change)


def test_of_two_ends_as_far_away_more_go_behind_the_one_that_hangs_on_more() -> None:
    near = [speaker(n, length_m=10.0, tap_w=5.0) for n in range(3)]
    points = [near[0], near[1], {**near[2], "after": "p0"}]
    longer = {**speaker(3, length_m=0.0, tap_w=5.0), "after": "p1"}
    for line in ([*points, longer], [points[0], points[2], points[1], longer]):
        changed = what_if(job_of(line), MoreAtEnd("z", 1, 5.0, 70.7, 1.0, "c")).job
        assert changed.zones[0].line[-1].after == "p3"

"""Two states made one: nothing is chosen silently, nothing of either is lost."""

from typing import Any, Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pycore.edit.compare import compare, take_sides
from pycore.edit.merge import States, merge
from pycore.edit.ticks import living_ticks
from pycore.ground.problems import Problem
from pycore.ground.words import has
from pycore.jobs import Job, Reading, Tick
from pycore.jobs.job import Base
from tests.carry.acts import BASE, P, Q, content, do
from tests.strategies import jobs

GROWN = Base(rev=7, print="abc")
SMALL = jobs(most_points=3)
Side = Literal["mine", "theirs"]


def merged(mine: Job, theirs: Job, base: Job | None, **taken: Side) -> Job:
    """The merged job; a choice is named by its cell, which has to be the only one so named."""
    found = compare(take_sides(mine, theirs, base=base))
    chosen = {change.id: taken[change.cell] for change in found if change.cell in taken}
    return merge(States(mine, theirs, base), chosen, grown_from=GROWN)


def all_from(side: Side, mine: Job, theirs: Job, base: Job | None) -> Job:
    """The merged job with every change taken from one side."""
    found = compare(take_sides(mine, theirs, base=base))
    chosen: dict[str, Side] = {change.id: side for change in found}
    return merge(States(mine, theirs, base), chosen, grown_from=GROWN)


@given(SMALL, SMALL, st.none() | SMALL)
def test_all_from_one_side_is_what_that_side_says(mine: Job, theirs: Job, base: Job | None) -> None:
    assert content(all_from("mine", mine, theirs, base)) == content(mine)
    assert content(all_from("theirs", mine, theirs, base)) == content(theirs)


@given(SMALL, SMALL, st.none() | SMALL)
def test_the_merged_job_goes_on_from_both(mine: Job, theirs: Job, base: Job | None) -> None:
    result = all_from("theirs", mine, theirs, base)
    assert (result.rev, result.base, result.id) == (max(mine.rev, theirs.rev) + 1, GROWN, mine.id)


@given(SMALL, SMALL, st.data())
def test_any_choices_give_a_sound_job_or_name_what_hangs(
    mine: Job, theirs: Job, data: st.DataObject
) -> None:
    base = data.draw(st.sampled_from([None, mine, theirs]))
    found = compare(take_sides(mine, theirs, base=base))
    sides: st.SearchStrategy[Side] = st.sampled_from(("mine", "theirs"))
    chosen = {change.id: data.draw(sides) for change in found}
    result = merge_or_refusal(States(mine, theirs, base), chosen)
    if isinstance(result, Problem):
        assert result.where, result.code
        assert has("problem", result.code)
    else:
        assert Job.model_validate_json(result.model_dump_json()) == result


def merge_or_refusal(states: States, chosen: dict[str, Side]) -> Job | Problem:
    """The merged job, or why there is none."""
    try:
        return merge(states, chosen, grown_from=GROWN)
    except Problem as problem:
        return problem


@given(SMALL, SMALL)
def test_only_their_changes_are_taken_without_asking(mine: Job, theirs: Job) -> None:
    result = merge(States(mine, theirs, mine), {}, grown_from=GROWN)
    assert content(result) == content(theirs)
    kept = merge(States(mine, theirs, theirs), {}, grown_from=GROWN)
    assert content(kept) == content(mine)


def test_edits_apart_from_each_other_are_both_there() -> None:
    office = do(BASE, do="set_tap", point=P[1], tap_w=10.0, tap_at_v=100.0)
    office = do(office, do="change_job", changes={"place": "Upper Ilverne"})
    ladder = do(BASE, do="remove_point", point=Q[2], tail="join")
    point = {"id": "m3q900", "after": P[-1], "fitted": {"is": "junction", "label": "J"}}
    zone = BASE.zones[0].id
    ladder = do(ladder, do="add_points", zone=zone, points=[point], splice=False)
    result = merged(office, ladder, BASE)
    expected = do(BASE, do="set_tap", point=P[1], tap_w=10.0, tap_at_v=100.0)
    expected = do(expected, do="change_job", changes={"place": "Upper Ilverne"})
    expected = do(expected, do="remove_point", point=Q[2], tail="join")
    expected = do(expected, do="add_points", zone=zone, points=[point], splice=False)
    assert content(result) == content(expected)
    assert content(merged(ladder, office, BASE)) == content(expected)


def test_a_clash_nobody_decided_is_refused_and_named() -> None:
    office = do(BASE, do="set_tap", point=P[1], tap_w=10.0, tap_at_v=100.0)
    ladder = do(BASE, do="set_tap", point=P[1], tap_w=5.0, tap_at_v=100.0)
    with pytest.raises(Problem) as caught:
        merged(office, ladder, BASE)
    assert caught.value.code == "merge_one_undecided"
    assert caught.value.where == {"change": f"point.{P[1]}.tap"}
    assert merged(office, ladder, BASE, tap="theirs").zones == ladder.zones
    assert merged(office, ladder, BASE, tap="mine").zones == office.zones


def test_a_choice_of_another_comparison_is_refused() -> None:
    with pytest.raises(Problem) as caught:
        merge(States(BASE, BASE, None), {"point.gone.tap": "mine"}, grown_from=GROWN)
    assert caught.value.code == "change_unknown"


READING: dict[str, Any] = {
    "at": "2026-11-25", "looking": "out", "quantity": "dc_ohm", "value": 3.5, "controls": "open",
    "tolerance_pct": 5.0, "instrument": "meter", "baseline": False,
}  # fmt: skip


def reading(one: str, **fields: Any) -> Reading:
    """A reading at the first zone."""
    return Reading.model_validate(
        {"id": one, "where": {"zone": BASE.zones[0].id}, **READING} | fields
    )


def tick(point: str, initials: str) -> Tick:
    """A tick on the tap the point has in the job both grew from."""
    fitted = next(one.fitted for one in BASE.zones[0].line if one.id == point)
    assert fitted.is_ == "loudspeaker"
    return Tick.model_validate({"point": point, "tap_w": fitted.tap_w, "tap_at_v": fitted.tap_at_v,
                                "at": "2026-11-25", "initials": initials})  # fmt: skip


def with_records(job: Job, *records: Reading | Tick) -> Job:
    """The job with readings and ticks."""
    readings = tuple(one for one in records if isinstance(one, Reading))
    ticks = tuple(one for one in records if isinstance(one, Tick))
    return Job.model_validate({**dict(job), "readings": readings, "ticks": ticks})


def test_readings_and_ticks_of_both_are_united_once_each() -> None:
    mine = with_records(BASE, reading("r1"), reading("r2"), tick(P[0], "AB"))
    theirs = with_records(BASE, reading("r2"), reading("r3"), tick(P[0], "AB"), tick(P[1], "CD"))
    result = merged(mine, theirs, None)
    assert [one.id for one in result.readings] == ["r1", "r2", "r3"]
    assert [(one.point, one.initials) for one in result.ticks] == [(P[0], "AB"), (P[1], "CD")]


def test_a_reading_corrected_on_one_side_is_a_change_like_any_other() -> None:
    base = with_records(BASE, reading("r1"))
    theirs = with_records(BASE, reading("r1", value=4.5))
    assert merged(base, theirs, base).readings[0].value == 4.5
    assert merged(base, theirs, None, definition="mine").readings[0].value == 3.5


def test_a_tick_dies_when_the_merged_tap_is_another() -> None:
    mine = do(BASE, do="set_tap", point=P[1], tap_w=99.0, tap_at_v=100.0)
    theirs = with_records(BASE, tick(P[1], "CD"), tick(P[0], "CD"))
    assert [one.point for one in merged(mine, theirs, BASE).ticks] == [P[0]]


@given(SMALL, SMALL)
def test_every_tick_of_a_merged_job_stands(mine: Job, theirs: Job) -> None:
    result = all_from("theirs", mine, theirs, None)
    assert result.ticks == living_ticks(result)


def test_a_kind_comes_with_what_uses_it() -> None:
    kind = {"id": "m3q700", "name": "own box", "taps": [{"w": 5.0, "at_v": 100.0}]}
    theirs = do(BASE, do="use_kind", family="loudspeakers", kind=kind)
    theirs = do(theirs, do="change_point", point=P[0], changes={"kind": "m3q700"})
    found = compare(take_sides(BASE, theirs, base=None))
    chosen: dict[str, Side] = {
        change.id: "theirs" if change.cell == "kind" else "mine" for change in found
    }
    result = merge(States(BASE, theirs, None), chosen, grown_from=GROWN)
    assert "m3q700" in {one.id for one in result.kinds.loudspeakers}


@pytest.mark.parametrize(
    ("cells", "code"),
    [
        ({"m3q801": "theirs", "m3q800": "mine"}, "merge_hangs_on_gone"),
        ({"m3q801": "mine", "m3q800": "theirs"}, None),
    ],
)
def test_a_point_without_what_it_hangs_on_is_named(
    cells: dict[str, Side], code: str | None
) -> None:
    points = [
        {"id": "m3q800", "after": P[-1], "fitted": {"is": "junction", "label": "one"}},
        {"id": "m3q801", "after": "m3q800", "fitted": {"is": "junction", "label": "two"}},
    ]
    theirs = do(BASE, do="add_points", zone=BASE.zones[0].id, points=points, splice=False)
    chosen = {f"point.{one}.there": side for one, side in cells.items()}
    if code is None:
        assert len(merge(States(BASE, theirs, BASE), chosen, grown_from=GROWN).zones[0].line) == 13
        return
    with pytest.raises(Problem) as caught:
        merge(States(BASE, theirs, BASE), chosen, grown_from=GROWN)
    assert (caught.value.code, caught.value.where) == (code, {"point": "m3q801"})


def test_a_ring_made_of_two_moves_is_named() -> None:
    zone = BASE.zones[0].id
    mine = do(BASE, do="move_point", point=P[1], zone=zone, after=P[3], splice=False)
    theirs = do(BASE, do="move_point", point=P[3], zone=zone, after=P[1], splice=False)
    found = compare(take_sides(mine, theirs, base=BASE))
    chosen: dict[str, Side] = {change.id: "theirs" for change in found if change.must_choose}
    chosen |= {f"point.{P[1]}.hung": "mine", f"point.{P[3]}.hung": "theirs"}
    with pytest.raises(Problem) as caught:
        merge(States(mine, theirs, BASE), chosen, grown_from=GROWN)
    assert caught.value.code == "merge_in_a_ring"


def test_a_zone_on_an_output_that_was_not_taken_is_named() -> None:
    amplifier = {
        "id": "m3q850",
        "name": "New",
        "outputs": [{"id": "m3q851", "name": "A", "line_v": 100.0}],
    }
    theirs = do(BASE, do="add_amplifier", amplifier=amplifier)
    theirs = do(theirs, do="change_zone", zone=BASE.zones[0].id, changes={"output": "m3q851"})
    chosen: dict[str, Side] = {"amplifier.m3q850.there": "mine"}
    with pytest.raises(Problem) as caught:
        merge(States(BASE, theirs, BASE), chosen, grown_from=GROWN)
    assert caught.value.code == "merge_output_gone"
    assert caught.value.where == {"zone": BASE.zones[0].id}

"""Readings and ticks in a merge: what is new is united, what was taken out stays out."""

from typing import Any, Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pycore.edit.compare import Change, compare, take_sides
from pycore.edit.merge import States, merge
from pycore.ground.problems import Problem
from pycore.jobs import Job, Reading, Tick
from tests.carry.acts import BASE, P, do
from tests.carry.test_asks import ask, raw
from tests.carry.test_merge import GROWN, all_from, merged, reading, tick, with_records
from tests.strategies import jobs

SMALL = jobs(most_points=3)
RECORDS: dict[str, Reading | Tick] = {
    **{f"reading {one}": reading(one) for one in ("r1", "r2", "r3")},
    **{f"tick {number}": tick(P[number], "RK") for number in range(3)},
}
SOME = st.sets(st.sampled_from(sorted(RECORDS)))
Side = Literal["mine", "theirs"]


def job_with(names: set[str]) -> Job:
    """The job with some of the records."""
    return with_records(BASE, *(RECORDS[name] for name in sorted(names)))


def names_in(job: Job) -> set[str]:
    """Which of the records a job has."""
    there = {*job.readings, *job.ticks}
    return {name for name, record in RECORDS.items() if record in there}


def differences(mine: Job, theirs: Job, base: Job | None) -> dict[str, Change]:
    """The differences by their ids."""
    return {change.id: change for change in compare(take_sides(mine, theirs, base=base))}


@given(SOME, SOME, SOME)
def test_what_both_grew_from_stays_where_neither_took_it_out_and_what_is_new_is_added(
    mine: set[str], theirs: set[str], base: set[str]
) -> None:
    result = names_in(merged(job_with(mine), job_with(theirs), job_with(base)))
    assert result == (base & mine & theirs) | ((mine | theirs) - base)


@given(SOME, SOME)
def test_without_a_common_state_all_are_united(mine: set[str], theirs: set[str]) -> None:
    assert names_in(merged(job_with(mine), job_with(theirs), None)) == mine | theirs


@given(SOME, SOME, SOME)
def test_a_merge_is_the_same_from_either_side(
    mine: set[str], theirs: set[str], base: set[str]
) -> None:
    here, there, before = job_with(mine), job_with(theirs), job_with(base)
    assert names_in(merged(here, there, before)) == names_in(merged(there, here, before))


@given(SOME, SOME, SOME)
def test_every_record_taken_out_is_told_and_can_be_had_back(
    mine: set[str], theirs: set[str], base: set[str]
) -> None:
    here, there, before = job_with(mine), job_with(theirs), job_with(base)
    told = differences(here, there, before)
    assert len(told) == len(base & (mine ^ theirs))
    back: dict[str, Side] = {
        one: "mine" if change.side == "theirs" else "theirs" for one, change in told.items()
    }
    result = merge(States(here, there, before), back, grown_from=GROWN)
    assert names_in(result) == mine | theirs


@given(SMALL, SMALL)
def test_replacing_by_what_grew_from_mine_leaves_exactly_their_records(
    mine: Job, theirs: Job
) -> None:
    result = all_from("theirs", mine, theirs, mine)
    assert {*result.readings} == {*theirs.readings}
    assert {*result.ticks} <= {*theirs.ticks}


def test_a_reading_taken_out_here_and_corrected_there_is_a_clash() -> None:
    base = with_records(BASE, reading("r1"))
    mine = do(base, do="drop_reading", reading="r1")
    theirs = with_records(BASE, reading("r1", value=4.5))
    with pytest.raises(Problem) as caught:
        merged(mine, theirs, base)
    assert caught.value.where == {"change": "reading.r1.there"}
    assert merged(mine, theirs, base, there="mine").readings == ()
    assert merged(mine, theirs, base, there="theirs").readings == theirs.readings
    assert merged(theirs, mine, base, there="mine").readings == theirs.readings


def test_a_tick_taken_back_here_and_made_anew_there_is_there() -> None:
    base = with_records(BASE, tick(P[0], "AB"))
    mine = do(base, do="untick", point=P[0])
    theirs = do(base, do="tick", point=P[0], at="2026-11-26", initials="CD")
    for one, other in ((mine, theirs), (theirs, mine)):
        assert merged(one, other, base).ticks == theirs.ticks


def test_a_tick_replaced_on_one_side_does_not_leave_the_old_one_beside_it() -> None:
    base = with_records(BASE, tick(P[0], "AB"))
    theirs = do(base, do="tick", point=P[0], at="2026-11-26", initials="CD")
    assert merged(base, theirs, base).ticks == theirs.ticks
    assert merged(theirs, base, base).ticks == theirs.ticks


def test_a_tick_that_died_with_its_tap_was_not_taken_back() -> None:
    base = with_records(BASE, tick(P[1], "AB"))
    mine = do(base, do="set_tap", point=P[1], tap_w=99.0, tap_at_v=100.0)
    assert mine.ticks == ()
    assert set(differences(mine, base, base)) == {f"point.{P[1]}.tap"}
    assert merged(mine, base, base).ticks == ()
    assert merged(mine, base, base, tap="theirs").ticks == base.ticks


def texts_of(mine: Job, theirs: Job, base: Job) -> dict[str, Any]:
    """The only difference, as the page gets it."""
    (change,) = ask("compare", mine=raw(mine), theirs=raw(theirs), base=raw(base))["changes"]
    return dict(change)


def test_what_was_taken_out_is_told_with_what_it_said() -> None:
    zone = BASE.zones[0]
    base = with_records(BASE, reading("r1"), tick(P[0], "AB"))
    dropped = texts_of(base, do(base, do="drop_reading", reading="r1"), base)
    assert (dropped["what"], dropped["words"]) == ("Reading", "Taken out there.")
    assert dropped["theirs"] == "no"
    assert dropped["mine"] == (
        f"Quantity: Ω by ohmmeter · Value: 3,5 Ω · Where: {zone.name} · When: 2026-11-25"
    )
    unticked = texts_of(base, do(base, do="untick", point=P[0]), base)
    assert (unticked["what"], unticked["title"]) == ("Tick", zone.line[0].fitted.label)
    assert unticked["where"] == {"point": P[0]}
    assert unticked["theirs"] == "no"
    assert unticked["mine"].endswith("100 V, 2026-11-25, AB")


def test_what_was_read_since_is_told_with_its_value_and_unit() -> None:
    zone = BASE.zones[0]
    mine = with_records(BASE, reading("r1"))
    told = ask("compare", mine=raw(mine), theirs=raw(BASE), base=raw(BASE))
    assert told["read"] == [
        f"Quantity: Ω by ohmmeter · Value: 3,5 Ω · Where: {zone.name} · When: 2026-11-25"
    ]
    assert ask("compare", mine=raw(mine), theirs=raw(mine), base=raw(mine))["read"] == []
    assert ask("compare", mine=raw(mine), theirs=raw(BASE))["read"] == []


def test_a_corrected_reading_is_named_and_told_from_what_to_what() -> None:
    base = with_records(BASE, reading("r1"))
    change = texts_of(with_records(BASE, reading("r1", value=4.5)), base, base)
    assert change["title"] == f"Ω by ohmmeter at {BASE.zones[0].name}"
    assert (change["base"], change["mine"]) == ("Value: 3,5 Ω", "Value: 4,5 Ω")


def test_only_what_is_new_is_said_to_be_added() -> None:
    base = with_records(BASE, reading("r1"), tick(P[0], "AB"))
    theirs = with_records(BASE, reading("r1"), reading("r2"), tick(P[0], "AB"))
    mine = with_records(BASE)
    found = ask("compare", mine=raw(mine), theirs=raw(theirs), base=raw(base))
    assert found["united"] == ["1 reading of theirs is added."]

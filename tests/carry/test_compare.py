"""Two states of a job side by side: whose change each difference is."""

import json
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from pycore.edit import apply, read_command
from pycore.edit.compare import Change, compare, take_sides
from pycore.jobs import Job
from tests.carry.acts import BASE, P, do
from tests.strategies import jobs

SMALL = jobs(most_points=3)
OFFICE = do(BASE, do="set_tap", point=P[1], tap_w=10.0, tap_at_v=100.0)


def changes(mine: Job, theirs: Job, base: Job | None) -> dict[str, Change]:
    """The differences by their ids."""
    return {change.id: change for change in compare(take_sides(mine, theirs, base=base))}


@given(SMALL, st.none() | SMALL)
def test_a_job_does_not_differ_from_itself_but_in_what_both_changed(
    job: Job, base: Job | None
) -> None:
    found = compare(take_sides(job, job, base=base))
    assert {change.side for change in found} <= {"both"}
    assert base is not None or not found


@given(SMALL, SMALL)
def test_swapping_the_sides_swaps_whose_change_it_is(mine: Job, theirs: Job) -> None:
    there, here = changes(mine, theirs, mine), changes(theirs, mine, mine)
    swapped = {"mine": "theirs", "theirs": "mine", "clash": "clash", "both": "both"}
    assert {one: swapped[change.side] for one, change in there.items()} == {
        one: change.side for one, change in here.items()
    }


@given(SMALL, SMALL)
def test_every_difference_is_theirs_when_mine_is_the_base(mine: Job, theirs: Job) -> None:
    assert {change.side for change in compare(take_sides(mine, theirs, base=mine))} <= {"theirs"}


@given(SMALL, SMALL)
def test_without_a_base_every_difference_needs_a_choice(mine: Job, theirs: Job) -> None:
    found = compare(take_sides(mine, theirs, base=None))
    assert {change.side for change in found} <= {"differs"}
    assert all(change.must_choose or "order" in change.cell for change in found)


def test_a_tap_is_one_change_with_its_voltage_row() -> None:
    theirs = do(BASE, do="set_tap", point=P[1], tap_w=5.0, tap_at_v=70.7)
    found = changes(OFFICE, theirs, BASE)
    assert list(found) == [f"point.{P[1]}.tap"]
    change = found[f"point.{P[1]}.tap"]
    assert (change.side, change.mine, change.theirs) == (
        "clash", (10.0, 100.0, None), (5.0, 70.7, None)
    )  # fmt: skip


def test_each_side_owns_what_only_it_changed() -> None:
    theirs = do(BASE, do="change_point", point=P[2], changes={"length_m": 30.5})
    found = changes(OFFICE, theirs, BASE)
    assert {one: change.side for one, change in found.items()} == {
        f"point.{P[1]}.tap": "mine", f"point.{P[2]}.length_m": "theirs",
    }  # fmt: skip


def test_the_same_change_on_both_sides_is_told_and_needs_no_choice() -> None:
    (change,) = changes(OFFICE, OFFICE, BASE).values()
    assert (change.side, change.must_choose) == ("both", False)


def test_a_zone_only_one_side_has_is_one_change_with_all_that_is_in_it() -> None:
    zone: dict[str, Any] = {"id": "m3q500", "name": "Yard"}
    zone["line"] = [{"id": "m3q501", "fitted": {"is": "junction", "label": "J"}}]
    found = changes(do(BASE, do="add_zone", zone=zone), BASE, BASE)
    assert {one: change.side for one, change in found.items()} == {"zone.m3q500.there": "mine"}


def test_a_point_swapped_for_another_sort_is_one_change() -> None:
    raw = json.loads(BASE.model_dump_json(by_alias=True))
    raw["zones"][0]["line"][1]["fitted"] = {"is": "junction", "label": "box"}
    found = changes(BASE, Job.model_validate_json(json.dumps(raw)), BASE)
    assert {one: change.side for one, change in found.items()} == {f"point.{P[1]}.fitted": "theirs"}


def test_taking_out_what_the_other_changed_is_a_clash() -> None:
    theirs = do(BASE, do="remove_point", point=P[1], tail="join")
    found = changes(OFFICE, theirs, BASE)
    assert found[f"point.{P[1]}.there"].side == "clash"


def test_taking_out_what_the_other_newly_hangs_on_is_a_clash() -> None:
    mine = do(BASE, do="remove_point", point=P[5], tail="join")
    point = {"id": "m3q600", "after": P[5], "fitted": {"is": "junction", "label": "J"}}
    zone = BASE.zones[0].id
    theirs = do(BASE, do="add_points", zone=zone, points=[point], splice=False)
    found = changes(mine, theirs, BASE)
    assert found[f"point.{P[5]}.there"].side == "clash"
    assert found["point.m3q600.there"].side == "theirs"


def test_taking_out_an_output_the_other_lands_a_zone_on_is_a_clash() -> None:
    spare = BASE.amplifiers[1].outputs[1].id
    zone = BASE.zones[0].id
    mine = do(BASE, do="remove_output", output=spare)
    theirs = do(BASE, do="change_zone", zone=zone, changes={"output": spare})
    found = changes(mine, theirs, BASE)
    assert found[f"output.{spare}.there"].side == "clash"
    assert found[f"zone.{zone}.output"].side == "theirs"


def test_another_order_is_a_change_of_the_list_alone() -> None:
    first, second = BASE.zones[0].id, BASE.zones[1].id
    moved = apply(
        BASE, read_command(json.dumps({"do": "move_zone", "zone": second, "before": first}))
    )
    found = changes(moved, BASE, BASE)
    assert {one: change.side for one, change in found.items()} == {"job..order_zones": "mine"}

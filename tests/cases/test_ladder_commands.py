"""What is done at one loudspeaker: taps turned, kinds swapped, ticks, and cable pulled anew."""

from typing import Any

import pytest

from pycore.asks.editing import command_of
from pycore.edit import apply
from pycore.ground.problems import Problem
from pycore.ground.units import Manner
from pycore.jobs import Job, Loudspeaker
from tests.samples.halls import job_of, told
from tests.samples.lines import speaker

MANNER = Manner("en", "m", ".", "2026-11-25")
HORN = {"id": "horn", "name": "Horn", "taps": [{"w": 15.0, "at_v": 70.7}], "sensitivity_db": 106.0}
THICK = {"id": "thick", "name": "4 mm²", "area_mm2": 4.0, "class": 5, "metal": "copper"}


def chain(**fitted: Any) -> Job:
    """Three loudspeakers of 5 W in a row."""
    return job_of([speaker(n, length_m=10.0, tap_w=5.0, fitted=fitted) for n in range(3)])


def done(job: Job, raw: dict[str, Any]) -> Job:
    """The job after a command as the page sends it."""
    return apply(job, command_of(raw, {}, manner=MANNER))


def at(job: Job, point: str) -> Loudspeaker:
    """The loudspeaker at a point."""
    (fitted,) = (one.fitted for one in job.zones[0].line if one.id == point)
    assert fitted.is_ == "loudspeaker"
    return fitted


def turned(job: Job, tap_w: float, seen: str | None = None) -> Job:
    """The job with the middle loudspeaker turned."""
    raw = {"do": "set_tap", "point": "p1", "tap_w": tap_w, "tap_at_v": 70.7, "seen": seen}
    return done(job, raw)


def test_what_was_planned_is_kept_when_another_tap_is_found_or_set() -> None:
    found = turned(chain(), 2.0, "found")
    assert (at(found, "p1").tap_w, at(found, "p1").planned_tap_w) == (2.0, 5.0)
    put_right = turned(found, 5.0, "set")
    assert (at(put_right, "p1").seen, at(put_right, "p1").planned_tap_w) == ("set", 5.0)


def test_a_tap_found_as_planned_keeps_the_plan_for_when_it_is_turned() -> None:
    found = turned(chain(seen="drawing"), 5.0, "found")
    assert at(found, "p1").planned_tap_w == 5.0
    assert at(turned(found, 2.0, "set"), "p1").planned_tap_w == 5.0


@pytest.mark.parametrize("seen", [None, "drawing"])
def test_a_plan_that_is_written_down_already_stays_the_plan(seen: str | None) -> None:
    planned = at(turned(chain(seen=seen, planned_tap_w=7.0), 2.0, "found"), "p1")
    assert (planned.tap_w, planned.planned_tap_w) == (2.0, 7.0)


def test_a_new_plan_takes_the_place_of_the_old_one() -> None:
    found = turned(chain(), 2.0, "found")
    assert at(turned(found, 10.0, "drawing"), "p1").planned_tap_w is None


def test_a_tap_turned_without_saying_how_it_is_known_leaves_that_alone() -> None:
    plain = at(turned(chain(seen="found", planned_tap_w=7.0), 2.0), "p1")
    assert (plain.seen, plain.planned_tap_w) == ("found", 7.0)


def test_another_kind_is_fitted_with_its_tap_in_one_command() -> None:
    raw = {"do": "swap_loudspeaker", "point": "p1", "kind": HORN, "tap_w": 15.0, "tap_at_v": 70.7}
    after = done(chain(direct_ohm=8.0), raw)
    assert [kind.id for kind in after.kinds.loudspeakers] == ["k", "horn"]
    new = at(after, "p1")
    assert (new.kind, new.tap_w, new.direct_ohm, new.label) == ("horn", 15.0, None, "S1")


def test_a_kind_the_job_has_already_stays_as_the_job_has_it() -> None:
    renamed = {**HORN, "id": "k", "name": "something else"}
    raw = {"do": "swap_loudspeaker", "point": "p1", "kind": renamed, "tap_w": 5.0}
    assert [kind.name for kind in done(chain(), raw).kinds.loudspeakers] == ["six"]


def test_a_tick_says_tap_day_and_hand() -> None:
    raw = {"do": "tick", "point": "p1", "initials": "AB"}
    (tick,) = done(chain(), raw).ticks
    assert tick.model_dump() == {
        "point": "p1", "tap_w": 5.0, "tap_at_v": 70.7, "at": "2026-11-25", "initials": "AB",
    }  # fmt: skip


def test_the_day_of_the_touch_goes_before_the_day_it_is_done() -> None:
    raw = {"do": "tick", "point": "p1", "at": "2026-11-24"}
    assert [tick.at for tick in done(chain(), raw).ticks] == ["2026-11-24"]


def test_a_second_tick_takes_the_place_of_the_first_and_can_be_taken_back() -> None:
    job = done(chain(), {"do": "tick", "point": "p1", "initials": "AB"})
    job = done(job, {"do": "tick", "point": "p1", "initials": "CD"})
    assert [tick.initials for tick in job.ticks] == ["CD"]
    assert done(job, {"do": "untick", "point": "p1"}).ticks == ()


@pytest.mark.parametrize(
    "raw",
    [
        {"do": "set_tap", "point": "p1", "tap_w": 2.0, "tap_at_v": 70.7},
        {"do": "swap_loudspeaker", "point": "p1", "kind": HORN, "tap_w": 15.0, "tap_at_v": 70.7},
        {"do": "swap_loudspeaker", "point": "p1", "kind": HORN, "tap_w": 5.0, "tap_at_v": 70.7},
        {"do": "set_tap", "point": "p1", "tap_w": 5.0, "tap_at_v": 100.0},
        {"do": "set_tap", "point": "p1"},
        {"do": "change_point", "point": "p1", "changes": {"direct_ohm": 8.0}},
        {"do": "remove_point", "point": "p1", "tail": "join"},
        {"do": "remove_point", "point": "p1", "tail": "cut"},
    ],
)
def test_a_tick_dies_with_the_tap_it_was_given_for(raw: dict[str, Any]) -> None:
    job = done(chain(), {"do": "tick", "point": "p1"})
    assert done(job, raw).ticks == ()


def test_a_tick_outlives_undo() -> None:
    before = chain()
    ticked = done(before, {"do": "tick", "point": "p1"})
    past = before.model_dump(mode="json", exclude_none=True)
    assert done(ticked, {"do": "restore", "past": past}).ticks == ticked.ticks


@pytest.mark.parametrize(
    ("fitted", "code"),
    [({"tap_w": None}, "tick_needs_tap"), ({"direct_ohm": 8.0}, "tick_needs_tap")],
)
def test_what_stands_on_no_known_tap_is_not_ticked(fitted: dict[str, Any], code: str) -> None:
    with pytest.raises(Problem) as refused:
        done(chain(**fitted), {"do": "tick", "point": "p1"})
    assert refused.value.code == code


@pytest.mark.parametrize(
    ("sections", "changed"),
    [("all", {"p0", "p1", "p2"}), ("home_run", {"p0"}), (["p1", "p2"], {"p1", "p2"})],
)
def test_another_cable_goes_where_it_is_wanted(sections: object, changed: set[str]) -> None:
    raw = {"do": "set_cable", "zone": "z", "sections": sections, "kind": THICK}
    after = done(chain(), raw)
    assert {one.id for one in after.zones[0].line if one.cable == "thick"} == changed
    assert [kind.id for kind in after.kinds.cables] == ["c", "thick"]


def test_a_section_that_is_not_there_is_named() -> None:
    raw = {"do": "set_cable", "zone": "z", "sections": ["nobody"], "kind": THICK}
    with pytest.raises(Problem) as refused:
        done(chain(), raw)
    assert (refused.value.code, refused.value.where) == ("not_here", {"point": "nobody"})


def test_a_cable_the_job_has_already_stays_as_the_job_has_it() -> None:
    raw: dict[str, Any] = {"do": "set_cable", "zone": "z", "sections": "all", "kind": THICK}
    job = done(chain(), raw)
    again = done(job, {**raw, "kind": {**THICK, "name": "something else"}})
    assert again.kinds == job.kinds


def lengths(job: Job) -> list[float | None]:
    """The length of the section to each point of the line."""
    return [one.length_m for one in job.zones[0].line]


def unmeasured() -> Job:
    """A line as a tally leaves it: two branches at the terminals, no length known but one."""
    return job_of(
        [
            speaker(0, length_m=None, tap_w=5.0, after=None),
            speaker(1, length_m=None, tap_w=5.0, after="p0"),
            speaker(2, length_m=7.0, tap_w=5.0, after="p1"),
            speaker(3, length_m=None, tap_w=5.0, after=None),
        ]
    )


def test_lengths_are_said_at_once_and_one_that_is_known_stays() -> None:
    raw: dict[str, Any] = {"do": "set_lengths", "zone": "z"}
    typed = {"home_run_m": "80 m", "further_m": "5"}
    after = apply(unmeasured(), command_of(raw, typed, manner=MANNER))
    assert lengths(after) == [80.0, 5.0, 7.0, 80.0]
    everywhere = apply(unmeasured(), command_of({**raw, "sections": "all"}, typed, manner=MANNER))
    assert lengths(everywhere) == [80.0, 5.0, 5.0, 80.0]


def test_a_length_that_is_not_typed_stays_not_known() -> None:
    after = done(unmeasured(), {"do": "set_lengths", "zone": "z", "home_run_m": 80.0})
    assert lengths(after) == [80.0, None, 7.0, 80.0]


def test_no_length_at_all_is_asked_back() -> None:
    with pytest.raises(Problem) as refused:
        done(unmeasured(), {"do": "set_lengths", "zone": "z", "home_run_m": None})
    assert (refused.value.code, refused.value.where) == (
        "lengths_needed",
        {"field": "home_run_m"},
    )


def test_the_whole_way_as_a_home_run_loses_no_less_than_the_same_way_along_the_line() -> None:
    job = job_of([speaker(n, length_m=None, tap_w=5.0) for n in range(5)])
    whole = done(job, {"do": "set_lengths", "zone": "z", "home_run_m": 80.0, "further_m": 0.0})
    along = done(job, {"do": "set_lengths", "zone": "z", "home_run_m": 40.0, "further_m": 10.0})
    assert (told(whole).value or 0.0) > (told(along).value or 0.0) > 0.0

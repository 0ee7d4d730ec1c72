"""Commands for the points of a line and for what is fitted there, one by one."""

import json

import pytest

from pycore.ground.problems import BadCommand, BrokenJob, Problem
from pycore.jobs import Job
from tests.drawn import Raw, control, done, drawn, junction, output, speaker

CABLES = {"cables": [{"id": "thin", "name": "thin", "awg": 18, "metal": "copper"}]}
CABLES["cables"].append({"id": "thick", "name": "thick", "awg": 14, "metal": "copper"})


def point(name: str, after: str | None, length_m: float | None, **more: object) -> Raw:
    """A loudspeaker on thin cable."""
    base = {"id": name, "after": after, "length_m": length_m, "cable": "thin"}
    return {**base, "fitted": speaker(5.0, label=name), **more}


def line_of(*points: Raw) -> Job:
    """A job with these points on one zone, and an empty zone beside."""
    hall = {"id": "hall", "name": "Hall", "output": "o1", "line": list(points)}
    quay = {"id": "quay", "name": "Quay", "output": "o1", "line": []}
    return drawn([output(max_w=120.0)], hall, quay, kinds=CABLES)


def three() -> Job:
    """Three in a row, 10, 20 and 30 m."""
    return line_of(point("a", None, 10.0), point("b", "a", 20.0), point("c", "b", 30.0))


def hung(job: Job, zone: str = "hall") -> list[tuple[str, str | None, float | None]]:
    """Each point with what it hangs on and how far."""
    line = next(one.line for one in job.zones if one.id == zone)
    return [(one.id, one.after, one.length_m) for one in line]


def refused(job: Job, **command: object) -> Problem:
    """Why a command does not fit."""
    with pytest.raises((BadCommand, BrokenJob)) as why:
        done(job, **command)
    return why.value


NEW = {"id": "n", "after": "a", "length_m": 4.0, "fitted": speaker(5.0)}


def test_points_hang_where_they_say_and_branch_off_when_not_spliced() -> None:
    job = done(three(), do="add_points", zone="hall", points=[NEW], splice=False)
    assert hung(job)[-1] == ("n", "a", 4.0)
    assert hung(job)[:3] == hung(three())


def test_a_spliced_point_takes_over_what_hung_there() -> None:
    second = {**NEW, "id": "m", "after": "n"}
    job = done(three(), do="add_points", zone="hall", points=[NEW, second], splice=True)
    assert hung(job) == [
        ("a", None, 10.0),
        ("n", "a", 4.0),
        ("m", "n", 4.0),
        ("b", "m", 20.0),
        ("c", "b", 30.0),
    ]


def test_a_point_without_a_label_gets_its_zones_name_and_the_next_number() -> None:
    numbered = line_of(point("a", None, 1.0, fitted=speaker(5.0, label="Hall 7")))
    new = [NEW, {**NEW, "id": "m", "after": "n"}, {**NEW, "id": "k", "fitted": control()}]
    job = done(numbered, do="add_points", zone="hall", points=new, splice=False)
    assert [one.fitted.label for one in job.zones[0].line] == [
        "Hall 7",
        "Hall 8",
        "Hall 9",
        "Hall A1",
    ]


@pytest.mark.parametrize(
    ("new", "code", "place"),
    [
        ({**NEW, "after": "gone"}, "orphan", "n"),
        ({**NEW, "after": "n"}, "loop", "n"),
        ({**NEW, "cable": "rope"}, "kind_unknown", "n"),
    ],
)
def test_points_that_cannot_hang_are_refused_by_name(new: Raw, code: str, place: str) -> None:
    why = refused(three(), do="add_points", zone="hall", points=[new], splice=False)
    assert (why.code, why.where) == (code, {"point": place})


def test_joining_through_adds_the_lengths() -> None:
    job = done(three(), do="remove_point", point="b", tail="join")
    assert hung(job) == [("a", None, 10.0), ("c", "a", 50.0)]


def test_joining_adds_joints_and_an_unknown_length_stays_unknown() -> None:
    job = line_of(
        point("a", None, 10.0, joint_ohm=0.1),
        point("b", "a", None, joint_ohm=0.2),
        point("c", "b", 3.0),
    )
    assert hung(done(job, do="remove_point", point="a", tail="join"))[0] == ("b", None, None)
    joined = done(job, do="remove_point", point="a", tail="join").zones[0].line[0]
    assert joined.joint_ohm == pytest.approx(0.3)
    assert hung(done(job, do="remove_point", point="b", tail="join"))[1] == ("c", "a", None)


def test_cutting_takes_everything_behind() -> None:
    assert hung(done(three(), do="remove_point", point="b", tail="cut")) == [("a", None, 10.0)]


def test_where_cables_differ_a_junction_stays() -> None:
    job = line_of(point("a", None, 10.0), point("b", "a", 20.0, cable="thick"))
    job = done(job, do="remove_point", point="a", tail="join")
    assert hung(job) == [("a", None, 10.0), ("b", "a", 20.0)]
    assert job.zones[0].line[0].fitted.is_ == "junction"
    why = refused(job, do="remove_point", point="a", tail="join")
    assert (why.code, why.where) == ("junction_stays", {"point": "a"})


def test_where_a_line_divides_a_junction_stays() -> None:
    job = line_of(point("a", None, 10.0), point("b", "a", 20.0), point("c", "a", 30.0))
    job = done(job, do="remove_point", point="a", tail="join")
    assert [one.fitted.is_ for one in job.zones[0].line] == [
        "junction",
        "loudspeaker",
        "loudspeaker",
    ]


def test_a_point_moves_and_what_hung_on_it_closes_up() -> None:
    job = done(three(), do="move_point", point="a", zone="hall", after="c", splice=False)
    assert hung(job) == [("b", None, 30.0), ("c", "b", 30.0), ("a", "c", 10.0)]


def test_a_point_moves_to_another_zone_with_its_tap_and_section() -> None:
    job = done(three(), do="move_point", point="b", zone="quay", after=None, splice=True)
    assert hung(job, "quay") == [("b", None, 20.0)]
    assert hung(job) == [("a", None, 10.0), ("c", "a", 50.0)]


def test_a_point_where_the_line_divides_leaves_a_junction_when_it_moves() -> None:
    job = line_of(point("a", None, 10.0), point("b", "a", 20.0), point("c", "a", 30.0))
    move = {"do": "move_point", "point": "a", "zone": "quay", "after": None, "splice": False}
    assert refused(job, **move).code == "junction_needed"
    job = done(job, **move, junction="j")
    assert hung(job) == [("j", None, 10.0), ("b", "j", 20.0), ("c", "j", 30.0)]
    assert job.zones[0].line[0].fitted.is_ == "junction"
    assert hung(job, "quay") == [("a", None, 10.0)]


def test_a_point_cannot_hang_on_itself() -> None:
    why = refused(three(), do="move_point", point="a", zone="hall", after="a", splice=False)
    assert why.code == "hangs_on_itself"


def test_setting_a_tap_leaves_the_low_impedance_position() -> None:
    job = line_of(point("a", None, 1.0, fitted=speaker(5.0, direct_ohm=8.0)))
    fitted = done(job, do="set_tap", point="a", tap_w=7.5, tap_at_v=70.7).zones[0].line[0].fitted
    assert fitted.is_ == "loudspeaker"
    assert (fitted.tap_w, fitted.tap_at_v, fitted.direct_ohm) == (7.5, 70.7, None)


def test_what_is_known_can_be_made_unknown_again() -> None:
    job = done(three(), do="set_tap", point="a", tap_w=None, tap_at_v=70.7)
    job = done(job, do="change_point", point="a", changes={"length_m": None, "cable": None})
    first = job.zones[0].line[0]
    assert (first.length_m, first.cable, getattr(first.fitted, "tap_w", 0)) == (None, None, None)


def test_disconnecting_leaves_the_line_through_the_box() -> None:
    job = done(three(), do="disconnect", point="a")
    assert hung(job) == hung(three())
    assert [getattr(one.fitted, "connected", None) for one in job.zones[0].line] == [
        False,
        True,
        True,
    ]
    assert done(job, do="connect", point="a").zones == three().zones


def test_a_control_is_set_and_turned_off_and_on() -> None:
    job = line_of(point("a", None, 1.0, fitted=control()))
    job = done(job, do="set_attenuator", point="a", set_db=-9.0)
    job = done(job, do="set_attenuator", point="a", off=True)
    fitted = job.zones[0].line[0].fitted
    assert fitted.is_ == "attenuator"
    assert (fitted.set_db, fitted.off) == (-9.0, True)


@pytest.mark.parametrize(
    "command",
    [
        {"do": "connect", "point": "a"},
        {"do": "set_tap", "point": "a", "tap_w": 5.0},
        {"do": "set_attenuator", "point": "a", "off": True},
        {"do": "change_point", "point": "a", "changes": {"kind": None}},
    ],
)
def test_a_command_for_something_else_is_refused_by_what_stands_there(command: Raw) -> None:
    why = refused(line_of(point("a", None, 1.0, fitted=junction())), **command)
    assert (why.code, why.values["fitted"], why.where["point"]) == (
        "field_not_here",
        "junction",
        "a",
    )


TICK = {"point": "a", "tap_w": 5.0, "tap_at_v": 70.7, "at": "2026-11-25", "initials": "RK"}


def ticked() -> Job:
    """Three in a row, the first ticked."""
    raw = three().model_dump(mode="json", exclude_none=True)
    return Job.model_validate_json(json.dumps({**raw, "ticks": [TICK]}))


def test_a_tick_dies_with_the_tap_it_was_given_for() -> None:
    assert len(ticked().ticks) == 1
    assert len(done(ticked(), do="set_tap", point="a", tap_w=5.0, tap_at_v=70.7).ticks) == 1
    assert done(ticked(), do="set_tap", point="a", tap_w=7.5, tap_at_v=70.7).ticks == ()
    assert done(ticked(), do="remove_point", point="a", tail="join").ticks == ()
    assert done(ticked(), do="change_point", point="a", changes={"direct_ohm": 8.0}).ticks == ()
    assert len(done(ticked(), do="remove_point", point="b", tail="join").ticks) == 1

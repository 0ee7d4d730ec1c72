"""Commands for the job as a whole, and what a preview says of a command before it is done."""

import json

import pytest

from pycore.ground.problems import BadCommand, Problem
from pycore.jobs import Job
from pycore.jobs.job import Base
from tests.drawn import Raw, about, ask, done, drawn, output, raw_job, speaker, zone

CEILING: Raw = {"id": "c", "name": "ceiling", "taps": [{"w": 5.0, "at_v": 70.7}]}
WALL: Raw = {"id": "c", "name": "wall control", "rated_w": 30.0, "rated_at_v": 70.7}
CABLE: Raw = {"id": "c", "name": "16 AWG", "awg": 16, "metal": "copper"}


def hall(**more: object) -> Job:
    """One zone of two loudspeakers on one output."""
    return drawn([output(max_w=30.0)], zone("hall", speaker(5.0), speaker(5.0)), **more)  # type: ignore[arg-type]


def refused(job: Job, **command: object) -> Problem:
    """Why a command does not fit."""
    with pytest.raises(BadCommand) as why:
        done(job, **command)
    return why.value


def test_name_place_and_notes_are_changed_and_none_is_unknown() -> None:
    job = done(hall(), do="change_job", changes={"name": "Pier", "place": "Quay 4"})
    assert (job.name, job.place, job.notes) == ("Pier", "Quay 4", "")
    assert refused(job, do="change_job", changes={"name": None}).where == {"field": "changes.name"}


def test_limits_are_set_and_cable_sizes_may_be_left_open() -> None:
    changes = {"load_fraction": 0.7, "thinnest_mm2": 0.75}
    job = done(hall(), do="set_limits", changes=changes)
    assert (job.limits.load_fraction, job.limits.thinnest_mm2) == (0.7, 0.75)
    job = done(job, do="set_limits", changes={"thinnest_mm2": None})
    assert job.limits.thinnest_mm2 is None
    assert refused(job, do="set_limits", changes={"loss_db": None}).code == "cannot_be_unknown"


def test_a_kind_is_added_and_a_later_one_takes_its_place() -> None:
    job = done(hall(), do="use_kind", family="loudspeakers", kind=CEILING)
    job = done(job, do="use_kind", family="loudspeakers", kind={**CEILING, "name": "ceiling II"})
    assert [one.name for one in job.kinds.loudspeakers] == ["ceiling II"]


def test_each_family_has_ids_of_its_own() -> None:
    job = done(hall(), do="use_kind", family="loudspeakers", kind=CEILING)
    job = done(job, do="use_kind", family="attenuators", kind=WALL)
    job = done(job, do="use_kind", family="cables", kind=CABLE)
    job = done(job, do="change_point", point="hall-1", changes={"cable": "c"})
    job = done(job, do="drop_kind", family="loudspeakers", kind="c")
    why = refused(job, do="drop_kind", family="cables", kind="c")
    assert (why.code, why.where) == ("kind_in_use", {"point": "hall-1"})
    job = done(job, do="drop_kind", family="attenuators", kind="c")
    assert (job.kinds.loudspeakers, job.kinds.attenuators) == ((), ())
    assert refused(job, do="drop_kind", family="attenuators", kind="c").code == "not_here"


def test_an_earlier_state_comes_back_with_the_readings_of_now() -> None:
    past = hall()
    reading: Raw = {"id": "r", "at": "2026-11-25", "where": {"zone": "hall"}, "looking": "out"}
    reading |= {"quantity": "volts", "value": 70.0, "controls": "open", "tolerance_pct": 1.0}
    reading |= {"instrument": "meter", "baseline": False}
    now = done(past, do="change_job", changes={"name": "Pier"})
    raw = {**now.model_dump(mode="json", exclude_none=True), "readings": [reading]}
    now = Job.model_validate_json(json.dumps(raw))
    back = done(now, do="restore", past=past.model_dump(mode="json", exclude_none=True))
    assert (back.name, back.rev, len(back.readings)) == (past.name, now.rev + 1, 1)


def test_an_earlier_state_was_kept_when_this_one_was_and_grew_from_what_it_grew_from() -> None:
    past = hall().model_dump(mode="json", exclude_none=True)
    kept = {"saved_at": "2026-11-25T10:00", "base": {"rev": 3, "print": "theirs"}}
    now = Job.model_validate_json(json.dumps({**past, **kept, "name": "Pier"}))
    older = {**past, "saved_at": "2026-11-01T10:00", "base": {"rev": 1, "print": "old"}}
    back = done(now, do="restore", past=older)
    assert (back.name, back.saved_at, back.base) == (
        past["name"],
        now.saved_at,
        Base(rev=1, print="old"),
    )


def test_ticks_that_went_with_a_removed_zone_come_back_with_it_and_no_others() -> None:
    raw = hall().model_dump(mode="json", exclude_none=True)
    line = raw["zones"][0]["line"]
    spoken = [one for one in line if one["fitted"]["is"] == "loudspeaker"]
    for one in spoken:
        one["fitted"] |= {"tap_w": 5.0, "tap_at_v": 70.7}
    tick = {"tap_w": 5.0, "tap_at_v": 70.7, "at": "2026-11-26", "initials": "KO"}
    raw["ticks"] = [{**tick, "point": one["id"]} for one in spoken]
    ticked = Job.model_validate_json(json.dumps(raw))
    assert len(ticked.ticks) == len(spoken) > 0
    past = ticked.model_dump(mode="json", exclude_none=True)
    gone = done(ticked, do="remove_zone", zone=raw["zones"][0]["id"])
    assert gone.ticks == ()
    assert done(gone, do="restore", past=past).ticks == ticked.ticks
    # one that was taken back while its loudspeaker hung there stays away
    untick = done(ticked, do="untick", point=spoken[0]["id"])
    assert done(untick, do="restore", past=past).ticks == ticked.ticks[1:]


def test_the_state_of_another_job_is_refused() -> None:
    other = {**hall().model_dump(mode="json", exclude_none=True), "id": "other"}
    assert refused(hall(), do="restore", past=other).code == "another_job"


def preview(*commands: Raw) -> list[Raw]:
    """What each command would do to a 30 W output with 10 W on it."""
    job = raw_job([output(max_w=30.0)], zone("hall", speaker(5.0), speaker(5.0)))
    options: list[Raw] = ask("preview", {"job": job, "commands": list(commands)})["options"]
    return options


def tap(tap_w: float, tap_at_v: float = 70.7) -> Raw:
    """Turning the first selector."""
    return {"do": "set_tap", "point": "hall-1", "tap_w": tap_w, "tap_at_v": tap_at_v}


def test_a_preview_tells_each_load_before_and_after() -> None:
    (option,) = preview(tap(15.0))
    load = next(one for one in option["loads"] if one["what"] == "output_load_w")
    assert (load["shown_before"], load["shown_after"]) == ("10 W", "20 W")
    assert (load["share_before"], load["share_after"]) == (
        about(1 / 3),
        about(2 / 3),
    )
    assert option["verdict"] == "ok"


@pytest.mark.parametrize(
    ("command", "verdict", "word"),
    [
        (tap(20.0), "near", "No reserve"),
        (tap(30.0), "over", "5 W too much"),
        (tap(2.5, 25.0), "over", "marked for 25 V"),
        (tap(5.0), "note", ""),
        ({"do": "change_output", "output": "o1", "changes": {"max_w": 11.0}}, "near", "11 W"),
        (
            {"do": "change_output", "output": "o1", "changes": {"max_w": None}},
            "unknown",
            "not known",
        ),
    ],
)
def test_a_preview_is_judged_by_what_the_command_changes(
    command: Raw, verdict: str, word: str
) -> None:
    (option,) = preview(command)
    assert (option["verdict"], option["problem"]) == (verdict, None)
    assert word in option["words"]


def test_a_preview_of_a_command_that_does_not_fit_says_why_and_tries_the_others() -> None:
    wrong, right = preview({"do": "set_tap", "point": "nobody", "tap_w": 5.0}, tap(10.0))
    assert wrong["problem"]["code"] == "not_here"
    assert wrong["words"] == wrong["problem"]["words"]
    assert right["problem"] is None


def test_what_stays_wrong_at_a_point_is_no_option_in_order() -> None:
    """Another tap of a row that is wrong already leaves the row wrong: 2.5 W at 25 V on 70.7 V."""
    job = done(hall(), do="set_tap", point="hall-1", tap_w=5.0, tap_at_v=25.0)
    smaller = {"do": "set_tap", "point": "hall-1", "tap_w": 0.5, "tap_at_v": 25.0}
    right = {"do": "set_tap", "point": "hall-1", "tap_w": 5.0, "tap_at_v": 70.7}
    body = ask("preview", {"job": job.model_dump(mode="json"), "commands": [smaller, right]})
    assert [option["verdict"] for option in body["options"]] == ["over", "ok"]
    assert "marked for 25 V" in body["options"][0]["words"]

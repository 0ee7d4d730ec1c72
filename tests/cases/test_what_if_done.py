"""What if can be done: the command it answers makes the job it showed."""

import json
from typing import Any

import pytest

from pycore.asks.what_if import WhatIfBody, wanted_of, what_if
from pycore.calc import whatif
from pycore.calc.check import check_job
from pycore.edit import apply, read_command
from pycore.ground.units import Manner
from pycore.jobs import Job
from tests.samples.halls import job_of
from tests.samples.lines import speaker

MANNER = Manner("en", "m", ".", "2026-11-26")
IDS = {"hand": "zz9", "next": 1, "count": 500}
BIG = {"id": "big", "name": "20 W ceiling", "taps": [
    {"w": 20.0, "at_v": 70.0}, {"w": 10.0, "at_v": 70.0},
    {"w": 5.0, "at_v": 70.0, "allowed": False},
]}  # fmt: skip
SMALL = {"id": "small", "name": "6 W ceiling", "taps": [{"w": 5.0, "at_v": 70.7}]}


def hung(**fitted: Any) -> dict[str, Any]:
    """The fourth loudspeaker's own fields."""
    return {**speaker(3, length_m=10.0, tap_w=10.0)["fitted"], **fitted}


def mixed() -> Job:
    """Two of a kind marked 70 V, one of a kind with one tap, one of no kind."""
    points = [speaker(n, length_m=10.0, tap_w=10.0) for n in range(4)]
    job = job_of(points).model_dump(by_alias=True, exclude_none=True, mode="json")
    job["kinds"]["loudspeakers"] = [BIG, SMALL]
    line = job["zones"][0]["line"]
    for point, kind in zip(line, ("big", "big", "small", None), strict=True):
        point["fitted"] |= {"kind": kind, "label": point["id"].upper()}
    return Job.model_validate_json(json.dumps(job))


def findings(job: Job) -> dict[str, tuple[object, ...]]:
    """The numbers and verdicts of a job, but for those of single points, whose ids may differ."""
    every = (one for one in check_job(job).findings if "point" not in one.where)
    return {one.id: (one.code, one.verdict, one.value, one.low, one.high) for one in every}


CHANGES: list[dict[str, Any]] = [
    {"is": "voltage", "output": "o", "line_v": 100.0},
    {"is": "tap", "zone": "z", "tap_w": 20.0, "tap_at_v": 70.7},
    {"is": "tap", "zone": "z", "tap_w": 5.0, "tap_at_v": 70.7},
    {"is": "cable", "zone": "z", "sections": "all",
     "kind": {"id": "thick", "name": "4 mm²", "area_mm2": 4.0, "class": 5, "metal": "copper"}},
    {"is": "cable", "zone": "z", "sections": "home_run",
     "kind": {"id": "thin", "name": "18 AWG", "awg": 18, "metal": "copper"}},
    {"is": "more", "zone": "z", "run": {"count": 3}, "tap_w": 10.0, "tap_at_v": 70.7},
    {"is": "more", "zone": "z", "run": {"count": 2, "length_m": 4.0}, "tap_w": 20.0,
     "tap_at_v": 70.7},
]  # fmt: skip


@pytest.mark.parametrize("change", CHANGES, ids=lambda one: f"{one['is']}-{len(str(one))}")
def test_what_is_done_has_the_findings_that_were_shown(change: dict[str, Any]) -> None:
    job = mixed()
    answer = what_if(WhatIfBody(job=job, change=change), MANNER)
    command = answer["command"]
    assert command is not None
    if command["do"] == "add_run":
        command["ids"] = IDS
    done = apply(job, read_command(json.dumps(command)))
    shown = whatif.change_job(job, wanted_of(change, {}, manner=MANNER).change())
    assert findings(done) == findings(shown)
    assert findings(done) != findings(job)


def taps(job: Job) -> list[tuple[float | None, float | None]]:
    """The taps of the zone's loudspeakers."""
    line = job.zones[0].line
    return [(one.fitted.tap_w, one.fitted.tap_at_v) for one in line]  # type: ignore[union-attr]


def test_only_those_whose_kind_has_and_allows_the_tap_are_put_on_it_and_the_others_named() -> None:
    job = mixed()
    for tap_w, moved, left in ((20.0, (0, 1, 3), "P2"), (5.0, (2, 3), "P0, P1")):
        change: dict[str, Any] = {"is": "tap", "zone": "z", "tap_w": tap_w, "tap_at_v": 70.7}
        answer = what_if(WhatIfBody(job=job, change=change), MANNER)
        assert answer["left"].endswith(f"left as they are: {left}.")
        done = apply(job, read_command(json.dumps(answer["command"])))
        assert [at for at, (now_w, _) in enumerate(taps(done)) if now_w == tap_w] == list(moved)
    # the mark is the selector's own
    marked = apply(job, read_command('{"do":"set_taps","zone":"z","tap_w":20,"tap_at_v":70.7}'))
    assert [at_v for _, at_v in taps(marked)][:2] == [70.0, 70.0]


def test_what_was_found_counts_as_planned_once_the_zone_is_put_on_another_tap() -> None:
    points = [
        {**speaker(0, length_m=5.0, tap_w=10.0), "fitted": hung(seen="found", planned_tap_w=2.5)},
        {**speaker(1, length_m=5.0, tap_w=10.0), "fitted": hung(tap_w=5.0, seen="checked")},
    ]
    command = read_command('{"do":"set_taps","zone":"z","tap_w":5,"tap_at_v":70.7}')
    turned, there = apply(job_of(points), command).zones[0].line
    assert turned.fitted.seen == "drawing"  # type: ignore[union-attr]
    assert turned.fitted.planned_tap_w is None  # type: ignore[union-attr]
    assert there.fitted.seen == "checked"  # type: ignore[union-attr]


def test_there_is_nothing_to_do_where_the_job_is_like_that_already() -> None:
    change: dict[str, Any] = {"is": "tap", "zone": "z", "tap_w": 10.0, "tap_at_v": 70.7}
    points = [speaker(n, length_m=5.0, tap_w=10.0) for n in range(2)]
    answer = what_if(WhatIfBody(job=job_of(points), change=change), MANNER)
    assert (answer["command"], answer["same"]) == (None, "The job is like that already.")

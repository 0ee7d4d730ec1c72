"""Choosing a cable and asking what if, as the page asks: what is told is what comes of it."""

import json
from typing import Any

import pytest

from pycore.asks.cabling import CableBody, CablePick, Stock, ZoneBody, choose, longest, stock_of
from pycore.asks.what_if import WhatIfBody, what_if
from pycore.calc.check import check_job
from pycore.edit import apply, read_command
from pycore.ground.problems import Problem
from pycore.ground.units import Manner, show
from pycore.jobs import Job
from tests.drawn import as_read, ask
from tests.samples.halls import job_of
from tests.samples.lines import make_chain, speaker

MANNER = Manner("en", "m", ".", "2026-11-25")
RUNS = [(60.0, 10.0)] + [(10.0, 10.0)] * 9
THIN = {"area_mm2": 0.5, "class": 5}


def hall(cable: dict[str, Any] | None = None, *, loss_db: float = 0.5) -> Job:
    """Ten loudspeakers of 10 W, the first at 60 m."""
    return make_chain(RUNS, cable=cable or THIN, loss_db=loss_db)


def chosen(job: Job, stock: Stock = "metric") -> list[CablePick]:
    """What is proposed for the whole line and for the home run."""
    picks: list[CablePick] = as_read(
        choose(CableBody(job=job, zone="z", stock=stock), MANNER)["picks"]
    )
    return picks


def with_pick(job: Job, pick: CablePick) -> Job:
    """The job once a proposal is used."""
    return apply(job, read_command(json.dumps(pick["command"])))


def worst_db(job: Job) -> float:
    """What the worst loudspeaker of the zone loses."""
    found = next(one for one in check_job(job).findings if one.what == "zone_loss_db")
    assert found.value is not None
    return found.value


def test_a_used_proposal_makes_the_line_pass_as_it_said() -> None:
    job = hall()
    assert worst_db(job) > 0.5
    (whole, _) = chosen(job)
    after = with_pick(job, whole)
    assert worst_db(after) <= 0.5
    assert whole["loss"] == as_read(show(worst_db(after), "db", manner=MANNER))
    assert {point.cable for point in after.zones[0].line} == {after.kinds.cables[-1].id}


def test_the_next_thinner_of_the_list_fails() -> None:
    job = hall()
    (whole, _) = chosen(job)
    assert whole["command"] is not None
    listed = sorted(stock_of(job, "metric"), key=lambda kind: kind.area_mm2 or 0.0)
    place = [kind.id for kind in listed].index(whole["command"]["kind"]["id"])
    thinner = listed[place - 1].model_dump(exclude_none=True)
    command = {**whole["command"], "kind": thinner}
    assert worst_db(apply(job, read_command(json.dumps(command)))) > 0.5
    assert listed[place - 1].name in whole["why_not"]


def test_a_cable_that_is_there_already_needs_no_command() -> None:
    job = hall()
    after = with_pick(job, chosen(job)[0])
    whole = chosen(after)[0]
    assert (whole["here"], whole["command"]) == (True, None)


def test_a_home_run_alone_leaves_the_rest_as_it_is() -> None:
    job = make_chain([(200.0, 40.0), (2.0, 10.0)], cable={"area_mm2": 1.0, "class": 5})
    (_, home) = chosen(job)
    after = with_pick(job, home)
    assert worst_db(after) <= 0.5
    assert [point.cable == "c" for point in after.zones[0].line] == [False, True]


def test_a_step_up_gains_what_it_says() -> None:
    job = hall()
    answer = choose(CableBody(job=job, zone="z"), MANNER)
    best = answer["step_ups"][0]
    after = with_pick(job, best)
    assert best["loss"] == show(worst_db(after), "db", manner=MANNER)
    assert worst_db(after) < worst_db(job)


@pytest.mark.parametrize(("stock", "unit"), [("metric", "mm²"), ("gauge", "AWG")])
def test_the_stock_is_of_one_kind_after_the_cables_of_the_job(stock: Stock, unit: str) -> None:
    names = [kind.name for kind in stock_of(hall(), stock)]
    assert names[0] == "pair"
    assert all(unit in name for name in names[1:])
    assert [kind.name for kind in stock_of(hall(), "job")] == ["pair"]


def test_where_no_cable_does_what_would_is_told_with_its_numbers() -> None:
    job = make_chain([(900.0, 20.0)] * 6, cable=THIN)
    answer = choose(CableBody(job=job, zone="z"), MANNER)
    assert [pick["command"] for pick in answer["picks"]] == [None, None]
    assert answer["ways_out"]
    assert all(" dB" in as_read(one["words"]) for one in answer["ways_out"])


def test_what_keeps_one_from_choosing_is_said() -> None:
    job = job_of([speaker(0, length_m=None, tap_w=5.0)])
    answer = choose(CableBody(job=job, zone="z"), MANNER)
    assert answer["refused"]
    assert (answer["picks"], answer["verdict"]) == ([], "unknown")
    assert longest(ZoneBody(job=job, zone="z"), MANNER)["known"] is False


def test_a_line_stretched_to_the_longest_run_just_passes() -> None:
    job = hall({"area_mm2": 2.5, "class": 5})
    words = as_read(longest(ZoneBody(job=job, zone="z"), MANNER)["words"])
    assert "150 m now" in words
    assert words.startswith("With pair, as it is there now,")


def asked(job: Job, change: dict[str, Any], **typed: str) -> dict[str, tuple[str, str]]:
    """Before and after, by title."""
    answer = as_read(what_if(WhatIfBody(job=job, change=change, typed=typed), MANNER))
    return {row["title"]: (row["before"], row["after"]) for row in answer["rows"]}


def test_more_at_the_end_may_be_typed_as_a_run() -> None:
    more = {"is": "more", "zone": "z", "tap_w": 10.0, "tap_at_v": 70.7}
    rows = asked(hall(), more, run="5 x 10 m")
    assert rows["Rack: load"] == ("100 W", "150 W")


def test_another_voltage_warns_and_shows_both_sides() -> None:
    change: dict[str, Any] = {"is": "voltage", "output": "o", "line_v": None}
    body = WhatIfBody(job=hall(), change=change, typed={"line_v": "100 V"})
    answer = as_read(what_if(body, MANNER))
    # 10 W taps marked 70.7 V draw twice as much at 100 V
    load = next(row for row in answer["rows"] if row["title"] == "Rack: load")
    assert (load["before"], load["after"]) == ("100 W", "200.1 W")
    assert answer["caution"]


def test_nothing_that_changes_is_said_so() -> None:
    answer = what_if(
        WhatIfBody(job=hall(), change={"is": "tap", "zone": "z", "tap_w": 10.0, "tap_at_v": 70.7}),
        MANNER,
    )
    assert (answer["rows"], bool(answer["same"])) == ([], True)


@pytest.mark.parametrize(
    ("change", "typed", "code"),
    [
        (
            {"is": "more", "zone": "z", "tap_w": 5.0, "tap_at_v": 70.7},
            {"run": "many"},
            "run_unread",
        ),
        ({"is": "more", "zone": "z", "tap_w": 5.0, "tap_at_v": 70.7}, {"run": ""}, "run_needed"),
        ({"is": "tap", "zone": "nobody", "tap_w": 5.0, "tap_at_v": 70.7}, {}, "not_here"),
        ({"is": "voltage", "output": "o"}, {"line_v": "0"}, "typed_too_small"),
        ({"is": "weather"}, {}, "not_a_choice"),
    ],
)
def test_what_cannot_be_asked_is_a_problem(
    change: dict[str, Any], typed: dict[str, str], code: str
) -> None:
    with pytest.raises(Problem) as refused:
        what_if(WhatIfBody(job=hall(), change=change, typed=typed), MANNER)
    assert refused.value.code == code


def test_a_loss_just_past_its_limit_does_not_read_as_the_limit() -> None:
    loss_db = worst_db(hall())
    limit_db = round(loss_db, 3) - 0.001
    job = hall(loss_db=limit_db)
    assert limit_db < loss_db < limit_db + 0.002
    told = as_read(choose(CableBody(job=job, zone="z", stock="job"), MANNER)["now"])
    lost = float(told.split(" loses ")[1].split(" dB")[0])
    assert lost > limit_db
    raw = job.model_dump(mode="json", by_alias=True)
    things = ask("findings", {"job": raw})["faces"]["things"]
    far = things[job.zones[0].line[-1].id]
    assert float(far["loss"].removesuffix(" dB")) > limit_db


def test_the_longest_run_it_tells_is_one_that_passes() -> None:
    for loss_db in (0.41, 0.5, 0.77):
        job = hall({"area_mm2": 2.5, "class": 5}, loss_db=loss_db)
        words = as_read(longest(ZoneBody(job=job, zone="z"), MANNER)["words"])
        told_m = float(words.split(" may run ")[1].split(" m ")[0])
        now_m = float(words.split(" runs ")[1].split(" m ")[0])
        runs = [(metres * told_m / now_m, tap_w) for metres, tap_w in RUNS]
        cable = {"area_mm2": 2.5, "class": 5}
        assert worst_db(make_chain(runs, cable=cable, loss_db=loss_db)) <= loss_db * (1 + 1e-9)

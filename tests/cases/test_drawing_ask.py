"""The drawing of a line, as the page gets it: places, texts, tones, marks."""

from typing import Any

import pytest

from pycore.asks.drawing import DrawingAnswer, DrawingBody, DrawnPoint, drawing
from pycore.asks.drawing_texts import limit_words
from pycore.asks.see import see
from pycore.calc.tones import tone_of
from pycore.ground.units import Manner
from pycore.jobs import Job
from tests.drawn import as_read
from tests.samples.halls import attenuator, job_of, told
from tests.samples.lines import speaker

METRES = Manner("en", "m", ".", "")
FEET = Manner("en", "ft", ".", "")


def drawn(job: Job, *, state: str = "override", manner: Manner = METRES) -> DrawingAnswer:
    """The zone "z" drawn."""
    body = DrawingBody.model_validate({"job": job, "zone": "z", "state": state})
    answer: DrawingAnswer = as_read(drawing(body, manner))
    return answer


def chain(*lengths_m: float | None, tap_w: float = 5.0, **zone: Any) -> Job:
    """Loudspeakers in a row."""
    points = [speaker(n, length_m=m, tap_w=tap_w) for n, m in enumerate(lengths_m)]
    return job_of(points, **zone)


def by_id(answer: DrawingAnswer) -> dict[str, DrawnPoint]:
    """Its points by id."""
    return {point["id"]: point for point in answer["points"]}


def test_the_worst_the_far_end_and_the_home_run_are_marked() -> None:
    job = chain(30.0, 10.0, 10.0)
    points = by_id(drawn(job))
    # where a caption names the home run, its point need not say it again
    assert [as_read(one["words"]) for one in drawn(job)["captions"]] == ["Home run 30 m, pair"]
    assert (points["p0"]["home_run"], points["p0"]["length"]) == (False, "30 m")
    even = drawn(chain(10.0, 10.0, 10.0))
    assert even["captions"] == []
    assert [one["id"] for one in even["points"] if one["home_run"]] == ["p0"]
    assert [one for one in points if points[one]["worst"]] == [told(job).values["point"]]
    assert [one for one in points if points[one]["far"]] == ["p2"]
    wasted = told(job, "zone_wasteful_section").values["section"]
    assert [one for one in points if points[one]["costliest"]] == [wasted]


def test_the_cable_is_named_where_it_begins_and_where_it_changes() -> None:
    points = [speaker(n, length_m=10.0, tap_w=5.0) for n in range(3)]
    points[2]["cable"] = None
    lengths = [point["length"] for point in drawn(job_of(points))["points"]]
    assert lengths == ["10 m · pair", "10 m", "10 m · cable not known"]


def test_an_unknown_length_is_an_even_step_and_there_is_no_ruler() -> None:
    answer = drawn(chain(30.0, None, 10.0))
    (unknown,) = (point for point in answer["points"] if not point["known"])
    assert (unknown["id"], unknown["length"], unknown["figure"]) == ("p1", "?", "?")
    assert (answer["to_scale"], answer["ticks"]) == (False, [])
    # what hangs beyond may take all of its watts or none, so nobody can name the worst
    (first,) = (point for point in answer["points"] if point["id"] == "p0")
    low_db = told(chain(30.0)).value
    high_db = told(chain(30.0, 0.0, 0.0)).value
    assert low_db is not None
    assert high_db is not None
    assert first["figure"] == f"{low_db:.3f} dB to {high_db:.3f} dB"
    head = told(chain(30.0, None, 10.0))
    assert (head.value, head.low) == (None, low_db)
    assert not any(point["worst"] for point in answer["points"])
    listed = see(chain(30.0, None, 10.0), METRES)["faces"]["things"]["p0"]["loss"]
    assert as_read(listed) == first["figure"]
    assert unknown["tone"] == 0


def test_the_ruler_counts_in_the_unit_of_the_person() -> None:
    job = chain(30.0, 10.0, 10.0, 10.0)
    assert [tick["words"] for tick in drawn(job)["ticks"]][:2] == ["0 m", "20 m"]
    feet = [tick["words"] for tick in drawn(job, manner=FEET)["ticks"]]
    assert feet[:2] == ["0 ft", "50 ft"]


def test_as_it_is_set_the_level_is_told_and_in_a_page_the_loss() -> None:
    points = [attenuator(None, insertion_db=0.0), speaker(0, length_m=0.0, tap_w=5.0)]
    points[1]["after"] = "v"
    job = job_of(points)
    page, as_set = drawn(job), drawn(job, state="set")
    assert page["states_differ"]
    assert by_id(page)["p0"]["figure"] == "0 dB"
    assert by_id(as_set)["p0"]["figure"] == "−6 dB"
    assert by_id(as_set)["p0"]["finding"] == "point_level_db:p0:set"


def test_what_stands_off_is_drawn_so() -> None:
    points = [
        attenuator(None, off=True),
        speaker(0, length_m=1.0, tap_w=5.0, fitted={"connected": False}),
    ]
    shapes = {point["id"]: point["drawn_as"] for point in drawn(job_of(points))["points"]}
    assert shapes == {"v": "attenuator_off", "p0": "loudspeaker_off"}


def test_a_zone_on_no_output_is_drawn_without_figures() -> None:
    answer = drawn(chain(30.0, 10.0, output=None))
    assert answer["to_scale"]
    assert {point["tone"] for point in answer["points"]} == {0}


@pytest.mark.parametrize(
    ("loss_db", "tone"),
    [
        (None, 0),
        (0.0, 1),
        (0.125, 1),
        (0.126, 2),
        (0.25, 2),
        (0.5, 3),
        (0.51, 4),
        (1.0, 4),
        (1.1, 5),
    ],
)
def test_tones_follow_the_limit_and_end_where_verdicts_do(loss_db: float | None, tone: int) -> None:
    assert tone_of(loss_db, 0.5) == tone


def test_the_limit_is_said_in_four_ways() -> None:
    # 0.5 dB: 1 − 10^(−0.5/20), 1 − 10^(−0.5/10), 10^(0.5/20) − 1 (decibel, by its definition)
    words = as_read(limit_words(0.5, METRES))
    assert all(text in words for text in ("0.5 dB", "5.59 %", "10.9 %", "5.93 %"))


def test_an_empty_line_has_its_terminals_alone() -> None:
    answer = drawn(job_of([]))
    assert (answer["rows"], answer["points"], answer["captions"]) == (1, [], [])

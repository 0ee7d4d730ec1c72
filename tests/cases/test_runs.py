"""Hanging a run in one go: how it is typed, where it joins the line, and what it may not do."""

import math
from typing import Any

import pytest

from pycore.asks.editing import command_of
from pycore.edit import apply
from pycore.ground.problems import BadText, Problem
from pycore.ground.units import Manner, Run, read_run
from pycore.jobs import Job, Point
from tests.samples.halls import job_of
from tests.samples.lines import speaker

POINT = Manner("en", "m", ".", "2026-11-25")
FEET = Manner("en", "ft", ".", "2026-11-25")
FOOT_M = 0.3048  # exact, international foot


@pytest.mark.parametrize(
    ("text", "run"),
    [
        ("20 x 4 m", Run(20, 4.0)),
        ("20x4", Run(20, 4.0)),
        ("20 × 4,5 m", Run(20, 4.5)),
        ("6 at 15 ft", Run(6, 15 * FOOT_M)),
        ("40 ft * 6", Run(6, 40 * FOOT_M)),
        ("20", Run(20, None)),
        ("20 x", Run(20, None)),
        ("12 m", Run(1, 12.0)),
        ("5 ft 6 in", Run(1, 66 * FOOT_M / 12)),
    ],
)
def test_a_run_is_read_as_people_type_it(text: str, run: Run) -> None:
    read = read_run(text, manner=POINT)
    assert read is not None
    assert read.how_many == run.how_many
    assert read.length_m == (None if run.length_m is None else pytest.approx(run.length_m))


def test_a_length_without_a_unit_is_in_the_unit_the_person_uses() -> None:
    run = read_run("3 x 10", manner=FEET)
    assert run is not None
    count, spacing_m = run
    assert count == 3
    assert spacing_m == pytest.approx(10 * FOOT_M)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("several", "run_unread"),
        ("x 4", "run_unread"),
        ("0 x 3", "run_unread"),
        ("2.5 x 3", "number_not_whole"),
        ("1,500 x 2", "number_ambiguous"),
        ("20 x many", "number_unread"),
        ("20 x 4 kg", "unit_unread"),
    ],
)
def test_what_is_no_run_is_a_problem_and_never_a_guess(text: str, code: str) -> None:
    with pytest.raises(BadText) as refused:
        read_run(text, manner=POINT)
    assert refused.value.code == code


def chain() -> Job:
    """Four loudspeakers ten metres apart, thirty metres from the amplifier."""
    lengths = (30.0, 10.0, 10.0, 10.0)
    return job_of([speaker(n, length_m=m, tap_w=5.0) for n, m in enumerate(lengths)])


def hung(job: Job, typed: dict[str, str], **more: Any) -> dict[str, Point]:
    """The line after a run is hung as typed, by id."""
    raw = {
        "do": "add_run",
        "zone": "z",
        "ids": {"hand": "k7f", "next": 3, "count": 200},
        "splice": True,
        "cable": None,
        "fitted": {"is": "loudspeaker", "label": "", "connected": True, "tap_w": 5.0},
        **more,
    }
    after = apply(job, command_of(raw, typed, manner=POINT))
    return {point.id: point for point in after.zones[0].line}


def test_a_run_of_twenty_hangs_in_one_command() -> None:
    line = hung(chain(), {"run": "20 x 4 m", "first_m": "15 m"}, after="p3", cable="c")
    new = [line[f"k7f{number}"] for number in range(3, 23)]
    assert len(line) == 24
    assert [point.after for point in new] == ["p3", *(f"k7f{n}" for n in range(3, 22))]
    assert [point.length_m for point in new] == [15.0, *[4.0] * 19]
    assert {point.cable for point in new} == {"c"}
    assert [point.fitted.label for point in new[:2]] == ["Hall 1", "Hall 2"]


def test_without_a_length_of_its_own_the_first_is_as_far_as_the_others() -> None:
    line = hung(chain(), {"run": "3 x 4 m"}, after="p3")
    assert [line[f"k7f{number}"].length_m for number in range(3, 6)] == [4.0, 4.0, 4.0]


def test_a_count_alone_leaves_the_lengths_not_known() -> None:
    line = hung(chain(), {"run": "2"}, after="p3")
    assert [line["k7f3"].length_m, line["k7f4"].length_m] == [None, None]


def test_a_label_of_a_run_is_numbered() -> None:
    fitted = {"is": "loudspeaker", "label": "Row", "connected": True}
    line = hung(chain(), {"run": "2 x 4"}, after="p3", fitted=fitted)
    assert [line["k7f3"].fitted.label, line["k7f4"].fitted.label] == ["Row 1", "Row 2"]


def test_cut_into_a_section_the_way_to_all_behind_it_stays_as_long() -> None:
    line = hung(chain(), {"run": "2 x 3 m"}, after="p0", cut_in=True)
    assert line["p1"].after == "k7f4"
    assert line["p1"].length_m == pytest.approx(4.0)
    assert line["k7f3"].cable == line["p1"].cable


@pytest.mark.parametrize(
    ("run", "first_m", "lengths_m"),
    [
        ("1", "", [5.0, 5.0]),
        ("3", "", [2.5, 2.5, 2.5, 2.5]),
        ("2", "1 m", [1.0, 4.5, 4.5]),
        ("2 x 3 m", "1 m", [1.0, 3.0, 6.0]),
    ],
)
def test_cut_in_without_a_length_a_section_is_divided_evenly_and_none_of_it_is_lost(
    run: str, first_m: str, lengths_m: list[float]
) -> None:
    line = hung(chain(), {"run": run, "first_m": first_m}, after="p0", cut_in=True)
    new = sorted(one for one in line if one.startswith("k7f"))
    assert [line[one].length_m for one in (*new, "p1")] == pytest.approx(lengths_m)
    assert math.fsum(line[one].length_m or 0.0 for one in (*new, "p1")) == pytest.approx(10.0)


def test_a_section_of_unknown_length_stays_unknown_when_it_is_divided() -> None:
    points = [speaker(n, length_m=None if n == 1 else 10.0, tap_w=5.0) for n in range(3)]
    line = hung(job_of(points), {"run": "1"}, after="p0", cut_in=True)
    assert [line[one].length_m for one in ("k7f3", "p1")] == [None, None]


def test_hung_with_cable_of_its_own_the_line_grows() -> None:
    line = hung(chain(), {"run": "2 x 3 m"}, after="p0")
    assert line["p1"].after == "k7f4"
    assert line["p1"].length_m == 10.0


def test_ahead_of_one_of_two_branches_the_other_stays_where_it_is() -> None:
    points = [speaker(n, length_m=10.0, tap_w=5.0) for n in range(3)]
    points[2]["after"] = "p0"
    line = hung(job_of(points), {"run": "4 m"}, after="p0", ahead_of="p2", splice=False)
    assert (line["p1"].after, line["p2"].after) == ("p0", "k7f3")


@pytest.mark.parametrize(
    ("typed", "more", "code"),
    [
        ({"run": "2 x 6 m"}, {"after": "p0", "cut_in": True}, "longer_than_section"),
        ({"run": "2 x 6 m"}, {"after": "p3", "cut_in": True}, "no_one_section"),
        ({"run": "1 x 6 m"}, {"after": "p0", "ahead_of": "p3"}, "not_behind_that"),
        ({"run": "201 x 1 m"}, {"after": "p3"}, "ids_short"),
        ({"run": "501 x 1 m"}, {"after": "p3"}, "typed_too_large"),
        ({"run": "2 x -4 m"}, {"after": "p3"}, "typed_too_small"),
        ({"run": ""}, {"after": "p3"}, "run_needed"),
        ({"run": "2 x 4 m"}, {"after": "nobody"}, "orphan"),
    ],
)
def test_what_cannot_hang_is_a_problem(
    typed: dict[str, str], more: dict[str, Any], code: str
) -> None:
    with pytest.raises(Problem) as refused:
        hung(chain(), typed, **more)
    assert refused.value.code == code
    if code.startswith(("typed", "run")):
        assert refused.value.where == {"field": "run"}

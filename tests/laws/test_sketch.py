"""A line laid out for a drawing: to the metre, everything in a row of its own, lanes apart."""

import random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pycore.calc.sketch import TERMINALS_Y, Sketch, sketch_of
from pycore.jobs import Point
from tests.samples.lines import grow, make_job

LINES = st.builds(
    lambda seed, count: make_job(grow(random.Random(seed), count)).zones[0].line,
    st.integers(0, 10**6),
    st.integers(1, 60),
)
GAPS = st.sets(st.integers(0, 59), max_size=8)


def reaches(line: tuple[Point, ...]) -> dict[str | None, float]:
    """How far each point is from the terminals, in metres."""
    found: dict[str | None, float] = {None: 0.0}
    while len(found) <= len(line):
        for point in line:
            if point.after in found:
                found[point.id] = found[point.after] + (point.length_m or 0.0)
    return found


def without(line: tuple[Point, ...], gaps: set[int]) -> tuple[Point, ...]:
    """The line with some lengths not known."""
    return tuple(
        point.model_copy(update={"length_m": None}) if number in gaps else point
        for number, point in enumerate(line)
    )


@given(LINES)
def test_every_place_is_true_to_the_metre(line: tuple[Point, ...]) -> None:
    sketch = sketch_of(line)
    far_m = reaches(line)
    if not any(far_m.values()):
        assert sketch.metres_a_row is None
        return
    assert sketch.metres_a_row is not None
    for spot in sketch.spots:
        drawn_m = (spot.y - TERMINALS_Y) * sketch.metres_a_row
        assert drawn_m == pytest.approx(far_m[spot.point.id], rel=1e-9, abs=1e-9)


@given(LINES, GAPS)
def test_everything_has_a_row_of_its_own_in_the_order_of_its_place(
    line: tuple[Point, ...], gaps: set[int]
) -> None:
    sketch = sketch_of(without(line, gaps))
    rows = [spot.row for spot in sketch.spots]
    assert rows == sorted(set(rows))
    assert len(rows) == len(line)
    assert rows[0] >= 1
    assert rows[-1] < sketch.rows
    places = [spot.y for spot in sketch.spots]
    assert places == sorted(places)
    assert max(places) <= sketch.rows - TERMINALS_Y + 1e-9


@given(LINES, GAPS)
def test_sections_start_where_what_they_hang_on_is_drawn(
    line: tuple[Point, ...], gaps: set[int]
) -> None:
    sketch = sketch_of(without(line, gaps))
    places = {spot.point.id: (spot.lane, spot.y) for spot in sketch.spots}
    for spot in sketch.spots:
        start = places.get(spot.point.after or "", (0, TERMINALS_Y))
        assert (spot.from_lane, spot.from_y) == start


@given(LINES, GAPS)
def test_no_two_runs_are_drawn_over_each_other(line: tuple[Point, ...], gaps: set[int]) -> None:
    sketch = sketch_of(without(line, gaps))
    for lane in range(sketch.lanes):
        assert_apart(sketch, lane)


def assert_apart(sketch: Sketch, lane: int) -> None:
    """Sections that go down in a lane follow each other there."""
    here = [spot for spot in sketch.spots if spot.lane == lane]
    spans = sorted((spot.from_y, spot.y, spot.from_lane) for spot in here)
    end = 0.0
    for start, stop, _ in spans:
        assert start >= end - 1e-9
        end = max(end, stop)


@given(LINES, GAPS)
def test_a_drawing_with_a_gap_claims_no_scale(line: tuple[Point, ...], gaps: set[int]) -> None:
    sketch = sketch_of(without(line, gaps))
    if gaps & set(range(len(line))):
        assert sketch.metres_a_row is None
    assert [spot.known for spot in sketch.spots].count(False) == len(gaps & set(range(len(line))))


def test_an_empty_line_is_its_terminals() -> None:
    assert sketch_of(()) == Sketch((), 1, 1, None)

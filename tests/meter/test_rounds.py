"""A few faults looked for in three ways; the bench does it a thousand times."""

from statistics import fmean

import pytest

from tests.bench.meter import Piece, play


@pytest.mark.slow
def test_the_tool_is_right_when_it_says_where_and_needs_no_more_readings_than_halving() -> None:
    cell = play(Piece(10, 2.0, range(8)))
    said = [found for found in cell.tool if found.said]
    assert said
    assert all(found.same_box for found in said)
    tool, halving = (fmean(one.readings for one in way) for way in (cell.tool, cell.halving))
    assert tool <= halving

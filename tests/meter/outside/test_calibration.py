"""What the tool gives its first group is how often that group is right: ninety lines by
ngspice. The bench (`build.py bench calibration`) does it for a thousand."""

import math
from collections.abc import Sequence
from statistics import fmean

import pytest

from tests.meter.outside.chance import First, follow

DEVIATIONS = 3.0  # of so many cases; once in 400 by chance alone, and the seeds are fixed


@pytest.fixture(scope="module")
def found() -> list[First]:
    """The tool followed for up to three readings on each line."""
    return follow(range(5000, 5090), most=3)


def given_and_right(some: Sequence[First]) -> tuple[float, float, float]:
    """The mean share given, how often that was right, and by how much the two may differ.

    Readings of one line are not independent: counted as one case in three.
    """
    given = fmean(one.share for one in some)
    variance = fmean(one.share * (1 - one.share) for one in some)
    loose = DEVIATIONS * math.sqrt(variance / (len(some) / 3))
    return given, fmean(one.right for one in some), loose


@pytest.mark.parametrize(("low", "high"), [(0.0, 0.3), (0.3, 0.6), (0.6, 0.9), (0.9, 1.0)])
def test_a_share_is_how_often_the_group_is_right(
    found: list[First], low: float, high: float
) -> None:
    here = [one for one in found if low <= one.share < high or one.share == high == 1.0]
    assert len(here) >= 20
    given, right, loose = given_and_right(here)
    assert right == pytest.approx(given, abs=loose)


def test_over_all_it_is_neither_too_sure_nor_too_careful(found: list[First]) -> None:
    given, right, _ = given_and_right(found)
    assert right == pytest.approx(given, abs=0.08)


def test_the_check_would_see_a_tool_that_is_too_sure(found: list[First]) -> None:
    too_sure = [one._replace(share=math.sqrt(one.share)) for one in found]
    given, right, _ = given_and_right(too_sure)
    assert given - right > 0.08

"""A line as expected never hides that one of many loudspeakers may be missing from it."""

from typing import Any

import pytest

from tests.meter.asked import ask, plain, reading
from tests.meter.lines import MM2_1_5, chain, job_of


def said(value: str, *, count: int = 12, **more: Any) -> dict[str, Any]:
    """What is said of a reading of a line of so many at 10 W, no cable to speak of."""
    points = chain(count, tap_w=10.0, at_v=100.0, first_m=1.0, step_m=1.0)
    job = plain(job_of(points, line_v=100.0, cable=MM2_1_5))
    return ask("diagnose", job=job, where={"zone": "zone"}, readings=[reading(value)], **more)


def test_what_eleven_of_twelve_read_is_not_green_and_says_what_one_missing_reads() -> None:
    told = said("90.9")  # 100 V squared over 110 W
    assert told["expected"][0]["code"] == "as_expected"
    assert (told["headline"], told["verdict"]) == ("As expected, or one of 12 is missing", "note")
    assert "One missing of 12 loudspeakers cannot be told apart from a sound line" in told["reason"]
    assert "it would read 91" in told["reason"]
    assert told["next"] is not None


def test_what_all_twelve_read_stays_as_expected_and_says_it_all_the_same() -> None:
    told = said("83.3")  # 100 V squared over 120 W
    assert (told["headline"], told["verdict"]) == ("As expected", "ok")
    assert "One missing of 12 loudspeakers" in told["reason"]


@pytest.mark.parametrize("count", [1, 2])
def test_where_one_missing_would_show_nothing_is_said_of_it(count: int) -> None:
    told = said(f"{1000 / count:g}", count=count)
    assert told["headline"] == "As expected"
    assert "missing" not in told["reason"]

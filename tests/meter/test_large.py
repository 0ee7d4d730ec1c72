"""Two thousand loudspeakers on one line: nothing is left out for being many."""

import math

import pytest

from pycore.calc.diagnosis import Diagnosis
from pycore.jobs import Job
from tests.meter.asked import ask, plain, reading
from tests.meter.lines import MM2_1_5, job_of, speaker
from tests.meter.taken import taken, told_by

pytestmark = pytest.mark.slow

COUNT = 2000
BRANCH = 50  # a branch leaves the line at every so many


def large(count: int = COUNT) -> Job:
    """A line of many loudspeakers on three taps, with branches."""
    points = []
    for number in range(1, count + 1):
        after = f"s{number - 1}" if number > 1 else None
        if number > BRANCH and number % BRANCH == 0:
            after = f"s{number - BRANCH // 2}"
        tap_w, length_m = (1.25, 2.5, 5.0)[number % 3], 3.0 + number * 7 % 13
        points.append(
            speaker(number, after=after, tap_w=tap_w, at_v=100.0, length_m=length_m, cable="pair")
        )
    return job_of(points, line_v=100.0, cable=MM2_1_5)


@pytest.fixture(scope="module")
def told() -> Diagnosis:
    """A reading as low as a short some way out makes it."""
    return told_by(large(), [taken("zone", 1.2, tolerance_pct=2.0)])


def test_every_loudspeaker_is_under_every_kind_of_suspicion(told: Diagnosis) -> None:
    places: dict[str, set[int]] = {}
    for one in told.suspects:
        places.setdefault(one.key[0], set()).add(one.key[1])
    for family in ("dead", "tap", "direct", "cut", "short", "joint", "extra", "extra_low", "wet"):
        assert len(places[family]) == COUNT, family
    assert math.fsum(one.share for one in told.suspects) == pytest.approx(1.0)


def test_the_groups_hold_every_suspect_once(told: Diagnosis) -> None:
    members = [number for group in told.groups for number in group.suspects]
    assert sorted(members) == list(range(len(told.suspects)))


def test_a_short_is_found_where_its_loop_says(told: Diagnosis) -> None:
    # 1.2 Ω of 1.5 mm² fine copper, 13.3 Ω/km at 20 °C each way (IEC 60228:2004
    # table 3, second hand): 45.1 m of route
    wired, (family, node, _, _) = told.site.circuits.wired, told.suspects[0].key
    assert family == "short"
    assert wired.far_m[wired.parents[node]] < 1200 / 26.6 < wired.far_m[node]
    assert told.next is not None


def test_it_answers_through_the_door_and_goes_on_where_two_are_needed() -> None:
    job, first = plain(large()), reading(5.0)
    answer = ask("diagnose", job=job, where={"zone": "zone"}, readings=[first])
    assert answer["done"]
    assert answer["groups"]
    assert answer["next"]
    second = {**reading(8.0), "id": "r2", "where": {"point": "s1000"}}
    answer = ask("diagnose", job=job, where={"zone": "zone"}, readings=[first, second])
    assert not answer["done"]
    assert answer["resume"]["next_first"] >= 1
    assert answer["groups"]

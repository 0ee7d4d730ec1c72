"""Which loudspeaker is quietest, and by what: told with its tap, never judged."""

from typing import Any

import pytest

from pycore.asks.see import see
from pycore.calc.finding import Finding
from pycore.calc.line import line_findings
from pycore.calc.line_story import line_working
from pycore.ground.units import Manner
from pycore.jobs import Job
from tests.drawn import as_read
from tests.samples.halls import attenuator, job_of, row_of, told
from tests.samples.lines import speaker

MANNER = Manner("en", "m", ".", "")
# A quarter of the watts is 10·log10(4) less (IEC 60027-3, levels of power
# quantities, from memory).
QUARTER_DB = 6.0206


def quietest(job: Job) -> Finding | None:
    """The finding, if there is one."""
    return next((one for one in line_findings(job) if one.what == "zone_quietest_db"), None)


def mixed(*taps_w: float, **more: Any) -> Job:
    """Loudspeakers in a row, each ten metres on."""
    return job_of([speaker(n, length_m=10.0, tap_w=w, **more) for n, w in enumerate(taps_w)])


def test_one_on_a_quarter_of_its_neighbours_watts_is_named_though_another_loses_most() -> None:
    job = mixed(5.0, 1.25, 5.0, 5.0)
    found = quietest(job)
    assert found is not None
    lost_db = row_of(job, "p1")["loss_db"]
    assert (found.code, found.values["point"]) == ("zone_quietest_by_tap", "p1")
    assert found.value == pytest.approx(QUARTER_DB + lost_db, abs=1e-4)
    assert found.values["tap_db"] == pytest.approx(QUARTER_DB, abs=1e-4)
    assert (found.verdict, found.limit) == ("note", None)
    # only cable is judged: the far end is still the worst of it
    assert told(job).values["point"] == "p3"


def test_alike_they_differ_by_cable_and_that_is_said() -> None:
    found = quietest(mixed(*[30.0] * 6))
    assert found is not None
    assert (found.code, found.values["point"]) == ("zone_quietest_by_cable", "p5")
    assert (found.values["tap_db"], found.values["control_db"]) == (0.0, 0.0)


def test_behind_a_control_it_is_by_the_control() -> None:
    points = [speaker(n, length_m=10.0, tap_w=5.0) for n in range(3)]
    points.insert(2, attenuator("p1", set_db=-12.0))
    points[3]["after"] = "v"
    found = quietest(job_of(points))
    assert found is not None
    assert (found.code, found.values["point"]) == ("zone_quietest_by_control", "p2")
    assert found.values["control_db"] == pytest.approx(12.0, abs=0.6)


def test_a_tap_is_held_against_its_own_kind() -> None:
    """Two small ones among large ones of another kind are not called quiet by their taps."""
    points = [speaker(n, length_m=1.0, tap_w=30.0, fitted={"kind": "k"}) for n in range(3)]
    small = [speaker(n, length_m=1.0, tap_w=5.0, fitted={"kind": None}) for n in (3, 4)]
    found = quietest(job_of([*points, *small]))
    assert found is None or found.code != "zone_quietest_by_tap"


@pytest.mark.parametrize("taps_w", [(5.0,), (0.01, 0.01)])
def test_where_no_ear_tells_them_apart_nobody_is_named(taps_w: tuple[float, ...]) -> None:
    assert quietest(mixed(*taps_w)) is None


def test_without_lengths_taps_alone_are_told() -> None:
    job = job_of([speaker(n, length_m=None, tap_w=w) for n, w in enumerate((5.0, 5.0, 1.25))])
    found = quietest(job)
    assert found is not None
    assert found.value == pytest.approx(QUARTER_DB, abs=1e-4)
    assert found.values["cable_db"] is None
    (words,) = (one["words"] for one in see(job, MANNER)["findings"] if one["id"] == found.id)
    assert "not known by cable" in as_read(words)


def test_its_working_ends_in_it() -> None:
    job = mixed(5.0, 1.25, 5.0, 5.0)
    found = quietest(job)
    assert found is not None
    steps = line_working(job, found).steps
    assert [one.code for one in steps] == ["draw_tap", "quiet_ratio", "quiet_tap", "quietest"]
    assert steps[-1].result == found.value


def test_where_one_section_is_not_known_no_cable_is_compared() -> None:
    lengths_m = (10.0, 10.0, None)
    points = [speaker(n, length_m=each, tap_w=5.0 / 4**n) for n, each in enumerate(lengths_m)]
    found = quietest(job_of(points))
    assert found is not None
    assert found.values["cable_db"] is None

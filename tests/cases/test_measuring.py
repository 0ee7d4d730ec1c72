"""Readings as commands: kept in the unit of what was read, put right, taken back, made a baseline.

Common practice, no source: a hand meter is taken to be within 5 % where nobody says better.
"""

import json
from typing import Any

import pytest

from pycore.edit import apply, read_command
from pycore.ground.problems import BadCommand
from pycore.jobs import Job, Kinds
from pycore.jobs.catalogue import DEFAULT_LIMITS

JOB = Job(
    format="rungline-job",
    version=1,
    id="t1",
    name="Test",
    rev=3,
    limits=DEFAULT_LIMITS,
    kinds=Kinds(),
)


def keep(job: Job, **said: Any) -> Job:
    """The job with a reading kept at zone z1."""
    reading = {"id": "r1", "at": "2026-11-25", "where": {"zone": "z1"}, "looking": "out"}
    usual = {"do": "keep_reading", **reading, "quantity": "z_1k_ohm", "controls": "open"}
    return apply(job, read_command(json.dumps({**usual, **said})))


def test_a_reading_is_kept_with_its_number_and_the_usual_tolerance() -> None:
    (reading,) = keep(JOB, read_ohm=168.0).readings
    assert (reading.value, reading.tolerance_pct, reading.baseline) == (168.0, 5.0, False)


def test_over_range_is_written_as_an_open_line() -> None:
    assert keep(JOB, over_range=True).readings[0].value == 1e12


def test_the_same_id_puts_a_slip_right() -> None:
    job = keep(keep(JOB, read_ohm=1680.0), read_ohm=168.0)
    assert [reading.value for reading in job.readings] == [168.0]


def test_what_was_heard_is_kept_as_a_word() -> None:
    assert keep(JOB, quantity="plays", heard="silent").readings[0].value == "silent"


@pytest.mark.parametrize(
    "said", [{}, {"read_v": 70.0}, {"quantity": "plays", "read_ohm": 8.0}, {"quantity": "volts"}]
)
def test_a_reading_without_a_value_of_its_own_unit_is_refused(said: dict[str, Any]) -> None:
    with pytest.raises(BadCommand) as refused:
        keep(JOB, **said)
    assert refused.value.code == "reading_empty"


def test_a_reading_can_be_taken_back_once() -> None:
    drop = read_command('{"do": "drop_reading", "reading": "r1"}')
    job = apply(keep(JOB, read_ohm=168.0), drop)
    assert job.readings == ()
    with pytest.raises(BadCommand):
        apply(job, drop)


def test_readings_become_the_baseline_and_cease_to_be() -> None:
    job = keep(JOB, read_ohm=168.0)
    for baseline in (True, False):
        mark = {"do": "mark_baseline", "readings": ["r1"], "baseline": baseline}
        job = apply(job, read_command(json.dumps(mark)))
        assert job.readings[0].baseline is baseline


def test_a_reading_that_is_not_in_the_job_is_no_baseline() -> None:
    mark = {"do": "mark_baseline", "readings": ["r1", "r2"], "baseline": True}
    with pytest.raises(BadCommand) as refused:
        apply(keep(JOB, read_ohm=168.0), read_command(json.dumps(mark)))
    assert (refused.value.code, refused.value.values["id"]) == ("not_here", "r2")


@pytest.mark.parametrize(
    ("said", "value"),
    [
        ({"read_ohm": 3.6, "leads_ohm": 0.3}, 3.3),
        ({"read_ohm": 3.6, "leads_ohm": 0.3, "quantity": "dc_ohm"}, 3.3),
        ({"read_ohm": 0.3, "leads_ohm": 0.3}, 0.0),
        ({"read_ohm": 0.2, "leads_ohm": 0.3}, 0.0),
        ({"read_ohm": 5e6, "leads_ohm": 0.3, "quantity": "earth_ohm"}, 5e6),
        ({"read_v": 70.0, "leads_ohm": 0.3, "quantity": "volts"}, 70.0),
        ({"over_range": True, "leads_ohm": 0.3}, 1e12),
    ],
)
def test_leads_that_were_not_nulled_are_taken_off_what_is_read_across_the_pair(
    said: dict[str, Any], value: float
) -> None:
    # 0.3 ohm of leads are 11 m of a loop of 26.875 ohm/km (arithmetic)
    assert keep(JOB, **said).readings[0].value == pytest.approx(value)

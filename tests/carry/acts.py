"""A job that an office and a ladder both change."""

import json
from typing import Any

from pycore.edit import apply, read_command
from pycore.jobs import Job
from tests.samples.travellers import make_traveller

BASE = make_traveller(18, free_labels=False, ticked=False)
P = [point.id for point in BASE.zones[0].line]
Q = [point.id for point in BASE.zones[1].line]


def do(job: Job, **command: Any) -> Job:
    """The job after a command."""
    return apply(job, read_command(json.dumps(command)))


def content(job: Job) -> dict[str, Any]:
    """What a job says, without what it says of its own keeping, and without what is united."""
    kept = {"id", "rev", "saved_at", "base", "readings", "ticks"}
    return job.model_dump(exclude=kept)

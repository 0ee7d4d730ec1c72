"""A job as it would be: after commands that nobody has given yet, or with one thing otherwise."""

from pycore.asks.editing import command_of
from pycore.asks.requests import WorkingBody
from pycore.asks.what_if import wanted_of
from pycore.calc import whatif
from pycore.edit import apply
from pycore.ground.units import Manner
from pycore.jobs import Job


def job_as_it_would_be(body: WorkingBody, manner: Manner) -> Job:
    """The job of a body after its commands, in order, and then with its change.

    Raises the problem of a command or change that does not fit.
    """
    job = body.job
    for raw in body.commands:
        job = apply(job, command_of(raw, body.typed, manner=manner))
    if body.change is not None:
        job = whatif.change_job(job, wanted_of(body.change, body.typed, manner=manner).change())
    return job

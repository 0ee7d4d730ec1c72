"""Commands for the job as a whole: its name, its limits, an earlier state."""

from typing import Literal

from pycore.edit.change import changed, given, require
from pycore.ground.problems import BadCommand
from pycore.jobs import Closed, Job, Tick
from pycore.jobs.base import (
    Celsius,
    Fraction,
    LossDecibels,
    Name,
    Notes,
    SquareMillimetres,
)


class JobChanges(Closed):
    """What may be changed of the job itself."""

    name: Name | None = None
    place: Name | None = None
    notes: Notes | None = None


class ChangeJob(Closed):
    """Name the job, its place, its notes."""

    do: Literal["change_job"]
    changes: JobChanges

    def apply(self, job: Job) -> Job:
        """The job with its new name, place or notes."""
        fields = given(self.changes)
        require(fields, "name", "place", "notes")
        return changed(job, **fields)


class LimitChanges(Closed):
    """What may be changed of the limits."""

    loss_db: LossDecibels | None = None
    load_fraction: Fraction | None = None
    conductor_c: Celsius | None = None
    thinnest_mm2: SquareMillimetres | None = None
    thickest_mm2: SquareMillimetres | None = None


class SetLimits(Closed):
    """Set what the job is judged by."""

    do: Literal["set_limits"]
    changes: LimitChanges

    def apply(self, job: Job) -> Job:
        """The job with other limits."""
        fields = given(self.changes)
        require(fields, "loss_db", "load_fraction", "conductor_c")
        return changed(job, limits=changed(job.limits, **fields))


class Restore(Closed):
    """Go to an earlier or later state: undo, redo, history.

    Readings and ticks stay as now, and so does when it was kept. Ticks that went with a removed
    point come back with it. What the job grew from goes back
    with it: after an undone merge that is no longer the state that was taken in.
    """

    do: Literal["restore"]
    past: Job

    def apply(self, job: Job) -> Job:
        """The past content with the readings and ticks of now; the count of changes goes on."""
        if self.past.id != job.id:
            raise BadCommand("another_job", where={"field": "past"})
        return changed(
            self.past,
            rev=job.rev,
            saved_at=job.saved_at,
            readings=job.readings,
            ticks=(*job.ticks, *self._came_back(job)),
        )

    def _came_back(self, job: Job) -> tuple[Tick, ...]:
        """The ticks of points that are there again."""
        here = {point.id for zone in job.zones for point in zone.line}
        return tuple(tick for tick in self.past.ticks if tick.point not in here)

"""Commands for zones."""

from typing import Literal

from pycore.edit.change import changed, find_zone, given, placed, replaced, require, without
from pycore.jobs import Closed, Job, Zone
from pycore.jobs.base import Id, LossDecibels, Name


class AddZone(Closed):
    """Add a zone, with or without its line."""

    do: Literal["add_zone"]
    zone: Zone

    def apply(self, job: Job) -> Job:
        """The job with one zone more."""
        return changed(job, zones=(*job.zones, self.zone))


class ZoneChanges(Closed):
    """What may be changed of a zone."""

    name: Name | None = None
    output: Id | None = None
    page_output: Id | None = None
    loss_db: LossDecibels | None = None


class ChangeZone(Closed):
    """Name a zone, land it on an output, give it a loss limit of its own."""

    do: Literal["change_zone"]
    zone: Id
    changes: ZoneChanges

    def apply(self, job: Job) -> Job:
        """The job with the zone changed."""
        fields = given(self.changes)
        require(fields, "name")
        new = changed(find_zone(job, self.zone), **fields)
        return changed(job, zones=replaced(job.zones, new))


class MoveZone(Closed):
    """List a zone before another, or last."""

    do: Literal["move_zone"]
    zone: Id
    before: Id | None = None

    def apply(self, job: Job) -> Job:
        """The job with its zones in another order."""
        return changed(job, zones=placed(job.zones, find_zone(job, self.zone), before=self.before))


class RemoveZone(Closed):
    """Take a zone out with everything on its line."""

    do: Literal["remove_zone"]
    zone: Id

    def apply(self, job: Job) -> Job:
        """The job without the zone."""
        return changed(job, zones=without(job.zones, find_zone(job, self.zone).id))

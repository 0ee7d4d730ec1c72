"""Commands for the job as a whole: its name, its limits, its kinds, an earlier state."""

from typing import Annotated, Literal

from pydantic import Field

from pycore.edit.change import changed, given, require, without
from pycore.ground.problems import BadCommand
from pycore.jobs import AttenuatorKind, CableKind, Closed, Job, LoudspeakerKind, Point
from pycore.jobs.base import (
    Celsius,
    Fraction,
    Id,
    LossDecibels,
    Name,
    Notes,
    SquareMillimetres,
)

Family = Literal["loudspeakers", "attenuators", "cables"]


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


class _UseKind(Closed):
    """Copy a kind into the job, or put a corrected one in the place of its namesake."""

    do: Literal["use_kind"]
    family: Family
    kind: LoudspeakerKind | AttenuatorKind | CableKind

    def apply(self, job: Job) -> Job:
        """The job with the kind in it."""
        now = getattr(job.kinds, self.family)
        if any(one.id == self.kind.id for one in now):
            kept = tuple(self.kind if one.id == self.kind.id else one for one in now)
        else:
            kept = (*now, self.kind)
        return changed(job, kinds=changed(job.kinds, **{self.family: kept}))


class UseLoudspeaker(_UseKind):
    """Use a kind of loudspeaker."""

    family: Literal["loudspeakers"]
    kind: LoudspeakerKind


class UseAttenuator(_UseKind):
    """Use a kind of attenuator."""

    family: Literal["attenuators"]
    kind: AttenuatorKind


class UseCable(_UseKind):
    """Use a kind of cable."""

    family: Literal["cables"]
    kind: CableKind


UseKind = Annotated[UseLoudspeaker | UseAttenuator | UseCable, Field(discriminator="family")]


class DropKind(Closed):
    """Take a kind out of the job; refused while something uses it."""

    do: Literal["drop_kind"]
    family: Family
    kind: Id

    def apply(self, job: Job) -> Job:
        """The job without the kind."""
        kinds = getattr(job.kinds, self.family)
        if not any(one.id == self.kind for one in kinds):
            raise BadCommand("not_here", where={"kind": self.kind}, id=self.kind)
        for zone in job.zones:
            for point in zone.line:
                if self.kind == _kind_used(point, self.family):
                    raise BadCommand("kind_in_use", where={"point": point.id}, kind=self.kind)
        kept = without(kinds, self.kind)
        return changed(job, kinds=changed(job.kinds, **{self.family: kept}))


def _kind_used(point: Point, family: Family) -> str | None:
    """The kind of one family that a point uses."""
    fitted = point.fitted
    if family == "cables":
        return point.cable
    if fitted.is_ == "loudspeaker" and family == "loudspeakers":
        return fitted.kind
    return fitted.kind if fitted.is_ == "attenuator" and family == "attenuators" else None


class Restore(Closed):
    """Go to an earlier or later state: undo, redo, history.

    Readings and ticks stay as now, and so does what the job says of its own keeping.
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
            base=job.base,
            readings=job.readings,
            ticks=job.ticks,
        )

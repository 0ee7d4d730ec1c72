"""Commands for the kinds a job uses: take one in, correct it, take it out."""

from typing import Annotated, Literal, Self

from pydantic import Field

from pycore.edit.change import changed, without
from pycore.ground.problems import BadCommand
from pycore.ground.units import same_voltage
from pycore.jobs import AttenuatorKind, CableKind, Closed, Job, LoudspeakerKind, Point, Tap
from pycore.jobs.base import Id, Ohms, Volts, Watts
from pycore.jobs.catalogue import LINE_VOLTS

Family = Literal["loudspeakers", "attenuators", "cables"]
Kind = LoudspeakerKind | AttenuatorKind | CableKind


class _UseKind(Closed):
    """Copy a kind into the job, or put a corrected one in the place of its namesake."""

    do: Literal["use_kind"]
    family: Family
    kind: Kind

    def apply(self, job: Job) -> Job:
        """The job with the kind in it."""
        kind = self._meant(job)
        if not kind.name.strip():
            raise BadCommand("name_needed", where={"field": "kind.name"})
        now = getattr(job.kinds, self.family)
        if any(one.id == kind.id for one in now):
            kept = tuple(kind if one.id == kind.id else one for one in now)
        else:
            kept = (*now, kind)
        return changed(job, kinds=changed(job.kinds, **{self.family: kept}))

    def _meant(self, _job: Job) -> Kind:
        return self.kind


class RowTap(Closed):
    """A tap as it is read from a selector: watts, or the ohms of its low-impedance position."""

    w: Annotated[Watts, Field(gt=0)] | None = None
    ohm: Ohms | None = None


class TapRow(Closed):
    """The taps of one marked voltage, as they stand on the selector; None is no such row."""

    at_v: Volts
    taps: Annotated[tuple[RowTap, ...], Field(max_length=40)] | None = None

    def marked(self) -> Self:
        """The same, a usual line voltage written as this tool writes it."""
        usual = next((line_v for line_v in LINE_VOLTS if same_voltage(line_v, self.at_v)), None)
        return self if usual is None else self.model_copy(update={"at_v": usual})


class UseLoudspeaker(_UseKind):
    """Use a kind of loudspeaker. Where `rows` are given, they are its taps."""

    family: Literal["loudspeakers"]
    kind: LoudspeakerKind
    rows: Annotated[tuple[TapRow, ...], Field(max_length=12)] | None = None

    def _meant(self, job: Job) -> LoudspeakerKind:
        if self.rows is None:
            return self.kind
        before = next((one for one in job.kinds.loudspeakers if one.id == self.kind.id), None)
        known = before.taps if before else ()
        taps = (
            _tap(tap, row.at_v, known=known)
            for row in (row.marked() for row in self.rows)
            for tap in row.taps or ()
        )
        return changed(self.kind, taps=tuple(taps))


def _tap(given: RowTap, at_v: float, *, known: tuple[Tap, ...]) -> Tap:
    """A tap of a row; what the job knows of the same one beyond its watts is kept."""
    for tap in known:
        if (tap.w, tap.ohm) == (given.w, given.ohm) and same_voltage(tap.at_v, at_v):
            return changed(tap, at_v=at_v)
    return Tap(w=given.w, ohm=given.ohm, at_v=at_v)


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
                if self.kind == kind_used(point, self.family):
                    raise BadCommand("kind_in_use", where={"point": point.id}, kind=self.kind)
        kept = without(kinds, self.kind)
        return changed(job, kinds=changed(job.kinds, **{self.family: kept}))


def kind_used(point: Point, family: Family) -> str | None:
    """The kind of one family that a point uses."""
    fitted = point.fitted
    if family == "cables":
        return point.cable
    if fitted.is_ == "loudspeaker" and family == "loudspeakers":
        return fitted.kind
    return fitted.kind if fitted.is_ == "attenuator" and family == "attenuators" else None

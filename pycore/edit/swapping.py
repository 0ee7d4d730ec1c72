"""Turning a tap and fitting another kind, and how what was planned is kept apart from what is."""

from typing import Literal

from pycore.edit.change import changed, find_point, find_zone, replaced
from pycore.edit.fitting import refitted
from pycore.ground.problems import BadCommand
from pycore.jobs import Closed, Job, Loudspeaker, LoudspeakerKind, Point
from pycore.jobs.base import Id, Volts, Watts
from pycore.jobs.fitted import Seen
from pycore.jobs.taps import tap_row_v

# As nobody had looked yet, what the job said was the plan.
PLANNED: tuple[Seen | None, ...] = (None, "drawing")


class SetTap(Closed):
    """Turn a loudspeaker's selector: it then stands on a tap, not on low impedance.

    `seen`: how that is known from now on; null leaves it. A plan that is left behind on site
    is kept as `planned_tap_w`.
    """

    do: Literal["set_tap"]
    point: Id
    tap_w: Watts | None = None
    tap_at_v: Volts | None = None
    seen: Seen | None = None

    def apply(self, job: Job) -> Job:
        """The job with the tap set."""
        _, point = find_point(job, self.point)
        fields: dict[str, object] = {"tap_w": self.tap_w, "tap_at_v": self.tap_at_v}
        fields["direct_ohm"] = None
        if point.fitted.is_ == "loudspeaker":
            fields |= known_as(point.fitted, self.seen)
        return refitted(job, point, fields=fields)


class SetTaps(Closed):
    """Plan one tap for every loudspeaker of a zone whose kind has and allows it; others stay.

    Nobody stood at a selector: what was found or set counts as planned from then on.
    """

    do: Literal["set_taps"]
    zone: Id
    tap_w: Watts
    tap_at_v: Volts

    def apply(self, job: Job) -> Job:
        """The job with those taps planned."""
        zone = find_zone(job, self.zone)
        line = tuple(self._planned(job, point) for point in zone.line)
        return changed(job, zones=replaced(job.zones, changed(zone, line=line)))

    def _planned(self, job: Job, point: Point) -> Point:
        """A point on its tap, where it has one; one that stands there already stays as it is."""
        fitted = point.fitted
        if fitted.is_ != "loudspeaker":
            return point
        row_v = tap_row_v(job.kinds, fitted, tap_w=self.tap_w, tap_at_v=self.tap_at_v)
        there = (fitted.tap_w, fitted.tap_at_v, fitted.direct_ohm)
        if row_v is None or there == (self.tap_w, row_v, None):
            return point
        fields: dict[str, object] = {"tap_w": self.tap_w, "tap_at_v": row_v, "direct_ohm": None}
        fields |= known_as(fitted, "drawing" if fitted.seen not in PLANNED else None)
        return changed(point, fitted=changed(fitted, **fields))


class SwapLoudspeaker(Closed):
    """Fit a loudspeaker of another kind at a point, on a tap of its own.

    The kind is copied into the job with it; one of the same id that the job has stays.
    """

    do: Literal["swap_loudspeaker"]
    point: Id
    kind: LoudspeakerKind
    tap_w: Watts | None = None
    tap_at_v: Volts | None = None
    seen: Seen | None = None

    def apply(self, job: Job) -> Job:
        """The job with the other loudspeaker there."""
        _, point = find_point(job, self.point)
        if point.fitted.is_ != "loudspeaker":
            raise BadCommand(
                "field_not_here",
                where={"point": point.id, "field": "kind"},
                field="kind",
                fitted=point.fitted.is_,
            )
        kinds = job.kinds
        if not any(one.id == self.kind.id for one in kinds.loudspeakers):
            kinds = changed(kinds, loudspeakers=(*kinds.loudspeakers, self.kind))
        new = changed(
            point.fitted,
            kind=self.kind.id,
            tap_w=self.tap_w,
            tap_at_v=self.tap_at_v,
            direct_ohm=None,
            **known_as(point.fitted, self.seen),
        )
        zone = find_point(job, self.point)[0]
        line = replaced(zone.line, changed(point, fitted=new))
        zones = replaced(job.zones, changed(zone, line=line))
        # a tick was for the one that hung here before, whatever tap the new one stands on
        ticks = tuple(tick for tick in job.ticks if tick.point != point.id)
        return changed(job, kinds=kinds, zones=zones, ticks=ticks)


def known_as(fitted: Loudspeaker, seen: Seen | None) -> dict[str, object]:
    """The fields that say how a tap is known, and what was planned, when it is turned."""
    if seen is None:
        return {}
    if seen == "drawing":
        return {"seen": seen, "planned_tap_w": None}
    fields: dict[str, object] = {"seen": seen}
    if fitted.planned_tap_w is None and fitted.seen in PLANNED:
        fields["planned_tap_w"] = fitted.tap_w
    return fields

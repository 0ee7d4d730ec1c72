"""Commands at one point: its tap, its cable, its control, whether it is connected."""

from collections.abc import Mapping
from typing import Literal

from pycore.edit.change import changed, find_point, given, replaced, require
from pycore.ground.problems import BadCommand
from pycore.jobs import Closed, Job, Point
from pycore.jobs.base import (
    Hertz,
    Id,
    LossDecibels,
    Metres,
    Name,
    Ohms,
    Place,
    SeriesOhms,
    SettingDecibels,
    Volts,
    Watts,
)
from pycore.jobs.fitted import Seen
from pycore.jobs.kinds import Form, OverrideSense

OF_THE_SECTION = ("length_m", "cable", "joint_ohm")


class PointChanges(Closed):
    """What may be changed of a point and of what is fitted there."""

    length_m: Metres | None = None
    cable: Id | None = None
    joint_ohm: SeriesOhms | None = None
    label: Name | None = None
    kind: Id | None = None
    planned_tap_w: Watts | None = None
    direct_ohm: Ohms | None = None
    seen: Seen | None = None
    x_m: Place | None = None
    y_m: Place | None = None
    z_m: Place | None = None
    rated_w: Watts | None = None
    rated_at_v: Volts | None = None
    insertion_db: LossDecibels | None = None
    form: Form | None = None
    override: bool | None = None
    override_sense: OverrideSense | None = None
    ohm: Ohms | None = None
    hz: Hertz | None = None
    w: Watts | None = None


class ChangePoint(Closed):
    """Change what is known of a point."""

    do: Literal["change_point"]
    point: Id
    changes: PointChanges

    def apply(self, job: Job) -> Job:
        """The job with the point changed; a field that what is fitted does not have is refused."""
        _, point = find_point(job, self.point)
        fields = given(self.changes)
        require(fields, "label")
        section = {name: value for name, value in fields.items() if name in OF_THE_SECTION}
        own = {name: value for name, value in fields.items() if name not in OF_THE_SECTION}
        return refitted(job, changed(point, **section), fields=own)


class Connect(Closed):
    """Connect a loudspeaker that was off the line."""

    do: Literal["connect"]
    point: Id

    def apply(self, job: Job) -> Job:
        """The job with the loudspeaker on the line."""
        return refitted(job, find_point(job, self.point)[1], fields={"connected": True})


class Disconnect(Closed):
    """Disconnect a loudspeaker; the line through its box stays."""

    do: Literal["disconnect"]
    point: Id

    def apply(self, job: Job) -> Job:
        """The job with the loudspeaker off the line."""
        return refitted(job, find_point(job, self.point)[1], fields={"connected": False})


class SetAttenuator(Closed):
    """Stand an attenuator at a setting, or off."""

    do: Literal["set_attenuator"]
    point: Id
    set_db: SettingDecibels | None = None
    off: bool | None = None

    def apply(self, job: Job) -> Job:
        """The job with the control as it stands."""
        point = find_point(job, self.point)[1]
        wanted = {"set_db": self.set_db, "off": self.off}
        return refitted(
            job, point, fields={one: it for one, it in wanted.items() if it is not None}
        )


def refitted(job: Job, point: Point, *, fields: Mapping[str, object]) -> Job:
    """The job with some fields of what is fitted at a point changed.

    Raises BadCommand `field_not_here`.
    """
    alien = next((name for name in fields if name not in type(point.fitted).model_fields), None)
    if alien is not None:
        where = {"point": point.id, "field": f"changes.{alien}"}
        raise BadCommand("field_not_here", where=where, field=alien, fitted=point.fitted.is_)
    new = changed(point, fitted=changed(point.fitted, **fields)) if fields else point
    zone, _ = find_point(job, point.id)
    line = replaced(zone.line, new)
    return changed(job, zones=replaced(job.zones, changed(zone, line=line)))

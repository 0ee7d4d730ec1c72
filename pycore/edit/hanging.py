"""Commands that change what hangs where: add, move and remove points of a line."""

from typing import Annotated, Literal

from pydantic import Field

from pycore.edit.change import changed, find_point, find_zone, replaced
from pycore.edit.labels import labelled
from pycore.edit.splicing import Way, hang, hang_on, place_behind
from pycore.ground.problems import BadCommand
from pycore.jobs import Closed, Job, Junction, Point
from pycore.jobs.base import Id
from pycore.jobs.tree import below, children_of

MOST_ADDED = 500


class AddPoints(Closed):
    """Add points to a zone, each behind the one before; `Way` says what else they change."""

    do: Literal["add_points"]
    zone: Id
    points: Annotated[tuple[Point, ...], Field(min_length=1, max_length=MOST_ADDED)]
    splice: bool
    ahead_of: Id | None = None
    cut_in: bool = False

    def apply(self, job: Job) -> Job:
        """The job with the points on the zone's line."""
        zone = find_zone(job, self.zone)
        way = Way(self.splice, self.ahead_of, self.cut_in)
        line = hang(zone.line, labelled(self.points, zone), way=way)
        return changed(job, zones=replaced(job.zones, changed(zone, line=line)))


class MovePoint(Closed):
    """Hang one point elsewhere; what hung on it closes up behind it.

    `junction`: the id of the junction that has to stay where the line divides there or its
    cable changes.
    """

    do: Literal["move_point"]
    point: Id
    zone: Id
    after: Id | None = None
    splice: bool
    junction: Id | None = None

    def apply(self, job: Job) -> Job:
        """The job with the point in its new place, its own length and cable kept."""
        if self.after == self.point:
            raise BadCommand("hangs_on_itself", where={"point": self.point})
        home, point = find_point(job, self.point)
        closed = changed(
            home, line=close_up(_stood_in(home.line, point, junction=self.junction), point)
        )
        job = changed(job, zones=replaced(job.zones, closed))
        target = find_zone(job, self.zone)
        new = changed(point, after=self.after)
        line = hang_on(target.line, self.after, new=point.id) if self.splice else target.line
        at = place_behind(line, self.after) if self.splice else len(line)
        moved = changed(target, line=(*line[:at], new, *line[at:]))
        return changed(job, zones=replaced(job.zones, moved))


class RemovePoint(Closed):
    """Take a point out: join the line through, or cut off everything that hangs on it."""

    do: Literal["remove_point"]
    point: Id
    tail: Literal["join", "cut"]

    def apply(self, job: Job) -> Job:
        """The job without the point."""
        zone, point = find_point(job, self.point)
        if self.tail == "cut":
            gone = {point.id, *below(zone.line, point.id)}
            line = tuple(one for one in zone.line if one.id not in gone)
        else:
            line = close_up(zone.line, point)
            if point.fitted.is_ == "junction" and len(line) == len(zone.line):
                raise BadCommand("junction_stays", where={"point": point.id})
        return changed(job, zones=replaced(job.zones, changed(zone, line=line)))


def close_up(line: tuple[Point, ...], gone: Point) -> tuple[Point, ...]:
    """The line joined through where a point was.

    Two sections become one where they are alike (lengths and joint ohms add; one unknown
    length makes both unknown). Where cables differ or the line divides, a junction stays.
    """
    hanging = children_of(line).get(gone.id, [])
    if not hanging:
        return tuple(one for one in line if one.id != gone.id)
    if _divides(hanging, gone):
        box = Junction.model_validate({"is": "junction", "label": gone.fitted.label or ""})
        return replaced(line, changed(gone, fitted=box))
    child = hanging[0]
    joined = changed(
        child,
        after=gone.after,
        length_m=_sum(child.length_m, gone.length_m),
        joint_ohm=_joints(child.joint_ohm, gone.joint_ohm),
    )
    return tuple(one for one in replaced(line, joined) if one.id != gone.id)


def _divides(hanging: list[Point], at: Point) -> bool:
    """Whether a box has to stay at a point: several sections go on from it, or another cable."""
    return len(hanging) > 1 or (len(hanging) == 1 and hanging[0].cable != at.cable)


def _stood_in(line: tuple[Point, ...], leaves: Point, *, junction: str | None) -> tuple[Point, ...]:
    """The line with a junction between a point that leaves and what hangs on it, if it needs one.

    The junction takes over the section of the point, which then hangs on it as a leaf.
    """
    if not _divides(children_of(line).get(leaves.id, []), leaves):
        return line
    if junction is None:
        raise BadCommand("junction_needed", where={"point": leaves.id})
    box = Junction.model_validate({"is": "junction", "label": leaves.fitted.label or ""})
    line = hang_on(line, leaves.id, new=junction)
    at = place_behind(line, leaves.id) - 1
    stays = changed(leaves, id=junction, fitted=box)
    return (*line[:at], stays, *line[at:])


def _sum(one: float | None, other: float | None) -> float | None:
    return None if one is None or other is None else one + other


def _joints(one: float | None, other: float | None) -> float | None:
    """Joints nobody wrote down count as none; those written down add."""
    return one if other is None else other if one is None else one + other

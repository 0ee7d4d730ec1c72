"""Commands for the sections of a zone: another cable through them, and how long they are."""

from typing import Annotated, Literal

from pydantic import Field

from pycore.edit.change import changed, find_zone, replaced
from pycore.ground.problems import BadCommand
from pycore.jobs import CableKind, Closed, Job, Point, Zone
from pycore.jobs.base import Id, Metres
from pycore.jobs.zones import MOST_POINTS

Ids = Annotated[tuple[Id, ...], Field(min_length=1, max_length=MOST_POINTS)]


class SetCable(Closed):
    """Put a cable in all sections of a zone, in its home runs, or in the sections to some points.

    The kind is copied into the job with it. One of the same id that the job has already stays
    as the job has it.
    """

    do: Literal["set_cable"]
    zone: Id
    sections: Literal["all", "home_run"] | Ids
    kind: CableKind

    def apply(self, job: Job) -> Job:
        """The job with the cable in those sections."""
        zone = find_zone(job, self.zone)
        wanted = self._wanted(zone)
        line = tuple(
            changed(point, cable=self.kind.id) if point.id in wanted else point
            for point in zone.line
        )
        kinds = job.kinds
        if not any(one.id == self.kind.id for one in kinds.cables):
            kinds = changed(kinds, cables=(*kinds.cables, self.kind))
        zones = replaced(job.zones, changed(zone, line=line))
        return changed(job, kinds=kinds, zones=zones)

    def _wanted(self, zone: Zone) -> set[str]:
        """The points at the far ends of the sections that are meant."""
        if self.sections == "all":
            return {point.id for point in zone.line}
        if self.sections == "home_run":
            return {point.id for point in zone.line if point.after is None}
        here = {point.id for point in zone.line}
        gone = next((one for one in self.sections if one not in here), None)
        if gone is not None:
            raise BadCommand("not_here", where={"point": gone}, id=gone)
        return set(self.sections)


class SetLengths(Closed):
    """Say at once how long the sections of a zone are; a length is one way, in metres.

    `home_run_m` is for the sections at the terminals, `further_m` for all behind them; null
    leaves those as they are. `sections`: those without a length only, or all.
    """

    do: Literal["set_lengths"]
    zone: Id
    sections: Literal["unknown", "all"] = "unknown"
    home_run_m: Metres | None = None
    further_m: Metres | None = None

    def apply(self, job: Job) -> Job:
        """The job with those lengths. Raises BadCommand `lengths_needed` without any."""
        if self.home_run_m is None and self.further_m is None:
            raise BadCommand("lengths_needed", where={"field": "home_run_m"})
        zone = find_zone(job, self.zone)
        line = tuple(self._measured(point) for point in zone.line)
        return changed(job, zones=replaced(job.zones, changed(zone, line=line)))

    def _measured(self, point: Point) -> Point:
        """The point with the length of the section to it."""
        length_m = self.home_run_m if point.after is None else self.further_m
        if length_m is None or (self.sections == "unknown" and point.length_m is not None):
            return point
        return changed(point, length_m=length_m)

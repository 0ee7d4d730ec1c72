"""The command that hangs a whole run at once: so many loudspeakers, alike and equally far apart."""

from typing import Annotated, Literal

from pydantic import Field

from pycore.edit.change import changed, find_zone, replaced
from pycore.edit.labels import labelled
from pycore.edit.splicing import Way, hang
from pycore.ground.problems import BadCommand
from pycore.jobs import Closed, Job, Loudspeaker, Point
from pycore.jobs.base import Id, Metres, SeriesOhms

MOST_OF_A_RUN = 500
MOST_NUMBER = 10**9


class RunSize(Closed):
    """How many, and the length of the section to each; null is not known."""

    count: Annotated[int, Field(ge=1, le=MOST_OF_A_RUN)]
    length_m: Metres | None = None


class RunIds(Closed):
    """Ids to use: a hand with its first free counter, and how many were set aside.

    The page cannot know how many loudspeakers a text such as "20 x 4 m" stands for before the
    core has read it, so it sets aside as many as it could be; those left over are never used.
    """

    hand: Annotated[str, Field(pattern=r"^[a-z][a-z0-9]{2}$")]
    next: Annotated[int, Field(ge=0, le=MOST_NUMBER)]
    count: Annotated[int, Field(ge=1, le=MOST_NUMBER)]


class AddRun(Closed):
    """Hang loudspeakers on a line, each behind the one before.

    `first_m`: the section to the first one; null is as long as the others. How they join the
    line is said as for `add_points`; cut into a cable, sections without a length divide it evenly.
    """

    do: Literal["add_run"]
    zone: Id
    run: RunSize
    ids: RunIds
    after: Id | None = None
    splice: bool
    ahead_of: Id | None = None
    cut_in: bool = False
    first_m: Metres | None = None
    cable: Id | None = None
    joint_ohm: SeriesOhms | None = None
    fitted: Loudspeaker

    def apply(self, job: Job) -> Job:
        """The job with the run on the zone's line."""
        if self.ids.count < self.run.count:
            raise BadCommand("ids_short", where={"field": "run"}, count=self.run.count)
        zone = find_zone(job, self.zone)
        way = Way(self.splice, self.ahead_of, self.cut_in)
        line = hang(zone.line, labelled(self._points(), zone), way=way)
        return changed(job, zones=replaced(job.zones, changed(zone, line=line)))

    def _points(self) -> tuple[Point, ...]:
        """The loudspeakers as they hang, one behind the other."""
        points: list[Point] = []
        for number in range(self.run.count):
            length_m = self.run.length_m
            if number == 0 and self.first_m is not None:
                length_m = self.first_m
            points.append(
                Point(
                    id=f"{self.ids.hand}{self.ids.next + number}",
                    after=points[-1].id if points else self.after,
                    length_m=length_m,
                    cable=self.cable,
                    joint_ohm=self.joint_ohm,
                    fitted=self._fitted(number + 1),
                )
            )
        return tuple(points)

    def _fitted(self, number: int) -> Loudspeaker:
        """One of them; of several that share a label each gets its number."""
        if self.run.count == 1 or not self.fitted.label:
            return self.fitted
        return changed(self.fitted, label=f"{self.fitted.label} {number}")

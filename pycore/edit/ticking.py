"""Commands that sign a loudspeaker off as fitted, and take that back."""

from typing import Annotated, Literal

from pydantic import Field

from pycore.edit.change import changed, find_point
from pycore.ground.problems import BadCommand
from pycore.jobs import Closed, Job
from pycore.jobs import Tick as Ticked
from pycore.jobs.base import PLAIN_LINE, Id
from pycore.jobs.records import Moment


class Tick(Closed):
    """Sign a loudspeaker off on the tap it stands on; a second tick replaces the first."""

    do: Literal["tick"]
    point: Id
    at: Moment
    initials: Annotated[str, Field(max_length=12), PLAIN_LINE] = ""

    def apply(self, job: Job) -> Job:
        """The job with the loudspeaker ticked."""
        fitted = find_point(job, self.point)[1].fitted
        if fitted.is_ != "loudspeaker":
            raise BadCommand("tick_loudspeakers", where={"point": self.point})
        if fitted.tap_w is None or fitted.tap_at_v is None or fitted.direct_ohm is not None:
            raise BadCommand("tick_needs_tap", where={"point": self.point})
        made = Ticked(
            point=self.point,
            tap_w=fitted.tap_w,
            tap_at_v=fitted.tap_at_v,
            at=self.at,
            initials=self.initials,
        )
        others = tuple(one for one in job.ticks if one.point != self.point)
        return changed(job, ticks=(*others, made))


class Untick(Closed):
    """Take the tick of a loudspeaker back."""

    do: Literal["untick"]
    point: Id

    def apply(self, job: Job) -> Job:
        """The job without that tick."""
        find_point(job, self.point)
        return changed(job, ticks=tuple(one for one in job.ticks if one.point != self.point))

"""Zones and the points of their lines."""

from typing import Annotated

from pydantic import Field

from pycore.jobs.base import Closed, Id, LossDecibels, Metres, Name, SeriesOhms
from pycore.jobs.fitted import Fitted

MOST_POINTS = 5000


class Point(Closed):
    """A place on a line. `after` None hangs on the terminals; `length_m` is one way."""

    id: Id
    after: Id | None = None
    length_m: Metres | None = None
    cable: Id | None = None
    joint_ohm: SeriesOhms | None = None
    fitted: Fitted


class Zone(Closed):
    """A zone: the line it hangs on, and the output that drives it."""

    id: Id
    name: Name
    output: Id | None = None
    page_output: Id | None = None
    loss_db: LossDecibels | None = None
    areas: Annotated[tuple[Id, ...], Field(max_length=200)] = ()
    line: Annotated[tuple[Point, ...], Field(max_length=MOST_POINTS)] = ()

"""What was measured and ticked on site, and the areas that zones serve."""

from collections.abc import Mapping
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from pycore.ground.problems import BrokenJob
from pycore.jobs.base import PLAIN_LINE, Celsius, Closed, Id, Name, Notes, Percent, Volts, Watts

Moment = Annotated[str, Field(min_length=4, max_length=40), PLAIN_LINE]
Quantity = Literal["z_1k_ohm", "dc_ohm", "volts", "amps", "earth_ohm", "plays", "foreign_v"]
Heard = Literal["well", "weak", "silent", "loud", "distorted"]
# What the number of a reading is in; what an ear heard has none.
UNIT_OF: Mapping[Quantity, str] = {
    "z_1k_ohm": "ohm",
    "dc_ohm": "ohm",
    "earth_ohm": "ohm",
    "volts": "v",
    "amps": "a",
    "foreign_v": "v",
}
Measured = Annotated[float, Field(ge=0, le=1e12)]


class Area(Closed):
    """A room or part of one."""

    id: Id
    name: Name
    notes: Notes = ""


class Spot(Closed):
    """Where a reading was taken: exactly one of an output, a zone or a point."""

    output: Id | None = None
    zone: Id | None = None
    point: Id | None = None


class Due(Closed):
    """What the line had to read in the moment of a reading, in the unit of its quantity: the
    value and the ends of its band. An open line has a lowest only."""

    value: Measured | None = None
    low: Measured
    high: Measured | None = None


class Reading(Closed):
    """What an instrument said, or how a loudspeaker was heard to play.

    `due` is filled in by the ask that keeps a reading, never by a page; without it a reading is
    judged by the line as it is.
    """

    id: Id
    at: Moment
    where: Spot
    looking: Literal["out", "back"]
    lifted: Annotated[tuple[Id, ...], Field(max_length=500)] = ()
    quantity: Quantity
    value: Measured | Heard
    controls: Literal["open", "set", "override"]
    tolerance_pct: Percent
    temperature_c: Celsius | None = None
    instrument: Name
    baseline: bool
    due: Due | None = None

    @model_validator(mode="after")
    def _one_place_one_answer(self) -> Self:
        spot = self.where
        if sum(place is not None for place in (spot.output, spot.zone, spot.point)) != 1:
            raise BrokenJob("reading_place", where={"reading": self.id})
        if isinstance(self.value, str) != (self.quantity == "plays"):
            raise BrokenJob("reading_value", where={"reading": self.id})
        return self


class Tick(Closed):
    """A loudspeaker signed off on one tap; it dies when the tap changes."""

    point: Id
    tap_w: Watts
    tap_at_v: Volts
    at: Moment
    initials: Annotated[str, Field(max_length=12), PLAIN_LINE]

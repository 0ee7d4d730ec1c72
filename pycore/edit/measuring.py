"""Commands for what was read on site: keep a reading, take it back, make a set the baseline."""

from typing import Annotated, Literal

from pydantic import Field

from pycore.edit.change import changed
from pycore.ground.problems import BadCommand
from pycore.jobs import Closed, Job, Reading
from pycore.jobs.base import PLAIN_LINE, Celsius, Id, Name, Percent
from pycore.jobs.catalogue import METER_PCT
from pycore.jobs.records import Heard, Moment, Quantity, Spot

OPEN_OHM = 1e12  # how a meter's "more than I can show" is written down
ReadOhms = Annotated[float, Field(ge=0, le=OPEN_OHM, json_schema_extra={"unit": "ohm"})]
LeadOhms = Annotated[float, Field(ge=0, le=100, json_schema_extra={"unit": "ohm"})]
ReadVolts = Annotated[float, Field(ge=0, le=OPEN_OHM, json_schema_extra={"unit": "v"})]
# Direct volts have a sign, by which way round the leads were; it is not kept.
ForeignVolts = Annotated[float, Field(ge=-OPEN_OHM, le=OPEN_OHM, json_schema_extra={"unit": "v"})]
ReadAmperes = Annotated[float, Field(ge=0, le=OPEN_OHM, json_schema_extra={"unit": "a"})]
UNITS: dict[str, str] = {
    "z_1k_ohm": "read_ohm",
    "dc_ohm": "read_ohm",
    "earth_ohm": "read_ohm",
    "volts": "read_v",
    "amps": "read_a",
    "plays": "heard",
    "foreign_v": "foreign_v",
}
# Ohms across the pair: its leads are in what they read.
ACROSS: tuple[Quantity, ...] = ("z_1k_ohm", "dc_ohm")


class KeepReading(Closed):
    """Write down what an instrument said, or an ear. The number comes in the unit of `quantity`.

    `over_range`: the meter showed more than it can ("OL"). A reading with the same id is
    replaced, so a slip can be put right. `leads_ohm`: what the test leads measure by themselves,
    where they were not nulled; it is taken off what was read across the pair.
    """

    do: Literal["keep_reading"]
    id: Id
    at: Moment
    where: Spot
    looking: Literal["out", "back"]
    lifted: Annotated[tuple[Id, ...], Field(max_length=500)] = ()
    quantity: Quantity
    controls: Literal["open", "set", "override"]
    tolerance_pct: Percent | None = None
    temperature_c: Celsius | None = None
    instrument: Annotated[Name, PLAIN_LINE] = ""
    baseline: bool = False
    read_ohm: ReadOhms | None = None
    read_v: ReadVolts | None = None
    leads_ohm: LeadOhms | None = None
    read_a: ReadAmperes | None = None
    foreign_v: ForeignVolts | None = None
    heard: Heard | None = None
    over_range: bool = False

    def apply(self, job: Job) -> Job:
        """The job with the reading written down."""
        reading = Reading(
            id=self.id,
            at=self.at,
            where=self.where,
            looking=self.looking,
            lifted=self.lifted,
            quantity=self.quantity,
            value=self._value(),
            controls=self.controls,
            tolerance_pct=METER_PCT if self.tolerance_pct is None else self.tolerance_pct,
            temperature_c=self.temperature_c,
            instrument=self.instrument,
            baseline=self.baseline,
        )
        others = tuple(one for one in job.readings if one.id != self.id)
        return changed(job, readings=(*others, reading))

    def _value(self) -> float | Heard:
        field = UNITS[self.quantity]
        if self.over_range and field in ("read_ohm", "foreign_v"):
            return OPEN_OHM
        value: float | Heard | None = getattr(self, field)
        if value is None:
            raise BadCommand("reading_empty", where={"field": field})
        if isinstance(value, str):
            return value
        leads_ohm = self.leads_ohm if self.quantity in ACROSS and self.leads_ohm else 0.0
        return max(abs(value) - leads_ohm, 0.0)


class DropReading(Closed):
    """Take a reading back."""

    do: Literal["drop_reading"]
    reading: Id

    def apply(self, job: Job) -> Job:
        """The job without the reading."""
        kept = tuple(one for one in job.readings if one.id != self.reading)
        if len(kept) == len(job.readings):
            raise BadCommand("not_here", where={"field": "reading"}, id=self.reading)
        return changed(job, readings=kept)


class MarkBaseline(Closed):
    """Make readings the line's baseline, or no longer.

    `first_test_since`: they are those of a first test begun on that day, which must have a
    reading at every step of its zone that takes one. Whether they are in order is looked at
    where a job can be judged, by the ask `edit`.
    """

    do: Literal["mark_baseline"]
    readings: Annotated[tuple[Id, ...], Field(min_length=1, max_length=500)]
    baseline: bool
    first_test_since: Moment | None = None

    def apply(self, job: Job) -> Job:
        """The job with those readings marked; one that is not in the job is refused."""
        known = {one.id for one in job.readings}
        gone = next((one for one in self.readings if one not in known), None)
        if gone is not None:
            raise BadCommand("not_here", where={"field": "readings"}, id=gone)
        marked = tuple(
            changed(one, baseline=self.baseline) if one.id in self.readings else one
            for one in job.readings
        )
        return changed(job, readings=marked)

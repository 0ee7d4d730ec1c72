"""The job, version 1: the whole of it, and the rules it keeps."""

from typing import Annotated, Final, Literal, Self

from pydantic import Field, model_validator

from pycore.jobs.amplifiers import Amplifier
from pycore.jobs.base import (
    PLAIN_LINE,
    Celsius,
    Closed,
    Fraction,
    Id,
    LossDecibels,
    Name,
    Notes,
    SquareMillimetres,
)
from pycore.jobs.kinds import Kinds
from pycore.jobs.records import Area, Moment, Reading, Tick
from pycore.jobs.rules import check_rules
from pycore.jobs.zones import Zone

FORMAT: Final = "rungline-job"
VERSION: Final = 1


class Limits(Closed):
    """What the person wants kept: cable loss, reserve of watts, heat, and cable sizes."""

    loss_db: LossDecibels
    load_fraction: Fraction
    conductor_c: Celsius
    thinnest_mm2: SquareMillimetres | None = None
    thickest_mm2: SquareMillimetres | None = None


class Base(Closed):
    """The state this one grew from, for a three-way merge."""

    rev: Annotated[int, Field(ge=0)]
    print: Annotated[str, Field(max_length=80), PLAIN_LINE]


class Job(Closed):
    """A whole job. One that exists keeps every rule in `rules`: ids, trees, references."""

    format: Literal["rungline-job"]
    version: Literal[1]
    id: Id
    name: Name
    place: Name = ""
    notes: Notes = ""
    rev: Annotated[int, Field(ge=0, le=10**9)]
    saved_at: Moment | None = None
    base: Base | None = None
    limits: Limits
    kinds: Kinds
    amplifiers: Annotated[tuple[Amplifier, ...], Field(max_length=64)] = ()
    zones: Annotated[tuple[Zone, ...], Field(max_length=500)] = ()
    areas: Annotated[tuple[Area, ...], Field(max_length=500)] = ()
    readings: Annotated[tuple[Reading, ...], Field(max_length=5000)] = ()
    ticks: Annotated[tuple[Tick, ...], Field(max_length=5000)] = ()

    @model_validator(mode="after")
    def _keeps_its_rules(self) -> Self:
        check_rules(self)
        return self

"""Kinds of cable, loudspeaker and attenuator, copied into a job when they are used."""

from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from pycore.ground.problems import BrokenJob
from pycore.jobs.base import (
    Closed,
    Decibels,
    Degrees,
    Gauge,
    Id,
    LossDecibels,
    MicrohenriesPerMetre,
    Name,
    Ohms,
    OhmsPerKilometre,
    PicofaradsPerMetre,
    SquareMillimetres,
    Volts,
    Watts,
)

Form = Literal["autotransformer", "pad"]
OverrideSense = Literal["power_bypasses", "loss_bypasses"]


class CableKind(Closed):
    """A pair, by gauge, by area with its class, or by the loop resistance it measures."""

    id: Id
    name: Name
    awg: Gauge | None = None
    area_mm2: SquareMillimetres | None = None
    strand_class: Literal[1, 2, 5] | None = Field(default=None, alias="class")
    loop_ohm_per_km: OhmsPerKilometre | None = None
    stranded: bool | None = None
    tinned: bool | None = None
    metal: Literal["copper", "copper_clad_aluminium"]
    inductance_uh_per_m: MicrohenriesPerMetre | None = None
    capacitance_pf_per_m: PicofaradsPerMetre | None = None

    @model_validator(mode="after")
    def _said_one_way(self) -> Self:
        ways = (self.awg, self.area_mm2, self.loop_ohm_per_km)
        if sum(way is not None for way in ways) != 1:
            raise BrokenJob("cable_said_twice", where={"kind": self.id}, name=self.name)
        return self


class Tap(Closed):
    """One position of a selector: watts at a line voltage, or the low-impedance position."""

    w: Watts | None = None
    ohm: Ohms | None = None
    at_v: Volts
    position: Name | None = None
    allowed: bool | None = None


class LoudspeakerKind(Closed):
    """A loudspeaker with its transformer: the taps it offers and how loud it plays."""

    id: Id
    name: Name
    mount: Name | None = None
    rated_w: Watts | None = None
    taps: Annotated[tuple[Tap, ...], Field(max_length=60)]
    tap_means: Literal["drawn", "delivered"] | None = None
    transformer_loss_db: LossDecibels | None = None
    sensitivity_db: Decibels | None = None
    coverage_h_deg: Degrees | None = None
    coverage_v_deg: Degrees | None = None

    @model_validator(mode="after")
    def _watts_or_ohms(self) -> Self:
        for tap in self.taps:
            if (tap.w is None) == (tap.ohm is None):
                raise BrokenJob("tap_said_twice", where={"kind": self.id}, name=self.name)
        return self


class AttenuatorKind(Closed):
    """A wall attenuator: what it may carry, and whether a page overrides it."""

    id: Id
    name: Name
    rated_w: Watts | None = None
    rated_at_v: Volts | None = None
    insertion_db: LossDecibels | None = None
    form: Form | None = None
    override: bool | None = None
    override_sense: OverrideSense | None = None


class Kinds(Closed):
    """The kinds a job uses, each family with ids of its own."""

    cables: Annotated[tuple[CableKind, ...], Field(max_length=200)] = ()
    loudspeakers: Annotated[tuple[LoudspeakerKind, ...], Field(max_length=200)] = ()
    attenuators: Annotated[tuple[AttenuatorKind, ...], Field(max_length=200)] = ()

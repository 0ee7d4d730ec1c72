"""What hangs at a point of a line."""

from typing import Annotated, Literal

from pydantic import Field

from pycore.jobs.base import (
    Closed,
    Hertz,
    Id,
    LossDecibels,
    Name,
    Ohms,
    Place,
    SettingDecibels,
    Volts,
    Watts,
)
from pycore.jobs.kinds import Form, OverrideSense

Seen = Literal["drawing", "found", "set", "checked"]


class Loudspeaker(Closed):
    """A loudspeaker on its tap; `direct_ohm` when its selector bypasses the transformer."""

    is_: Literal["loudspeaker"] = Field(alias="is")
    kind: Id | None = None
    tap_w: Watts | None = None
    tap_at_v: Volts | None = None
    planned_tap_w: Watts | None = None
    direct_ohm: Ohms | None = None
    label: Name
    connected: bool
    seen: Seen | None = None
    x_m: Place | None = None
    y_m: Place | None = None
    z_m: Place | None = None


class Attenuator(Closed):
    """A wall attenuator: what is known of this one goes before what its kind says."""

    is_: Literal["attenuator"] = Field(alias="is")
    kind: Id | None = None
    rated_w: Watts | None = None
    rated_at_v: Volts | None = None
    insertion_db: LossDecibels | None = None
    form: Form | None = None
    override: bool | None = None
    override_sense: OverrideSense | None = None
    set_db: SettingDecibels
    off: bool
    label: Name


class Existing(Closed):
    """A part of a line nobody has drawn, by what it measures or by the watts on its label."""

    is_: Literal["existing"] = Field(alias="is")
    ohm: Ohms | None = None
    hz: Hertz | None = None
    w: Watts | None = None
    label: Name | None = None


class Junction(Closed):
    """A box where a line divides."""

    is_: Literal["junction"] = Field(alias="is")
    label: Name


Fitted = Annotated[Loudspeaker | Attenuator | Existing | Junction, Field(discriminator="is_")]

"""The ground of every model: closed, frozen, strict; and numbers that carry their unit."""

from collections.abc import Callable
from typing import Annotated, Any

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field

from pycore.ground.plain import plain_line, plain_notes

CLOSED = ConfigDict(
    frozen=True, extra="forbid", strict=True, allow_inf_nan=False, serialize_by_alias=True
)


class Closed(BaseModel):
    """A model that takes only what it names, and never changes."""

    model_config = CLOSED


def _unit(unit: str) -> dict[str, str]:
    return {"unit": unit}


Id = Annotated[str, Field(min_length=1, max_length=40, pattern=r"^[A-Za-z0-9_-]+$")]


def _texts_only(tidy: Callable[[str], str]) -> BeforeValidator:
    """Tidy a text before its length is looked at; anything else is left to be refused."""

    def tidied(value: Any) -> Any:
        return tidy(value) if isinstance(value, str) else value

    return BeforeValidator(tidied)


PLAIN_LINE = _texts_only(plain_line)
Name = Annotated[str, Field(max_length=120), PLAIN_LINE]
Notes = Annotated[str, Field(max_length=4000), _texts_only(plain_notes)]

# The bounds are far beyond any line on a wall: they keep arithmetic finite, they judge nothing.
Watts = Annotated[float, Field(ge=0, le=1e9, json_schema_extra=_unit("w"))]
Volts = Annotated[float, Field(ge=0.1, le=10_000, json_schema_extra=_unit("v"))]
Ohms = Annotated[float, Field(ge=0.001, le=1e9, json_schema_extra=_unit("ohm"))]
SeriesOhms = Annotated[float, Field(ge=0, le=1e6, json_schema_extra=_unit("ohm"))]
Metres = Annotated[float, Field(ge=0, le=10_000, json_schema_extra=_unit("m"))]
Place = Annotated[float, Field(ge=-10_000, le=10_000, json_schema_extra=_unit("m"))]
Decibels = Annotated[float, Field(ge=-120, le=200, json_schema_extra=_unit("db"))]
LossDecibels = Annotated[float, Field(ge=0, le=60, json_schema_extra=_unit("db"))]
SettingDecibels = Annotated[float, Field(ge=-120, le=0, json_schema_extra=_unit("db"))]
Hertz = Annotated[float, Field(ge=0.01, le=1e6, json_schema_extra=_unit("hz"))]
Celsius = Annotated[float, Field(ge=-60, le=200, json_schema_extra=_unit("c"))]
SquareMillimetres = Annotated[float, Field(ge=0.001, le=1000, json_schema_extra=_unit("mm2"))]
Gauge = Annotated[int, Field(ge=-3, le=40, json_schema_extra=_unit("awg"))]
Degrees = Annotated[float, Field(gt=0, le=360, json_schema_extra=_unit("deg"))]
Fraction = Annotated[float, Field(ge=0.01, le=1, json_schema_extra=_unit("fraction"))]
Percent = Annotated[float, Field(ge=0, le=1000, json_schema_extra=_unit("pct"))]
OhmsPerKilometre = Annotated[float, Field(ge=0.001, le=1e6, json_schema_extra=_unit("ohm_per_km"))]
MicrohenriesPerMetre = Annotated[float, Field(ge=0, le=100, json_schema_extra=_unit("uh_per_m"))]
PicofaradsPerMetre = Annotated[float, Field(ge=0, le=1e5, json_schema_extra=_unit("pf_per_m"))]

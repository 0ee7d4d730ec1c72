"""The values of a comparison as texts a person reads."""

from collections.abc import Callable, Mapping
from typing import Any, NamedTuple

from pycore.asks.names import names_of
from pycore.asks.point_lines import point_line
from pycore.edit.compare import NOTHING, THERE
from pycore.ground.units import Manner, show_length, show_typed, unit_of
from pycore.ground.words import has, say, say_count
from pycore.jobs import Attenuator, Existing, Job, Loudspeaker, Point, Reading

NAMED = ("amplifier", "cable", "kind")
LANDED = ("output", "page_output")


class Voice(NamedTuple):
    """How values are said: the names of ids on that side, what stands at each point, how
    many loudspeakers each zone has, its readings, and the manner of the person."""

    names: Mapping[str, str]
    sorts: Mapping[str, tuple[str, ...]]
    counts: Mapping[str, int]
    readings: Mapping[str, Reading]
    manner: Manner

    def word(self, code: str, **values: str) -> str:
        """A value's words."""
        return say("change_value", code, values=values, language=self.manner.language)

    def number(self, value: float | None, unit: str) -> str:
        """A number with its unit, or "not known"."""
        if value is None:
            return self.word("not_known")
        if unit == "m":
            return show_length(value, manner=self.manner)
        return show_typed(value, unit, manner=self.manner)

    def listed(self, ids: tuple[str, ...]) -> str:
        """The names of several, or "nothing"."""
        return ", ".join(self.names.get(one, one) for one in ids) or self.word("empty")


def voice_of(job: Job, manner: Manner) -> Voice:
    """The voice of one state of a job."""
    sorts = {point.id: (point.fitted.is_,) for zone in job.zones for point in zone.line}
    counts = {
        zone.id: sum(point.fitted.is_ == "loudspeaker" for point in zone.line) for zone in job.zones
    }
    readings = {reading.id: reading for reading in job.readings}
    return Voice(names_of(job, language=manner.language), sorts, counts, readings, manner)


def zone_text(zone: str, value: Any, *, voice: Voice) -> str | None:
    """Whether a zone is there, and with how much."""
    if value is not True:
        return value_text(THERE, value, voice=voice)
    language = voice.manner.language
    count = voice.counts.get(zone, 0)
    many = say_count("face", "loudspeakers", count=count, language=language)
    return voice.word("zone_with", loudspeakers=many)


def value_text(cell: str, value: Any, *, voice: Voice) -> str | None:
    """A cell's value as text; None when the thing has no such cell on that side."""
    if value is NOTHING:
        return None
    if cell in SPECIAL:
        return SPECIAL[cell](value, voice)
    if cell in LANDED and value is None:
        return voice.word("nowhere")
    if value is None:
        return voice.word("not_known")
    if cell in (*NAMED, *LANDED):
        return str(voice.names.get(value, value))
    return plain_text(cell, value, voice=voice)


def plain_text(cell: str, value: Any, *, voice: Voice) -> str:
    """A yes or no, a number, a choice or a text; the new order of a list is not told."""
    if isinstance(value, bool):
        return voice.word("yes" if value else "no")
    if isinstance(value, int | float):
        return voice.number(value, unit_of(cell) or "count")
    return _written(cell, value, voice=voice) if isinstance(value, str) else ""


def _written(cell: str, value: str, *, voice: Voice) -> str:
    """A choice by its words, any other text as it is."""
    for code in (f"choice.{cell}_{value}", f"choice.{value}"):
        if cell in ("seen", "drive", "form") and has("page", code):
            return say("page", code, language=voice.manner.language)
    return value or voice.word("empty")


def _tap(value: Any, voice: Voice) -> str:
    tap_w, tap_at_v, direct_ohm = value
    stood = {"is": "loudspeaker", "tap_w": tap_w, "tap_at_v": tap_at_v, "direct_ohm": direct_ohm}
    return _fitted_line(
        Loudspeaker.model_validate({**stood, "label": "", "connected": True}), voice
    )


def _signed(value: Any, voice: Voice) -> str:
    told = [
        voice.word(
            "ticked_by" if tick.initials else "ticked",
            tap=_tap((tick.tap_w, tick.tap_at_v, None), voice),
            at=tick.at,
            initials=tick.initials,
        )
        for tick in value
    ]
    return " · ".join(told) or voice.word("no")


def _setting(value: Any, voice: Voice) -> str:
    stood = {"is": "attenuator", "set_db": value[0], "off": value[1], "label": ""}
    return _fitted_line(Attenuator.model_validate(stood), voice)


def _measured(value: Any, voice: Voice) -> str:
    ohm, hz, w = value
    return _fitted_line(
        Existing.model_validate({"is": "existing", "ohm": ohm, "hz": hz, "w": w}), voice
    )


def _fitted_line(fitted: Loudspeaker | Attenuator | Existing, voice: Voice) -> str:
    return point_line(Point(id="shown", fitted=fitted), voice.manner)


def _fitted(value: Any, voice: Voice) -> str:
    tap = _tap(value["tap"], voice) if "tap" in value else ""
    return voice.word(value["is"], tap=tap)


def _hung(value: Any, voice: Voice) -> str:
    zone, after = value
    if after is None:
        return voice.word("hung_first", zone=voice.names.get(zone, zone))
    return voice.word("hung", zone=voice.names.get(zone, zone), after=voice.names.get(after, after))


def _override(value: Any, voice: Voice) -> str:
    override, sense = value
    if override is None:
        return voice.word("not_known")
    if not override or sense is None:
        return voice.word("yes" if override else "no")
    how = say("page", f"choice.{sense}", language=voice.manner.language)
    return voice.word("override_by", sense=how)


def _pools(value: Any, voice: Voice) -> str:
    if value is None:
        return voice.word("not_known")
    shares = [
        voice.word("shares", w=voice.number(pool.w, "w"), outputs=voice.listed(pool.outputs))
        for pool in value
    ]
    return " · ".join(shares) or voice.word("shares_nothing")


def _place(value: Any, voice: Voice) -> str:
    x_m, y_m, z_m = (voice.number(each, "m") for each in value)
    return voice.word("place", x_m=x_m, y_m=y_m, z_m=z_m)


SPECIAL: dict[str, Callable[[Any, Voice], str]] = {
    THERE: lambda value, voice: voice.word("yes" if value else "no"),
    "areas": lambda value, voice: voice.listed(value),
    "fitted": _fitted,
    "hung": _hung,
    "measured": _measured,
    "override": _override,
    "place_m": _place,
    "pools": _pools,
    "setting": _setting,
    "signed": _signed,
    "tap": _tap,
}

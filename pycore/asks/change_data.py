"""The data of a kind or a reading in a comparison: only what differs, field by field."""

from collections.abc import Sequence
from typing import Any

from pycore.asks.change_values import Voice, plain_text
from pycore.calc.reading import OHMS, OVER_RANGE
from pycore.edit.compare import NOTHING
from pycore.ground.words import say
from pycore.jobs import Reading, Tap
from pycore.jobs.records import UNIT_OF, Due, Spot

# choices of a reading -> the page's words for them
READ_WORDS = {
    "quantity": "quantity",
    "value": "plays",
    "controls": "controls",
    "looking": "looking",
}


def data_texts(values: Sequence[Any], voices: Sequence[Voice]) -> list[str | None]:
    """The fields in which the known values differ, as a text for each; None for nothing."""
    known = [value for value in values if value is not NOTHING]
    differing = [
        name
        for name in type(known[0]).model_fields
        if any(getattr(value, name) != getattr(known[0], name) for value in known)
    ]
    return [
        None if value is NOTHING else _fields(value, differing, voice=voice)
        for value, voice in zip(values, voices, strict=True)
    ]


def reading_there(one: str, value: Any, *, voice: Voice) -> str | None:
    """Whether a reading is there; one that is says what it read."""
    if value is NOTHING:
        return None
    reading = voice.readings.get(one)
    if not value or reading is None:
        return voice.word("yes" if value else "no")
    return reading_told(reading, voice=voice)


def reading_told(reading: Reading, *, voice: Voice) -> str:
    """What was read, how much, where and when."""
    return _fields(reading, ("quantity", "value", "where", "at"), voice=voice)


def reading_title(one: str, *, voice: Voice) -> str:
    """A reading by what was read and where; empty where it is not in that state."""
    reading = voice.readings.get(one)
    if reading is None:
        return ""
    quantity, where = (_text(reading, name, voice=voice) for name in ("quantity", "where"))
    return voice.word("reading_of", quantity=quantity, where=where)


def _fields(value: Any, names: Sequence[str], *, voice: Voice) -> str:
    language = voice.manner.language
    told = [
        voice.word(
            "data_field",
            field=say("change_field", name, language=language),
            value=_text(value, name, voice=voice),
        )
        for name in names
    ]
    return " · ".join(told)


def _text(thing: Any, name: str, *, voice: Voice) -> str:
    """One field as text."""
    value = getattr(thing, name)
    if value is None:
        return voice.word("not_known")
    if name in READ_WORDS and isinstance(value, str):
        return say("page", f"{READ_WORDS[name]}.{value}", language=voice.manner.language)
    if name == "value" and value >= OVER_RANGE:
        code = "open_line" if thing.quantity in OHMS else "over_range"
        return say("meter_title", code, language=voice.manner.language)
    if name == "value":
        return voice.number(value, UNIT_OF.get(thing.quantity, "count"))
    if name == "taps":
        return ", ".join(_tap(tap, voice) for tap in value) or voice.word("empty")
    if isinstance(value, Spot | Due):
        return _of_reading(value, UNIT_OF.get(thing.quantity, "count"), voice=voice)
    if name == "lifted":
        return voice.listed(value)
    return plain_text(name, value, voice=voice)


def _of_reading(value: Spot | Due, unit: str, *, voice: Voice) -> str:
    """Where a reading was taken; or what the line had to read: its band, or open from where on."""
    if isinstance(value, Spot):
        return voice.listed((value.output or value.zone or value.point or "",))
    texts = {"low": voice.number(value.low, unit), "high": voice.number(value.high or 0.0, unit)}
    code = "at_least" if value.high is None else "band"
    return say("meter_title", code, values=texts, language=voice.manner.language)


def _tap(tap: Tap, voice: Voice) -> str:
    size = voice.number(tap.ohm, "ohm") if tap.w is None else voice.number(tap.w, "w")
    told = voice.word("tap_at", size=size, at_v=voice.number(tap.at_v, "v"))
    if tap.position:
        told = voice.word("tap_named", position=tap.position, tap=told)
    return voice.word("tap_barred", tap=told) if tap.allowed is False else told

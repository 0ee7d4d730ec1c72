"""The two short lines by which a list shows a point: what it stands on, and how it hangs."""

from collections.abc import Mapping
from functools import lru_cache
from typing import NamedTuple

from pycore.ground.units import Manner, show_length, show_typed, unit_of
from pycore.ground.words import say
from pycore.jobs import Attenuator, Existing, Loudspeaker, Point


def point_line(point: Point, manner: Manner) -> str:
    """What is fitted, by its tap, its setting or its ohms."""
    fitted = point.fitted
    if fitted.is_ == "loudspeaker":
        return loudspeaker_line(fitted, manner)
    if fitted.is_ == "attenuator":
        return _attenuator_line(fitted, manner)
    if fitted.is_ == "existing":
        return _existing_line(fitted, manner)
    return say("face", "junction", language=manner.language)


def loudspeaker_line(fitted: Loudspeaker, manner: Manner) -> str:
    """The tap a loudspeaker stands on; disconnected is said."""
    tap = Tap(fitted.tap_w, fitted.tap_at_v, fitted.direct_ohm)
    text = _tap_text(tap, manner)
    if fitted.connected:
        return text
    return say("face", "disconnected", values={"tap": text}, language=manner.language)


class Tap(NamedTuple):
    """What is known of where a selector stands."""

    tap_w: float | None
    tap_at_v: float | None
    direct_ohm: float | None


@lru_cache(maxsize=1000)
def _tap_text(tap: Tap, manner: Manner) -> str:
    texts: dict[str, str] = {}
    for name, number in tap._asdict().items():
        if number is not None:
            texts[name] = show_typed(number, unit_of(name) or "w", manner=manner)
    if tap.direct_ohm is not None:
        code = "tap_direct"
    else:
        known = tap.tap_at_v is not None
        code = "tap_unknown" if tap.tap_w is None else "tap" if known else "tap_no_volts"
    return say("face", code, values=texts, language=manner.language)


def _attenuator_line(fitted: Attenuator, manner: Manner) -> str:
    if fitted.off:
        return say("face", "attenuator_off", language=manner.language)
    texts = {"set_db": show_typed(fitted.set_db, "db", manner=manner)}
    return say("face", "attenuator_set", values=texts, language=manner.language)


def _existing_line(fitted: Existing, manner: Manner) -> str:
    if fitted.ohm is not None:
        texts = {"ohm": show_typed(fitted.ohm, "ohm", manner=manner)}
        return say("face", "existing_ohm", values=texts, language=manner.language)
    if fitted.w is not None:
        texts = {"w": show_typed(fitted.w, "w", manner=manner)}
        return say("face", "existing_w", values=texts, language=manner.language)
    return say("face", "existing_unknown", language=manner.language)


def point_detail(point: Point, names: Mapping[str, str], *, manner: Manner) -> str:
    """Its section and its kind, what is not known left out but for the length."""
    if point.length_m is None:
        length = say("face", "length_unknown", language=manner.language)
    else:
        length = show_length(point.length_m, manner=manner)
    kind = getattr(point.fitted, "kind", None)
    parts = [length, names.get(point.cable or "", ""), names.get(kind or "", "")]
    return " · ".join(part for part in parts if part)

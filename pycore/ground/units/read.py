"""The one parser: what a person typed becomes a number inside, or a plain problem."""

import re

from pycore.ground.problems import BadText
from pycore.ground.units.gauge import GAUGES_FROM, read_gauge
from pycore.ground.units.table import (
    CAPITALS,
    METRES_PER_FOOT,
    METRES_PER_INCH,
    TYPED,
    WRITTEN,
    Manner,
)

LONGEST_TEXT = 40
NUMBER = re.compile(
    r"([+-]?)(\d{1,3}(?: \d{3})+|\d{1,12})?(?:([.,])(\d{1,12}))?\s*(\D.*)?", re.ASCII
)
FEET_INCHES = re.compile(
    r"(\d{1,6})\s*(?:['′]|ft|feet)\s*(\d{1,2}(?:[.,]\d{1,6})?)\s*(?:[\"″]|in|inches)",
    re.ASCII | re.IGNORECASE,
)
# ohms and the length they were measured over, which is a number again
MEASURED_OVER = re.compile(
    r"(\d[^/]*?)\s*(?:/|\bon\b|\bover\b|\bper\b)\s*(\d.*)", re.ASCII | re.IGNORECASE
)
# what follows a number and is no unit: more digits, marks or signs
MORE_NUMBER = re.compile(r"[.,_+-]|['’]\d|[^\W\d_]?[+-]?\d")
ANOTHER = re.compile(r"\s*[+-]?\s*\d", re.ASCII)
OHM_SIGN, OMEGA = "\u2126", "\u03a9"
SPACES = re.compile(r"[\s\u00a0\u2007\u2009\u202f]+")


def read(text: str, unit: str, *, manner: Manner) -> float | None:
    """The number in `text`, in the inner unit named by `unit`; None for empty text (not known).

    Raises BadText with code `number_unread`, `number_ambiguous`, `unit_unread`,
    `two_numbers`, `number_not_whole`, `share_unclear` or `gauge_unclear`.
    """
    tidy = SPACES.sub(" ", text.replace("−", "-").replace(OHM_SIGN, OMEGA)).strip()
    if not tidy:
        return None
    if len(tidy) > LONGEST_TEXT:
        raise BadText("number_unread", text=tidy[:LONGEST_TEXT] + "…", unit=_named(unit))
    if unit == "m" and (both := FEET_INCHES.fullmatch(tidy)):
        inches = float(both[2].replace(",", "."))
        return int(both[1]) * METRES_PER_FOOT + inches * METRES_PER_INCH
    if unit == "ohm_per_km" and (over := MEASURED_OVER.fullmatch(tidy)):
        return _per_length(over[1], over[2], text=tidy, manner=manner)
    if unit == "mm2" and (area_mm2 := read_gauge(tidy)) is not None:
        return area_mm2
    number, word, whole = _split(tidy, unit, manner=manner)
    return _in_unit(number, word, text=tidy, unit=unit, whole=whole, manner=manner)


def _per_length(ohms: str, length: str, *, text: str, manner: Manner) -> float:
    """Ohms per kilometre from what a piece of cable measures: "1.2 ohm / 50 m"."""
    loop_ohm, length_m = read(ohms, "ohm", manner=manner), read(length, "m", manner=manner)
    if loop_ohm is None or not length_m:
        raise BadText("number_unread", text=text, unit=_named("ohm_per_km"))
    return 1000 * loop_ohm / length_m


def _named(unit: str) -> str:
    return WRITTEN[unit].strip()


def _split(text: str, unit: str, *, manner: Manner) -> tuple[float, str, bool]:
    """The number, the unit word behind it, and whether the number is whole."""
    lead = re.fullmatch(r"awg\s*(\d+)", text, re.IGNORECASE | re.ASCII) if unit == "awg" else None
    found = NUMBER.fullmatch(lead[1] if lead else text)
    if found is None or (found[2] is None and found[4] is None):
        raise BadText("number_unread", text=text, unit=_named(unit))
    sign, whole, mark, decimals, word = found.groups()
    if word and MORE_NUMBER.match(word):
        raise BadText("number_unread", text=text, unit=_named(unit))
    _refuse_ambiguous(text, whole or "", mark=mark, decimals=decimals, manner=manner)
    number = float(f"{sign}{(whole or '0').replace(' ', '')}.{decimals or '0'}")
    return number, (word or "").strip(), not (decimals or "").strip("0")


def _refuse_ambiguous(
    text: str, whole: str, *, mark: str | None, decimals: str | None, manner: Manner
) -> None:
    """`1,500` may be one and a half or fifteen hundred: ask, never choose."""
    grouped = decimals is not None and len(decimals) == 3 and whole.strip("0") != ""
    if grouped and " " not in whole and len(whole) <= 3 and (mark == "," or manner.decimal == ","):
        small = f"{whole}{manner.decimal}{(decimals or '').rstrip('0') or '0'}"
        raise BadText("number_ambiguous", text=text, small=small, large=f"{whole}{decimals}")


def _goes_on(word: str, unit: str) -> bool:
    """Whether a unit that belongs here is followed by another number: "0 dB-6"."""
    known = (each for each in TYPED[unit] if each and word.startswith(each))
    return any(ANOTHER.match(word.removeprefix(each)) for each in known)


def _in_unit(
    number: float, word: str, *, text: str, unit: str, whole: bool, manner: Manner
) -> float:
    if unit == "m" and not word:
        word = manner.length
    if word in CAPITALS.get(unit, {}):
        return number * CAPITALS[unit][word]
    word = word.lower()
    if word not in TYPED[unit]:
        code = "two_numbers" if _goes_on(word, unit) else "unit_unread"
        raise BadText(code, text=text, unit=_named(unit))
    if unit in ("count", "awg") and not whole:
        raise BadText("number_not_whole", text=text)
    if unit == "c" and word.endswith("f"):
        return (number - 32) / 1.8
    bare = unit == "mm2" and not word and manner.length == "ft"
    if bare and whole and number >= GAUGES_FROM:
        raise BadText("gauge_unclear", text=text)
    if unit == "fraction" and not word and 0 < number <= 1:
        raise BadText("share_unclear", text=text)
    return number * TYPED[unit][word]

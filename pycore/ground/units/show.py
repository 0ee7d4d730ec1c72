"""The one printer: a number inside becomes the text a person reads."""

import math
from functools import lru_cache

from pycore.ground.plain import NO_BREAK
from pycore.ground.units.table import METRES_PER_FOOT, WRITTEN, Manner

SIGNIFICANT = 3
TYPED_SIGNIFICANT = 7
SMALLEST_DB = 0.001
# from here on noughts would be counted, not read
KILOHM, MEGOHM = 1e4, 1e6
GROUPED_FROM = 5  # figures before the sign: four are read at a glance (ISO 80000-1, from memory)


def _trim(text: str) -> str:
    return text.rstrip("0").rstrip(".") if "." in text else text


def _digits(value: float, significant: int) -> str:
    """At least `significant` figures, never a power of ten, no zeros behind the last figure."""
    if value == 0:
        return "0"
    size = math.floor(math.log10(abs(value))) + 1
    decimals = max(0, significant - size)
    return _trim(f"{value:.{min(decimals, 12)}f}")


def _grouped(number: str) -> str:
    """Long numbers in threes, with a space that never breaks."""
    whole, dot, decimals = number.partition(".")
    sign, figures = ("−", whole[1:]) if whole.startswith("−") else ("", whole)
    if len(figures) < GROUPED_FROM or not figures.isdigit():
        return number
    return sign + f"{int(figures):,}".replace(",", NO_BREAK) + dot + decimals


def _decibels(value_db: float) -> str:
    if value_db == 0:
        return "0"
    if abs(value_db) < SMALLEST_DB:
        return f"{'−' if value_db < 0 else ''}under {SMALLEST_DB}"
    return _trim(f"{value_db:.3f}" if abs(value_db) < 0.1 else f"{value_db:.2f}")


def _write(number: str, unit: str, *, manner: Manner) -> str:
    number = _grouped(number.replace("-", "−"))
    if manner.decimal == ",":
        number = number.replace(".", ",")
    return f"×{number}" if unit == "factor" else number + WRITTEN[unit]


def _scaled(value: float, unit: str, *, manner: Manner) -> tuple[float, str]:
    if unit == "fraction":
        return value * 100, unit
    if unit == "m" and manner.length == "ft":
        return value / METRES_PER_FOOT, "ft"
    if unit == "ohm" and abs(value) >= MEGOHM:
        return value / MEGOHM, "megohm"
    if unit == "ohm" and abs(value) >= KILOHM:
        return value / 1000, "kilohm"
    return value, unit


# A job says the same few numbers many times over.
@lru_cache(maxsize=8000)
def show(value: float, unit: str, *, manner: Manner) -> str:
    """A computed number for reading: three figures, its unit, the person's decimal sign."""
    if not math.isfinite(value):
        return "∞" + WRITTEN[unit]
    scaled, written = _scaled(value, unit, manner=manner)
    if unit == "db":
        return _write(_decibels(scaled), written, manner=manner)
    if unit == "count":
        return _write(str(round(scaled)), written, manner=manner)
    return _write(_digits(scaled, SIGNIFICANT), written, manner=manner)


@lru_cache(maxsize=8000)
def show_typed(value: float, unit: str, *, manner: Manner) -> str:
    """A number a person typed or a maker printed: all its figures, its unit.

    The parser reads it back: where a comma and three figures could be thousands, a zero follows.
    """
    scaled, written = _scaled(value, unit, manner=manner)
    digits = _digits(scaled, TYPED_SIGNIFICANT)
    whole, _, decimals = digits.partition(".")
    if manner.decimal == "," and len(decimals) == 3 and whole.strip("-0"):
        digits += "0"
    return _write(digits, written, manner=manner)


def as_typed(value: float, unit: str, *, manner: Manner) -> str:
    """The same as a keyboard would type it, for a field: with the space that a keyboard has."""
    return show_typed(value, unit, manner=manner).replace(NO_BREAK, " ")


def show_length(value_m: float, *, manner: Manner) -> str:
    """A length for a list, to a tenth of the person's unit: what a tape on site can tell."""
    scaled, written = _scaled(value_m, "m", manner=manner)
    return _write(_trim(f"{scaled:.1f}"), written, manner=manner)

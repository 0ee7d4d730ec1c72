"""The one printer: a number inside becomes the text a person reads."""

import math
from decimal import ROUND_DOWN, ROUND_HALF_UP, Decimal
from functools import lru_cache

from pycore.ground.plain import NO_BREAK
from pycore.ground.units.gauge import show_gauge
from pycore.ground.units.table import METRES_PER_FOOT, WRITTEN, Manner

SIGNIFICANT = 3
TYPED_SIGNIFICANT = 7
MOST_SIGNIFICANT = 10
# Taps come in hundredths of a watt at the finest (1.25, 3.75), so do their sums.
TAP_W = 0.01
FULL_BELOW_W = 10_000.0
FIGURES_END = 1e12
WHOLE_WITHIN = 1e-6
SAME_WITHIN = 1e-9
SMALLEST_DB = 0.001
# from here on noughts would be counted, not read
KILOHM, MEGOHM = 1e4, 1e6
GROUPED_FROM = 5  # figures before the sign: four are read at a glance (ISO 80000-1, from memory)


def _trim(text: str) -> str:
    return text.rstrip("0").rstrip(".") if "." in text else text


def _fixed(value: float, decimals: int) -> str:
    """So many decimals, halves away from nothing, as people round: 0.125 is 0.13."""
    if abs(value) >= FIGURES_END:
        return f"{value:.0f}"
    # twelve figures are all a sum can be trusted with; beyond them 1.005 is 1.00499999999999989
    exact = Decimal(f"{value:.12g}")
    return f"{exact.quantize(Decimal(1).scaleb(-decimals), rounding=ROUND_HALF_UP):f}"


def _digits(value: float, significant: int) -> str:
    """At least `significant` figures, never a power of ten, no zeros behind the last figure."""
    if value == 0:
        return "0"
    size = math.floor(math.log10(abs(value))) + 1
    return _trim(_fixed(value, min(max(0, significant - size), 12)))


def _watts(value_w: float, significant: int) -> str:
    """A sum of taps in full; any other watts in three figures, to a tenth below 1000 W."""
    hundredths = value_w / TAP_W
    if abs(value_w) < FULL_BELOW_W and abs(hundredths - round(hundredths)) < WHOLE_WITHIN:
        return _trim(_fixed(value_w, 2))
    tenths = 4 if 100 <= abs(value_w) < 1000 else significant
    return _digits(value_w, max(significant, tenths))


def _grouped(number: str) -> str:
    """Long numbers in threes, with a space that never breaks."""
    whole, dot, decimals = number.partition(".")
    sign, figures = ("−", whole[1:]) if whole.startswith("−") else ("", whole)
    if len(figures) < GROUPED_FROM or not figures.isdigit():
        return number
    return sign + f"{int(figures):,}".replace(",", NO_BREAK) + dot + decimals


def _decibels(value_db: float, more: int) -> str:
    if value_db == 0:
        return "0"
    if abs(value_db) < SMALLEST_DB:
        return f"under {SMALLEST_DB}"  # so little has no direction
    return _trim(_fixed(value_db, (3 if abs(value_db) < 0.1 else 2) + more))


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
    """A computed number for reading: three figures, its unit, the person's decimal sign.

    Watts are the sums of taps, which are shown in full.
    """
    return _shown(value, unit, more=0, manner=manner)


def _shown(value: float, unit: str, *, more: int, manner: Manner) -> str:
    """With so many figures more than usual."""
    if not math.isfinite(value):
        return "∞" + WRITTEN[unit]
    scaled, written = _scaled(value, unit, manner=manner)
    return _write(_figures(scaled, unit, more=more), written, manner=manner)


def _figures(scaled: float, unit: str, *, more: int) -> str:
    """The figures of a number in the unit it is written in, with so many more than usual."""
    if unit == "db":
        return _decibels(scaled, more)
    if unit == "count":
        return str(round(scaled))
    digits = _watts if unit == "w" else _digits
    return digits(scaled, SIGNIFICANT + more)


@lru_cache(maxsize=8000)
def show_beside(value: float, unit: str, *, marks: tuple[float, ...], manner: Manner) -> str:
    """A computed number with as many figures as tell it from each of `marks`, where it is another.

    What is a little past its limit must read neither as the limit nor as short of it.
    """
    if not math.isfinite(value):
        return show(value, unit, manner=manner)
    scaled, _ = _scaled(value, unit, manner=manner)
    others = [
        mark * (scaled / value) if value else mark
        for mark in marks
        if not math.isclose(mark, value, rel_tol=SAME_WITHIN)
    ]
    enough = (
        more
        for more in range(MOST_SIGNIFICANT - SIGNIFICANT)
        if all(_same_side(_figures(scaled, unit, more=more), scaled, mark=mark) for mark in others)
    )
    return _shown(value, unit, more=next(enough, 0), manner=manner)


def _same_side(figures: str, scaled: float, *, mark: float) -> bool:
    """Whether the figures lie on the side of a mark on which the number itself lies.

    The mark counts as it is printed itself.
    """
    if figures.startswith("under"):
        return True
    printed, stands = float(figures), float(_digits(mark, TYPED_SIGNIFICANT))
    return printed > stands if scaled > mark else printed < stands


def show_most(value: float, unit: str, *, manner: Manner) -> str:
    """The most that is allowed (above zero), in three figures: cut off, never rounded up."""
    scaled, written = _scaled(value, unit, manner=manner)
    size = math.floor(math.log10(scaled)) + 1 if scaled > 0 else 0
    last = Decimal(1).scaleb(-max(0, SIGNIFICANT - size))
    cut = Decimal(f"{scaled:.12g}").quantize(last, rounding=ROUND_DOWN)
    return _write(_trim(f"{cut:f}"), written, manner=manner)


@lru_cache(maxsize=8000)
def show_typed(value: float, unit: str, *, manner: Manner) -> str:
    """A number a person typed or a maker printed: all its figures, its unit.

    The parser reads it back: where a comma and three figures could be thousands, a zero follows.
    Copper that was typed as a gauge is printed as one.
    """
    if unit == "mm2" and (gauge := show_gauge(value)) is not None:
        return gauge + WRITTEN["awg"]
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
    return _write(_trim(_fixed(scaled, 1)), written, manner=manner)

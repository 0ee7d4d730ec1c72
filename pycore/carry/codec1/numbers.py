"""A column of decimal numbers, every one of them coming back to the last bit.

People type decimals: 12.5 m, 40 ft, 7.5 W. So a column is written as whole numbers in
tenths (or hundredths …) of metres or feet, or in inches; what is no such decimal stands
beside it as the eight bytes it is.
"""

import math
import struct
from collections.abc import Sequence
from typing import NamedTuple

from pycore.carry.codec1.octets import Reader, Writer, damaged
from pycore.carry.codec1.wholes import read_wholes, write_wholes

METRES_PER_FOOT = 0.3048
METRES_PER_INCH = 0.0254
INCHES_PER_FOOT = 12
MOST_DECIMALS = 6
USUAL_DECIMALS = 2
NONE = -1
LARGEST = 2**53
PLAIN, FEET, INCHES = 0, 1, 2
UNITS = (1.0, METRES_PER_FOOT, METRES_PER_INCH)
POWERS: tuple[int, ...] = tuple(10**n for n in range(MOST_DECIMALS + 1))
COST_OF_AN_EXCEPTION = 10  # bytes, about


class Scale(NamedTuple):
    """What the whole numbers of a column count: tenths of a metre, feet, inches."""

    of: int
    decimals: int


def write_numbers(out: Writer, values: Sequence[float]) -> None:
    """The column in the scale that leaves the fewest exceptions and the smallest numbers.

    Every value has to be finite, as those of a job are; the column is not empty.
    """
    distinct = set(values)
    scale = min(_scales(distinct), key=lambda one: _cost(distinct, one))
    out.number(scale.of * (MOST_DECIMALS + 1) + scale.decimals)
    wholes = [_whole(value, scale) for value in values]
    odd = [place for place, whole in enumerate(wholes) if whole is None]
    out.number(len(odd))
    write_wholes(out, odd)
    for place in odd:
        out.octets(struct.pack("<d", values[place]))
    write_wholes(out, [whole for whole in wholes if whole is not None])


def _scales(distinct: set[float]) -> list[Scale]:
    """Scales worth trying: metres to as many decimals as some value needs, then feet."""
    needed = [_decimals(value, PLAIN) for value in distinct]
    tried = [Scale(PLAIN, decimals) for decimals in sorted({0, *needed} - {NONE})]
    if NONE in needed or max(needed) > USUAL_DECIMALS:
        feet = {_decimals(value, FEET) for value in distinct}
        tried += [Scale(FEET, decimals) for decimals in sorted(feet - {NONE})]
        tried.append(Scale(INCHES, 0))
    return tried


def _decimals(value: float, of: int) -> int:
    """The fewest decimals that give the value exactly; NONE when it takes too many."""
    every = range(MOST_DECIMALS + 1)
    return next((n for n in every if _whole(value, Scale(of, n)) is not None), NONE)


def _cost(distinct: set[float], scale: Scale) -> int:
    wholes = [_whole(value, scale) for value in distinct]
    return sum(
        COST_OF_AN_EXCEPTION if whole is None else 1 + abs(whole).bit_length() // 7
        for whole in wholes
    )


def _whole(value: float, scale: Scale) -> int | None:
    """The whole number that stands for a value in a scale; None when none does exactly."""
    in_scale = value / UNITS[scale.of] * 10**scale.decimals
    if abs(in_scale) >= LARGEST:
        return None
    whole = round(in_scale)
    again = _value(whole, scale)
    same = again == value and math.copysign(1, again) == math.copysign(1, value)
    return whole if same else None


def _value(whole: int, scale: Scale) -> float:
    """The value: the same few operations by which a typed text became it."""
    if scale.of == INCHES:
        feet, inches = divmod(whole, INCHES_PER_FOOT)
        return feet * METRES_PER_FOOT + inches * METRES_PER_INCH
    decimal = whole / POWERS[scale.decimals]
    return decimal * METRES_PER_FOOT if scale.of == FEET else decimal


def read_numbers(source: Reader, count: int) -> list[float]:
    """A column of `count` numbers as `write_numbers` wrote it, every one finite.

    Raises BadText `link_damaged`.
    """
    scale = Scale(*divmod(source.number(), MOST_DECIMALS + 1))
    odd = source.number()
    if scale.of > INCHES or odd > count:
        raise damaged()
    places = read_wholes(source, odd)
    exact = [struct.unpack("<d", source.octets(8))[0] for _ in range(odd)]
    wholes = read_wholes(source, count - odd)
    if not all(map(math.isfinite, exact)) or any(abs(whole) > LARGEST for whole in wholes):
        raise damaged()
    values = iter([_value(whole, scale) for whole in wholes])
    exceptions = dict(zip(places, exact, strict=True))
    found = [exceptions[n] if n in exceptions else next(values, None) for n in range(count)]
    if len(exceptions) != odd or None in found:
        raise damaged()
    return [value for value in found if value is not None]

"""How much a reading that has not been taken would tell of which suspect it is.

In bits: the spread of what it may read over all suspects, less the spread that would be
left if one knew which it is (Shannon's mutual information; from memory). Spreads are
summed up on a grid half a deviation wide.
"""

import math
from collections.abc import Mapping, Sequence
from math import log2
from typing import NamedTuple

from pycore.calc.evidence import SHOWS_UP_TO_OHM

LOG_OPEN = math.log(SHOWS_UP_TO_OHM)
GRID = 0.5  # of a deviation
KERNEL = tuple(math.exp(-0.5 * (GRID * step) ** 2) for step in range(-6, 7))
KERNEL_SUM = math.fsum(KERNEL)
KERNEL_SHARES = tuple(one / KERNEL_SUM for one in KERNEL)
KERNEL_BITS = -math.fsum(one * math.log2(one) for one in KERNEL_SHARES)


class Guess(NamedTuple):
    """What one fault would make a reading: its middle (ln of ohms), its variance, the fault's
    share of all, and the number of the suspect it belongs to."""

    middle: float
    variance: float
    share: float
    suspect: int


def deviation_of(guesses: Sequence[Guess]) -> float:
    """One deviation for all guesses: that of the likely ones counts most."""
    total = math.fsum(one.share for one in guesses)
    return math.sqrt(math.fsum(one.share * one.variance for one in guesses) / total)


def bits_told(guesses: Sequence[Guess]) -> float:
    """How many bits of which suspect it is a reading would tell."""
    total = math.fsum(one.share for one in guesses)
    deviation = deviation_of(guesses)
    width = max(deviation * GRID, 1e-6)
    whole: dict[int, float] = {}
    parts: dict[int, dict[int, float]] = {}
    for one in guesses:
        cell = round(min(one.middle, LOG_OPEN) / width)
        share = one.share / total
        whole[cell] = whole.get(cell, 0.0) + share
        part = parts.setdefault(one.suspect, {})
        part[cell] = part.get(cell, 0.0) + share
    left = 0.0
    for part in parts.values():
        own = math.fsum(part.values())
        if own > 0:
            left += own * (_bits(part, own) if len(part) > 1 else KERNEL_BITS)
    return max(0.0, _bits(whole, 1.0) - left)


def _bits(cells: Mapping[int, float], total: float) -> float:
    """The spread, in bits, of cells that are each blurred by the meter."""
    blurred: dict[int, float] = {}
    been = blurred.get
    for cell, share in cells.items():
        for place, part in enumerate(KERNEL_SHARES, start=cell):
            blurred[place] = been(place, 0.0) + share * part
    summed = sum([one * log2(one) for one in blurred.values() if one > 0])
    return log2(total) - summed / total

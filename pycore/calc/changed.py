"""What was read before a line changed: set aside, and judged by what was read there last.

Two readings taken alike that no tolerance joins cannot both be true of the line as it is now:
something was repaired, broken or landed between them. To weigh them together would rank faults
that explain neither.
"""

import math
from collections.abc import Sequence
from typing import NamedTuple

from pycore.calc.reading import OHMS, Meant

BEYOND = ("short", "open")


class Changed(NamedTuple):
    """A reading that is set aside, and the one taken alike later that it contradicts."""

    then: Meant
    now: Meant


def changed(meants: Sequence[Meant]) -> list[Changed]:
    """The readings (in the order they were kept) that the last one taken alike contradicts."""
    last = {
        one.taken.setting: one
        for one in meants
        if one.taken.quantity in OHMS and one.sign != "nothing"
    }
    pairs = ((one, last.get(one.taken.setting)) for one in meants)
    return [Changed(one, now) for one, now in pairs if now is not None and contradict(one, now)]


def contradict(one: Meant, other: Meant) -> bool:
    """Whether the limits of two readings in ohms, taken alike, leave nothing in common."""
    if "nothing" in (one.sign, other.sign):
        return False
    if one.sign != other.sign:
        shorted = {one.sign, other.sign} == {"short", "number"}
        read = one if one.sign == "number" else other
        # what is left of a number by leads and last digit may be no more than a short
        return not shorted or (read.value or 0.0) > one.loose + other.loose
    if one.value is None or other.value is None:
        return False
    limit = math.log1p(one.whole_fraction) + math.log1p(other.whole_fraction)
    return abs(math.log(one.value / other.value)) > limit

"""Whether a reading tells a sound line from the same line with one loudspeaker missing.

On a long line one loudspeaker is a small part of what a meter sees: tolerances of the loads and
of the meter cover it, and a reading as expected proves only that most of them are there.
"""

import math
from typing import NamedTuple

from pycore.calc.agreement import AGREES, misfit
from pycore.calc.diagnosis import Diagnosis


class Missing(NamedTuple):
    """One of so many `loudspeakers` may be missing; then it would read `ohm`. `nearer`: what was
    read lies nearer to that than to what the sound line would read."""

    loudspeakers: int
    ohm: float
    nearer: bool


def one_missing(told: Diagnosis) -> Missing | None:
    """The dead loudspeaker that agrees best with every reading; None where the readings exclude
    all of them, or none of them was a number of ohms."""
    shared, weighed = told.proof.shared, told.weighed
    numbers = [
        number
        for number, one in enumerate(told.proof.evidence)
        if one.kind == "ohm" and one.sign == "number"
    ]
    fits = [
        (misfit(weighed.rows[one.variants[0]], shared), one.variants[0])
        for one in told.suspects
        if one.key[0] == "dead" and not one.key[2]
    ]
    off, dead = min(fits, default=(math.inf, 0))
    whole = next((n for n, one in enumerate(weighed.faults) if one.family == "healthy"), None)
    if off > AGREES or not numbers or whole is None:
        return None
    last = numbers[-1]
    read = told.proof.evidence[last].log_read
    without, sound = (weighed.expected[number][last].log_ohm for number in (dead, whole))
    return Missing(_count(told), math.exp(without), abs(read - without) < abs(read - sound))


def _count(told: Diagnosis) -> int:
    """The loudspeakers of the zones in question."""
    wired = told.site.circuits.wired
    return sum(
        wired.fitted(node) == "loudspeaker" and wired.zone_at[node] in told.site.zones
        for node in range(len(wired.ids))
    )

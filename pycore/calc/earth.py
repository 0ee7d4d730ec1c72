"""Legs to earth: what a reading of either leg against earth says of a leg that touches it.

A floating line shows megohms. The legs are tied by the primaries, so both read alike and
where it touches is found by opening the line, never by comparing the legs. How often each
reading is met is common practice, no source.
"""

import math
from collections.abc import Sequence
from typing import Literal, NamedTuple

from pycore.calc import priors
from pycore.calc.faults import Fault
from pycore.calc.probe import Probe
from pycore.calc.reading import Meant
from pycore.calc.site import Site, condition_of, stand_of

Leg = Literal["good", "damp", "bad"]
READS: dict[str, dict[Leg, float]] = {
    "earthed": {"bad": 0.75, "damp": 0.2, "good": 0.05},
    "wet": {"bad": 0.3, "damp": 0.4, "good": 0.3},
    "neither": {"bad": 0.002, "damp": 0.03, "good": 0.968},
}


class Leakage(NamedTuple):
    """One reading of a leg to earth, and what of the line it saw."""

    leg: Leg
    probe: Probe


def leg_of(read_ohm: float) -> Leg:
    """What ohms to earth mean."""
    if read_ohm >= priors.EARTH_GOOD_OHM:
        return "good"
    return "damp" if read_ohm >= priors.EARTH_BAD_OHM else "bad"


def leakages(site: Site, meants: Sequence[Meant]) -> list[Leakage]:
    """Every reading to earth on this output."""
    found = []
    for one in meants:
        here = one.taken.place in site.circuits.wired.node_of
        if one.taken.quantity == "earth_ohm" and one.value is not None and here:
            condition = condition_of(site, one.taken)
            probe = site.circuits.probe(condition, stand_of(site, one.taken))
            found.append(Leakage(leg_of(one.value), probe))
    return found


def log_likelihood(fault: Fault, seen: Sequence[Leakage]) -> float:
    """How well a fault agrees with the readings to earth (logarithm)."""
    total = 0.0
    for one in seen:
        touches = fault.family in ("earthed", "wet") and one.probe.node_at[fault.node] >= 0
        total += math.log(READS[fault.family if touches else "neither"][one.leg])
    return total

"""Faults whose size no list can hold, sized by the readings: how many ohms, how far along.

Joints, damp and shorts have any size. For each place the size is worked out at which a
reading comes out as it was read; what it is then worth beside the others is the share of
all sizes that would do as well (so a sharp reading leaves a small one).
"""

import math
from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

from pycore.calc import priors
from pycore.calc.effects import Change, seen_with
from pycore.calc.evidence import Evidence
from pycore.calc.faults import MANY, Fault
from pycore.calc.fill import RECTANGLE
from pycore.calc.site import Site

MOST_READINGS = 4
MOST_OF_MANY = 1
HALVINGS = 16
LEAST_FELT = 0.02  # a size that hardly moves the reading is not told by it
NUDGE = 1.05
WIDTH = math.sqrt(2 * math.pi)  # of a normal law, in deviations


class Family(NamedTuple):
    """A kind of fault with a size: its change, the least and most ohms, its whole weight, and
    what its words need beside the ohms."""

    name: str
    change: Callable[[int, float], Change]
    least_ohm: float
    most_ohm: float
    weight: float
    detail: tuple[tuple[str, float | str], ...] = ()


JOINTS = Family(
    "joint", lambda node, ohm: Change("joint", node, ohm), 0.3, 1e5, float(len(priors.JOINT_DB))
)
DAMP = Family(
    "wet", lambda node, ohm: Change("across", node, 1 / ohm), 200.0, 1e5, float(len(priors.WET_OHM))
)


def fitted_faults(site: Site, evidence: Sequence[Evidence]) -> list[Fault]:
    """Joints, damp and shorts of the sizes that the readings ask for."""
    wired = site.circuits.wired
    numbers = [one for one in evidence if one.kind == "ohm" and one.sign == "number"]
    many = sum(wired.sizes[wired.starts[number]] for number in site.zones) > MANY
    faults: list[Fault] = []
    for one in numbers[-(MOST_OF_MANY if many else MOST_READINGS) :]:
        deviation = _deviation(site, one)
        for number in site.zones:
            start = wired.starts[number]
            for node in range(start + 1, start + wired.sizes[start]):
                faults.extend(_at(site, one, node=node, deviation=deviation, many=many))
    return faults


def _deviation(site: Site, one: Evidence) -> float:
    """How far (ln) this reading may be off for other reasons."""
    if one.reference is not None:
        return priors.REPEAT_PCT / 100 / RECTANGLE
    loose = one.meant.loose / one.meant.value if one.meant.value else 0.0
    return math.hypot(one.meant.meter_fraction, site.given.load_pct / 100, loose) / RECTANGLE


def _at(site: Site, one: Evidence, *, node: int, deviation: float, many: bool) -> Iterator[Fault]:
    """What the reading asks for at one node."""
    if one.scope.probe.section_at[node] >= 0:
        joint = _sized(one, JOINTS, node=node, deviation=deviation)
        short = _short(site, one, node=node, deviation=deviation)
        yield from (found for found in (joint, short) if found is not None)
        metres = max(site.circuits.wired.lengths_m[node], 1.0)
        places = priors.SHORT_PLACES[1:2] if many else priors.SHORT_PLACES
        for place in places:
            family = _shorts_at(place, weight=metres * OWN_OHMS / len(places))
            found = _sized(one, family, node=node, deviation=deviation)
            if found is not None:
                yield found
    if one.scope.probe.node_at[node] > 0 and not many:
        damp = _sized(one, DAMP, node=node, deviation=deviation)
        if damp is not None:
            yield damp


def _read(one: Evidence, change: Change) -> float:
    """The logarithm of the reading with a change."""
    size = abs(seen_with(one.scope.probe, change, direct=one.scope.direct))
    return -math.log(size) if size else math.inf


def _sized(one: Evidence, family: Family, *, node: int, deviation: float) -> Fault | None:
    """The ohms at which the reading comes out, where there are any."""
    low, high = math.log(family.least_ohm), math.log(family.most_ohm)
    ends = [_read(one, family.change(node, math.exp(end))) for end in (low, high)]
    if not min(ends) < one.log_read < max(ends):
        return None
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        beyond = _read(one, family.change(node, math.exp(middle))) > one.log_read
        low, high = (low, middle) if beyond == (ends[1] > ends[0]) else (middle, high)
    ohm = math.exp((low + high) / 2)
    nudged = _read(one, family.change(node, ohm * NUDGE))
    felt = abs(nudged - one.log_read) / math.log(NUDGE)
    if felt < LEAST_FELT:
        return None
    span = math.log(family.most_ohm / family.least_ohm)
    weight = family.weight * min(1.0, WIDTH * deviation / felt / span)
    detail = *family.detail, ("ohm", ohm)
    return Fault(family.name, node, family.change(node, ohm), weight, detail)


# How many shorts have ohms of their own; of what size the readings say.
OWN_OHMS = math.fsum(part for ohm, part in priors.SHORT_OHM if ohm)


def _shorts_at(place: float, *, weight: float) -> Family:
    """Shorts with ohms of their own, so far along a section."""
    return Family(
        "short",
        lambda node, ohm: Change("short", node, place, ohm),
        0.05,
        20.0,
        weight,
        (("along", place),),
    )


def _short(site: Site, one: Evidence, *, node: int, deviation: float) -> Fault | None:
    """The place on a section at which a short without ohms makes the reading."""
    metres = site.circuits.wired.lengths_m[node]
    low, high = 0.0, 1.0
    ends = [_read(one, Change("short", node, end)) for end in (low, high)]
    if not metres or not min(ends) < one.log_read < max(ends):
        return None
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        beyond = _read(one, Change("short", node, middle)) > one.log_read
        low, high = (low, middle) if beyond == (ends[1] > ends[0]) else (middle, high)
    place = (low + high) / 2
    felt = abs(ends[1] - ends[0])
    share = min(1.0, WIDTH * deviation / max(felt, LEAST_FELT))
    weight = max(metres, 1.0) * priors.SHORT_OHM[0][1] * share
    detail = ("along", place), ("ohm", 0.0)
    return Fault("short", node, Change("short", node, place, 0.0), weight, detail)

"""All zones reading high alike: what other lines say of this one's loudspeakers.

Real loudspeakers seldom measure their nominal ohms, but those of one job are mostly of one
make. So what the other zones read, against what they should, is taken off this one too.
"""

import math
import statistics
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from pycore.calc.circuits import Circuits
from pycore.calc.predict import look
from pycore.calc.probe import Stand
from pycore.calc.reading import Meant
from pycore.calc.site import Site, condition_of

LEAST_ZONES = 2
FARTHEST = 0.35  # (ln): a zone farther off has a fault of its own
BETWEEN_ZONES = 0.03  # how far zones of one make differ (ln; common practice, no source)


class Alike(NamedTuple):
    """By how much the loudspeakers of this job read high (ln), what that leaves open, and the
    zones it was taken from."""

    bias: float
    variance: float
    zones: tuple[str, ...]


def alike(site: Site, meants: Sequence[Meant], *, load_variance: float) -> Alike:
    """What the other zones tell; nothing below two of them."""
    told = dict(_told(site, meants))
    if len(told) < LEAST_ZONES or load_variance <= 0:
        return Alike(0.0, load_variance, ())
    offs = list(told.values())
    apart = max(statistics.pstdev(offs), BETWEEN_ZONES)
    mean, own = statistics.fmean(offs), apart**2 / len(offs)
    kept = load_variance / (load_variance + own)
    left = load_variance * own / (load_variance + own) + apart**2
    return Alike(mean * kept, min(left, load_variance), tuple(told))


def _told(site: Site, meants: Sequence[Meant]) -> Iterator[tuple[str, float]]:
    """The zones not in question that have been read at the amplifier: how far off (ln)."""
    asked = {site.circuits.wired.ids[site.circuits.wired.starts[number]] for number in site.zones}
    for one in meants:
        place = one.taken.place
        if one.taken.quantity != "z_1k_ohm" or one.sign != "number" or place in asked:
            continue
        found = _zone(site, place)
        if found is None or not one.value:
            continue
        circuits, node = found
        stand = Stand(node, "out", frozenset(), bare=False)
        condition = condition_of(site, one.taken)
        scope = look(circuits, condition, stand=stand, each_fraction=0.0, rough=True)
        off = math.log(one.value * abs(scope.probe.seen_s)) if scope.probe.seen_s else math.inf
        if abs(off) <= FARTHEST:
            yield place, off


def _zone(site: Site, place: str) -> tuple[Circuits, int] | None:
    for one in site.circuits.foreign:
        if one.circuits.wired.ids[one.node] == place:
            return one.circuits, one.node
    return None

"""Where on a drawn line a short or a break would read what was read, section by section.

Every section of the zone is tried: a dead short is put on it and moved until the meter would
show what it showed, the loudspeakers and, at direct current, their windings counted. A line
that divides can have several such places; all are told.
"""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from pycore.calc import priors
from pycore.calc.effects import Change, seen_with
from pycore.calc.halving import halve
from pycore.calc.probe import Probe, Stand
from pycore.calc.site import Site
from pycore.calc.wiring import Condition

EDGE = 1e-9
MOST_OHM = 50.0  # a short with more ohms of its own than that is no short


class Look(NamedTuple):
    """One reading without its leads: ohms, how far it may be off, and where the meter stood."""

    read_ohm: float
    loose_ohm: float
    place: str | None
    condition: Condition


class Place(NamedTuple):
    """A place on the section in front of a node, as a share of its length."""

    node: int
    share: float
    own_ohm: float | None


class Found(NamedTuple):
    """Where it lies: metres from the amplifier, and how many metres the windings' range moves
    it either way; the section's own loop resistance."""

    place: Place
    metres: float
    windings_m: float
    loop_ohm_per_km: float


def probe_of(site: Site, one: Look, *, load_factor: float = 1.0) -> Probe:
    """The meter where it stood: at the amplifier's end, or at a box with the home run lifted."""
    condition = one.condition._replace(load_factor=load_factor)
    wired = site.circuits.wired
    if one.place is None:
        stand = Stand(wired.starts[site.zones[0]], "out", frozenset(), bare=False)
    else:
        stand = Stand(wired.node_of[one.place], "back", frozenset(), bare=False)
    return site.circuits.probe(condition, stand)


def sections_of(site: Site) -> list[int]:
    """The nodes of the zone that have cable in front of them."""
    wired = site.circuits.wired
    nodes = wired.beyond(wired.starts[site.zones[0]])
    return [node for node in nodes if wired.points[node] is not None and wired.lengths_m[node]]


def shorts(site: Site, looks: Sequence[Look]) -> list[Found]:
    """Every place at which a short reads what was read, from one end or from both."""
    usual = _apart(site, list(_places(site, looks, load_factor=1.0)))
    if not any(one.condition.hz == 0.0 for one in looks):
        return [_found(site, looks, place=place, ends=[]) for place in usual]
    factors = (
        priors.WINDING_USUAL / priors.WINDING_LOW,
        priors.WINDING_USUAL / priors.WINDING_HIGH,
    )
    others = [list(_places(site, looks, load_factor=factor)) for factor in factors]
    return [
        _found(
            site, looks, place=place, ends=[_nearest(site, place, among=among) for among in others]
        )
        for place in usual
    ]


def _places(site: Site, looks: Sequence[Look], *, load_factor: float) -> Iterator[Place]:
    probes = [probe_of(site, one, load_factor=load_factor) for one in looks]
    for node in sections_of(site):
        place = (
            _one_end(probes[0], looks[0], node=node)
            if len(looks) == 1
            else _both_ends(probes, looks, node=node)
        )
        if place is not None:
            yield place


def _reads(probe: Probe, node: int, *, share: float, ohm: float, hz: float) -> float:
    change = Change("short", node, share, ohm)
    return 1 / abs(seen_with(probe, change, direct=hz == 0.0))


def _one_end(probe: Probe, one: Look, *, node: int) -> Place | None:
    """The place of a dead short, where this section holds one that reads so."""
    hz, read_ohm = one.condition.hz, one.read_ohm
    if probe.section_at[node] < 0:
        return None

    def read_at(share: float) -> float:
        return _reads(probe, node, share=share, ohm=0.0, hz=hz)

    turned = probe.turned[node]
    least, most = (read_at(1.0), read_at(0.0)) if turned else (read_at(0.0), read_at(1.0))
    if not least <= read_ohm <= most:
        return None
    share = halve(lambda share: (read_at(share) < read_ohm) != turned)
    return Place(node, share, None)


def _both_ends(probes: Sequence[Probe], looks: Sequence[Look], *, node: int) -> Place | None:
    """The place and the ohms of its own at which both readings come out."""
    near, far = probes
    if near.section_at[node] < 0 or far.section_at[node] < 0 or not far.turned[node]:
        return None
    hz = looks[0].condition.hz

    def own_ohm(share: float) -> float:
        """What the short must have of its own here for the near end to read what it read."""

        def too_little(part: float) -> bool:
            ohm = MOST_OHM * part
            return _reads(near, node, share=share, ohm=ohm, hz=hz) < looks[0].read_ohm

        return MOST_OHM * halve(too_little)

    def far_off(share: float) -> float:
        """How much more the far end would read than it read."""
        reads_ohm = _reads(far, node, share=share, ohm=own_ohm(share), hz=hz)
        return reads_ohm - looks[1].read_ohm

    # where the near end reads less than a dead short here would, no ohms make up for it
    if _reads(near, node, share=0.0, ohm=0.0, hz=hz) > looks[0].read_ohm + looks[0].loose_ohm:
        return None
    if not far_off(1.0) <= looks[1].loose_ohm or not far_off(0.0) >= -looks[1].loose_ohm:
        return None
    share = halve(lambda share: far_off(share) > 0)
    return Place(node, share, own_ohm(share))


def metres_of(site: Site, place: Place) -> float:
    """Metres from the amplifier along the route."""
    wired = site.circuits.wired
    length_m = wired.lengths_m[place.node]
    return wired.far_m[place.node] - length_m * (1 - place.share)


def _apart(site: Site, places: Sequence[Place]) -> list[Place]:
    """The places without those a box away at the edge of the next section, said twice."""
    inner = [one for one in places if EDGE < one.share < 1 - EDGE]
    if inner:
        return inner
    return list({round(metres_of(site, one), 1): one for one in places}.values())


def _nearest(site: Site, place: Place, *, among: Sequence[Place]) -> float:
    """The metres of the place nearest to this one, its own where there is none."""
    here_m = metres_of(site, place)
    there = [metres_of(site, one) for one in among]
    return min(there, key=lambda metres: abs(metres - here_m), default=here_m)


def _found(site: Site, looks: Sequence[Look], *, place: Place, ends: Sequence[float]) -> Found:
    metres = metres_of(site, place)
    windings_m = max((abs(one - metres) for one in ends), default=0.0)
    network = site.circuits.network(looks[0].condition)
    loop = 1000 * network.series_ohm[place.node].real / site.circuits.wired.lengths_m[place.node]
    return Found(place, metres, windings_m, loop)


class Broken(NamedTuple):
    """A section that may be the broken one: from and to, metres from the amplifier."""

    node: int
    from_m: float
    to_m: float


def breaks(site: Site, looks: Sequence[Look], *, load_fraction: float) -> list[Broken]:
    """Every section a break on which agrees with what was read, within what loads may differ."""
    probes = [probe_of(site, one) for one in looks]
    wired = site.circuits.wired
    found = []
    for node in sections_of(site):
        if all(
            _agrees(probe, one, node=node, load_fraction=load_fraction)
            for probe, one in zip(probes, looks, strict=True)
        ):
            end_m = wired.far_m[node]
            found.append(Broken(node, end_m - wired.lengths_m[node], end_m))
    return found


def _agrees(probe: Probe, one: Look, *, node: int, load_fraction: float) -> bool:
    change = Change("cut", node, 0.5)
    would_ohm = 1 / abs(seen_with(probe, change, direct=one.condition.hz == 0.0))
    factor = 1 + load_fraction + one.loose_ohm / one.read_ohm
    return would_ohm / factor <= one.read_ohm <= would_ohm * factor

"""Where along a section a short or a break lies, in metres, with how far that may be off.

The distance is searched on the line itself, its loudspeakers and their windings counted:
the place on the section at which a bridge would read what was read. From one end the ohms
of the short itself add to the distance; read from both ends they fall out.
"""

import math
from collections.abc import Sequence
from typing import NamedTuple

from pycore.calc.effects import Change, seen_with
from pycore.calc.evidence import Evidence
from pycore.calc.halving import halve
from pycore.calc.site import Site
from pycore.calc.suspects import Suspect
from pycore.formulas import meter

MOST_OHM = 50.0  # a short with more ohms of its own than that is no short


class Distance(NamedTuple):
    """Metres from the amplifier along the route, with the least and the most; from how many
    ends it was read; the short's own ohms, where both ends told them."""

    metres: float
    low_m: float
    high_m: float
    ends: int
    own_ohm: float | None
    since: str
    since_m: float


def distance_of(site: Site, suspect: Suspect, *, evidence: Sequence[Evidence]) -> Distance | None:
    """Where on its section a suspected short or break lies; None for what has no place on one."""
    family, node = suspect.key[0], suspect.key[1]
    if family == "cut":
        return _whole_section(site, node)
    if family != "short" or not site.circuits.wired.lengths_m[node]:
        return None
    reads = [
        one
        for one in evidence
        if one.kind == "ohm" and one.sign == "number" and one.scope.probe.section_at[node] >= 0
    ]
    near = next((one for one in reads if not one.scope.probe.turned[node]), None)
    far = next((one for one in reads if one.scope.probe.turned[node]), None)
    if near is not None and far is not None:
        return _two_ended(site, node, near=near, far=far)
    one = near or far
    return _one_ended(site, node, one=one) if one is not None else _whole_section(site, node)


def _whole_section(site: Site, node: int) -> Distance:
    """Somewhere on the section: all that is known without a reading that reaches it."""
    wired = site.circuits.wired
    end_m, length_m = wired.far_m[node], wired.lengths_m[node]
    since = wired.ids[wired.parents[node]]
    return Distance(end_m - length_m / 2, end_m - length_m, end_m, 0, None, since, length_m / 2)


def _one_ended(site: Site, node: int, *, one: Evidence) -> Distance:
    """The place at which a bridge without ohms reads what was read."""
    place = _place(one, node, ohm=0.0)
    return _placed(site, node, place=place, reads=[one], own_ohm=None)


def _two_ended(site: Site, node: int, *, near: Evidence, far: Evidence) -> Distance:
    """The place and the ohms at which a bridge reads what both ends read."""

    def too_near(place: float) -> bool:
        """Whether a bridge here, with the ohms the near end asks for, reads too much beyond."""
        ohm = _own_ohm(near, node, place=place)
        return _reads(far, node, place=place, ohm=ohm) > math.exp(far.log_read)

    place = halve(too_near)
    own_ohm = _own_ohm(near, node, place=place)
    return _placed(site, node, place=place, reads=[near, far], own_ohm=own_ohm)


def _reads(one: Evidence, node: int, *, place: float, ohm: float) -> float:
    """What a bridge of `ohm` (ohm) at a place on a section makes a reading."""
    change = Change("short", node, place, ohm)
    return 1 / abs(seen_with(one.scope.probe, change, direct=one.scope.direct))


def _own_ohm(one: Evidence, node: int, *, place: float) -> float:
    """The ohms of a bridge at which this reading comes out; none where a dead short reads more."""
    read_ohm = math.exp(one.log_read)
    return MOST_OHM * halve(
        lambda share: _reads(one, node, place=place, ohm=MOST_OHM * share) < read_ohm
    )


def _place(one: Evidence, node: int, *, ohm: float) -> float:
    """The place on a section (0 to 1) at which a bridge reads what was read."""
    read_ohm = math.exp(one.log_read)
    if one.scope.probe.turned[node]:
        return halve(lambda place: _reads(one, node, place=place, ohm=ohm) > read_ohm)
    return halve(lambda place: _reads(one, node, place=place, ohm=ohm) < read_ohm)


def _placed(
    site: Site, node: int, *, place: float, reads: Sequence[Evidence], own_ohm: float | None
) -> Distance:
    """A place on a section in metres, with its error."""
    wired = site.circuits.wired
    length_m = wired.lengths_m[node]
    from_m = wired.far_m[node] - length_m
    metres = from_m + place * length_m
    error_m = math.hypot(*(error_of(site, node, one=one, metres=metres) for one in reads))
    error_m /= len(reads)
    since = wired.ids[wired.parents[node]]
    low_m = max(metres - error_m, 0.0)
    return Distance(metres, low_m, metres + error_m, len(reads), own_ohm, since, place * length_m)


def error_of(site: Site, node: int, *, one: Evidence, metres: float) -> float:
    """By how many metres one reading may be off: its meter and leads, and the cable."""
    probe = one.scope.probe
    section = probe.section_at[node]
    length_m = site.circuits.wired.lengths_m[node]
    ohm_per_km = 1000 * probe.network.series_ohm[section].real / length_m
    read_ohm = one.meant.value or 0.0
    stands_m = site.circuits.wired.far_m[probe.stand.node]
    return meter.distance_error_m(
        meter_ohm=read_ohm * one.meant.meter_fraction + one.meant.loose,
        loop_ohm_per_km=ohm_per_km,
        distance_m=abs(metres - stands_m),
        cable_fraction=site.copper_fraction * math.sqrt(3),
    )

"""What a meter should read everywhere on a line in good order, with its band.

At the amplifier's end, and at every box: outward, what is fitted there alone, backward,
and all together. Both directions are solved once for the whole line, not once a box.
"""

import math
from collections.abc import Iterator, Sequence
from typing import Literal, NamedTuple

from pycore.calc import priors
from pycore.calc.fill import RECTANGLE
from pycore.calc.network import Network
from pycore.calc.predict import STEP, look
from pycore.calc.prepared import prepare
from pycore.calc.probe import Stand
from pycore.calc.reading import Meant
from pycore.calc.site import Site
from pycore.calc.wiring import DIRECT_HZ, Condition, is_live
from pycore.formulas import meter

View = Literal["out", "alone", "back", "whole"]
VIEWS: tuple[View, ...] = ("out", "alone", "back", "whole")


class Band(NamedTuple):
    """What a meter should read (ohm): None for an open line. `tolerance`: whole, either way;
    `follows`: how far the reading follows the loudspeakers."""

    value: float | None
    low: float | None
    high: float | None
    tolerance: float
    follows: float


class Tolerances(NamedTuple):
    """Limits either way, as fractions: of the meter, of all loudspeakers, of all cable."""

    meter: float
    load: float
    cable: float


class Seen(NamedTuple):
    """For each node of the wiring and each view, siemens; at the terminals only outward."""

    views: dict[View, list[complex]]
    squares: dict[View, list[float]]


def tolerances_of(site: Site, *, meter_fraction: float) -> Tolerances:
    """The limits a band is made of; cable that is only stated leaves more open."""
    cable = site.copper_fraction * RECTANGLE
    return Tolerances(meter_fraction, site.given.load_pct / 100, cable)


def see_everywhere(site: Site, condition: Condition) -> Seen:
    """Every zone in question looked at from every box, in every way."""
    wired = site.circuits.wired
    count = len(wired.ids)
    seen = Seen({view: [0j] * count for view in VIEWS}, {view: [0.0] * count for view in VIEWS})
    network = site.circuits.network(condition)
    live = [
        number
        for number in range(len(wired.zones))
        if is_live(wired, number, controls=condition.controls)
    ]
    for number in range(len(wired.zones)):
        if number in site.zones or number in live:
            _see_zone(site, network, number=number, seen=seen)
    for number in live:
        start = wired.starts[number]
        seen.views["out"][0] += seen.views["out"][start]
        seen.squares["out"][0] += seen.squares["out"][start]
    return seen


def _see_zone(site: Site, network: Network, *, number: int, seen: Seen) -> None:
    """One zone by itself, its home run lifted at the amplifier."""
    wired = site.circuits.wired
    start = wired.starts[number]
    span = slice(start, start + wired.sizes[start])
    own = Network(
        parents=tuple(parent - start if parent else -1 for parent in network.parents[span]),
        near_s=network.near_s[span],
        series_ohm=network.series_ohm[span],
        far_s=network.far_s[span],
        load_s=network.load_s[span],
        ratio=network.ratio[span],
        felt=network.felt[span],
    )
    squares = [
        abs(load_s) ** 2 * spread**2
        for load_s, spread in zip(own.load_s, wired.spread[span], strict=True)
    ]
    _look_around(own, seen, start=start)
    beyond = squares.copy()
    for node in range(len(beyond) - 1, 0, -1):
        beyond[own.parents[node]] += beyond[node]
    for node, square in enumerate(squares):
        place = start + node
        seen.squares["out"][place] = beyond[node]
        seen.squares["alone"][place] = square
        seen.squares["back"][place] = beyond[0] - beyond[node] + square
        seen.squares["whole"][place] = beyond[0]


def _look_around(own: Network, seen: Seen, *, start: int) -> None:
    """Siemens outward, alone, backward and all together from every node of one zone."""
    prepared = prepare(own, lifted=True)
    for node, parent in enumerate(own.parents):
        place = start + node
        far_s = own.far_s[node] if parent >= 0 else 0j
        out_s = prepared.flow.out_s[node] - far_s
        here_s = out_s - own.felt[node] * prepared.flow.below_s[node]
        over, under = prepared.back[node]
        back_s = under / over if over else complex(math.inf)
        seen.views["out"][place] = out_s
        seen.views["alone"][place] = here_s
        seen.views["back"][place] = back_s + far_s + here_s
        seen.views["whole"][place] = back_s + far_s + out_s


def bands(site: Site, condition: Condition, *, tolerances: Tolerances) -> dict[View, list[Band]]:
    """Bands for every view, by node of the wiring."""
    seen = see_everywhere(site, condition)
    heavier = see_everywhere(site, condition._replace(load_factor=STEP))
    direct = condition.hz == DIRECT_HZ
    return {
        view: [
            band_of(light_s, heavy_s, square=square, tolerances=tolerances, direct=direct)
            for light_s, heavy_s, square in zip(
                seen.views[view], heavier.views[view], seen.squares[view], strict=True
            )
        ]
        for view in VIEWS
    }


def band_of(
    seen_s: complex, heavy_s: complex, *, square: float, tolerances: Tolerances, direct: bool
) -> Band:
    """The band of one reading. `square`: the variance of its siemens that comes from taps
    nobody knows. At direct current windings are a stated range, not a tolerance."""
    size, heavy = abs(seen_s), abs(heavy_s)
    if size * OPEN_OHM < 1:
        return Band(None, OPEN_OHM, None, tolerances.meter, 0.0)
    value, whole = 1 / size, tolerances.load
    follows = follows_of(value, 1 / heavy)
    if square:
        unknown = meter.unknown_load_fraction(
            load_share=follows, deviation_s=math.sqrt(square), seen_s=size
        )
        whole = meter.load_tolerance(load_fraction=tolerances.load, unknown_fraction=unknown)
    whole = meter.whole_tolerance(
        meter_fraction=tolerances.meter,
        load_fraction=0.0 if direct else whole,
        load_share=follows,
        cable_fraction=tolerances.cable,
    )
    low, high = _ends(value, tolerance=whole, follows=follows, direct=direct)
    return Band(value, low, high, whole, follows)


def band_at(
    site: Site, condition: Condition, *, stand: Stand, tolerances: Tolerances
) -> tuple[Band, float]:
    """The band of one meter put to one place, and the variance (S²) of what it sees that comes
    from taps nobody knows."""
    scope = look(site.circuits, condition, stand=stand, each_fraction=0.0, rough=True)
    heavier = site.circuits.probe(condition._replace(load_factor=STEP), stand)
    square = scope.square[0]
    band = band_of(
        scope.probe.seen_s,
        heavier.seen_s,
        square=square,
        tolerances=tolerances,
        direct=scope.direct,
    )
    return band, square


def stand_for(site: Site, node: int, *, view: View) -> Stand:
    """Where a meter stands for a view of a box."""
    wired = site.circuits.wired
    beyond = range(node + 1, node + wired.sizes[node])
    hanging = frozenset(one for one in beyond if wired.parents[one] == node)
    lifted = hanging if view in ("alone", "back") else frozenset[int]()
    return Stand(node, "out" if view in ("out", "alone") else "back", lifted, bare=False)


def follows_of(light_ohm: float, heavy_ohm: float) -> float:
    """How far (0 to 1) a reading follows its loudspeakers, from a line a little heavier."""
    follows = meter.load_share_of_ohms(
        light_ohm=light_ohm, heavy_ohm=heavy_ohm, more_fraction=STEP - 1
    )
    return min(max(follows, 0.0), 1.0)


def _ends(value: float, *, tolerance: float, follows: float, direct: bool) -> tuple[float, float]:
    """The ends of a band (ohm)."""
    about = {"expected_ohm": value, "tolerance_fraction": tolerance}
    if not direct:
        return meter.band_low_ohm(**about), meter.band_high_ohm(**about)
    about.update(usual_fraction=priors.WINDING_USUAL, follows_fraction=follows)
    return (
        meter.band_low_direct_ohm(**about, lowest_fraction=priors.WINDING_LOW),
        meter.band_high_direct_ohm(**about, highest_fraction=priors.WINDING_HIGH),
    )


OPEN_OHM = 20_000.0


def band_of_baseline(one: Meant) -> Band | None:
    """What a line with a baseline should read again: within what one meter repeats."""
    if one.sign != "number" or not one.value:
        return None
    repeat = priors.REPEAT_PCT / 100
    low = meter.band_low_ohm(expected_ohm=one.value, tolerance_fraction=repeat)
    high = meter.band_high_ohm(expected_ohm=one.value, tolerance_fraction=repeat)
    return Band(one.value, low, high, repeat, 1.0)


class Head(NamedTuple):
    """What the amplifier's end of an output or zone should read in one state."""

    place: str
    condition: Condition
    band: Band


def heads(site: Site, conditions: Sequence[Condition], *, tolerances: Tolerances) -> Iterator[Head]:
    """The output with all its zones, then each zone in question, in every state."""
    wired = site.circuits.wired
    nodes = [0, *(wired.starts[number] for number in site.zones)]
    for condition in conditions:
        outward = bands(site, condition, tolerances=tolerances)["out"]
        for node in nodes:
            yield Head(wired.ids[node], condition, outward[node])

"""Everything that may be wrong with the zones in question, one by one, with its prior weight."""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from pycore.calc import priors
from pycore.calc.draws import Lookup, possible_taps
from pycore.calc.effects import NOTHING, Change, How
from pycore.calc.fill import usual_taps_w
from pycore.calc.network import Flow
from pycore.calc.wiring import Wired, winding_of
from pycore.ground.units import same_voltage, true_voltage
from pycore.jobs import Attenuator, Loudspeaker

MANY = 400  # from so many loudspeakers on, fewer kinds of short, joint and damp are tried
SAME = 0.01  # taps that draw alike within this are one


class Fault(NamedTuple):
    """One thing that may be wrong: its family, the node it is at, what it changes.

    `weight` is its share of the family before the family's own weight is divided up;
    `detail` are the numbers its words need, by name. `also`: a second fault beside it.
    """

    family: str
    node: int
    change: Change
    weight: float
    detail: tuple[tuple[str, float | str], ...] = ()
    also: "Fault | None" = None


class Scene(NamedTuple):
    """What faults are listed of: the wiring, the zones in question, a healthy solution of it
    at 1 kHz with controls open, and how many other zones a line may have been landed on."""

    wired: Wired
    zones: tuple[int, ...]
    flow: Flow
    foreign: Sequence[str]


def list_faults(scene: Scene) -> list[Fault]:
    """Every single fault, the healthy line first."""
    wired = scene.wired
    many = sum(wired.sizes[wired.starts[number]] for number in scene.zones) > MANY
    faults = [Fault("healthy", 0, NOTHING, 1.0)]
    offers = Offers(wired)
    for number in scene.zones:
        start = wired.starts[number]
        faults.extend(_zone_faults(scene, number))
        like_w = _commonest_w(wired, number)
        for node in range(start + 1, start + wired.sizes[start]):
            faults.extend(_section_faults(scene, node, many=many))
            faults.extend(_any_faults(scene, node, like_w=like_w, many=many))
            point = wired.points[node]
            if point is not None and point.fitted.is_ == "loudspeaker":
                faults.extend(_loudspeaker_faults(offers, node, fitted=point.fitted))
            elif point is not None and point.fitted.is_ == "attenuator":
                faults.extend(_control_faults(wired, node, fitted=point.fitted))
    return faults


def _zone_faults(scene: Scene, number: int) -> Iterator[Fault]:
    """What befalls a zone as a whole."""
    wired, start = scene.wired, scene.wired.starts[number]
    yield Fault("head_open", start, Change("cut", start, 0.5), 1.0)
    for other, name in enumerate(scene.foreign):
        if name != wired.ids[start]:
            yield Fault("wrong_zone", start, Change("swap", start, other), 1.0, (("other", name),))
    for factor, name in priors.CABLE_FACTORS:
        yield Fault("cable", start, Change("copper", start, factor), 1.0, (("which", name),))
    yield Fault("earthed", start, NOTHING, 1.0)
    if wired.sizes[start] > 2:
        yield Fault("series", start, Change("series", start), 3.0)


def _section_faults(scene: Scene, node: int, *, many: bool) -> Iterator[Fault]:
    """What befalls the pair in front of a node."""
    wired = scene.wired
    yield Fault("cut", node, Change("cut", node, 0.5), 1.0)
    metres = max(wired.lengths_m[node], 1.0)
    places = (0.5,) if many else priors.SHORT_PLACES
    for ohm, part in priors.SHORT_OHM[: 2 if many else None]:
        for place in places:
            change = Change("short", node, place, ohm)
            detail = ("along", place), ("ohm", ohm)
            yield Fault("short", node, change, metres * part / len(places), detail)
    beyond_s = abs(scene.flow.out_s[node])
    if beyond_s > 1e-9:
        for drop_db in priors.JOINT_DB[2:3] if many else priors.JOINT_DB:
            ohm = (10 ** (drop_db / 20) - 1) / beyond_s
            yield Fault("joint", node, Change("joint", node, ohm), 1.0, (("ohm", ohm),))


def _any_faults(scene: Scene, node: int, *, like_w: float, many: bool) -> Iterator[Fault]:
    """What may be added at any place."""
    wired = scene.wired
    square_v = wired.line_v**2
    more_s = like_w / square_v
    change = Change("load", node, more_s, more_s / priors.WINDING_USUAL)
    yield Fault("extra", node, change, 1.0, (("tap_w", like_w),))
    low_ohm = priors.LOW_IMPEDANCE_OHM[1]
    change = Change("load", node, 1 / low_ohm, 1 / (low_ohm * priors.VOICE_COIL))
    yield Fault("extra_low", node, change, 1.0, (("direct_ohm", low_ohm),))
    for ohm in priors.WET_OHM[1:2] if many else priors.WET_OHM:
        yield Fault("wet", node, Change("across", node, 1 / ohm), 1.0, (("ohm", ohm),))
    if not many:
        yield Fault("earthed", node, NOTHING, 1.0)
    if wired.sizes[node] > 2 and not many:
        yield Fault("series", node, Change("series", node), 1.0)


class Offered(NamedTuple):
    """What a loudspeaker may stand on instead: its change but for the node, weight, details."""

    family: str
    one: float
    two: float
    weight: float
    detail: tuple[tuple[str, float | str], ...]


class Offers:
    """What each loudspeaker may stand on instead, worked out once for all that are alike."""

    def __init__(self, wired: Wired) -> None:
        self.wired = wired
        self.lookup = Lookup.of(wired.job.kinds)
        self._known: dict[tuple[object, ...], tuple[Offered, ...]] = {}

    def of(self, fitted: Loudspeaker, *, draw_w: float, winding: float) -> tuple[Offered, ...]:
        """The offers of one loudspeaker that now draws `draw_w` (W)."""
        alike = (fitted.kind, fitted.tap_w, fitted.tap_at_v, fitted.direct_ohm)
        key = (*alike, fitted.connected, draw_w, winding)
        if key not in self._known:
            self._known[key] = tuple(self._made(fitted, draw_w=draw_w, winding=winding))
        return self._known[key]

    def _made(self, fitted: Loudspeaker, *, draw_w: float, winding: float) -> Iterator[Offered]:
        wired, square_v = self.wired, self.wired.line_v**2
        load_s = draw_w / square_v
        was_s = load_s / winding
        if load_s:
            yield Offered("dead", -load_s, -was_s, 1.0, ())
        if not fitted.connected:
            return
        taps = _other_taps(wired, fitted, draw_w=draw_w, lookup=self.lookup)
        for tap_w, at_v, other_w, weight in taps:
            other_s = other_w / square_v
            direct_s = other_s / priors.WINDING_USUAL - was_s
            detail = ("tap_w", tap_w), ("tap_at_v", at_v)
            yield Offered("tap", other_s - load_s, direct_s, weight, detail)
        if fitted.direct_ohm is not None:
            return
        kind = self.lookup.kind(fitted)
        offered = [tap.ohm for tap in (kind.taps if kind else ()) if tap.ohm is not None]
        for ohm in offered or [priors.LOW_IMPEDANCE_OHM[1]]:
            direct_s = 1 / (ohm * priors.VOICE_COIL) - was_s
            weight = 1.0 if offered else 0.3
            yield Offered("direct", 1 / ohm - load_s, direct_s, weight, (("direct_ohm", ohm),))


def _loudspeaker_faults(offers: Offers, node: int, *, fitted: Loudspeaker) -> Iterator[Fault]:
    """A loudspeaker dead, on each other tap, or with its selector on low impedance."""
    laid, own = offers.wired.laid_at(node)
    draw_w = laid.draws[own].high or 0.0
    for family, one, two, weight, detail in offers.of(
        fitted, draw_w=draw_w, winding=winding_of(laid, own)
    ):
        yield Fault(family, node, Change("load", node, one, two), weight, detail)


def _other_taps(
    wired: Wired, fitted: Loudspeaker, *, draw_w: float, lookup: Lookup
) -> Iterator[tuple[float, float, float, float]]:
    """Other taps it may stand on: watts and volts as marked, what it then draws, weight."""
    line_v, kind = wired.line_v, lookup.kind(fitted)
    known = fitted.tap_w is not None and fitted.direct_ohm is None
    if not known and fitted.direct_ohm is None:
        return  # a tap nobody knows is in the spread already
    offered = [(tap.w, tap.at_v) for tap in (kind.taps if kind else ()) if tap.w]
    if not offered:
        offered = [(tap_w, line_v) for tap_w in usual_taps_w(line_v)]
    marked = possible_taps(fitted, kind, line_v=line_v) if known else []
    nominal_w = [tap_w * (line_v / true_voltage(at_v)) ** 2 for tap_w, at_v in marked]
    gross = draw_w / nominal_w[0] if nominal_w and nominal_w[0] else 1.0
    met = [draw_w]
    for tap_w, at_v in sorted(offered, key=lambda one: not same_voltage(one[1], line_v)):
        other_w = tap_w * (line_v / true_voltage(at_v)) ** 2 * gross
        if all(abs(other_w - one) > SAME * one for one in met):
            met.append(other_w)
            yield tap_w, at_v, other_w, 1.0 if same_voltage(at_v, line_v) else 0.3


def _control_faults(wired: Wired, node: int, *, fitted: Attenuator) -> Iterator[Fault]:
    """A control left off, left in, or with its input and output exchanged."""
    laid, own = wired.laid_at(node)
    facts = laid.controls[own][1]
    pad, insertion_db = facts.form == "pad", facts.insertion_db or 0.0

    def standing(how: How, stands_db: float) -> Change:
        """At so many dB, with what it loses itself, whichever way round it is."""
        ratio = 10 ** ((stands_db - insertion_db) / 20)
        return Change(how, node, ratio, 1.0 if pad else ratio**2)

    turned: How = "stays" if facts.override is False else "control"
    yield Fault("control_off", node, Change(turned, node, 0.0, 0.0), 1.0)
    stands_db = {fitted.set_db, *priors.CONTROL_IN_DB} - {0.0}
    for set_db in sorted(stands_db, reverse=True):
        weight = 3.0 if set_db == fitted.set_db else 1.0
        change = standing(turned, set_db)
        yield Fault("control_in", node, change, weight, (("set_db", set_db),))
    lowered = fitted.set_db < 0 and not fitted.off
    change = standing("reverse", -fitted.set_db) if lowered else NOTHING._replace(node=node)
    yield Fault("control_reversed", node, change, 1.0)
    if facts.override is False:
        return
    if fitted.off:
        yield Fault("override_fails", node, Change("bypass", node, 0.0, 0.0), 1.0)
    elif fitted.set_db < 0:
        yield Fault("override_fails", node, standing("bypass", fitted.set_db), 1.0)


def _commonest_w(wired: Wired, number: int) -> float:
    """The draw that most loudspeakers of a zone have, else the usual small tap."""
    counts: dict[float, int] = {}
    laid = wired.filled[number].laid
    for node in laid.heard:
        load_w = laid.draws[node].high or 0.0
        counts[load_w] = counts.get(load_w, 0) + 1
    return max(counts, key=lambda one: counts[one], default=usual_taps_w(wired.line_v)[0])

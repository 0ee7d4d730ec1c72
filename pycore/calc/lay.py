"""A zone as it hangs, read once from the job: its points in order, what each draws, and
which of its sections are known; from that a network at any frequency and in any state."""

import math
from collections.abc import Mapping
from typing import Literal, NamedTuple

from pycore.calc.attenuators import AttenuatorFacts, facts_of
from pycore.calc.draws import NOTHING, Draw, Lookup, draw_of
from pycore.calc.finding import State
from pycore.calc.network import Network
from pycore.calc.pairs import Pair
from pycore.calc.section import NO_CABLE, Section, exact_section, with_joint
from pycore.jobs import Attenuator, Kinds, Point, Zone
from pycore.jobs.kinds import Form
from pycore.jobs.tree import hanging_order

Bound = Literal["value", "low", "high"]


class Laid(NamedTuple):
    """A zone at one line voltage, one entry a node in each list; node 0 is the terminals.

    `unknown`: the section's length or cable is not known (its length counts as 0 here).
    `beyond`: the point lies at or beyond such a section. `heard`: the nodes of connected
    loudspeakers that draw something, or may.
    """

    zone: Zone
    line_v: float
    points: tuple[Point, ...]
    parents: list[int]
    draws: list[Draw]
    pairs: list[Pair | None]
    lengths_m: list[float]
    joints_ohm: list[float]
    unknown: list[bool]
    beyond: list[bool]
    far_m: list[float]
    controls: dict[int, tuple[Attenuator, AttenuatorFacts]]
    heard: list[int]

    def id_of(self, node: int) -> str | None:
        """The id of the point at a node; None for the terminals."""
        return self.points[node - 1].id if node else None


def lay_out(zone: Zone, *, kinds: Kinds, pairs: Mapping[str, Pair], line_v: float) -> Laid:
    """Read a zone whose line stands at `line_v` (V)."""
    points = hanging_order(zone.line)
    node_of: dict[str | None, int] = {None: 0}
    node_of.update((point.id, node) for node, point in enumerate(points, start=1))
    parents = [-1, *(node_of[point.after] for point in points)]
    unknown = [False, *(_unknown(point) for point in points)]
    lengths_m = [0.0, *(point.length_m or 0.0 for point in points)]
    beyond, far_m = unknown.copy(), lengths_m.copy()
    for node in range(1, len(parents)):
        beyond[node] = beyond[node] or beyond[parents[node]]
        far_m[node] += far_m[parents[node]]
    laid = Laid(
        zone=zone,
        line_v=line_v,
        points=points,
        parents=parents,
        draws=[NOTHING],
        pairs=[None, *(pairs[point.cable] if point.cable else None for point in points)],
        lengths_m=lengths_m,
        joints_ohm=[0.0, *(point.joint_ohm or 0.0 for point in points)],
        unknown=unknown,
        beyond=beyond,
        far_m=far_m,
        controls={},
        heard=[],
    )
    _fit(laid, kinds)
    return laid


def _unknown(point: Point) -> bool:
    return point.length_m is None or (point.length_m > 0 and point.cable is None)


def _fit(laid: Laid, kinds: Kinds) -> None:
    """Put in what each point draws, the controls, and who is heard."""
    lookup = Lookup.of(kinds)
    met: dict[object, Draw] = {}
    for node, point in enumerate(laid.points, start=1):
        fitted = point.fitted
        if fitted.is_ == "loudspeaker":
            key = fitted.connected, fitted.kind, fitted.tap_w, fitted.tap_at_v, fitted.direct_ohm
            draw = met.get(key)
            if draw is None:
                draw = met[key] = draw_of(fitted, lookup, line_v=laid.line_v)
            if fitted.connected and draw.high != 0:
                laid.heard.append(node)
        else:
            draw = draw_of(fitted, lookup, line_v=laid.line_v)
            if fitted.is_ == "attenuator":
                laid.controls[node] = fitted, facts_of(fitted, kinds)
        laid.draws.append(draw)


class Asked(NamedTuple):
    """Which network is wanted of a zone: frequency, state and draws.

    `severed`: nothing hangs beyond a section that is not known; else such a section counts
    as having no length. `formless`: what a control is taken for whose form is not known.
    `swapped`: other cables at some nodes. `stretch`: every length times this.
    """

    hz: float
    state: State
    bound: Bound = "value"
    severed: bool = False
    formless: Form = "autotransformer"
    swapped: Mapping[int, Pair] = {}
    stretch: float = 1.0


def network_of(laid: Laid, asked: Asked) -> Network:
    """The circuit of a zone. Only draws that are known may be asked for."""
    near_s, series_ohm, far_s = zip(*_sections(laid, asked), strict=True)
    ratio, felt = [1.0] * len(near_s), [1.0] * len(near_s)
    if asked.state == "set":
        for node, (fitted, facts) in laid.controls.items():
            ratio[node], felt[node] = _stands(fitted, facts, formless=asked.formless)
    return Network(
        parents=tuple(laid.parents),
        near_s=near_s,
        series_ohm=series_ohm,
        far_s=far_s,
        load_s=tuple(_loads_s(laid, asked)),
        ratio=tuple(ratio),
        felt=tuple(felt),
    )


def _sections(laid: Laid, asked: Asked) -> list[Section]:
    """The section in front of each node; each different cable and length worked out once."""
    metres: dict[int, tuple[complex, complex]] = {}
    met: dict[tuple[int, float], Section] = {}
    sections = []
    for node, length_m in enumerate(laid.lengths_m):
        pair = asked.swapped.get(node, laid.pairs[node])
        section = NO_CABLE
        if pair is not None and length_m > 0:
            kind = id(pair)
            if kind not in metres:
                metres[kind] = pair.series_ohm_per_m(asked.hz), pair.shunt_s_per_m(asked.hz)
            key = kind, length_m
            if key not in met:
                met[key] = exact_section(*metres[kind], length_m=length_m * asked.stretch)
            section = met[key]
        joint_ohm = laid.joints_ohm[node]
        sections.append(with_joint(section, joint_ohm) if joint_ohm else section)
    return sections


def _loads_s(laid: Laid, asked: Asked) -> list[complex]:
    square_v = laid.line_v**2
    loads_s: list[complex] = []
    for node, draw in enumerate(laid.draws):
        load_w = draw[BOUND_AT[asked.bound]]
        assert load_w is not None, "a network is asked only of draws that are known"
        severed = asked.severed and laid.beyond[node]
        loads_s.append(0j if severed else complex(load_w / square_v))
    return loads_s


BOUND_AT: Mapping[Bound, int] = {"value": 0, "low": 1, "high": 2}


def _stands(fitted: Attenuator, facts: AttenuatorFacts, *, formless: Form) -> tuple[float, float]:
    """The ratio of volts a control passes and the share of siemens the line feels of them."""
    if fitted.off:
        return 0.0, 0.0
    ratio = math.pow(10, (fitted.set_db - (facts.insertion_db or 0.0)) / 20)
    return ratio, 1.0 if (facts.form or formless) == "pad" else ratio**2

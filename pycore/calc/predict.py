"""What a meter at one place would read if this or that were wrong: one number a fault.

With the number comes how far it follows the loudspeakers (the rest follows the cable), and
how far apart it may be because every loudspeaker differs a little from its neighbours.
"""

import cmath
import math
from collections.abc import Sequence
from math import log
from typing import NamedTuple

from pycore.calc.circuits import Circuits
from pycore.calc.effects import (
    SECTIONS,
    Change,
    as_met,
    local_of,
    section_shows,
    seen_in_place_of,
    seen_with,
)
from pycore.calc.faults import Fault
from pycore.calc.probe import Probe, Stand
from pycore.calc.wiring import DIRECT_HZ, Condition

STEP = 1.02  # all loads a little heavier, to see how far a reading follows them
HIGHEST_OHM = 1e8  # beyond any meter: kept so that logarithms stay finite
LOWEST_OHM = 1e-4
NOT_TOLD = 2.0  # the spread (ln) of a reading that a fault leaves open


class Expected(NamedTuple):
    """The logarithm of a reading in ohms, how far it follows the loads (0 to 1), and the
    variance of that logarithm by the loudspeakers' own differences."""

    log_ohm: float
    follows: float
    variance: float


class Scope(NamedTuple):
    """A meter at one place under one condition, ready for any number of faults.

    `rough`: near enough to choose a reading by. How far it follows the loads is then taken from
    where the watts go on the healthy line, and other copper is reckoned from that.
    """

    circuits: Circuits
    condition: Condition
    heavier: Condition
    probe: Probe
    heavier_probe: Probe
    weight: list[float]
    square: list[float]
    rough: bool

    @property
    def direct(self) -> bool:
        """Whether this is a reading at direct current."""
        return self.condition.hz == DIRECT_HZ


def look(
    circuits: Circuits, condition: Condition, *, stand: Stand, each_fraction: float, rough: bool
) -> Scope:  # fmt: skip
    """Put a meter to a place. `each_fraction`: the deviation of one loudspeaker by itself."""
    heavier = condition._replace(load_factor=STEP)
    probe = circuits.probe(condition, stand)
    weight, square = _spread(circuits, probe, each_fraction=each_fraction)
    again = probe if rough else circuits.probe(heavier, stand)
    return Scope(circuits, condition, heavier, probe, again, weight, square, rough)


def _spread(
    circuits: Circuits, probe: Probe, *, each_fraction: float
) -> tuple[list[float], list[float]]:
    """By new node: siemens at and beyond it, and the squares of what they may be off."""
    network, spread = probe.network, circuits.wired.spread
    weight = [abs(load_s) for load_s in network.load_s]
    square = [0.0] * len(weight)
    for old, new in enumerate(probe.node_at):
        if new >= 0 and weight[new]:
            square[new] = weight[new] ** 2 * (each_fraction**2 + spread[old] ** 2)
    for node in range(len(weight) - 1, 0, -1):
        weight[network.parents[node]] += weight[node]
        square[network.parents[node]] += square[node]
    return weight, square


def expect_all(scope: Scope, faults: Sequence[Fault]) -> list[Expected]:
    """What each fault would make the meter read."""
    if scope.rough:
        return _roughly(scope, faults)
    probe, heavier = scope.probe, scope.heavier_probe
    base = _expected(scope, seen_s=probe.seen_s, heavier_s=heavier.seen_s, cut=-1)
    loads = _Loads(scope)
    node_at, section_at = probe.node_at, probe.section_at
    controls = scope.condition.controls
    expected = []
    for fault in faults:
        change = fault.change
        how, node = change.how, node_at[change.node]
        if how in SECTIONS:
            expected.append(_of_section(scope, change, node=section_at[change.node], base=base))
        elif node > 0 and how in LOADS:
            expected.append(loads.expect(change, node=node))
        else:
            expected.append(_expect(scope, as_met(change, controls=controls), base=base))
    return expected


def _of_section(scope: Scope, change: Change, *, node: int, base: Expected) -> Expected:
    """The reading with a change of one section, by its new node."""
    if node < 0:
        return base
    probe, heavier = scope.probe, scope.heavier_probe
    return _expected(
        scope,
        seen_s=probe.with_through(node, section_shows(probe, change, node=node)),
        heavier_s=heavier.with_through(node, section_shows(heavier, change, node=node)),
        cut=node if change.how == "cut" else -1,
    )


LOADS = ("load", "across")


class _Loads:
    """What more or less load at any node makes of a reading: both solutions updated, the line's
    and that of a line a little heavier. Nearly all faults are of this kind, so it is kept quick."""

    def __init__(self, scope: Scope) -> None:
        self.direct = scope.direct
        self.light = scope.probe.load_updates()
        self.heavy = scope.heavier_probe.load_updates()
        self.light_s, self.heavy_s = scope.probe.seen_s, scope.heavier_probe.seen_s
        weight, square = scope.weight[0], scope.square[0]
        self.share = square / weight**2 if weight > 0 else 0.0

    def expect(self, change: Change, *, node: int) -> Expected:
        """The reading with a change of load at a new node."""
        more_s = heavier_s = change.one
        if change.how == "load":
            more_s = change.two if self.direct else more_s
            heavier_s = more_s * STEP
        felt, stiff_ohm = self.light[node]
        size = abs(self.light_s + felt * more_s / (1 + stiff_ohm * more_s))
        felt, stiff_ohm = self.heavy[node]
        heavy = abs(self.heavy_s + felt * heavier_s / (1 + stiff_ohm * heavier_s))
        if not LEAST_S < size < MOST_S or not heavy > LEAST_S:
            log_ohm = _log_ohm(size)
            follows = (log_ohm - _log_ohm(heavy)) / LOG_STEP
        else:
            log_ohm = -log(size)
            follows = log(heavy / size) / LOG_STEP
        follows = 0.0 if follows < 0 else 1.0 if follows > 1 else follows
        return Expected(log_ohm, follows, follows * follows * self.share)


def _roughly(scope: Scope, faults: Sequence[Fault]) -> list[Expected]:
    """The same from one solution: a reading lower than the healthy one follows the loads less."""
    probe, direct = scope.probe, scope.direct
    weight, square = scope.weight[0], scope.square[0]
    share = square / weight**2 if weight > 0 else 0.0
    follows = watts_in_loads(probe)
    base = Expected(_log_ohm(probe.seen_s), follows, follows**2 * share)
    expected = []
    for fault in faults:
        change = fault.change
        if change.how in SECTIONS:
            seen_s = _section_s(probe, change)
        else:
            change = as_met(change, controls=scope.condition.controls)
            if change.how in WHOLE:
                expected.append(_whole(scope, change, base=base))
                continue
            seen_s = seen_with(probe, change, direct=direct)
        log_ohm = _log_ohm(seen_s)
        less = follows * min(1.0, math.exp(log_ohm - base.log_ohm))
        expected.append(Expected(log_ohm, less, less**2 * share))
    return expected


def _section_s(probe: Probe, change: Change) -> complex:
    """What the meter sees with a change of a section; as it is where that is out of reach."""
    node = probe.section_at[change.node]
    if node < 0:
        return probe.seen_s
    return probe.with_through(node, section_shows(probe, change, node=node))


WHOLE = ("series", "swap", "copper")


def watts_in_loads(probe: Probe) -> float:
    """The share of the meter's watts that its loads take: how far a reading follows them
    (Cohn's theorem, from memory)."""
    loads = zip(probe.flow.at, probe.network.load_s, strict=True)
    taken = math.fsum(abs(at) ** 2 * load_s.real for at, load_s in loads)
    whole = probe.flow.out_s[0].real
    return min(max(taken / whole, 0.0), 1.0) if whole > 0 else 0.0


def _expect(scope: Scope, change: Change, *, base: Expected) -> Expected:
    how = change.how
    if how == "nothing":
        return base
    if how in WHOLE:
        return _whole(scope, change, base=base)
    direct, probe = scope.condition.hz == DIRECT_HZ, scope.probe
    local = local_of(probe, change, direct=direct)
    if local is None:
        return base
    more = (
        change._replace(one=change.one * STEP, two=change.two * STEP) if how == "load" else change
    )
    heavier = local_of(scope.heavier_probe, more, direct=direct)
    if heavier is None:
        return base
    node = local.node
    if node == 0:
        return _expected(scope, seen_s=local.through_s, heavier_s=heavier.through_s, cut=-1)
    seen_s = probe.with_through(node, local.through_s)
    heavier_s = scope.heavier_probe.with_through(node, heavier.through_s)
    return _expected(scope, seen_s=seen_s, heavier_s=heavier_s, cut=node if how == "cut" else -1)


def _whole(scope: Scope, change: Change, *, base: Expected) -> Expected:
    """What befalls a whole line: solved by itself."""
    if change.how == "copper" and scope.rough:
        log_more = (1 - base.follows) * math.log(change.one)
        return base._replace(log_ohm=base.log_ohm + log_more)
    if change.how == "copper":
        both = []
        for condition in (scope.condition, scope.heavier):
            other = condition._replace(cable_factor=change.one)
            both.append(scope.circuits.seen_s(other, scope.probe.stand))
        return _expected(scope, seen_s=both[0], heavier_s=both[1], cut=-1)
    if change.how == "swap" and scope.probe.stand.node not in (0, change.node):
        return base  # in its own boxes the line is itself, wherever it has been landed
    seen = []
    for condition, probe in (
        (scope.condition, scope.probe),
        (scope.heavier, scope.heavier_probe),
    ):
        seen.append(
            seen_in_place_of(
                probe, change.node, out_s=_instead_s(scope, change, condition=condition)
            )
        )
    if cmath.isnan(seen[0]):
        return base._replace(variance=NOT_TOLD**2)
    return _expected(scope, seen_s=seen[0], heavier_s=seen[1], cut=-1)


def _instead_s(scope: Scope, change: Change, *, condition: Condition) -> complex:
    """Siemens that stand at a node instead: its loads as one string, or another zone."""
    if change.how == "series":
        ohm = scope.circuits.series_ohm(condition)[change.node]
        return 1 / ohm if ohm else 0j
    other = scope.circuits.foreign[int(change.one)]
    flow = other.circuits.flow(condition)
    return flow.out_s[other.node]


def _expected(scope: Scope, *, seen_s: complex, heavier_s: complex, cut: int) -> Expected:
    log_ohm = _log_ohm(seen_s)
    follows = (log_ohm - _log_ohm(heavier_s)) / LOG_STEP
    follows = min(max(follows, 0.0), 1.0)
    weight, square = scope.weight[0], scope.square[0]
    if cut > 0:
        weight, square = weight - scope.weight[cut], square - scope.square[cut]
    share = square / weight**2 if weight > 0 else 0.0
    return Expected(log_ohm, follows, follows**2 * max(share, 0.0))


LOG_STEP = math.log(STEP)
LEAST_S, MOST_S = 1 / HIGHEST_OHM, 1 / LOWEST_OHM
LOG_HIGHEST, LOG_LOWEST = math.log(HIGHEST_OHM), math.log(LOWEST_OHM)


def _log_ohm(seen_s: complex) -> float:
    size = abs(seen_s)
    if size * HIGHEST_OHM < 1:
        return LOG_HIGHEST
    return max(-math.log(size), LOG_LOWEST)

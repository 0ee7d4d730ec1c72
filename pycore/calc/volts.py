"""Volts along a line on a test tone, and what each fault would make of them.

The amplifier holds its terminals; volts are told as a share of those there. So a reading
near the amplifier and one farther out, both on one tone, say how much is lost between.
"""

import math
from collections.abc import Sequence

from pycore.calc.effects import Change, Local, as_met, local_of
from pycore.calc.faults import Fault
from pycore.calc.predict import LOG_STEP, NOT_TOLD, STEP, Expected, Scope
from pycore.calc.probe import Probe

LEAST_SHARE = 1e-4  # of the terminals' volts: what no meter tells from nothing


def expect_volts(scope: Scope, node: int, *, faults: Sequence[Fault]) -> list[Expected]:
    """The logarithm of the share of the terminals' volts at a node, one a fault.

    `scope` is a meter at the terminals. `follows`: how the share rises when all loads get
    lighter; it falls by as much when all copper gets thinner.
    """
    at = scope.probe.node_at[node]
    above = _above(scope.probe, at)
    met = (as_met(fault.change, controls=scope.condition.controls) for fault in faults)
    return [_expect(scope, change, at=at, above=above) for change in met]


def _above(probe: Probe, node: int) -> frozenset[int]:
    """A new node and all it hangs on."""
    found = set()
    while node >= 0:
        found.add(node)
        node = probe.network.parents[node]
    return frozenset(found)


def _expect(scope: Scope, change: Change, *, at: int, above: frozenset[int]) -> Expected:
    share = share_with(scope.probe, change, at=at, above=above)
    heavier = change
    if change.how == "load":
        heavier = change._replace(one=change.one * STEP, two=change.two * STEP)
    less = share_with(scope.heavier_probe, heavier, at=at, above=above)
    if share is None or less is None:
        return Expected(math.log(abs(scope.probe.flow.at[at]) or 1.0), 0.0, NOT_TOLD**2)
    log_share = math.log(max(share, LEAST_SHARE))
    follows = (log_share - math.log(max(less, LEAST_SHARE))) / LOG_STEP
    return Expected(log_share, min(max(follows, 0.0), 1.0), 0.0)


def share_with(probe: Probe, change: Change, *, at: int, above: frozenset[int]) -> float | None:
    """The share of the terminals' volts at new node `at` with a change; None when not told."""
    volts = probe.flow.at
    if change.how == "nothing":
        return abs(volts[at])
    if change.how in ("series", "swap", "copper"):
        return None
    local = local_of(probe, change, direct=False)
    if local is None or local.node == 0:
        return abs(volts[at])
    seen_ohm, through_s = probe.rest_ohm[local.node], probe.through_s[local.node]
    stiff = (1 + seen_ohm * through_s) / (1 + seen_ohm * local.through_s)
    near = probe.near[local.node] * stiff
    if local.node in above:
        return _share_beyond(probe, change, local=local, near=near, at=at)
    return _share_beside(probe, local, near=near, at=at, above=above)


def _share_beyond(
    probe: Probe, change: Change, *, local: Local, near: complex, at: int
) -> float | None:
    """The meter stands at the changed place or beyond it."""
    volts = probe.flow.at
    there = near * local.passed
    if local.node == at:
        return abs(there)
    if not volts[local.node] or not volts[at]:
        return None
    factor = 1.0
    if change.how == "control":
        factor = change.one / probe.network.ratio[local.node]
    return abs(volts[at] * there / volts[local.node]) * factor


def _share_beside(
    probe: Probe, local: Local, *, near: complex, at: int, above: frozenset[int]
) -> float:
    """The meter stands on another branch: what both have in common sinks or rises."""
    volts, parents = probe.flow.at, probe.network.parents
    fork = parents[local.node]
    while fork not in above:
        fork = parents[fork]
    back_ohm, drawn = back_of(probe, fork)
    if fork == 0 or not drawn or not volts[fork]:
        return abs(volts[at])
    more = (local.through_s - probe.through_s[local.node]) * near
    own_ohm = back_ohm / (1 + back_ohm * probe.flow.out_s[fork])
    sunk = own_ohm * more * probe.drawn[local.node] / drawn
    return abs(volts[at] * (volts[fork] - sunk) / volts[fork])


def back_of(probe: Probe, node: int) -> tuple[complex, complex]:
    """What a new node sees back through its section, and what it draws at the meter."""
    network = probe.network
    rest_ohm, series_ohm = probe.rest_ohm[node], network.series_ohm[node]
    back_ohm = rest_ohm / (1 + rest_ohm * network.near_s[node]) + series_ohm
    return back_ohm, probe.drawn[node] / (1 + series_ohm * probe.flow.out_s[node])

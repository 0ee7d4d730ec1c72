"""A solved network made ready for many small questions: each "what if this one were
otherwise" is answered at the terminals without solving again.

Held: the amplifier keeps the terminals at their volts. Lifted: it is disconnected, as for
every impedance reading. Looking back means from a node toward the terminals, without the
node's own load and without what hangs beyond it.
"""

import math
from typing import NamedTuple

from pycore.calc.network import Flow, Network, solve


class Ratio(NamedTuple):
    """An impedance as over / under, so that a short and an open line are both plain numbers."""

    over: complex
    under: complex

    def beside(self, extra_s: complex) -> "Ratio":
        """With siemens across it."""
        return Ratio(self.over, self.under + self.over * extra_s)

    def behind(self, extra_ohm: complex) -> "Ratio":
        """With ohms in front of it; kept in a range where nothing overflows."""
        over = self.over + extra_ohm * self.under
        size = max(abs(over), abs(self.under)) or 1.0
        return Ratio(over / size, self.under / size)


SHORT = Ratio(0j, 1 + 0j)
OPEN = Ratio(1 + 0j, 0j)


class Prepared(NamedTuple):
    """A network, its solution, what each node sees looking back, and its standing to the
    terminals: `felt_from` is the amperes that one ampere drawn at a node draws there."""

    network: Network
    flow: Flow
    back: list[Ratio]
    felt_from: list[complex]

    def driving_s(self, node: int) -> complex:
        """Siemens seen by a meter across a node with everything in place."""
        over, under = self.back[node]
        return self.flow.out_s[node] + (under / over if over else complex(math.inf))

    def terminals_with_load(self, node: int, extra_s: complex) -> complex:
        """Siemens at the terminals, held, with `extra_s` (S) more across a node."""
        around = self._around(node)
        if not around:
            return self.flow.out_s[0]
        seen_ohm = self.back[node].over / around
        reach = self.flow.at[node] * self.felt_from[node]
        return self.flow.out_s[0] + extra_s * reach / (1 + extra_s * seen_ohm)

    def terminals_with_joint(self, node: int, extra_ohm: float) -> complex:
        """Siemens at the terminals, held, with `extra_ohm` (ohm) in series in the section in
        front of a node; infinite for a break."""
        out_s = self.flow.out_s[node]
        around = self._around(node)
        loop_s = out_s * self.back[node].under / around if around else 0j
        if not loop_s:
            return self.flow.out_s[0]
        reach = self.flow.at[node] * self.felt_from[node] * out_s * out_s
        if math.isinf(extra_ohm):
            return self.flow.out_s[0] - reach / loop_s
        return self.flow.out_s[0] - extra_ohm * reach / (1 + extra_ohm * loop_s)

    def _around(self, node: int) -> complex:
        """Nothing where a node hangs on nothing: behind a control that is off, without load."""
        over, under = self.back[node]
        return under + over * self.flow.out_s[node]


def prepare(network: Network, *, lifted: bool) -> Prepared:
    """Solve and look back from every node, with the amplifier lifted or holding its volts."""
    flow = solve(network)
    parents, near_s, series_ohm, far_s, load_s, ratio, felt = network
    back = [OPEN if lifted else SHORT] * len(parents)
    share = [1.0] * len(parents)
    for node in range(1, len(parents)):
        parent = parents[node]
        if felt[parent] == 0:
            beyond, share[node] = OPEN, 0.0
        else:
            own = load_s[parent] + far_s[parent]
            seen = back[parent].beside(own)
            beyond = Ratio(seen.over * felt[parent], seen.under)
            share[node] = share[parent] * felt[parent] / ratio[parent] ** 2
        out_s = flow.out_s[node]
        through = near_s[node] + out_s / (1 + series_ohm[node] * out_s)
        beside = flow.below_s[parent] - through + near_s[node]
        back[node] = beyond.beside(beside).behind(series_ohm[node])
    felt_from = [at * part for at, part in zip(flow.at, share, strict=True)]
    return Prepared(network, flow, back, felt_from)

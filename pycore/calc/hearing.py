"""Ears as evidence: how each loudspeaker plays, against how it would with each fault.

How well people tell, and when a level is heard as weak or loud, is common practice, no
source. Only what was heard counts; a loudspeaker nobody listened to is not known.
"""

import math
from collections.abc import Sequence
from itertools import accumulate
from typing import Literal, NamedTuple

from pycore.calc.faults import Fault
from pycore.calc.predict import Scope, look
from pycore.calc.probe import Stand
from pycore.calc.reading import Taken
from pycore.calc.site import Site
from pycore.calc.volts import share_with
from pycore.calc.wiring import TEST_HZ, Condition

Plays = Literal["well", "weak", "silent", "loud", "harsh", "hums"]
HEARD: dict[Plays, dict[str, float]] = {
    "well": {"well": 0.86, "weak": 0.08, "silent": 0.01, "loud": 0.03, "distorted": 0.02},
    "weak": {"well": 0.25, "weak": 0.65, "silent": 0.06, "loud": 0.01, "distorted": 0.03},
    "silent": {"well": 0.01, "weak": 0.03, "silent": 0.94, "loud": 0.01, "distorted": 0.01},
    "loud": {"well": 0.30, "weak": 0.02, "silent": 0.02, "loud": 0.50, "distorted": 0.16},
    "harsh": {"well": 0.15, "weak": 0.20, "silent": 0.10, "loud": 0.10, "distorted": 0.45},
    "hums": {"well": 0.60, "weak": 0.08, "silent": 0.02, "loud": 0.05, "distorted": 0.25},
}
LOUD_FROM_DB, WEAK_FROM_DB, SILENT_FROM_DB = 4.0, -2.0, -15.0


class Playing(NamedTuple):
    """How a loudspeaker at the fault's own node plays, those beyond it, and all others."""

    own: Plays
    beyond: Plays
    others: Plays


WELL = Playing("well", "well", "well")
ALL_SILENT = Playing("silent", "silent", "silent")
BY_FAMILY: dict[str, Playing] = {
    "dead": Playing("silent", "well", "well"),
    "direct": Playing("loud", "weak", "weak"),
    "extra_low": Playing("well", "weak", "weak"),
    "cut": Playing("silent", "silent", "well"),
    "head_open": Playing("silent", "silent", "well"),
    "short": ALL_SILENT,  # the amplifier protects itself
    "control_off": Playing("silent", "silent", "well"),
    "earthed": Playing("hums", "hums", "hums"),
    "wet": Playing("hums", "hums", "well"),
}


class Ears:
    """What was heard of the zones in question, summed up so that any fault is quickly asked."""

    def __init__(self, site: Site, heard: Sequence[Taken]) -> None:
        self.site = site
        self.any = bool(heard)
        nodes = [(one, site.circuits.wired.node_of.get(one.place, -1)) for one in heard]
        self.own = frozenset(
            node
            for _, node in nodes
            if node >= 0 and site.circuits.wired.fitted(node) == "loudspeaker"
        )
        whole = (site.circuits.wired.beyond(node) for _, node in nodes if node >= 0)
        self.heard = self.own.union(*whole) if heard else self.own
        self.complains = any(taken.value != "well" for taken in heard)
        self._scope: Scope | None = None
        self._sums = {plays: self._summed(plays, heard) for plays in HEARD} if heard else {}

    def _summed(self, plays: Plays, heard: Sequence[Taken]) -> list[float]:
        """Up to each node, the logarithm of what was heard if all there play like this. What was
        said of a whole zone holds for those of which nothing was said by itself."""
        wired = self.site.circuits.wired
        each = [0.0] * len(wired.ids)
        for taken in heard:
            node = wired.node_of.get(taken.place)
            if node is None or not isinstance(taken.value, str):
                continue
            alone = wired.fitted(node) == "loudspeaker"
            for one in (node,) if alone else wired.beyond(node):
                if wired.fitted(one) == "loudspeaker" and (alone or one not in self.own):
                    each[one] += math.log(HEARD[plays][taken.value])
        return [0.0, *accumulate(each)]

    def log_likelihood(self, fault: Fault) -> float:
        """How well a fault agrees with what was heard (logarithm)."""
        if not self.any:
            return 0.0
        plays = self.playing(fault)
        start, end = fault.node, fault.node + self.site.circuits.wired.sizes[fault.node]
        total = self._sums[plays.others]
        own, beyond = self._sums[plays.own], self._sums[plays.beyond]
        return (
            total[-1] - (total[end] - total[start])
            + own[start + 1] - own[start]
            + beyond[end] - beyond[start + 1]
        )  # fmt: skip

    def playing(self, fault: Fault) -> Playing:
        """How the loudspeakers play with a fault."""
        if fault.family == "tap":
            return Playing(heard_as(self._tap_db(fault)), "well", "well")
        if fault.family in ("joint", "control_in"):
            beyond = heard_as(self._beyond_db(fault))
            return Playing(beyond, beyond, "well")
        if fault.family == "series":
            weak = heard_as(-20 * math.log10(max(self._count(fault.node), 1)))
            return Playing(weak, weak, "well")
        return BY_FAMILY.get(fault.family, WELL)

    def _count(self, node: int) -> int:
        wired = self.site.circuits.wired
        return sum(wired.fitted(one) == "loudspeaker" for one in wired.beyond(node))

    def _tap_db(self, fault: Fault) -> float:
        """Level of a loudspeaker on another tap, against its own."""
        wired = self.site.circuits.wired
        laid, own = wired.laid_at(fault.node)
        draw_w = laid.draws[own].high or 0.0
        other_w = draw_w + fault.change.one * wired.line_v**2
        return 10 * math.log10(other_w / draw_w) if other_w > 0 < draw_w else 0.0

    def _beyond_db(self, fault: Fault) -> float:
        """Level of what lies beyond a node, against that without the fault."""
        if self._scope is None:
            condition = Condition(TEST_HZ, "set", self.site.job.limits.conductor_c)
            stand = Stand(0, "out", frozenset(), bare=False)
            self._scope = look(
                self.site.circuits, condition, stand=stand, each_fraction=0.0, rough=False
            )
        probe = self._scope.probe
        at = probe.node_at[fault.node]
        was = abs(probe.flow.at[at])
        if fault.family == "control_in":
            return 20 * math.log10(fault.change.one / (probe.network.ratio[at] or 1.0))
        share = share_with(probe, fault.change, at=at, above=frozenset((at, 0)))
        return 20 * math.log10(share / was) if share and was else 0.0


def heard_as(level_db: float) -> Plays:
    """What a change of level (dB) is heard as."""
    if level_db >= LOUD_FROM_DB:
        return "loud"
    if level_db > WEAK_FROM_DB:
        return "well"
    return "weak" if level_db > SILENT_FROM_DB else "silent"

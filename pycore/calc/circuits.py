"""The circuits of one output, each made once for all the readings that need it."""

from typing import NamedTuple

from pycore.calc.network import Flow, Network, solve
from pycore.calc.probe import Probe, Stand, put_to, sees
from pycore.calc.wiring import Condition, Wired, circuit_of, is_live


class Foreign(NamedTuple):
    """A zone that a line may have been taken for: the circuits it is in, and its node."""

    circuits: "Circuits"
    node: int


class Circuits:
    """An output, and its networks, solutions and probes by condition. Nothing is solved twice."""

    def __init__(self, wired: Wired) -> None:
        self.wired = wired
        self.controls = frozenset(
            node for node in range(len(wired.ids)) if wired.fitted(node) == "attenuator"
        )
        self.foreign: list[Foreign] = []
        self._networks: dict[Condition, Network] = {}
        self._flows: dict[Condition, Flow] = {}
        self._series: dict[Condition, list[complex]] = {}
        self._probes: dict[tuple[Condition, Stand], Probe] = {}

    def network(self, condition: Condition) -> Network:
        """The output under a condition."""
        if condition not in self._networks:
            self._networks[condition] = self._made(condition)
        return self._networks[condition]

    def _made(self, condition: Condition) -> Network:
        """Laid out only once for all factors of its loads."""
        factor = condition.load_factor
        if factor == 1.0:
            return circuit_of(self.wired, condition)
        network = self.network(condition._replace(load_factor=1.0))
        return network._replace(load_s=tuple(load_s * factor for load_s in network.load_s))

    def flow(self, condition: Condition) -> Flow:
        """The same, solved from the terminals."""
        if condition not in self._flows:
            self._flows[condition] = solve(self.network(condition))
        return self._flows[condition]

    def series_ohm(self, condition: Condition) -> list[complex]:
        """For each node: everything at and beyond it as one string, loads and pairs in ohms."""
        if condition not in self._series:
            network = self.network(condition)
            ohms = [1 / load_s if load_s else 0j for load_s in network.load_s]
            for node in range(len(ohms) - 1, 0, -1):
                ohms[network.parents[node]] += ohms[node] + network.series_ohm[node]
            self._series[condition] = ohms
        return self._series[condition]

    def probe(self, condition: Condition, stand: Stand) -> Probe:
        """A meter put to a place, ready for changes."""
        full = self._lifting(condition, stand)
        key = condition, full
        if key not in self._probes:
            self._probes[key] = put_to(
                self.network(condition), full, sizes=self.wired.sizes, controls=self.controls
            )
        return self._probes[key]

    def seen_s(self, condition: Condition, stand: Stand) -> complex:
        """What a meter put to a place sees (siemens), where nothing more is asked of it."""
        full = self._lifting(condition, stand)
        return sees(self.network(condition), full, sizes=self.wired.sizes, controls=self.controls)

    def _lifting(self, condition: Condition, stand: Stand) -> Stand:
        """Zones that are elsewhere in this state are not seen from the terminals."""
        if stand.node:
            return stand
        elsewhere = frozenset(
            start
            for number, start in enumerate(self.wired.starts)
            if not is_live(self.wired, number, controls=condition.controls)
        )
        return stand._replace(lifted=stand.lifted | elsewhere)

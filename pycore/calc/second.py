"""A second fault on a line that has a first: the first is put into the circuit itself."""

from pycore.calc.circuits import Circuits
from pycore.calc.effects import SHORTEST_OHM, Change, as_met
from pycore.calc.network import Network, put_in
from pycore.calc.section import Section
from pycore.calc.wiring import DIRECT_HZ, Condition

BROKEN_OHM = 1e12 + 0j
NOT_PAIRED = ("swap", "copper", "nothing")


class Changed(Circuits):
    """The circuits of an output with one change made in them."""

    def __init__(self, circuits: Circuits, change: Change) -> None:
        super().__init__(circuits.wired)
        self.before = circuits
        self.change = change
        self.foreign = circuits.foreign

    def network(self, condition: Condition) -> Network:
        """The output under a condition, changed."""
        if condition not in self._networks:
            base = self.before.network(condition)
            series_ohm = self.before.series_ohm(condition)[self.change.node]
            change = as_met(self.change, controls=condition.controls)
            self._networks[condition] = changed(
                base, change, condition=condition, string_ohm=series_ohm
            )
        return self._networks[condition]


def changed(
    network: Network, change: Change, *, condition: Condition, string_ohm: complex
) -> Network:
    """A circuit with a change made. `string_ohm`: all beyond the node, one behind the other."""
    node, how = change.node, change.how
    if how == "load":
        more_s = change.two if condition.hz == DIRECT_HZ else change.one
        return network.with_load(node, network.load_s[node] + more_s * condition.load_factor)
    if how == "across":
        return network.with_load(node, network.load_s[node] + change.one)
    if how == "control":
        return network.with_control(node, ratio=change.one, felt=change.two)
    section = Section(network.near_s[node], network.series_ohm[node], network.far_s[node])
    if how == "joint":
        return network.with_section(node, section._replace(series_ohm=section[1] + change.one))
    if how == "cut":
        stubs_s = section.near_s + section.far_s
        near_s = stubs_s * change.one
        return network.with_section(node, Section(near_s, BROKEN_OHM, stubs_s - near_s))
    if how == "short":
        bridged = bridged_section(section, place=change.one, ohm=change.two)
        return network.with_section(node, bridged)
    return _strung(network, node, string_ohm=string_ohm) if how == "series" else network


def bridged_section(section: Section, *, place: float, ohm: float) -> Section:
    """A section with `ohm` (ohm) across it part of the way along, as one section again."""
    near_s, series_ohm, far_s = section
    bridge_s = 1 / max(ohm, SHORTEST_OHM) + near_s * place + far_s * (1 - place)
    first_ohm, second_ohm = series_ohm * place, series_ohm * (1 - place)
    whole_ohm = first_ohm + second_ohm + first_ohm * second_ohm * bridge_s
    if not whole_ohm:
        return Section(near_s + bridge_s, series_ohm, far_s)
    return Section(
        near_s * place + second_ohm * bridge_s / whole_ohm,
        whole_ohm,
        far_s * (1 - place) + first_ohm * bridge_s / whole_ohm,
    )


def _strung(network: Network, node: int, *, string_ohm: complex) -> Network:
    """All loads at and beyond a node as one string: what hung on it is taken off."""
    cut = network.with_load(node, 1 / string_ohm if string_ohm else 0j)
    series_ohm, near_s = cut.series_ohm, cut.near_s
    for child, parent in enumerate(cut.parents):
        if parent == node:
            series_ohm = put_in(series_ohm, node=child, value=BROKEN_OHM)
            near_s = put_in(near_s, node=child, value=0j)
    return cut._replace(series_ohm=series_ohm, near_s=near_s)

"""A line as a circuit: built once, solved exactly in one pass each way, changed cheaply.

Node 0 is the terminals; every other node hangs on one that comes before it. Each node is
fed by a section (near siemens, series ohms, far siemens: exact at the network's frequency)
and carries a load. A control at a node passes `ratio` of its volts to what hangs on it and
lets the line feel `felt` of the siemens below: an autotransformer ratio², a pad all of
them, one that stands off nothing. Everything is linear, so a solution is told for one volt
at the terminals. Nothing recurses: a line may be thousands of points long.
"""

from typing import NamedTuple, TypeVar

from pycore.calc.section import NO_CABLE, Section

Value = TypeVar("Value")


class Node(NamedTuple):
    """What one node adds to a network, for building one by hand."""

    parent: int
    section: Section
    load_s: complex
    ratio: float
    felt: float


class Network(NamedTuple):
    """The circuit, one entry a node in each tuple."""

    parents: tuple[int, ...]
    near_s: tuple[complex, ...]
    series_ohm: tuple[complex, ...]
    far_s: tuple[complex, ...]
    load_s: tuple[complex, ...]
    ratio: tuple[float, ...]
    felt: tuple[float, ...]

    def with_load(self, node: int, load_s: complex) -> "Network":
        """The same with another load at one node."""
        return self._replace(load_s=put_in(self.load_s, node=node, value=load_s))

    def with_section(self, node: int, section: Section) -> "Network":
        """The same with another section in front of one node."""
        return self._replace(
            near_s=put_in(self.near_s, node=node, value=section.near_s),
            series_ohm=put_in(self.series_ohm, node=node, value=section.series_ohm),
            far_s=put_in(self.far_s, node=node, value=section.far_s),
        )

    def with_control(self, node: int, *, ratio: float, felt: float) -> "Network":
        """The same with the control at one node standing otherwise."""
        return self._replace(
            ratio=put_in(self.ratio, node=node, value=ratio),
            felt=put_in(self.felt, node=node, value=felt),
        )


def put_in(values: tuple[Value, ...], *, node: int, value: Value) -> tuple[Value, ...]:
    """The same values with another one at one node."""
    return (*values[:node], value, *values[node + 1 :])


TERMINALS = Node(-1, NO_CABLE, 0j, 1.0, 1.0)


def network_of_nodes(nodes: list[Node]) -> Network:
    """A network from its nodes, the terminals first."""
    return Network(
        parents=tuple(node.parent for node in nodes),
        near_s=tuple(node.section.near_s for node in nodes),
        series_ohm=tuple(node.section.series_ohm for node in nodes),
        far_s=tuple(node.section.far_s for node in nodes),
        load_s=tuple(node.load_s for node in nodes),
        ratio=tuple(node.ratio for node in nodes),
        felt=tuple(node.felt for node in nodes),
    )


class Flow(NamedTuple):
    """A solved network, one entry a node: for one volt at the terminals.

    `out_s`: siemens looking outward, of the node and all beyond it. `below_s`: of what
    hangs on the outgoing side of its control. `at`: volts at the node.
    """

    out_s: list[complex]
    below_s: list[complex]
    at: list[complex]

    def current(self, node: int) -> complex:
        """Amperes through the series ohms of the section in front of a node."""
        return self.at[node] * self.out_s[node]


def solve(network: Network) -> Flow:
    """Siemens from the leaves to the terminals, then volts from the terminals to the leaves."""
    parents, near_s, series_ohm, far_s, load_s, ratio, felt = network
    count = len(parents)
    out_s = [load + far for load, far in zip(load_s, far_s, strict=True)]
    below_s = [0j] * count
    for node in range(count - 1, 0, -1):
        whole = out_s[node]
        if below_s[node]:
            whole += felt[node] * below_s[node]
            out_s[node] = whole
        below_s[parents[node]] += near_s[node] + whole / (1 + series_ohm[node] * whole)
    out_s[0] += felt[0] * below_s[0]
    at = [1 + 0j] * count
    for node in range(1, count):
        parent = parents[node]
        at[node] = ratio[parent] * at[parent] / (1 + series_ohm[node] * out_s[node])
    return Flow(out_s, below_s, at)


class Spent(NamedTuple):
    """Where the watts go, one entry a node, for one volt at the terminals."""

    in_w: float
    loads_w: list[float]
    copper_w: list[float]
    controls_w: list[float]


def spend(network: Network, flow: Flow) -> Spent:
    """The watts of a solved network: in, and in every load, section and control."""
    parents, near_s, series_ohm, far_s, load_s, ratio, felt = network
    loads_w, copper_w, controls_w = [], [], []
    for node, parent in enumerate(parents):
        square = abs(flow.at[node]) ** 2
        loads_w.append(square * load_s[node].real)
        controls_w.append(square * flow.below_s[node].real * (felt[node] - ratio[node] ** 2))
        if parent < 0:
            copper_w.append(0.0)
            continue
        near_square = abs(ratio[parent] * flow.at[parent]) ** 2
        through = abs(flow.current(node)) ** 2 * series_ohm[node].real
        aside = near_square * near_s[node].real + square * far_s[node].real
        copper_w.append(through + aside)
    return Spent(flow.out_s[0].real, loads_w, copper_w, controls_w)

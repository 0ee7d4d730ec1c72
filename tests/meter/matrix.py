"""A second way to work a circuit out: all nodes at once, as one matrix.

Modified nodal analysis, written from the textbook and not from the tree solver: a control is
an ideal coupling with an unknown current of its own. What is changed is changed in the
netlist itself, never by an update of a solved one.
"""

from typing import NamedTuple

import numpy as np

from pycore.calc.network import Network
from pycore.calc.probe import Stand

ACROSS = -1


class Netlist:
    """Admittances between numbered nodes (ACROSS is the other leg), and couplings."""

    def __init__(self) -> None:
        self.branches: list[tuple[int, int, complex]] = []
        self.couplings: list[tuple[int, int, float, float]] = []
        self.count = 0

    def node(self) -> int:
        """A new node."""
        self.count += 1
        return self.count - 1

    def branch(self, one: int, other: int, siemens: complex) -> None:
        """Siemens between two nodes."""
        if siemens:
            self.branches.append((one, other, siemens))

    def seen_s(self, at: int) -> complex:
        """Siemens a meter across a node sees."""
        size = self.count + len(self.couplings)
        matrix = np.zeros((size, size), dtype=complex)
        for one, other, siemens in self.branches:
            for here, there in ((one, other), (other, one)):
                if here == ACROSS:
                    continue
                matrix[here, here] += siemens
                if there != ACROSS:
                    matrix[here, there] -= siemens
        for number, (up, low, ratio, felt) in enumerate(self.couplings):
            row = self.count + number
            # the unknown is the current into the low side
            matrix[low, row] -= 1
            matrix[up, row] += felt / ratio
            matrix[row, low] = 1
            matrix[row, up] = -ratio
        matrix[np.arange(self.count), np.arange(self.count)] += 1e-15
        inject = np.zeros(size, dtype=complex)
        inject[at] = 1
        return complex(1 / np.linalg.solve(matrix, inject)[at])


class Drawn(NamedTuple):
    """A circuit drawn as a netlist: for each old node its own and its outgoing side."""

    netlist: Netlist
    at: dict[int, int]
    low: dict[int, int]


def draw(network: Network, *, gone: set[int], controls: set[int], cut: set[int]) -> Drawn:
    """Draw all nodes that are not gone; `cut` ones have no section in front of them."""
    drawn = Drawn(Netlist(), {}, {})
    for node, parent in enumerate(network.parents):
        if node in gone:
            continue
        own = drawn.at[node] = drawn.netlist.node()
        drawn.low[node] = own
        drawn.netlist.branch(own, ACROSS, network.load_s[node])
        if node in controls:
            low = drawn.low[node] = drawn.netlist.node()
            if network.ratio[node]:
                coupling = own, low, network.ratio[node], network.felt[node]
                drawn.netlist.couplings.append(coupling)
        if parent >= 0 and node not in cut and parent in drawn.low:
            section(drawn.netlist, network, node, near=drawn.low[parent], far=own)
    return drawn


def section(netlist: Netlist, network: Network, node: int, *, near: int, far: int) -> None:
    """The section in front of a node, between two nodes of the netlist."""
    netlist.branch(near, ACROSS, network.near_s[node])
    netlist.branch(near, far, 1 / network.series_ohm[node])
    netlist.branch(far, ACROSS, network.far_s[node])


def seen_by_matrix(
    network: Network, stand: Stand, *, sizes: tuple[int, ...], controls: set[int]
) -> complex:
    """What a meter at a stand sees, all of it from the matrix."""
    gone: set[int] = set()
    reach = set(range(stand.node, stand.node + sizes[stand.node]))
    if stand.looking == "back":
        node = stand.node
        while network.parents[node] > 0:
            node = network.parents[node]
        reach = set(range(node, node + sizes[node]))
    cut = {stand.node} if stand.looking == "out" else {min(reach)}
    for node in stand.lifted:
        beyond = set(range(node, node + sizes[node]))
        if stand.node in beyond:
            reach &= beyond
            cut.add(node)
        else:
            gone |= beyond
    everything = set(range(len(network.parents)))
    drawn = draw(network, gone=gone | (everything - reach), controls=controls, cut=cut)
    if stand.bare:
        drawn.netlist.branch(drawn.at[stand.node], ACROSS, -network.load_s[stand.node])
    return drawn.netlist.seen_s(drawn.at[stand.node])

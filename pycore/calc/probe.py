"""An instrument put to one place of a circuit, and every change's effect on what it sees.

The circuit is hung anew from the place where the meter is, which is then its node 0. What
one section shows at its near end stands, by Thévenin, against all the rest; so what the
meter sees with that one section otherwise follows without solving again: a rank-one update.
"""

from collections.abc import Iterable
from typing import Literal, NamedTuple

from pycore.calc.network import Flow, Network, solve
from pycore.calc.section import NO_CABLE

Looking = Literal["out", "back"]


class Stand(NamedTuple):
    """Where a meter stands. `lifted`: nodes in front of which the line is opened.

    Out: what is at the node and beyond, its feed lifted. Back: what is at the node and all
    that hangs on the zone's own line (its home run lifted at the amplifier), what is beyond
    the node included unless lifted. `bare`: what is at the node itself is taken off.
    """

    node: int
    looking: Looking
    lifted: frozenset[int]
    bare: bool


class Probe(NamedTuple):
    """A circuit hung from where the meter is, solved. By old node, -1 where out of reach:

    `node_at`: its new node. `section_at`: the new node behind the section that was in front
    of it, `turned` when the meter sees that section from its far end. `control_at`,
    `control_turned`: the same for a control. By new node: `through_s` is what its section
    shows at the near end, `rest_ohm` what that end sees of everything else, the meter's
    terminals held; `reach` how far a change there is felt at the meter; `near`, `drawn`:
    volts at that end for one at the meter, and amperes at the meter for one drawn there.
    """

    stand: Stand
    network: Network
    flow: Flow
    node_at: list[int]
    section_at: list[int]
    turned: list[bool]
    control_at: list[int]
    control_turned: list[bool]
    through_s: list[complex]
    rest_ohm: list[complex]
    reach: list[complex]
    near: list[complex]
    drawn: list[complex]

    @property
    def seen_s(self) -> complex:
        """What the meter sees, siemens."""
        return self.flow.out_s[0]

    def with_through(self, node: int, through_s: complex) -> complex:
        """What the meter sees when the section of a new node shows `through_s` (S) instead."""
        more = through_s - self.through_s[node]
        return self.flow.out_s[0] + more * self.reach[node] / (1 + through_s * self.rest_ohm[node])

    def load_updates(self) -> list[tuple[complex, complex]]:
        """For each new node the two numbers that tell what more load there does: with `more_s`
        (S) across it the meter sees `felt * more_s / (1 + stiff_ohm * more_s)` more."""
        made = []
        network = self.network
        for out_s, series_ohm, shown_s, rest_ohm, reach in zip(
            self.flow.out_s,
            network.series_ohm,
            self.through_s,
            self.rest_ohm,
            self.reach,
            strict=True,
        ):
            across = 1 + series_ohm * out_s
            around = across * (1 + shown_s * rest_ohm)
            whole = across * around
            made.append((reach / whole, (series_ohm * around + rest_ohm) / whole))
        return made


# A new node as its network has it: parent, near siemens, series ohms, far siemens, load,
# ratio, felt.
Row = tuple[int, complex, complex, complex, complex, float, float]


class _Hanging:
    """The circuit on its way to being hung from another node."""

    def __init__(self, network: Network, controls: frozenset[int]) -> None:
        count = len(network.parents)
        self.old = network
        self.controls = controls
        self.rows: list[Row] = []
        self.node_at = [-1] * count
        self.section_at = [-1] * count
        self.turned = [False] * count
        self.control_at = [-1] * count
        self.control_turned = [False] * count

    def add(self, row: Row) -> int:
        """One more new node; gives its number."""
        self.rows.append(row)
        return len(self.rows) - 1

    def hang(self, span: Iterable[int], *, under: int, top: int, left_out: frozenset[int]) -> None:
        """Old nodes in order, each below its parent; those below `top` hang on new `under`."""
        parents, near_s, series_ohm, far_s, load_s, ratio, felt = self.old
        node_at, section_at, rows = self.node_at, self.section_at, self.rows
        for node in span:
            parent = parents[node]
            above = under if parent == top else node_at[parent]
            if above < 0 or node in left_out:
                continue
            node_at[node] = section_at[node] = len(rows)
            rows.append(
                (
                    above,
                    near_s[node],
                    series_ohm[node],
                    far_s[node],
                    load_s[node],
                    ratio[node],
                    felt[node],
                )
            )
            if node in self.controls:
                self.control_at[node] = node_at[node]

    def step_up(self, node: int, below: int) -> int:
        """From an old node, hung as new `below`, to its parent; gives the parent's new node."""
        one, parent = self.old, self.old.parents[node]
        turned = one.far_s[node], one.series_ohm[node], one.near_s[node]
        self.turned[node] = True
        if parent not in self.controls:
            new = self.add((below, *turned, one.load_s[parent], 1.0, 1.0))
            self.section_at[node] = self.node_at[parent] = new
            return new
        self.section_at[node] = low = self.add((below, *turned, 0j, 1.0, 1.0))
        ratio, felt = one.ratio[parent], one.felt[parent]
        back = (1 / ratio if ratio else 0.0), (1 / felt if felt else 0.0)
        self.control_at[parent] = middle = self.add((low, *NO_CABLE, 0j, *back))
        self.control_turned[parent] = True
        self.node_at[parent] = self.add((middle, *NO_CABLE, one.load_s[parent], 1.0, 1.0))
        return low


def put_to(
    network: Network, stand: Stand, *, sizes: tuple[int, ...], controls: frozenset[int]
) -> Probe:
    """Hang a circuit from where the meter stands and solve it. `controls`: their nodes."""
    return _probe(_hung(network, stand, sizes=sizes, controls=controls), stand)


def sees(
    network: Network, stand: Stand, *, sizes: tuple[int, ...], controls: frozenset[int]
) -> complex:
    """Only what the meter sees (siemens): nothing is made ready for changes."""
    hanging = _hung(network, stand, sizes=sizes, controls=controls)
    return solve(Network(*zip(*hanging.rows, strict=True))).out_s[0]


def _hung(
    network: Network, stand: Stand, *, sizes: tuple[int, ...], controls: frozenset[int]
) -> _Hanging:
    """The circuit hung from where the meter stands."""
    hanging = _Hanging(network, controls)
    node = stand.node
    load_s = 0j if stand.bare else network.load_s[node]
    own = network.ratio[node], network.felt[node]
    back = stand.looking == "back"
    hanging.node_at[node] = hanging.add((-1, *NO_CABLE, load_s, *((1.0, 1.0) if back else own)))
    if node in controls:
        hanging.control_at[node] = 0
    beyond = range(node + 1, node + sizes[node])
    if back:
        _hang_back(hanging, stand, sizes=sizes, own=own)
    else:
        hanging.hang(beyond, under=0, top=node, left_out=stand.lifted)
    return hanging


def _hang_back(
    hanging: _Hanging, stand: Stand, *, sizes: tuple[int, ...], own: tuple[float, float]
) -> None:
    """What is beyond the node on a branch of its own, then up to the zone's own start."""
    node, parents = stand.node, hanging.old.parents
    under = 0
    if node in hanging.controls:
        under = hanging.add((0, *NO_CABLE, 0j, *own))
        hanging.control_at[node] = under
    beyond = range(node + 1, node + sizes[node])
    hanging.hang(beyond, under=under, top=node, left_out=stand.lifted)
    below = 0
    while parents[node] > 0 and node not in stand.lifted:
        parent = parents[node]
        branch = hanging.step_up(node, below)
        before, after = range(parent + 1, node), range(node + sizes[node], parent + sizes[parent])
        for beside in (before, after):
            hanging.hang(beside, under=branch, top=parent, left_out=stand.lifted)
        node, below = parent, hanging.node_at[parent]


def _probe(hanging: _Hanging, stand: Stand) -> Probe:
    network = Network(*zip(*hanging.rows, strict=True))
    flow = solve(network)
    through_s, rest_ohm, reach, near, drawn = _thevenin(network, flow)
    return Probe(
        stand=stand,
        network=network,
        flow=flow,
        node_at=hanging.node_at,
        section_at=hanging.section_at,
        turned=hanging.turned,
        control_at=hanging.control_at,
        control_turned=hanging.control_turned,
        through_s=through_s,
        rest_ohm=rest_ohm,
        reach=reach,
        near=near,
        drawn=drawn,
    )


Five = tuple[list[complex], list[complex], list[complex], list[complex], list[complex]]


def _thevenin(network: Network, flow: Flow) -> Five:
    """For each section: what it shows, what it sees, and how far that is felt at the meter."""
    parents, near_s, series_ohm, far_s, load_s, ratio, felt = network
    out_s, below_s, at = flow
    count = len(parents)
    through_s, rest_ohm, reach, near, drawn = ([0j] * count for _ in range(5))
    back_ohm = [0j] * count  # what a node sees through its own section
    drawn_at = [1 + 0j] * count
    for node in range(1, count):
        parent = parents[node]
        whole_s = out_s[node]
        shown_s = through_s[node] = near_s[node] + whole_s / (1 + series_ohm[node] * whole_s)
        share = felt[parent]
        if not share or not ratio[parent]:
            drawn_at[node] = 0j
            continue
        own_s = load_s[parent] + (far_s[parent] if parent else 0j)
        before_ohm = back_ohm[parent] / (1 + back_ohm[parent] * own_s) * share if parent else 0j
        beside_s = below_s[parent] - shown_s
        seen_ohm = rest_ohm[node] = before_ohm / (1 + before_ohm * beside_s)
        volts = near[node] = ratio[parent] * at[parent]
        amperes = drawn[node] = drawn_at[parent] * share / ratio[parent]
        stiff = 1 + seen_ohm * shown_s
        reach[node] = volts * amperes * stiff
        beyond_ohm = seen_ohm / (1 + seen_ohm * near_s[node])
        back_ohm[node] = beyond_ohm + series_ohm[node]
        drawn_at[node] = amperes / (1 + series_ohm[node] * whole_s)
    return through_s, rest_ohm, reach, near, drawn

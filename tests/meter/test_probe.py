"""A meter anywhere on a line sees what a matrix of all nodes says, with and without a change."""

import random

import pytest

from pycore.calc.effects import Change, seen_with
from pycore.calc.network import Network
from pycore.calc.probe import Stand, put_to
from pycore.calc.section import Section
from tests.meter.matrix import seen_by_matrix

SLACK = 1e-7  # the matrix is the inaccurate one: short and long sections side by side


def random_network(seed: int, count: int) -> tuple[Network, tuple[int, ...], set[int]]:
    """A line of one zone (node 1) with branches, controls and sections of any length."""
    chance = random.Random(seed)
    parents, stack = [-1, 0], [1]
    controls: set[int] = set()
    while len(parents) < count:
        while len(stack) > 1 and chance.random() < 0.25:
            stack.pop()
        parents.append(stack[-1])
        stack.append(len(parents) - 1)
    ratio, felt = [1.0] * count, [1.0] * count
    for node in range(2, count):
        if chance.random() < 0.2:
            controls.add(node)
            ratio[node] = chance.choice([1.0, 0.5, 0.25, 0.0])
            felt[node] = ratio[node] ** 2 if chance.random() < 0.7 or not ratio[node] else 1.0
    sizes = [1] * count
    for node in range(count - 1, 0, -1):
        sizes[parents[node]] += sizes[node]
    half = [1j * chance.uniform(0, 5e-6) for _ in range(count)]
    series = [complex(chance.uniform(0.02, 2), chance.uniform(0, 0.2)) for _ in range(count)]
    loads = [
        0j if node in controls or node < 2 else complex(chance.uniform(1e-4, 1e-2), 1e-5)
        for node in range(count)
    ]
    network = Network(
        tuple(parents), tuple(half), tuple(series), tuple(half), tuple(loads),
        tuple(ratio), tuple(felt),
    )  # fmt: skip
    return network, tuple(sizes), controls


def stands(network: Network, controls: set[int]) -> list[Stand]:
    """Meters out and back at every node, some with lines opened elsewhere."""
    chance = random.Random(len(network.parents))
    made = []
    for node in range(1, len(network.parents)):
        others = frozenset(chance.sample(range(2, len(network.parents)), 2)) - {node}
        bare = chance.random() < 0.3 and node not in controls
        made.append(Stand(node, "out", frozenset(), bare))
        made.append(Stand(node, "back", frozenset(), bare))
        made.append(Stand(node, "out", others, bare=False))
        made.append(Stand(node, "back", others, bare=False))
    return made


def changed(network: Network, change: Change) -> Network:
    """The circuit with the change made in it, for the matrix."""
    node = change.node
    if change.how == "load":
        return network.with_load(node, network.load_s[node] + change.one)
    if change.how == "joint":
        series = list(network.series_ohm)
        series[node] += change.one
        return network._replace(series_ohm=tuple(series))
    assert change.how == "control"
    return network.with_control(node, ratio=change.one, felt=change.two)


@pytest.mark.parametrize("seed", range(25))
def test_a_meter_sees_what_the_matrix_sees(seed: int) -> None:
    network, sizes, controls = random_network(seed, 14)
    for stand in stands(network, controls):
        probe = put_to(network, stand, sizes=sizes, controls=frozenset(controls))
        expected = seen_by_matrix(network, stand, sizes=sizes, controls=controls)
        assert probe.seen_s == pytest.approx(expected, rel=SLACK), stand


@pytest.mark.parametrize("seed", range(25))
def test_a_change_is_felt_as_the_matrix_feels_it(seed: int) -> None:
    network, sizes, controls = random_network(seed, 12)
    chance = random.Random(seed)
    for stand in stands(network, controls):
        probe = put_to(network, stand, sizes=sizes, controls=frozenset(controls))
        node = chance.randrange(2, 12)
        changes = [Change("joint", node, chance.uniform(0.1, 500))]
        if node in controls:
            changes.append(Change("control", node, 0.3, 0.09))
            changes.append(Change("control", node, 0.0, 0.0))
        else:
            changes.append(Change("load", node, 0.02, 0.0))
            changes.append(Change("load", node, -network.load_s[node].real, 0.0))
        for change in changes:
            expected = seen_by_matrix(
                changed(network, change), stand, sizes=sizes, controls=controls
            )
            seen = seen_with(probe, change, direct=False)
            assert seen == pytest.approx(expected, rel=SLACK), (stand, change)


Line = tuple[Network, tuple[int, ...], set[int]]


def spliced(network: Network, controls: set[int], node: int) -> Line:
    """The same line with an empty node halfway along the section in front of a node."""

    def moved(old: int) -> int:
        return old + (old >= node)

    half = network.series_ohm[node] / 2
    parents = [moved(parent) for parent in network.parents]
    parents[node] = node
    parents.insert(node, moved(network.parents[node]))
    new = {}
    for name in ("near_s", "series_ohm", "far_s", "load_s", "ratio", "felt"):
        values = list(getattr(network, name))
        plain = {"series_ohm": half, "ratio": 1.0, "felt": 1.0}.get(name, 0j)
        values.insert(node, plain)
        new[name] = values
    shunt = network.near_s[node] / 2
    for each in (node, node + 1):
        new["near_s"][each] = new["far_s"][each] = shunt
    new["series_ohm"][node + 1] = half
    made = Network(parents=tuple(parents), **{name: tuple(kept) for name, kept in new.items()})
    grown = [1] * len(parents)
    for each in range(len(parents) - 1, 0, -1):
        grown[parents[each]] += grown[each]
    return made, tuple(grown), {moved(one) for one in controls}


@pytest.mark.parametrize("seed", range(25))
def test_a_short_and_a_break_halfway_are_felt_as_the_matrix_feels_them(seed: int) -> None:
    network, sizes, controls = random_network(seed, 10)
    chance = random.Random(seed)
    node = chance.randrange(2, 10)
    bare_pair = Section(0j, network.series_ohm[node], 0j)  # on which side a stub lies is moot
    network = network.with_section(node, bare_pair)
    longer, grown, others = spliced(network, controls, node)
    for stand in stands(network, controls):
        if node in stand.lifted:
            continue  # the section hangs on nothing, and at which of its ends is not told
        probe = put_to(network, stand, sizes=sizes, controls=frozenset(controls))
        there = Stand(
            stand.node + (stand.node >= node),
            stand.looking,
            frozenset(one + (one > node) for one in stand.lifted),
            stand.bare,
        )
        bridged = longer.with_load(node, complex(1 / 2.5))
        expected = seen_by_matrix(bridged, there, sizes=grown, controls=others)
        short = seen_with(probe, Change("short", node, 0.5, 2.5), direct=False)
        assert short == pytest.approx(expected, rel=SLACK), stand
        series = list(longer.series_ohm)
        series[node + 1] = 1e14 + 0j
        broken = longer._replace(series_ohm=tuple(series))
        expected = seen_by_matrix(broken, there, sizes=grown, controls=others)
        seen = seen_with(probe, Change("cut", node, 0.5), direct=False)
        assert seen == pytest.approx(expected, rel=SLACK, abs=1e-13), stand

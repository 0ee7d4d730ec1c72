"""What-if answers of a prepared network are those of the network built anew."""

import math
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pycore.calc.finding import State
from pycore.calc.network import Network, solve
from pycore.calc.prepared import prepare
from pycore.calc.section import NO_CABLE, Section
from tests.laws.grown import HERTZ, STATES, stems
from tests.samples.lines import Stem, make_job
from tests.samples.solved import solve_job

CLOSE = 1e-7
WHICH = st.integers(0, 10**6)


def close(one: complex, other: complex, *, size: float = 0.0) -> bool:
    """Alike within rounding."""
    return abs(one - other) <= CLOSE * max(abs(one), abs(other), size)


def network_of(line: list[Stem], hz: float, *, state: Any) -> Network:
    """The network of a line."""
    return solve_job(make_job(line), hz=hz, state=state)[0].network


def pick(network: Network, which: int) -> int:
    """A node other than the terminals."""
    return 1 + which % (len(network.parents) - 1)


@given(stems(most=25), HERTZ, STATES, WHICH, st.sampled_from([1e-5, 1e-3, 0.125, 50.0]))
def test_another_load_is_told_without_solving_again(
    line: list[Stem], hz: float, state: State, which: int, extra_s: float
) -> None:
    network = network_of(line, hz, state=state)
    node = pick(network, which)
    quick = prepare(network, lifted=False).terminals_with_load(node, extra_s)
    anew = solve(network.with_load(node, network.load_s[node] + extra_s)).out_s[0]
    assert close(quick, anew)


@given(stems(most=25), HERTZ, STATES, WHICH, st.sampled_from([0.05, 3.0, 1e4]))
def test_a_bad_joint_is_told_without_solving_again(
    line: list[Stem], hz: float, state: State, which: int, extra_ohm: float
) -> None:
    network = network_of(line, hz, state=state)
    node = pick(network, which)
    near, series, far = network.near_s[node], network.series_ohm[node], network.far_s[node]
    quick = prepare(network, lifted=False).terminals_with_joint(node, extra_ohm)
    anew = solve(network.with_section(node, Section(near, series + extra_ohm, far))).out_s[0]
    assert close(quick, anew, size=abs(solve(network).out_s[0]))


@given(stems(most=25), HERTZ, STATES, WHICH)
def test_a_break_is_a_joint_without_end(
    line: list[Stem], hz: float, state: State, which: int
) -> None:
    network = network_of(line, hz, state=state)
    node = pick(network, which)
    prepared = prepare(network, lifted=False)
    assert close(
        prepared.terminals_with_joint(node, math.inf),
        prepared.terminals_with_joint(node, 1e15),
        size=abs(prepared.flow.out_s[0]),
    )


@given(stems(most=25), HERTZ, STATES, WHICH, st.booleans())
def test_what_a_meter_sees_at_a_point_is_what_volts_over_amperes_say(
    line: list[Stem], hz: float, state: State, which: int, lifted: bool
) -> None:
    """Turn the network round: hang it on the measured node and solve that tree."""
    network = network_of(line, hz, state=state)
    ones = (1.0,) * len(network.parents)
    network = network._replace(ratio=ones, felt=ones)
    node = pick(network, which)
    seen = prepare(network, lifted=lifted).driving_s(node)
    if math.isinf(seen.real):
        assert not lifted
        return
    assert close(seen, solve_from(network, node, lifted=lifted))


def solve_from(network: Network, start: int, *, lifted: bool) -> complex:
    """Siemens at a node of a network without controls, by walking outward from that node."""
    neighbours: dict[int, list[tuple[int, Section]]] = {}
    for child, parent in enumerate(network.parents):
        if child:
            near, far = network.near_s[child], network.far_s[child]
            series = network.series_ohm[child]
            neighbours.setdefault(parent, []).append((child, Section(near, series, far)))
            neighbours.setdefault(child, []).append((parent, Section(far, series, near)))

    def seen(node: int, came: int) -> complex:
        total = network.load_s[node]
        if node == 0 and not lifted:
            total += 1e15
        for other, section in neighbours.get(node, []):
            if other != came:
                beyond = seen(other, node) + section.far_s
                total += section.near_s + beyond / (1 + section.series_ohm * beyond)
        return total

    return seen(start, -1)


@given(stems(most=15), HERTZ, STATES)
def test_changing_and_changing_back_changes_nothing(
    line: list[Stem], hz: float, state: State
) -> None:
    network = network_of(line, hz, state=state)
    node = len(network.parents) - 1
    section = Section(network.near_s[node], network.series_ohm[node], network.far_s[node])
    ratio, felt = network.ratio[node], network.felt[node]
    there = network.with_load(node, 1j).with_section(node, NO_CABLE)
    there = there.with_control(node, ratio=0.5, felt=0.25)
    back = there.with_load(node, network.load_s[node]).with_section(node, section)
    assert back.with_control(node, ratio=ratio, felt=felt) == network


def test_a_network_of_terminals_alone_is_open() -> None:
    network = network_of([], 1000.0, state="override")
    assert solve(network).out_s == [0j]
    with pytest.raises(ZeroDivisionError):
        1 / solve(network).out_s[0]


def test_nothing_is_felt_of_what_hangs_behind_a_dead_control() -> None:
    dead = Stem(-1, 5.0, 1, 0.0, None, (-6.0, 0.0, "autotransformer"), off=True)
    bare = Stem(0, 0.0, 1, 0.0, None, None)
    prepared = prepare(network_of([dead, bare], 0.0, state="set"), lifted=False)
    whole_s = prepared.flow.out_s[0]
    assert prepared.terminals_with_load(2, 0.125) == whole_s
    assert prepared.terminals_with_joint(2, 3.0) == whole_s
    assert prepared.terminals_with_joint(2, math.inf) == whole_s

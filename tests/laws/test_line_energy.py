"""What goes into a line comes out of it: amperes at every node, watts as a whole."""

import math

from hypothesis import given
from hypothesis import strategies as st

from pycore.calc.finding import State
from pycore.calc.network import spend
from pycore.calc.solve import Run, solve_lines
from tests.laws.grown import HERTZ, STATES, stems
from tests.samples.lines import Stem, make_job
from tests.samples.solved import solve_job

CLOSE = 1e-9


@given(stems(most=40), HERTZ, STATES)
def test_watts_in_are_watts_played_and_watts_wasted(
    line: list[Stem], hz: float, state: State
) -> None:
    solved, _ = solve_job(make_job(line), hz=hz, state=state)
    spent = spend(solved.network, solved.flow)
    out_w = math.fsum((*spent.loads_w, *spent.copper_w, *spent.controls_w))
    assert math.isclose(spent.in_w, out_w, rel_tol=CLOSE, abs_tol=1e-15)


@given(stems(most=40), HERTZ, STATES)
def test_nothing_on_a_line_makes_watts(line: list[Stem], hz: float, state: State) -> None:
    solved, _ = solve_job(make_job(line), hz=hz, state=state)
    spent = spend(solved.network, solved.flow)
    for each in (*spent.loads_w, *spent.copper_w, *spent.controls_w):
        assert each >= -1e-12 * max(spent.in_w, 1e-12)


@given(stems(most=40), HERTZ, STATES)
def test_volts_drop_along_a_section_by_its_amperes_times_its_ohms(
    line: list[Stem], hz: float, state: State
) -> None:
    solved, _ = solve_job(make_job(line), hz=hz, state=state)
    network, at = solved.network, solved.flow.at
    for node in range(1, len(network.parents)):
        above = network.parents[node]
        drop = network.ratio[above] * at[above] - at[node]
        assert abs(drop - solved.flow.current(node) * network.series_ohm[node]) < 1e-13


@given(stems(most=40), HERTZ, STATES)
def test_as_much_current_leaves_every_node_as_comes(
    line: list[Stem], hz: float, state: State
) -> None:
    solved, _ = solve_job(make_job(line), hz=hz, state=state)
    for node in range(len(solved.network.parents)):
        amperes = amperes_at(solved, node)
        assert abs(sum(amperes)) <= CLOSE * max(sum(abs(each) for each in amperes), 1e-12)


def amperes_at(solved: Run, node: int) -> list[complex]:
    """All that leaves a node (what comes is negative), from the volts there."""
    network, at = solved.network, solved.flow.at
    ratio, felt = network.ratio[node], network.felt[node]
    amperes = [at[node] * network.load_s[node], at[node] * network.far_s[node]]
    # the terminals are fed by the amplifier, every other node through its section
    amperes.append(-solved.flow.current(node))
    for child, parent in enumerate(network.parents):
        if parent == node and child and ratio:
            near = ratio * at[node] * network.near_s[child]
            amperes.append(felt / ratio * (near + solved.flow.current(child)))
    return amperes


@given(stems(most=25), st.sampled_from([0.5, 4.0, 30.0]))
def test_an_amplifier_with_ohms_of_its_own_sinks_all_volts_alike(
    line: list[Stem], source_ohm: float
) -> None:
    stiff = solve_lines(make_job(line)).solved["z", "set"]
    soft = solve_lines(make_job(line, source_ohm=source_ohm)).solved["z", "set"]
    assert stiff.value is not None
    assert soft.value is not None
    assert soft.value.flow == stiff.value.flow
    assert soft.terminals_v is not None
    load_s = soft.value.flow.out_s[0]
    assert math.isclose(abs(soft.terminals_v * (1 + source_ohm * load_s)), 70.7, rel_tol=1e-12)

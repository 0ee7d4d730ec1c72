"""A line behaves: longer loses more, thicker less, volts scale, and pieces make the whole."""

import itertools
import math

from hypothesis import assume, given
from hypothesis import strategies as st

from pycore.calc.finding import State
from pycore.calc.lay import Asked, lay_out
from pycore.calc.pairs import pair_of
from pycore.calc.section import Section, exact_section
from pycore.calc.solve import run
from pycore.ground.words.en_line import CABLES as NAMES
from pycore.jobs.catalogue_cables import cable_kinds
from tests.laws.grown import HERTZ, STATES, stems
from tests.samples.lines import Stem, make_job
from tests.samples.solved import solve_job

SLACK = 1e-12
DIRECT = 0.0
KINDS = [kind for kind in cable_kinds(NAMES) if kind.awg is not None]


def volts(line: list[Stem], *, hz: float = DIRECT, line_v: float = 70.7) -> list[float]:
    """Volts at every point with the controls bypassed."""
    solved, order = solve_job(make_job(line, line_v=line_v), hz=hz, state="override")
    at = dict(zip(order, solved.flow.at[1:], strict=True))
    return [abs(at[f"p{number}"]) for number in range(len(line))]


@given(stems(most=20), st.integers(0, 10**6), st.sampled_from([1.0, 30.0, 500.0]))
def test_a_longer_section_leaves_less_beyond_it_and_more_before(
    line: list[Stem], which: int, more_m: float
) -> None:
    node = which % len(line)
    longer = [*line]
    longer[node] = line[node]._replace(length_m=line[node].length_m + more_m)
    before, after = volts(line), volts(longer)
    beyond = {node}
    for number, stem in enumerate(line):
        if stem.after in beyond:
            beyond.add(number)
    for number in range(len(line)):
        if number in beyond:
            assert after[number] <= before[number] + SLACK
        else:
            assert after[number] >= before[number] - SLACK


@given(stems(most=20), st.integers(0, 10**6), st.sampled_from([1.0, 60.0]))
def test_more_load_anywhere_lowers_every_voltage(
    line: list[Stem], which: int, more_w: float
) -> None:
    node = which % len(line)
    heavier = [*line]
    tap_w, tap_at_v = line[node].tap or (0.0, 70.7)
    heavier[node] = line[node]._replace(tap=(tap_w + more_w, tap_at_v), attenuator=None)
    for before, after in zip(volts(line), volts(heavier), strict=True):
        assert after <= before + SLACK


@given(stems(most=20, controls=False))
def test_each_thicker_gauge_loses_less(line: list[Stem]) -> None:
    job = make_job(line)
    pairs = {kind.id: pair_of(kind, 20.0) for kind in job.kinds.cables}
    laid = lay_out(job.zones[0], kinds=job.kinds, pairs=pairs, line_v=70.7)
    assume(laid.heard)
    losses = []
    for kind in KINDS:
        swapped = dict.fromkeys(range(1, len(laid.parents)), pair_of(kind, 30.0))
        at = run(laid, Asked(DIRECT, "override", swapped=swapped)).flow.at
        losses.append(-min(abs(at[node]) for node in laid.heard))
    for thin, thick in itertools.pairwise(losses):
        assert thick <= thin + SLACK


@given(stems(most=20), HERTZ, st.sampled_from([25.0, 50.0, 100.0, 140.0]))
def test_shares_of_volts_do_not_depend_on_the_line_voltage(
    line: list[Stem], hz: float, line_v: float
) -> None:
    for one, other in zip(volts(line, hz=hz), volts(line, hz=hz, line_v=line_v), strict=True):
        assert math.isclose(one, other, rel_tol=1e-12)


@given(stems(most=20), st.sampled_from([0.25, 0.5, 2.0, 8.0]))
def test_watts_times_and_ohms_over_a_number_change_no_loss(line: list[Stem], times: float) -> None:
    scaled = [
        stem._replace(
            length_m=stem.length_m / times,
            joint_ohm=stem.joint_ohm / times,
            tap=stem.tap and (stem.tap[0] * times, stem.tap[1]),
        )
        for stem in line
    ]
    for one, other in zip(volts(line), volts(scaled), strict=True):
        assert math.isclose(one, other, rel_tol=1e-12)


@given(stems(most=12), HERTZ, STATES, st.integers(0, 10**6), st.sampled_from([0.2, 0.5, 0.97]))
def test_a_box_in_the_middle_of_a_section_changes_nothing(
    line: list[Stem], hz: float, state: State, which: int, share: float
) -> None:
    node = which % len(line)
    cut = line[node]
    box = cut._replace(length_m=cut.length_m * share, tap=None, attenuator=None, off=False)
    rest = cut._replace(length_m=cut.length_m * (1 - share), joint_ohm=0.0, after=len(line))
    # the box comes last in the list: the order of a job's points means nothing
    pieces = [*line[:node], rest, *line[node + 1 :], box]
    whole, _ = solve_job(make_job(line), hz=hz, state=state)
    parts, _ = solve_job(make_job(pieces), hz=hz, state=state)
    assert abs(whole.flow.out_s[0] - parts.flow.out_s[0]) <= 1e-12 * abs(whole.flow.out_s[0])


@given(st.sampled_from([5.0, 60.0, 1e4]), st.floats(1e-9, 5.0), st.floats(0, 1e-5))
def test_a_section_is_the_same_on_both_sides_of_its_series(
    length_m: float, ohm_per_m: float, s_per_m: float
) -> None:
    """Two halves in chain are the whole, where the series and the functions meet and beyond."""
    line = complex(ohm_per_m, ohm_per_m / 3), complex(0, s_per_m)
    whole = exact_section(*line, length_m=length_m)
    half = exact_section(*line, length_m=length_m / 2)
    load_s = 0.01 + 0j

    def into(section: Section, beyond: complex) -> complex:
        ending = beyond + section.far_s
        return section.near_s + ending / (1 + section.series_ohm * ending)

    one, two = into(whole, load_s), into(half, into(half, load_s))
    assert abs(one - two) <= 1e-9 * abs(one)

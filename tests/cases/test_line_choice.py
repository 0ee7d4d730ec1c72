"""Choice of cable on lines whose answers are known, and what helps when no cable does."""

import math

import pytest

from pycore.calc.choice import choose_cable, longest_run
from pycore.calc.lay import lay_out
from pycore.calc.pairs import pair_of
from pycore.calc.rescue import rescues_of
from pycore.calc.trial import Trial, worst_with
from pycore.ground.words.en_line import CABLES as NAMES
from pycore.jobs import CableKind, Job, Limits
from pycore.jobs.catalogue_cables import cable_kinds
from tests.samples.halls import attenuator, job_of
from tests.samples.lines import make_chain, speaker

GAUGES = [kind for kind in cable_kinds(NAMES) if kind.awg is not None]
LENGTHS = [(40.0, 5.0), *[(8.0, 5.0)] * 19]
FIFTH = {"awg": 16, "stranded": True}


def twenty(loss_db: float = 0.5, **limits: float) -> Job:
    """20 × 5 W at 70.7 V, 40 m and 19 × 8 m, 30 °C, on 16 AWG."""
    job = make_chain(LENGTHS, cable=FIFTH, conductor_c=30.0, loss_db=loss_db)
    whole = Limits(loss_db=loss_db, load_fraction=0.8, conductor_c=30.0, **limits)
    return job.model_copy(update={"limits": whole})


@pytest.mark.parametrize(
    ("limit_db", "cable", "loss_db", "thinner", "thinner_db"),
    [
        # the sizing example: 2.083 / 1.349 / 0.865 / 0.551 / 0.349 / 0.221 / 0.139 dB (arithmetic)
        (0.5, "awg_14", 0.3492, "awg_16", 0.5507),
        (1.0, "awg_18", 0.8647, "awg_20", 1.3486),
        (0.2, "awg_10", 0.1393, "awg_12", 0.2207),
    ],
)
def test_the_thinnest_that_passes_and_the_next_that_does_not(
    limit_db: float, cable: str, loss_db: float, thinner: str, thinner_db: float
) -> None:
    pick = choose_cable(twenty(limit_db), "z", stocked=GAUGES).whole
    assert pick is not None
    assert (pick.cable, pick.thinner, pick.why_not) == (cable, thinner, "loses_too_much")
    assert math.isclose(pick.loss_db, loss_db, abs_tol=1.1e-4)
    assert math.isclose(pick.thinner_loss_db or 0, thinner_db, abs_tol=1.1e-4)


def test_the_thinnest_of_all_has_none_thinner() -> None:
    pick = choose_cable(twenty(3.0), "z", stocked=GAUGES).whole
    assert pick is not None
    assert (pick.cable, pick.thinner, pick.why_not) == ("awg_22", None, "none_thinner")


def test_never_thinner_than_the_person_wants() -> None:
    pick = choose_cable(twenty(3.0, thinnest_mm2=0.82), "z", stocked=GAUGES).whole
    assert pick is not None
    assert (pick.cable, pick.thinner, pick.why_not) == ("awg_18", "awg_20", "too_thin")


def test_never_thicker_than_the_terminals_take() -> None:
    choice = choose_cable(twenty(0.2, thickest_mm2=4.0), "z", stocked=GAUGES)
    assert choice.whole is None
    assert {rescue.way for rescue in choice.rescues} == {"split", "feed_middle", "higher_voltage"}
    assert {rescue.cable for rescue in choice.rescues} == {"awg_12"}


def test_a_cable_of_unknown_size_is_not_offered_where_sizes_are_limited() -> None:
    kind = CableKind(id="m", name="measured", loop_ohm_per_km=5.0, metal="copper")
    assert choose_cable(twenty(), "z", stocked=[kind]).whole is not None
    assert choose_cable(twenty(thickest_mm2=4.0), "z", stocked=[kind]).whole is None


def test_the_home_run_alone_may_do() -> None:
    pick = choose_cable(twenty(), "z", stocked=GAUGES).home_run
    assert pick is not None
    assert pick.cable == "awg_14"
    assert pick.loss_db < 0.5
    assert choose_cable(twenty(0.36), "z", stocked=GAUGES).home_run is None


def test_a_step_up_pays_most_where_most_is_lost() -> None:
    choice = choose_cable(twenty(), "z", stocked=GAUGES)
    first = choice.step_ups[0]
    assert (first.section, first.cable) == ("p0", "awg_14")
    assert math.isclose(first.gain_db, (choice.loss_db or 0) - first.loss_db)
    gains = [step.gain_db for step in choice.step_ups]
    assert gains == sorted(gains, reverse=True)
    assert gains[0] > 3 * gains[1]


def test_an_unknown_cable_does_not_keep_one_from_choosing() -> None:
    points = [speaker(n, length_m=10.0, tap_w=5.0, cable=None) for n in range(3)]
    choice = choose_cable(job_of(points), "z", stocked=GAUGES)
    assert choice.whole is not None
    assert choice.loss_db is None
    assert choice.home_run is None
    assert longest_run(job_of(points), "z").refused == "cables_unknown"


@pytest.mark.parametrize(
    ("change", "refused"),
    [
        ({"length_m": None}, "lengths_unknown"),
        ({"fitted": {"is": "junction", "label": ""}}, "no_loudspeakers"),
        ({"fitted": {"is": "loudspeaker", "label": "", "connected": True}}, "load_unknown"),
    ],
)
def test_why_nothing_can_be_chosen_is_said(change: dict[str, object], refused: str) -> None:
    job = job_of([{**speaker(0, length_m=10.0, tap_w=5.0), **change}])
    assert choose_cable(job, "z", stocked=GAUGES).refused == refused
    assert longest_run(job, "z").refused == refused
    nowhere = job_of([speaker(0, length_m=10.0, tap_w=5.0)], output=None)
    assert choose_cable(nowhere, "z", stocked=GAUGES).refused == "not_landed"


def test_the_longest_run_of_a_lumped_load_is_the_formula_s() -> None:
    # 0.5 dB, 100 W lumped, 70.7 V, 16 AWG stranded at 20 °C: 110.20 m (arithmetic)
    bare = {"inductance_uh_per_m": 0.0, "capacitance_pf_per_m": 0.0}
    job = make_chain([(30.0, 100.0)], cable={**FIFTH, **bare})
    longest = longest_run(job, "z")
    assert math.isclose(longest.longest_m or 0, 110.20, abs_tol=0.01)
    assert math.isclose((longest.stretch or 0) * 30.0, longest.longest_m or 0)
    assert (longest.loss_10k_db or 0) > 0.5


def trial_of(job: Job, limit_db: float) -> Trial:
    """The one zone of a job to try things on."""
    pairs = {kind.id: pair_of(kind, job.limits.conductor_c) for kind in job.kinds.cables}
    laid = lay_out(job.zones[0], kinds=job.kinds, pairs=pairs, line_v=70.7)
    return Trial(laid, pairs, job.kinds, limit_db)


def test_each_way_out_is_the_line_hung_that_way() -> None:
    # no inductance and no capacitance: 4 × 25 W, 100 m apart, 10 Ω/km
    bare = {"loop_ohm_per_km": 10.0, "inductance_uh_per_m": 0.0, "capacitance_pf_per_m": 0.0}
    job = make_chain([(100.0, 25.0)] * 4, cable=bare)
    trial = trial_of(job, 0.2)
    pair = trial.pairs["c"]
    ways = {one.way: one for one in rescues_of(trial, "c", pair=pair)}

    def lost(points: list[tuple[str | None, float]]) -> float:
        line = [
            {**speaker(n, length_m=length_m, tap_w=25.0), "after": after}
            for n, (after, length_m) in enumerate(points)
        ]
        hung = job.model_copy(update={"zones": job_of(line).zones})
        worst = worst_with(trial_of(hung, 0.2), {})
        assert worst is not None
        return worst.loss_db

    splits = {
        "p1": lost([(None, 100.0), (None, 200.0), ("p1", 100.0), ("p2", 100.0)]),
        "p2": lost([(None, 100.0), ("p0", 100.0), (None, 300.0), ("p2", 100.0)]),
        "p3": lost([(None, 100.0), ("p0", 100.0), ("p1", 100.0), (None, 400.0)]),
    }
    best = min(splits, key=lambda point: splits[point])
    assert ways["split"].point == best
    assert math.isclose(ways["split"].loss_db, splits[best], rel_tol=1e-12)
    middle = lost([("p1", 100.0), (None, 100.0), ("p1", 100.0), ("p2", 100.0)])
    assert ways["feed_middle"].run_m == 100.0
    assert ways["feed_middle"].loss_db <= middle + 1e-12
    assert ways["higher_voltage"].line_v == 100.0
    assert ways["higher_voltage"].loss_db < (worst_with(trial, {}) or (0, 9.0))[1] / 1.9


def test_no_feed_is_landed_beyond_a_control() -> None:
    points = [attenuator(None), {**speaker(0, length_m=900.0, tap_w=60.0), "after": "v"}]
    choice = choose_cable(job_of(points), "z", stocked=GAUGES[:1])
    assert choice.whole is None
    assert [rescue.way for rescue in choice.rescues] == ["higher_voltage"]


def test_a_line_of_the_highest_usual_voltage_is_offered_none_higher() -> None:
    job = make_chain([(2000.0, 100.0), (500.0, 50.0)], cable=FIFTH, line_v=100.0)
    choice = choose_cable(job, "z", stocked=GAUGES[:1])
    assert "higher_voltage" not in {rescue.way for rescue in choice.rescues}

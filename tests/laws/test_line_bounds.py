"""What is not known bounds what it turns out to be; what is chosen passes, and only just."""

import math
import random

from hypothesis import given
from hypothesis import strategies as st

from pycore.calc.choice import choose_cable, longest_run
from pycore.calc.line_loss import loss_of
from pycore.calc.solve import point_rows, solve_lines
from pycore.ground.words.en_line import CABLES as NAMES
from pycore.jobs import Job, Zone
from pycore.jobs.catalogue_cables import cable_kinds
from tests.laws.grown import stems
from tests.samples.lines import LENGTHS_M, Stem, grow, make_job, read_job
from tests.samples.patchy import CEILING

KINDS = [kind for kind in cable_kinds(NAMES) if kind.awg is not None]


@given(stems(most=15, controls=False), st.integers(0, 10**6), st.sampled_from(LENGTHS_M))
def test_a_length_not_known_bounds_whatever_it_turns_out_to_be(
    line: list[Stem], which: int, length_m: float
) -> None:
    node = which % len(line)
    filled = [*line]
    filled[node] = line[node]._replace(length_m=length_m)
    whole = _resistive(make_job(filled))
    patchy = _without_length(whole, f"p{node}")
    gap = solve_lines(patchy).solved["z", "override"]
    known, told = loss_of(solve_lines(whole).solved["z", "override"]), loss_of(gap)
    if told.low is not None and known.value is not None:
        assert told.low.loss_db <= known.value.loss_db + 1e-9
    before = {row["point"]: row for row in point_rows(whole)}
    for row in point_rows(patchy):
        loss_db, known_db = row["loss_db"], before[row["point"]]["loss_db"]
        if loss_db is not None:
            assert isinstance(known_db, float)
            assert known_db <= float(loss_db) + 1e-9
        assert row["point"] != f"p{node}" or loss_db is None


def _resistive(job: Job) -> Job:
    """With cables of resistance alone: a stub without load is then nothing at all."""
    none = {"inductance_uh_per_m": 0.0, "capacitance_pf_per_m": 0.0}
    cables = tuple(kind.model_copy(update=none) for kind in job.kinds.cables)
    return job.model_copy(update={"kinds": job.kinds.model_copy(update={"cables": cables})})


def _without_length(job: Job, point_id: str) -> Job:
    points = tuple(
        point.model_copy(update={"length_m": None}) if point.id == point_id else point
        for point in job.zones[0].line
    )
    return job.model_copy(update={"zones": (job.zones[0].model_copy(update={"line": points}),)})


@given(stems(most=15, controls=False))
def test_the_chosen_cable_passes_and_the_next_thinner_does_not(line: list[Stem]) -> None:
    job = make_job(line)
    choice = choose_cable(job, "z", stocked=KINDS)
    if choice.whole is None:
        return
    assert choice.whole.loss_db <= choice.limit_db * (1 + 1e-9)
    if choice.whole.thinner_loss_db is not None:
        assert choice.whole.thinner_loss_db > choice.limit_db
    picked = next(kind for kind in KINDS if kind.id == choice.whole.cable)
    relaid = job.model_copy(
        update={
            "kinds": job.kinds.model_copy(update={"cables": (picked,)}),
            "zones": (_recabled(job, picked.id),),
        }
    )
    loss = loss_of(solve_lines(relaid).solved["z", "override"]).value
    assert loss is not None
    assert math.isclose(loss.loss_db, choice.whole.loss_db, rel_tol=1e-9, abs_tol=1e-12)


def _recabled(job: Job, cable: str) -> Zone:
    points = tuple(point.model_copy(update={"cable": cable}) for point in job.zones[0].line)
    return job.zones[0].model_copy(update={"line": points})


@given(stems(most=12, controls=False))
def test_the_longest_run_just_passes(line: list[Stem]) -> None:
    bare = [stem._replace(joint_ohm=0.0) for stem in line]
    longest = longest_run(make_job(bare), "z")
    if longest.stretch is None or (longest.longest_m or 0) > 9e4:
        return
    assert longest.stretch > 0
    for part, passes in ((1 - 1e-6, True), (1 + 1e-6, False)):
        times = longest.stretch * part
        stretched = [stem._replace(length_m=stem.length_m * times) for stem in bare]
        if max(stem.length_m for stem in stretched) > 9_999:
            return
        loss = loss_of(solve_lines(make_job(stretched)).solved["z", "override"]).value
        assert loss is not None
        assert (loss.loss_db <= 0.5) is passes


def test_unknown_taps_bound_every_choice_of_them() -> None:

    taps = [tap for tap in CEILING["taps"] if tap["at_v"] == 70.7]
    chance = random.Random(7)
    for _ in range(25):
        whole = make_job(chance_line(chance)).model_dump(mode="json", by_alias=True)
        whole["kinds"]["loudspeakers"] = [CEILING]
        points = [p for p in whole["zones"][0]["line"] if p["fitted"]["is"] == "loudspeaker"]
        for point in points:
            point["fitted"].update({"kind": "ceiling", "tap_w": None, "tap_at_v": None})
        told = loss_of(solve_lines(read_job(whole)).solved["z", "override"])
        for point in points:
            point["fitted"].update({"tap_w": chance.choice(taps)["w"], "tap_at_v": 70.7})
        known = loss_of(solve_lines(read_job(whole)).solved["z", "override"])
        if not points:
            continue
        assert told.value is None
        assert told.low is not None
        assert told.high is not None
        assert known.value is not None
        assert told.low.loss_db - 1e-9 <= known.value.loss_db <= told.high.loss_db + 1e-9


def chance_line(chance: random.Random) -> list[Stem]:
    """A line without controls."""
    return grow(chance, chance.randint(1, 15), controls=False)

"""Which cable: the thinnest of the stocked ones that passes, where one step up pays most,
how far the line may run, and what would help when no cable does.

Each answer comes from solving the whole line with that cable in it; nothing is reckoned
from a lumped load. A cable passes when the worst loudspeaker keeps the zone's limit, with
the most load where taps are not known.
"""

from collections.abc import Sequence
from typing import Literal, NamedTuple

from pycore.calc.lay import Asked, Laid
from pycore.calc.line_loss import LONGEST_M, SLACK, Worst, limit_of
from pycore.calc.line_more import path_to
from pycore.calc.pairs import Pair, pair_of
from pycore.calc.rescue import Rescue, rescues_of
from pycore.calc.solve import HZ, TREBLE_HZ, Lines, run, solve_lines
from pycore.calc.trial import Trial, worst_with
from pycore.formulas import level
from pycore.ground.problems import BadCommand
from pycore.jobs import CableKind, Job

Refused = Literal["not_landed", "no_loudspeakers", "lengths_unknown", "load_unknown"]
WhyNot = Literal["loses_too_much", "too_thin", "none_thinner"]
# How many sections are tried one step up, of those that promise most.
MOST_TRIED = 5
# Halvings of a length: far finer than anybody cuts a cable.
HALVINGS = 40


class Stocked(NamedTuple):
    """A cable on offer and its pair at the job's heat."""

    id: str
    pair: Pair


class Pick(NamedTuple):
    """The thinnest cable that passes; the next thinner, what it would lose, and why not it."""

    cable: str
    loss_db: float
    thinner: str | None
    thinner_loss_db: float | None
    why_not: WhyNot


class StepUp(NamedTuple):
    """One section one step thicker, and what the worst loudspeaker loses then."""

    section: str
    cable: str
    loss_db: float
    gain_db: float


class CableChoice(NamedTuple):
    """What to pull through a zone. `refused` says why nothing could be chosen."""

    zone: str
    limit_db: float
    refused: Refused | None
    loss_db: float | None = None
    whole: Pick | None = None
    home_run: Pick | None = None
    step_ups: tuple[StepUp, ...] = ()
    rescues: tuple[Rescue, ...] = ()


class LongestRun(NamedTuple):
    """How far the line may run: every length times `stretch`, the far end at `longest_m`."""

    zone: str
    limit_db: float
    refused: Refused | Literal["cables_unknown", "nothing_passes"] | None
    stretch: float | None = None
    far_m: float | None = None
    longest_m: float | None = None
    loss_10k_db: float | None = None


def choose_cable(job: Job, zone_id: str, *, stocked: Sequence[CableKind]) -> CableChoice:
    """The cable for a zone from a stocked list, for the whole line and for its home run."""
    lines = solve_lines(job)
    trial, limit_db, refused = _trial_of(lines, zone_id)
    if trial is None or refused is not None:
        return CableChoice(zone_id, limit_db, refused)
    offered = _offered(job, stocked)
    allowed = [one for one in offered if _allowed(job, one.pair)]
    now = worst_with(trial, {}) if not _cables_unknown(trial.laid) else None
    every = list(range(1, len(trial.laid.parents)))
    home = [node for node in every if trial.laid.parents[node] == 0]
    whole = _pick(trial, every, offered=offered, allowed=allowed)
    rest_known = not any(trial.laid.unknown[node] for node in every if node not in home)
    thickest = allowed[-1] if allowed else None
    return CableChoice(
        zone=zone_id,
        limit_db=limit_db,
        refused=None,
        loss_db=now.loss_db if now else None,
        whole=whole,
        home_run=_pick(trial, home, offered=offered, allowed=allowed) if rest_known else None,
        step_ups=_step_ups(trial, now, allowed=allowed) if now else (),
        rescues=rescues_of(trial, thickest.id, pair=thickest.pair)
        if thickest and not whole
        else (),
    )


def longest_run(job: Job, zone_id: str) -> LongestRun:
    """The longest a zone's line may be, all its lengths in proportion, with its cables."""
    lines = solve_lines(job)
    trial, limit_db, refused = _trial_of(lines, zone_id)
    if trial is None or refused is not None:
        return LongestRun(zone_id, limit_db, refused)
    if _cables_unknown(trial.laid):
        return LongestRun(zone_id, limit_db, "cables_unknown")
    far_m = max(trial.laid.far_m[node] for node in trial.laid.heard)
    if not far_m or not trial.passes(worst_with(trial, {}, stretch=0.0)):
        return LongestRun(zone_id, limit_db, "nothing_passes" if far_m else "lengths_unknown")
    stretch = _bisect(trial, far_m)
    treble = worst_with(trial, {}, stretch=stretch, hz=TREBLE_HZ)
    return LongestRun(
        zone=zone_id,
        limit_db=limit_db,
        refused=None,
        stretch=stretch,
        far_m=far_m,
        longest_m=far_m * stretch,
        loss_10k_db=treble.loss_db if treble else None,
    )


def _bisect(trial: Trial, far_m: float) -> float:
    """The largest factor on all lengths that passes; no run longer than a line can be."""
    good, bad = 0.0, 1.0
    most = LONGEST_M / far_m
    while bad < most and trial.passes(worst_with(trial, {}, stretch=bad)):
        good, bad = bad, bad * 2
    bad = min(bad, most)
    for _ in range(HALVINGS):
        middle = (good + bad) / 2
        passes = trial.passes(worst_with(trial, {}, stretch=middle))
        good, bad = (middle, bad) if passes else (good, middle)
    return good


def _trial_of(lines: Lines, zone_id: str) -> tuple[Trial | None, float, Refused | None]:
    zone = next((one for one in lines.job.zones if one.id == zone_id), None)
    if zone is None:
        raise BadCommand("not_here", where={"zone": zone_id}, id=zone_id)
    job_loss_db = lines.job.limits.loss_db
    line = lines.solved.get((zone_id, "override"))
    if line is None:
        return None, job_loss_db if zone.loss_db is None else zone.loss_db, "not_landed"
    laid, limit_db = line.laid, limit_of(line, job_loss_db)
    refused: Refused | None = None
    if not laid.heard:
        refused = "no_loudspeakers"
    elif any(point.length_m is None for point in laid.points):
        refused = "lengths_unknown"
    elif any(draw.high is None for draw in laid.draws):
        refused = "load_unknown"
    return Trial(laid, lines.pairs, lines.job.kinds, limit_db), limit_db, refused


def _cables_unknown(laid: Laid) -> bool:
    return any(laid.unknown)


def _offered(job: Job, stocked: Sequence[CableKind]) -> list[Stocked]:
    """The stocked cables from the most ohms to the least."""
    offered = [Stocked(kind.id, pair_of(kind, job.limits.conductor_c)) for kind in stocked]
    return sorted(offered, key=lambda one: -one.pair.loop_ohm_per_km)


def _allowed(job: Job, pair: Pair) -> bool:
    """Neither thinner than the person wants nor thicker than the terminals take."""
    thinnest, thickest = job.limits.thinnest_mm2, job.limits.thickest_mm2
    if pair.area_mm2 is None:
        return thinnest is None and thickest is None
    above = thinnest is None or pair.area_mm2 >= thinnest / SLACK
    return above and (thickest is None or pair.area_mm2 <= thickest * SLACK)


def _pick(
    trial: Trial, nodes: list[int], *, offered: list[Stocked], allowed: list[Stocked]
) -> Pick | None:
    """The first allowed cable, thin to thick, with which these sections pass."""
    for one in allowed:
        worst = worst_with(trial, dict.fromkeys(nodes, one.pair))
        if worst is not None and trial.passes(worst):
            return _picked(trial, nodes, one=one, loss_db=worst.loss_db, offered=offered)
    return None


def _picked(
    trial: Trial, nodes: list[int], *, one: Stocked, loss_db: float, offered: list[Stocked]
) -> Pick:
    place = offered.index(one)
    if place == 0:
        return Pick(one.id, loss_db, None, None, "none_thinner")
    thinner = offered[place - 1]
    worst = worst_with(trial, dict.fromkeys(nodes, thinner.pair))
    why: WhyNot = "too_thin" if trial.passes(worst) else "loses_too_much"
    return Pick(one.id, loss_db, thinner.id, worst.loss_db if worst else None, why)


def _step_ups(trial: Trial, now: Worst, *, allowed: list[Stocked]) -> tuple[StepUp, ...]:
    """Each section on the way to the worst loudspeaker one step thicker; most gained first."""
    solved = run(trial.laid, Asked(HZ, "override", "high"))
    promised: list[tuple[float, int, Stocked]] = []
    for node in path_to(trial.laid.parents, now.node):
        pair = trial.laid.pairs[node]
        thicker = next((one for one in allowed if pair and _less(one.pair, pair)), None)
        if pair is None or thicker is None or not trial.laid.lengths_m[node]:
            continue
        above = abs(solved.flow.at[trial.laid.parents[node]])
        drop_db = level.loss_db(from_v=above, at_v=abs(solved.flow.at[node]))
        share = thicker.pair.loop_ohm_per_km / pair.loop_ohm_per_km
        promised.append((drop_db * (1 - share), node, thicker))
    promised.sort(key=lambda one: (-one[0], one[1]))
    tried = (_stepped(trial, now, node=node, to=to) for _, node, to in promised[:MOST_TRIED])
    return tuple(sorted(tried, key=lambda one: -one.gain_db))


def _less(one: Pair, other: Pair) -> bool:
    return one.loop_ohm_per_km < other.loop_ohm_per_km * (1 - 1e-9)


def _stepped(trial: Trial, now: Worst, *, node: int, to: Stocked) -> StepUp:
    then = worst_with(trial, {node: to.pair})
    loss_db = then.loss_db if then else now.loss_db
    gain_db = level.spread_db(most_db=now.loss_db, least_db=loss_db)
    return StepUp(trial.laid.points[node - 1].id, to.id, loss_db, gain_db)

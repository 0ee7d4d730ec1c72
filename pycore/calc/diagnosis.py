"""From readings and ears to suspects in groups, and the next reading to take."""

import math
from collections.abc import Sequence
from typing import NamedTuple

from pycore.calc import earth, priors
from pycore.calc.agreement import Contradiction, contradictions, one_explains
from pycore.calc.alike import Alike, alike
from pycore.calc.amperes import with_amperes
from pycore.calc.belief import Meter, hold
from pycore.calc.candidates import Reach, boxes_of, candidates
from pycore.calc.changed import Changed, changed
from pycore.calc.due import outdated
from pycore.calc.evidence import Collected, collect
from pycore.calc.faults import Fault, Scene, list_faults
from pycore.calc.fitted import fitted_faults
from pycore.calc.foreign import is_live
from pycore.calc.hearing import Ears
from pycore.calc.likelihood import log_likelihood
from pycore.calc.next_measurement import Asked, Next, ask_all, choose, group
from pycore.calc.other_tests import may_play, near_first, other_tests
from pycore.calc.reading import OHMS, Meant, Taken, sort_reading
from pycore.calc.site import Given, Site, site_of
from pycore.calc.suspects import Suspect, gather, thinned
from pycore.calc.two_faults import Progress, search, with_pairs
from pycore.calc.weigh import Proof, Weighed, weigh
from pycore.calc.wiring import TEST_HZ, Condition, Controls
from pycore.jobs import Job

SETTLED = 0.95  # a group that is given so much is told as found
MOST_HELD = 160
MOST_HELD_OF_MANY = 80
MOST_GROUPED = 24


class Question(NamedTuple):
    """A job, a place on it, and all that was read, heard and said."""

    job: Job
    where: dict[str, str]
    taken: tuple[Taken, ...]
    baselines: tuple[Taken, ...]
    given: Given
    complaint: str | None
    costs: priors.Costs


class Group(NamedTuple):
    """Suspects that nothing tells apart; `share` of all, `inside`: the readings agree."""

    share: float
    suspects: tuple[int, ...]


class Step(NamedTuple):
    """Where a long diagnosis goes on, and how much work it may do before it answers."""

    so_far: Progress | None
    budget: int


class Diagnosis(NamedTuple):
    """What came of it. `groups` count suspects by their place in `suspects`, `next` by theirs in
    `held`, where the unlikely ones are thinned out. `one_explains`: a single fault agrees with
    every reading; if not, `progress` tells how far the search for two has come. `box`: the
    node at which it lies all but surely, whatever it is there. `live`: foreign volts stand on the
    line, so nothing more is measured on it before they are gone. `aside`: readings that later ones
    contradict, `before`: those of a line that has changed since; neither are among `meants`, and
    they weigh nothing."""

    site: Site
    proof: Proof
    collected: Collected
    meants: tuple[Meant, ...]
    weighed: Weighed
    suspects: list[Suspect]
    held: list[Suspect]
    groups: tuple[Group, ...]
    asked: list[Asked]
    next: Next | None
    settled: bool
    live: bool
    box: int | None
    alike: Alike
    one_explains: bool
    progress: Progress | None
    contradictions: list[Contradiction]
    aside: tuple[Changed, ...]
    before: tuple[Meant, ...]

    @property
    def done(self) -> bool:
        """Whether there is nothing left to search."""
        return self.progress is None or self.progress.done


class Sorted(NamedTuple):
    """The evidence of a question, sorted and collected."""

    site: Site
    proof: Proof
    collected: Collected
    meants: tuple[Meant, ...]
    alike: Alike


def proof_of(question: Question) -> Sorted:
    """Sort and collect everything that was read and heard."""
    site = site_of(question.job, question.where, given=question.given)
    leads = question.given.leads_ohm
    meants = tuple(sort_reading(one, leads_ohm=leads) for one in question.taken)
    joined = with_amperes(meants)
    references = [sort_reading(one, leads_ohm=leads) for one in question.baselines]
    collected = collect(site, joined, references=references)
    heard = [one for one in question.taken if one.quantity == "plays"]
    told = alike(site, meants, load_variance=(question.given.load_pct / 100) ** 2 / 3)
    proof = Proof(
        site=site,
        evidence=collected.evidence,
        ears=Ears(site, heard),
        legs=earth.leakages(site, meants),
        complaint=question.complaint,
        bias=told.bias,
        load_variance=told.variance,
    )
    return Sorted(site, proof, collected, meants, told)


def faults_of(site: Site) -> list[Fault]:
    """Every single fault of the zones in question."""
    condition = Condition(TEST_HZ, "open", site.job.limits.conductor_c)
    foreign = [one.circuits.wired.ids[one.node] for one in site.circuits.foreign]
    scene = Scene(site.circuits.wired, site.zones, site.circuits.flow(condition), foreign)
    return list_faults(scene)


def diagnose(question: Question, step: Step) -> Diagnosis:
    """Weigh every single fault, and two at once where one does not explain the readings; group
    what nothing tells apart; choose the next reading."""
    question, before = _of_today(question)
    aside = _aside(question)
    gone = [one.then.taken for one in aside]
    question = question._replace(taken=tuple(one for one in question.taken if one not in gone))
    made = proof_of(question)
    proof = made.proof
    faults = [*faults_of(made.site), *fitted_faults(made.site, proof.evidence)]
    weighed = weigh(faults, proof)
    explained = one_explains(weighed, proof)
    progress = None
    if not explained:
        progress = search(weighed, proof, so_far=step.so_far, budget=step.budget)
        if progress.done:
            weighed = with_pairs(weighed, proof, found=progress)
    told = _concluded(question, made, weighed=weighed)
    return told._replace(one_explains=explained, progress=progress, aside=aside, before=before)


def _of_today(question: Question) -> tuple[Question, tuple[Meant, ...]]:
    """What was read of the line as it is, and what was read before it changed; a baseline of
    another line is none."""
    every = (*question.taken, *question.baselines)
    if all(one.due is None for one in every):
        return question, ()
    site = site_of(question.job, question.where, given=question.given)
    leads = question.given.leads_ohm
    old = [
        one
        for one in (sort_reading(each, leads_ohm=leads) for each in every)
        if outdated(site, one) is not None
    ]
    gone = [one.taken for one in old]
    today = question._replace(
        taken=tuple(one for one in question.taken if one not in gone),
        baselines=tuple(one for one in question.baselines if one not in gone),
    )
    return today, tuple(one for one in old if one.taken in question.taken)


def _aside(question: Question) -> tuple[Changed, ...]:
    """What was read before the line changed."""
    leads = question.given.leads_ohm
    return tuple(changed([sort_reading(one, leads_ohm=leads) for one in question.taken]))


def _concluded(question: Question, made: Sorted, *, weighed: Weighed) -> Diagnosis:
    """Groups and the next reading, from faults that are weighed."""
    proof, suspects = made.proof, gather(weighed)
    held = thinned(suspects, most=_most_held(made.site))
    asked = _ask(question, made, weighed=weighed, suspects=held)
    ohms = [one for one in asked if one.test.quantity in OHMS]
    groups = _groups(suspects, ohms, weighed=weighed, proof=proof)
    settled = groups[0].share >= SETTLED
    live = is_live(made.site, made.meants)
    chosen = None if settled or live else choose(asked)
    return Diagnosis(
        site=made.site,
        proof=proof,
        collected=made.collected,
        meants=made.meants,
        weighed=weighed,
        suspects=suspects,
        held=held,
        groups=groups,
        asked=asked,
        next=near_first(proof.site, chosen=chosen, meants=made.meants),
        settled=settled,
        live=live,
        box=_box(suspects),
        alike=made.alike,
        one_explains=True,
        progress=None,
        contradictions=contradictions(weighed, proof),
        aside=(),
        before=(),
    )


def _box(suspects: Sequence[Suspect]) -> int | None:
    """The node that all but surely has a fault, whichever."""
    shares: dict[int, float] = {}
    for one in suspects:
        family, node, _, other = one.key
        if family != "healthy":
            for place in {node, other} - {-1}:
                shares[place] = shares.get(place, 0.0) + one.share
    best = max(shares, key=lambda node: shares[node], default=None)
    return best if best is not None and shares[best] >= SETTLED else None


def _most_held(site: Site) -> int:
    many = len(site.circuits.wired.ids) > 400
    return MOST_HELD_OF_MANY if many else MOST_HELD


def _ask(
    question: Question, made: Sorted, *, weighed: Weighed, suspects: Sequence[Suspect]
) -> list[Asked]:
    """Everything that could be done next, with what it would tell."""
    proof = made.proof
    measured = [one for one in question.taken if one.quantity not in ("plays", "foreign_v")]
    last = measured[-1] if measured else None
    controls: Controls = last.controls if last else "open"
    reach = Reach(controls, question.costs, last.place if last else None)
    tests = candidates(proof.site, suspects, reach=reach, taken=measured)
    tests += other_tests(
        proof,
        boxes_of(proof.site, suspects),
        reach=reach,
        meants=made.meants,
        playable=may_play(proof=proof, suspects=suspects, meants=made.meants),
    )
    tests = [one for one in tests if one.cost < math.inf]  # what cannot be done is not asked for
    pct = min(max(last.tolerance_pct if last else priors.METER_PCT, priors.LEAST_PCT), 50.0)
    warm_c = last.temperature_c if last and last.temperature_c is not None else None
    meter = Meter(
        fraction=pct / 100,
        references=[sort_reading(one, leads_ohm=None) for one in question.baselines],
        conductor_c=proof.site.job.limits.conductor_c if warm_c is None else warm_c,
    )
    held = hold(weighed, proof, suspects=suspects)
    return ask_all(held, tests, proof=proof, meter=meter)


def _groups(
    suspects: Sequence[Suspect], asked: Sequence[Asked], *, weighed: Weighed, proof: Proof
) -> tuple[Group, ...]:
    """The likeliest suspects in groups; the rest each by itself."""
    head = suspects[:MOST_GROUPED]
    shared = proof.shared
    so_far = [log_likelihood(weighed.rows[one.variants[0]], shared) for one in head]
    members = group(head, asked, so_far=so_far)
    groups = [Group(sum(head[each].share for each in one), tuple(one)) for one in members]
    groups.extend(
        Group(one.share, (number,))
        for number, one in enumerate(suspects[MOST_GROUPED:], start=MOST_GROUPED)
    )
    return tuple(sorted(groups, key=lambda one: -one.share))

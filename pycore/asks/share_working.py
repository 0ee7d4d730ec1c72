"""The ask `share_working`: how the share, or the rank, of a group of suspects came to be."""

import math
from collections.abc import Generator, Iterable, Iterator, Sequence

from pycore.asks.answers import WorkingAnswer
from pycore.asks.diagnosing import LOG_OPEN
from pycore.asks.explain import step_answer
from pycore.asks.meter_bodies import ShareWorkingBody
from pycore.asks.meter_question import line_of, question_of, step_of
from pycore.asks.meter_readings import title_of
from pycore.asks.meter_tell import Tell
from pycore.asks.meter_together import MOST_GROUPS, rank_of
from pycore.calc import priors
from pycore.calc.diagnosis import Diagnosis, diagnose
from pycore.calc.suspects import key_of
from pycore.calc.together import bundled
from pycore.calc.weigh import Weighed
from pycore.formulas import meter, odds
from pycore.ground.problems import BadCommand
from pycore.ground.units import Manner
from pycore.ground.working import Known, Step, computed, step


def share_working(body: ShareWorkingBody, manner: Manner) -> WorkingAnswer:
    """The ask `share_working`. `resume`: the search for two faults as it stands on the page; it
    goes no further then, so that what is explained is what is shown.

    Raises BadCommand `share_gone`.
    """
    line = line_of(body, manner)
    so_far = step_of(body)
    if so_far.so_far is not None:
        so_far = so_far._replace(budget=0)
    told = diagnose(question_of(body, line, manner=manner), so_far)
    tell = Tell(told.site.circuits.wired, manner)
    if body.group >= min(len(told.groups), MOST_GROUPS):
        raise BadCommand("share_gone", where={"field": "group"})
    group = told.groups[body.group]
    first = told.suspects[group.suspects[0]].variants[0]
    steps = [*_readings(told, first, tell=tell), *share_steps(told, body.group, tell=tell)]
    codes = ("priors", "fit_counts")
    leads = body.group == 0 and 0 in bundled(told)[0].groups
    return {
        "title": tell.fault(told.weighed.faults[first]),
        "result": rank_of(told, group.share, first=leads, tell=tell),
        "steps": [step_answer(one, manner) for one in steps],
        "assumptions": [tell.say("meter_assumed", code) for code in codes],
    }


def _readings(told: Diagnosis, variant: int, *, tell: Tell) -> Iterator[Step]:
    """Each reading in ohms against what the likeliest of the group would make it."""
    pairs = zip(told.proof.evidence, told.weighed.expected[variant], strict=True)
    for one, would in pairs:
        if one.kind != "ohm" or one.sign != "number" or would.log_ohm > LOG_OPEN:
            continue
        inputs = {
            "read_ohm": Known(math.exp(one.log_read), "ohm", "typed"),
            "expected_ohm": Known(math.exp(would.log_ohm), "ohm", "computed"),
        }
        title = title_of(one.meant, tell)
        yield step("reading_off", meter.deviation_fraction, inputs=inputs, title=title)


def share_steps(told: Diagnosis, place: int, *, tell: Tell) -> Iterator[Step]:
    """How often such a thing is met, how much better than all else the readings fit it, and what
    that makes of all that was weighed: single faults, and two at once where they were searched."""
    weights = Weights(told.weighed)
    own = weights.members(told, place)
    prior = yield from _prior(told, own, weights=weights, tell=tell)
    inputs = {
        "own_fit_factor": Known(weights.fit(own), "factor", "computed"),
        "average_fit_factor": Known(weights.average, "factor", "computed"),
    }
    fit = step("cause_fit", odds.fit_factor, inputs=inputs)
    yield fit
    inputs = {"prior_fraction": prior, "fit_factor": computed(fit)}
    yield step("cause_share", odds.share_fraction, inputs=inputs)


def _prior(
    told: Diagnosis, own: Sequence[int], *, weights: "Weights", tell: Tell
) -> Generator[Step, None, Known]:
    """How often one of the group is met: by family, or two together; and the rest of the group."""
    faults = told.weighed.faults
    best = max(own, key=lambda number: told.weighed.logs[number])
    if faults[best].also is None:
        alone = [number for number in own if faults[number].also is None]
        made = weights.met(alone, tell=tell)
    else:
        alone = [best]
        first, second = (weights.met([number], tell=tell) for number in weights.both(best))
        yield first
        yield second
        inputs = {
            "first_fraction": computed(first),
            "second_fraction": computed(second),
            "again_fraction": Known(priors.SECOND_FAULT, "fraction", "assumed", priors.SOURCE),
        }
        made = step("pair_prior", odds.pair_prior_fraction, inputs=inputs)
    yield made
    others = [number for number in own if number not in alone]
    if not others:
        return computed(made)
    more = Known(weights.of(others) / weights.singles, "fraction", "computed")
    inputs = {"first_fraction": computed(made), "others_fraction": more}
    whole = step("group_prior", odds.with_others_fraction, inputs=inputs)
    yield whole
    return computed(whole)


class Weights:
    """The priors as they were weighed, and how well the readings fit each fault, against the
    best: so that no number is too small to be shown."""

    def __init__(self, weighed: Weighed) -> None:
        self.weighed = weighed
        self.priors = [math.exp(one) for one in weighed.priors]
        fits = [log - one for log, one in zip(weighed.logs, weighed.priors, strict=True)]
        best = max(fits)
        self.fits = [math.exp(one - best) for one in fits]
        single = [number for number, one in enumerate(weighed.faults) if one.also is None]
        self.singles = self.of(single)
        everything = range(len(self.priors))
        self.average = self.fitted(everything) / self.singles

    def of(self, numbers: Iterable[int]) -> float:
        """The weight of faults together, before anything was read."""
        return math.fsum(self.priors[number] for number in numbers)

    def fitted(self, numbers: Iterable[int]) -> float:
        """The same after the readings."""
        return math.fsum(self.priors[number] * self.fits[number] for number in numbers)

    def fit(self, numbers: Sequence[int]) -> float:
        """How well the readings fit some faults on average, each by its weight."""
        return self.fitted(numbers) / self.of(numbers)

    def met(self, numbers: Sequence[int], *, tell: Tell) -> Step:
        """How often some single faults are met among all."""
        inputs = {
            "cause_factor": Known(self.of(numbers), "factor", "assumed", priors.SOURCE),
            "all_factor": Known(self.singles, "factor", "assumed", priors.SOURCE),
        }
        faults = [self.weighed.faults[number] for number in numbers]
        if len({key_of(one) for one in faults}) > 1:
            return step("group_met", odds.prior_fraction, inputs=inputs)
        return step("cause_prior", odds.prior_fraction, inputs=inputs, fault=tell.fault(faults[0]))

    def both(self, pair: int) -> tuple[int, int]:
        """The two single faults of a pair."""
        faults = self.weighed.faults
        whole = faults[pair]
        single = faults.index(whole._replace(also=None))
        return single, faults.index(whole.also) if whole.also else single

    def members(self, told: Diagnosis, place: int) -> list[int]:
        """Every fault of a group, however unlikely."""
        keys = {told.suspects[one].key for one in told.groups[place].suspects}
        faults = enumerate(self.weighed.faults)
        return [number for number, fault in faults if key_of(fault) in keys]

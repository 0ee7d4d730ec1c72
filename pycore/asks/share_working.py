"""The ask `share_working`: how the share, or the rank, of a group of suspects came to be."""

import math
from collections.abc import Iterator, Sequence

from pycore.asks.answers import WorkingAnswer
from pycore.asks.diagnosing import LOG_OPEN, MOST_GROUPS, rank_of
from pycore.asks.explain import step_answer
from pycore.asks.meter_bodies import ShareWorkingBody
from pycore.asks.meter_question import line_of, question_of, step_of
from pycore.asks.meter_readings import title_of
from pycore.asks.meter_tell import Tell
from pycore.calc.diagnosis import Diagnosis, diagnose
from pycore.calc.weigh import log_priors
from pycore.formulas import meter
from pycore.ground.problems import BadCommand
from pycore.ground.units import Manner
from pycore.ground.working import Known, Step, computed, step


def share_working(body: ShareWorkingBody, manner: Manner) -> WorkingAnswer:
    """The ask `share_working`. Of two faults together only the readings are told."""
    line = line_of(body, manner)
    told = diagnose(question_of(body, line, manner=manner), step_of(body))
    tell = Tell(told.site.circuits.wired, manner)
    if body.group >= min(len(told.groups), MOST_GROUPS):
        raise BadCommand("share_gone", where={"field": "group"})
    group = told.groups[body.group]
    first = told.suspects[group.suspects[0]].variants[0]
    steps = [*_readings(told, first, tell=tell), *_share(told, body.group)]
    codes = ("priors", "fit_counts")
    return {
        "title": tell.fault(told.weighed.faults[first]),
        "result": rank_of(told, group.share, place=body.group, tell=tell),
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


def _share(told: Diagnosis, place: int) -> Sequence[Step]:
    """How often such a thing is met, and what the readings make of it."""
    faults = told.weighed.faults
    if any(one.also is not None for one in faults):
        return ()
    group = told.groups[place]
    weights = [math.exp(one) for one in log_priors(faults, told.proof)]
    own = [variant for one in group.suspects for variant in told.suspects[one].variants]
    inputs = {
        "cause_factor": Known(math.fsum(weights[variant] for variant in own), "factor", "assumed"),
        "all_factor": Known(math.fsum(weights), "factor", "assumed"),
    }
    prior = step("cause_prior", meter.prior_fraction, inputs=inputs)
    fit = Known(group.share / prior.result, "factor", "computed")
    inputs = {"prior_fraction": computed(prior), "fit_factor": fit}
    return prior, step("cause_share", meter.share_fraction, inputs=inputs)

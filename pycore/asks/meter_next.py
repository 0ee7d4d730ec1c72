"""The next reading in words: where, what to lift, and what each outcome would mean."""

import math

from pycore.asks.meter_answers import NextAnswer, OutcomeAnswer
from pycore.asks.meter_tell import Tell
from pycore.calc.diagnosis import Diagnosis
from pycore.calc.next_measurement import Outcome

CAUTIONS = ("prove_dead", "fire_panel", "controls_full", "leads_null")
MOST_NAMED = 3
LEAST_SHARE = 0.002


def next_answer(told: Diagnosis, tell: Tell) -> NextAnswer | None:
    """The next reading to take; None when none is worth it."""
    if told.next is None:
        return None
    test = told.next.test
    return {
        "words": tell.test(test),
        "where": tell.where(test.stand.node),
        "looking": test.stand.looking,
        "lifted": list(test.lifted),
        "quantity": test.quantity,
        "controls": test.controls,
        "cost": test.cost,
        "bits": told.next.bits,
        "cautions": [tell.say("meter_caution", code) for code in CAUTIONS],
        "outcomes": [
            _outcome(told, one, tell=tell) for one in told.next.outcomes if one.share >= LEAST_SHARE
        ],
    }


def _outcome(told: Diagnosis, outcome: Outcome, *, tell: Tell) -> OutcomeAnswer:
    named = outcome.suspects[:MOST_NAMED]
    faults = [told.weighed.faults[told.held[number].variants[0]] for number in named]
    code = "likely" if outcome.share >= 0.2 else "possible" if outcome.share >= 0.02 else "unlikely"
    return {
        "low": outcome.low_ohm,
        "high": None if math.isinf(outcome.high_ohm) else outcome.high_ohm,
        "shown": tell.range(outcome.low_ohm, outcome.high_ohm),
        "share": outcome.share,
        "rank": tell.say("meter_rank", code),
        "suspects": [tell.fault(fault) for fault in faults],
        "more": len(outcome.suspects) - len(named),
    }


def why_no_next(told: Diagnosis, tell: Tell) -> str:
    """Why no further reading is asked for."""
    family = told.weighed.faults[told.suspects[0].variants[0]].family
    if family == "healthy" and not told.proof.provoked:
        return tell.say("meter", "next_healthy")
    return tell.say("meter", "no_next_settled" if told.settled else "no_next")

"""The next reading in words: where, what to lift, and what each outcome would mean."""

import math

from pycore.asks.meter_answers import NextAnswer, OutcomeAnswer
from pycore.asks.meter_tell import Tell
from pycore.calc.diagnosis import Diagnosis
from pycore.calc.listening import Pattern
from pycore.calc.next_measurement import Outcome

CAUTIONS = ("prove_dead", "fire_panel", "controls_full", "leads_null")
LIVE = ("fire_panel", "play_low")
OTHER_CAUTIONS = {
    "plays": LIVE,
    "volts": (*LIVE, "live_line"),
    "earth_ohm": ("prove_dead", "fire_panel", "earth_test"),
}
MOST_NAMED = 3
LEAST_SHARE = 0.002


def next_answer(told: Diagnosis, tell: Tell) -> NextAnswer | None:
    """The next reading to take; None when none is worth it."""
    if told.next is None:
        return None
    test = told.next.test
    cautions = OTHER_CAUTIONS.get(test.quantity, CAUTIONS)
    return {
        "words": tell.test(told.next),
        "where": tell.where(test.stand.node),
        "looking": test.stand.looking,
        "lifted": list(test.lifted),
        "quantity": test.quantity,
        "controls": test.controls,
        "cost": test.cost,
        "bits": told.next.bits,
        "cautions": [tell.say("meter_caution", code) for code in cautions],
        "outcomes": [
            _outcome(told, one, tell=tell) for one in told.next.outcomes if one.share >= LEAST_SHARE
        ],
    }


def _outcome(told: Diagnosis, outcome: Outcome, *, tell: Tell) -> OutcomeAnswer:
    named = outcome.suspects[:MOST_NAMED]
    faults = [told.weighed.faults[told.held[number].variants[0]] for number in named]
    code = "likely" if outcome.share >= 0.2 else "possible" if outcome.share >= 0.02 else "unlikely"
    return {
        "low": outcome.low,
        "high": None if math.isinf(outcome.high) else outcome.high,
        "shown": _shown(told, outcome, tell=tell),
        "share": outcome.share,
        "rank": tell.say("meter_rank", code),
        "suspects": [tell.fault(fault) for fault in faults],
        "more": len(outcome.suspects) - len(named),
    }


def _shown(told: Diagnosis, outcome: Outcome, *, tell: Tell) -> str:
    """An outcome as it would be met: a range of ohms or of volts, or a kind of answer."""
    kind = outcome.kind
    if isinstance(kind, Pattern):
        return tell.heard(kind)
    if kind is not None:
        return tell.say("meter_outcome", f"leg_{kind}")
    if told.next is None or told.next.test.quantity != "volts":
        return tell.range(outcome.low, outcome.high)
    near_v = near_volts(told)
    unit, times = ("v", near_v) if near_v else ("fraction", 1.0)
    ends = [tell.show(min(one, 1.0) * times, unit) for one in (outcome.low, outcome.high)]
    code = "range" if near_v else "share_of_near"
    return tell.say("meter_outcome", code, low=ends[0], high=ends[1])


def near_volts(told: Diagnosis) -> float | None:
    """Volts read at the amplifier's end with the controls as the next reading has them."""
    wired = told.site.circuits.wired
    ends = {wired.ids[node] for node in (0, *wired.starts)}
    controls = told.next.test.controls if told.next else None
    read = [
        one.value
        for one in told.meants
        if one.taken.quantity == "volts"
        and one.taken.place in ends
        and one.taken.controls == controls
    ]
    return read[-1] if read else None


def why_no_next(told: Diagnosis, tell: Tell) -> str:
    """Why no further reading is asked for."""
    if told.live:
        return tell.say("meter", "next_live")
    family = told.weighed.faults[told.suspects[0].variants[0]].family
    if family == "healthy" and not told.proof.provoked:
        return tell.say("meter", "next_healthy")
    if not told.settled or family == "healthy":
        return tell.say("meter", "no_next")
    return tell.say("meter", "no_next_settled", words=_left(told, tell))


def _left(told: Diagnosis, tell: Tell) -> str:
    """The place that is left, as the first of its group tells it."""
    first = told.suspects[told.groups[0].suspects[0]]
    return tell.fault(told.weighed.faults[first.variants[0]])

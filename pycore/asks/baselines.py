"""What may be made a line's baseline: a visit on which all that was read last is in order.

Later visits are judged by a baseline within a few per cent, so one that was taken of a faulty
line would call the fault as expected for good.
"""

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from pycore.asks.meter_tell import Tell
from pycore.asks.record_answers import BaselineAnswer, RecordAnswer
from pycore.calc.judged import CHANGED
from pycore.calc.reading import Taken, taken_of
from pycore.jobs import Reading

RED = ("over", "near")


class Offer(NamedTuple):
    """The readings of one line and day that may be made its baseline (ids), none where
    something read last that day is not in order: `red`, in words."""

    readings: tuple[str, ...]
    red: tuple[str, ...]


def offer_of(
    readings: Iterable[Reading], judged: Mapping[str, RecordAnswer], *, tell: Tell
) -> Offer:
    """What the readings of a visit offer. Of readings taken alike only the last counts: what
    was red before a repair hinders nothing. How one plays hinders unless it plays well."""
    last: dict[tuple[object, ...], Reading] = {}
    for reading in readings:
        if reading.id in judged:
            last[taken_of(reading).setting] = reading
    red = tuple(
        red_said(taken_of(one), judged[one.id], tell=tell)
        for one in last.values()
        if hinders(one, judged[one.id])
    )
    fit = (one.id for one in last.values() if fits(one, judged[one.id]))
    return Offer(() if red else tuple(fit), red)


def offer_told(offer: Offer, tell: Tell) -> BaselineAnswer:
    """An offer for the page."""
    names = "; ".join(offer.red)
    why = tell.say("meter", "baseline_red", names=names) if names else ""
    return {"readings": list(offer.readings), "why": why}


def hinders(reading: Reading, record: RecordAnswer) -> bool:
    """Whether a reading says that the line is not in order."""
    if reading.quantity == "plays":
        return reading.value != "well"
    return record["verdict"] in RED


def fits(reading: Reading, record: RecordAnswer) -> bool:
    """Whether a reading was judged, and is in order."""
    unfit = reading.quantity == "plays" or record["code"] == CHANGED.code
    return not unfit and record["verdict"] in ("ok", "note")


def red_said(taken: Taken, record: RecordAnswer, *, tell: Tell) -> str:
    """What was read, and where, in a line."""
    if taken.quantity != "plays":
        texts = {"title": record["title"], "value": record["shown"]}
        return tell.say("meter", "baseline_one", **texts)
    return tell.say("meter", "baseline_heard", title=tell.name(taken.place), value=record["shown"])

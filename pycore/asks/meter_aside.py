"""Readings that a later one taken alike contradicts: shown where they stand, and not judged."""

from collections.abc import Sequence

from pycore.asks.meter_answers import ReadingAnswer
from pycore.asks.meter_readings import reading_shown, title_of
from pycore.asks.meter_tell import Tell
from pycore.calc.changed import Changed
from pycore.calc.diagnosis import Diagnosis

CODE = "set_aside"


def with_aside(
    readings: Sequence[ReadingAnswer], told: Diagnosis, *, order: Sequence[str], tell: Tell
) -> list[ReadingAnswer]:
    """The readings judged with those set aside between them. `order`: ids as they were kept."""
    every = [*readings, *(_set_aside(one, tell) for one in told.aside)]
    return sorted(every, key=lambda one: order.index(one["reading"]))


def changed_words(one: Changed, tell: Tell) -> str:
    """What was read then and what is read now."""
    then, now = reading_shown(one.then, tell), reading_shown(one.now, tell)
    return tell.say("meter", "changed", title=title_of(one.now, tell), then=then, now=now)


def _set_aside(one: Changed, tell: Tell) -> ReadingAnswer:
    then, now = reading_shown(one.then, tell), reading_shown(one.now, tell)
    return {
        "reading": one.then.taken.id,
        "title": title_of(one.then, tell),
        "shown": then,
        "band": None,
        "position": None,
        "deviation": "",
        "verdict": "note",
        "mark": tell.say("meter_mark", CODE),
        "code": CODE,
        "words": tell.say("meter_verdict", CODE, then=then, now=now),
        "remedy": tell.said_if("meter_remedy", CODE),
        "notes": [],
    }

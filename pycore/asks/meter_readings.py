"""Readings judged one by one: against what the line should read, and what it must never be."""

import math
from collections.abc import Sequence

from pycore.asks.meter_answers import ReadingAnswer
from pycore.asks.meter_tell import Tell
from pycore.calc import priors
from pycore.calc.expected import Band
from pycore.calc.judged import CHANGED, Judged, judged
from pycore.calc.reading import OVER_RANGE, Meant
from pycore.calc.site import Site
from pycore.calc.verdicts import least_of
from pycore.formulas import meter

UNITS = {"volts": "v", "amps": "a", "foreign_v": "v"}
# How the controls stand is no matter to these.
UNCONTROLLED = ("foreign_v",)
TITLED_ALONE = (*UNCONTROLLED, "earth_ohm", "plays")


def judged_readings(
    site: Site, meants: Sequence[Meant], *, baselines: Sequence[Meant], tell: Tell
) -> list[ReadingAnswer]:
    """Every reading given, judged."""
    return [
        told_of(one, judged(site, one, baselines=baselines), site=site, tell=tell) for one in meants
    ]


def told_of(one: Meant, of: Judged, *, site: Site, tell: Tell) -> ReadingAnswer:
    """A reading with its judgement in words."""
    shown, code = reading_shown(one, tell), of.verdict.code
    mark = tell.say("meter_mark", of.mark)
    texts = {"value": shown, "mark": mark, **_texts(of, site, tell=tell)}
    return {
        "reading": one.taken.id,
        "title": title_of(one, tell),
        "shown": shown,
        "band": tell.band(of.band) if of.band is not None else None,
        "position": position_in(one, of.band),
        "deviation": _deviation(one, of.band, tell=tell),
        "verdict": of.verdict.verdict,
        "mark": tell.say("meter_mark", code) if of.verdict is CHANGED else mark,
        "code": code,
        "words": tell.say("meter_verdict", code, **texts),
        "remedy": tell.said_if("meter_remedy", code, **texts),
        "notes": [tell.say("meter_note", each, **texts) for each in _notes(one, of)],
    }


def _notes(one: Meant, of: Judged) -> list[str]:
    """What has to be said beside a verdict: codes."""
    notes = [*one.notes]
    if one.taken.quantity == "foreign_v":
        notes.append("foreign_practice")
    if of.again:
        notes.append("against_baseline")
    if of.outdated is not None and of.verdict is not CHANGED:
        notes.append("line_changed")
    return notes


def _texts(of: Judged, site: Site, *, tell: Tell) -> dict[str, str]:
    """The numbers a verdict speaks of, ready to print."""
    wired = site.circuits.wired
    limit_ohm = least_of(wired.output, wired.line_v).ohm or 0.0
    texts = {"low": "", "high": "", "limit": tell.show(limit_ohm, "ohm")}
    texts["none_v"] = tell.show(priors.FOREIGN_NONE_V, "v")
    if of.band is not None:
        texts["low"] = tell.show(of.band.low or 0.0, "ohm")
        texts["high"] = tell.show(of.band.high, "ohm") if of.band.high is not None else ""
    if of.outdated is not None:
        texts["then"] = tell.band(of.outdated.then)["shown"]
        texts["due"] = tell.band(of.outdated.now)["shown"]
    return texts


def title_of(one: Meant, tell: Tell) -> str:
    """Where and what, in a line."""
    quantity = tell.say("meter_title", one.taken.quantity)
    if one.taken.quantity in TITLED_ALONE:
        place = tell.name(one.taken.place)
        return tell.say("meter_title", "reading_alone", place=place, quantity=quantity)
    controls = tell.say("meter_title", one.taken.controls)
    place = tell.name(one.taken.place)
    return tell.say("meter_title", "reading", place=place, quantity=quantity, controls=controls)


def reading_named(one: Meant, tell: Tell) -> str:
    """Which reading is meant: where and what, and what it showed."""
    return tell.say("meter", "pair_of", title=title_of(one, tell), value=reading_shown(one, tell))


def reading_shown(one: Meant, tell: Tell) -> str:
    """What the instrument showed."""
    value = one.taken.value
    if isinstance(value, str):
        return tell.say("meter_heard", value)
    if one.sign == "open":
        return tell.say("meter_title", "open_line")
    if abs(value) >= OVER_RANGE:
        return tell.say("meter_title", "over_range")
    if one.taken.quantity == "foreign_v" and one.value is not None:
        return tell.show(one.value, "v")
    return tell.show(value, UNITS.get(one.taken.quantity, "ohm"))


def position_in(one: Meant, band: Band | None) -> float | None:
    """Where in its band a reading lies: 0 at the low end, 1 at the high, beyond outside."""
    if band is None or band.low is None or band.high is None or not one.value:
        return None
    return math.log(one.value / band.low) / math.log(band.high / band.low)


def _deviation(one: Meant, band: Band | None, *, tell: Tell) -> str:
    """How far above or below what is expected."""
    if band is None or band.value is None or not one.value:
        return ""
    off = meter.deviation_fraction(read_ohm=one.value, expected_ohm=band.value)
    return tell.signed(off)

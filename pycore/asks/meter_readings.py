"""Readings judged one by one: against what the line should read, and what it must never be."""

import math
from collections.abc import Sequence

from pycore.asks.meter_answers import ReadingAnswer
from pycore.asks.meter_tell import Tell
from pycore.calc import priors
from pycore.calc.evidence import hidden_from_direct
from pycore.calc.expected import Band, band_at, band_of_baseline, tolerances_of
from pycore.calc.reading import OHMS, OVER_RANGE, Meant
from pycore.calc.site import Site, condition_of, stand_of
from pycore.calc.verdicts import Least, Verdict, judge, least_of
from pycore.formulas import meter

UNITS = {"volts": "v", "amps": "a", "foreign_v": "v"}
# How the controls stand is no matter to these.
UNCONTROLLED = ("foreign_v",)
TITLED_ALONE = (*UNCONTROLLED, "earth_ohm", "plays")


def judged_readings(
    site: Site, meants: Sequence[Meant], *, baselines: Sequence[Meant], tell: Tell
) -> list[ReadingAnswer]:
    """Every reading of this visit, judged."""
    least = least_of(site.circuits.wired.output, site.circuits.wired.line_v)
    return [_judged(site, one, baselines=baselines, least=least, tell=tell) for one in meants]


def baseline_of(one: Meant, baselines: Sequence[Meant]) -> Meant | None:
    """The latest baseline that was taken as a reading was."""
    again = [each for each in baselines if each.taken.setting == one.taken.setting]
    return max(again, key=lambda each: each.taken.at, default=None)


def band_for(site: Site, one: Meant, *, baselines: Sequence[Meant]) -> tuple[Band | None, bool]:
    """What a reading should be, and whether its own baseline says so."""
    if one.taken.quantity not in OHMS or one.taken.place not in site.circuits.wired.node_of:
        return None, False
    best = baseline_of(one, baselines)
    kept = band_of_baseline(best) if best is not None else None
    if kept is not None:
        return kept, True
    if one.taken.quantity == "dc_ohm" and hidden_from_direct(site, one):
        return None, False
    tolerances = tolerances_of(site, meter_fraction=min(one.meter_fraction, priors.MOST_PCT / 100))
    band, _ = band_at(
        site,
        condition_of(site, one.taken),
        stand=stand_of(site, one.taken),
        tolerances=tolerances,
    )
    return band, False


def _judged(
    site: Site, one: Meant, *, baselines: Sequence[Meant], least: Least, tell: Tell
) -> ReadingAnswer:
    band, kept = band_for(site, one, baselines=baselines)
    verdict = judge_at(site, one, band=band, least=least)
    shown = reading_shown(one, tell)
    texts = {"value": shown, "low": "", "high": "", "limit": tell.show(least.ohm or 0.0, "ohm")}
    texts["none_v"] = tell.show(priors.FOREIGN_NONE_V, "v")
    if band is not None:
        texts["low"] = tell.show(band.low or 0.0, "ohm")
        texts["high"] = tell.show(band.high, "ohm") if band.high is not None else ""
    notes = [tell.say("meter_note", code) for code in one.notes]
    if one.taken.quantity == "foreign_v":
        notes.append(tell.say("meter_note", "foreign_practice"))
    if kept:
        notes.append(tell.say("meter_note", "against_baseline"))
    return {
        "reading": one.taken.id,
        "title": title_of(one, tell),
        "shown": shown,
        "band": tell.band(band) if band is not None else None,
        "position": position_in(one, band),
        "deviation": _deviation(one, band, tell=tell),
        "verdict": verdict.verdict,
        "mark": tell.say("meter_mark", _mark(one, verdict=verdict, band=band)),
        "code": verdict.code,
        "words": tell.say("meter_verdict", verdict.code, **texts),
        "remedy": tell.said_if("meter_remedy", verdict.code, **texts),
        "notes": notes,
    }


def _mark(one: Meant, *, verdict: Verdict, band: Band | None) -> str:
    """Which word a verdict has: where it is off its band also to which side."""
    if verdict.verdict not in ("near", "over") or band is None or one.sign == "nothing":
        return verdict.verdict
    value = {"open": math.inf, "short": 0.0}.get(one.sign, one.value)
    if value is None or (band.low or 0.0) <= value <= (band.high or math.inf):
        return verdict.verdict
    return f"{verdict.verdict}_{'low' if value < (band.low or 0.0) else 'high'}"


def judge_at(site: Site, one: Meant, *, band: Band | None, least: Least) -> Verdict:
    """The verdict on a reading where it was taken."""
    wired = site.circuits.wired
    node = wired.node_of.get(one.taken.place)
    here = node is not None and wired.points[node] is None
    # a page's own state is the worst load; as set, a control may hide the line behind it
    as_set = one.taken.controls == "set" and any(
        wired.fitted(each) == "attenuator" for each in (wired.beyond(node) if node else ())
    )
    if node == 0 and one.taken.controls == "set":
        as_set = any(wired.fitted(each) == "attenuator" for each in range(len(wired.ids)))
    return judge(one, band, least=least, at_rack=here, controls=as_set)


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

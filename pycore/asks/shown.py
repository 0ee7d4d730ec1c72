"""A finding with its words: the numbers printed, the names put in, the sentence chosen."""

from collections.abc import Mapping
from functools import lru_cache
from typing import NamedTuple

from pycore.asks.answers import FindingAnswer, ShownTexts
from pycore.asks.verdict_words import verdict_words
from pycore.calc.finding import Finding
from pycore.calc.judge import PRINTED
from pycore.calc.line_loss import NEAR_TIMES
from pycore.ground.units import Manner, show, show_beside, show_typed, unit_of
from pycore.ground.words import ENGLISH, LANGUAGES, has, places_in, say

NAMED = (
    "zone",
    "kind",
    "attenuator",
    "first_id",
    "missing_id",
    "output",
    "point",
    "section",
    "near",
    "amplifier",
    "shared_by",
)
COUNTED = ("what_fits", "wrong_rows_count")
TYPED = ("tap_w", "tap_at_v", "line_v", "rated_w", "rated_at_v", "direct_ohm", "limit", "each_w")


class Bounds(NamedTuple):
    """A number that is known, or the least and most it can be; None is not known."""

    value: float | None
    low: float | None
    high: float | None


def marks_of(finding: Finding) -> tuple[float, ...]:
    """The numbers a finding is judged by: what stands close to one is told with more figures."""
    fraction = finding.values.get("fraction")
    if finding.limit is None:
        # a share of a limit stands against all of it, and what is planned for of it
        shares = finding.unit == "fraction" and isinstance(fraction, float)
        return (1.0, fraction) if shares and isinstance(fraction, float) else ()
    if finding.what == "zone_loss_db":
        return marks_of_loss(finding.limit)
    if not isinstance(fraction, float):
        return (finding.limit,)
    if finding.what == "output_impedance_ohm":
        return (finding.limit, finding.limit * PRINTED, finding.limit / fraction)
    return (finding.limit, finding.limit * fraction)


def marks_of_loss(limit_db: float) -> tuple[float, float]:
    """What a loss in cable is judged by (dB): its limit, and where "near" ends."""
    return limit_db, limit_db * NEAR_TIMES


def shown_finding(finding: Finding, names: Mapping[str, str], *, manner: Manner) -> FindingAnswer:
    """The finding as the page gets it."""
    place = names.get(next(iter(finding.where.values()), ""), "")
    shown = _shown(finding, manner)
    texts = {**_texts(finding, names, manner=manner), **_plain(shown, manner), "place": place}
    share = finding.values.get("share")
    return {
        "id": finding.id,
        "code": finding.code,
        "what": finding.what,
        "where": dict(finding.where),
        "state": finding.state,
        "value": finding.value,
        "low": finding.low,
        "high": finding.high,
        "unit": finding.unit,
        "verdict": finding.verdict,
        "verdict_words": verdict_words(finding.what, finding.verdict, manner=manner),
        "limit": finding.limit,
        "values": dict(finding.values),
        "words": say("finding", finding.code, values=texts, language=manner.language),
        "remedy": _remedy(finding, texts, manner=manner),
        "title": say("title", finding.what, values=texts, language=manner.language),
        "shown": shown,
        "share_fraction": share if isinstance(share, float) else None,
    }


def _remedy(finding: Finding, texts: Mapping[str, str], *, manner: Manner) -> str | None:
    if not has("remedy", finding.code):
        return None
    return say("remedy", finding.code, values=texts, language=manner.language)


def _shown(finding: Finding, manner: Manner) -> ShownTexts:
    """The finding's own numbers as texts: a range where the value is not one number."""
    shown: ShownTexts = {}
    marks = marks_of(finding)
    if finding.unit != "count" or finding.what in COUNTED:  # a mark has no number to show
        shown["value"] = range_text(finding, manner)
    if finding.low is not None:
        shown["low"] = show_beside(finding.low, finding.unit, marks=marks, manner=manner)
    if finding.high is not None:
        shown["high"] = show_beside(finding.high, finding.unit, marks=marks, manner=manner)
    if finding.limit is not None:
        # a rating worked out for this line is no maker's figure: a few of them say enough
        worked_out = finding.limit != finding.values.get("rated_w", finding.limit)
        worked_out = worked_out or "least_of_w" in finding.values
        limit = show_typed(finding.limit, finding.unit, manner=manner)
        shown["limit"] = _worked_out(finding, manner) if worked_out else limit
    if finding.unit == "w" and finding.limit and finding.high is not None:
        fraction = _number(finding, "fraction") or 1.0
        share = finding.high / finding.limit
        at_most = Bounds(None, None, share)
        told = Bounds(share, None, None) if finding.low == finding.high else at_most
        marks = (1.0, fraction)
        shown["share"] = bounds_text(told, "fraction", manner=manner, marks=marks)
        shown["left"] = bounds_text(_left_of(finding), "w", manner=manner)
    return shown


def _worked_out(finding: Finding, manner: Manner) -> str:
    """A limit that was worked out, with as many figures as tell it from the load on it."""
    loads = tuple(one for one in (finding.value, finding.low, finding.high) if one is not None)
    return show_beside(finding.limit or 0.0, finding.unit, marks=loads, manner=manner)


def _left_of(finding: Finding) -> Bounds:
    """What is left of a limit: so much, at least so much, or at most."""
    left_w, most_w = _number(finding, "left_w"), _number(finding, "left_most_w")
    exact = finding.values.get("left_exact")
    return Bounds(left_w, None, most_w) if exact or left_w is None else Bounds(None, left_w, None)


def _number(finding: Finding, name: str) -> float | None:
    value = finding.values.get(name)
    return value if isinstance(value, float) else None


def range_text(finding: Finding, manner: Manner) -> str:
    """One number, a number with the range it lies in, a range, a least, or "not known"."""
    if finding.code == "impedance_open":
        return say("face", "open_line", language=manner.language)
    bounds = Bounds(finding.value, finding.low, finding.high)
    return bounds_text(bounds, finding.unit, manner=manner, marks=marks_of(finding))


def bounds_text(bounds: Bounds, unit: str, *, manner: Manner, marks: tuple[float, ...] = ()) -> str:
    """The same for any number that may lie in a range, told apart from what it is judged by."""
    value, low, high = bounds
    ends = {
        name: show_beside(one, unit, marks=marks, manner=manner)
        for name, one in (("value", value), ("low", low), ("high", high))
        if one is not None
    }
    both = low is not None and high is not None
    if both and ends["low"] == ends["high"]:
        return ends["low"]
    if value is not None and not both:
        return ends["value"]
    return say("face", _range_code(bounds), values=ends, language=manner.language)


def _range_code(bounds: Bounds) -> str:
    """The words for a number in a range, for both its ends, for one of them, or for none."""
    value, low, high = bounds
    if value is not None:
        return "about"
    if low is not None and high is not None:
        return "range"
    return "at_least" if low else "at_most" if high is not None else "not_known"


def _plain(shown: ShownTexts, manner: Manner) -> dict[str, str]:
    unknown = say("face", "not_known", language=manner.language)
    texts = dict.fromkeys(("value", "limit", "left", "share"), unknown)
    texts.update({name: str(text) for name, text in shown.items()})
    return texts


@lru_cache(maxsize=2000)
def _places(code: str, what: str, *, language: str) -> frozenset[str]:
    """The values that the sentences of a finding speak of: the others need no text."""
    words = LANGUAGES.get(language, ENGLISH)
    templates = (words["finding"][code], words["remedy"].get(code, ""), words["title"][what])
    return frozenset(name for template in templates for name in places_in(template))


def _texts(finding: Finding, names: Mapping[str, str], *, manner: Manner) -> dict[str, str]:
    """Every value of a finding as text, its unit read from its name."""
    texts: dict[str, str] = {}
    unknown = say("face", "not_known", language=manner.language)
    wanted = _places(finding.code, finding.what, language=manner.language)
    for name, value in finding.values.items():
        if name not in wanted:
            continue
        if value is None:
            texts[name] = unknown
        elif isinstance(value, str):
            texts[name] = names.get(value, value) if name in NAMED else value
        else:
            unit = unit_of(name) or ("fraction" if name == "share" else "count")
            # a change of level is said as "quieter" or "louder", so its size alone is printed
            size = abs(value) if name == "change_db" else value
            texts[name] = (show_typed if name in TYPED else show)(size, unit, manner=manner)
    if "excess" in wanted and finding.limit is not None and finding.low is not None:
        excess_w = finding.low - finding.limit
        bounds = Bounds(excess_w if finding.low == finding.high else None, excess_w, None)
        texts["excess"] = bounds_text(bounds, "w", manner=manner)
    return texts

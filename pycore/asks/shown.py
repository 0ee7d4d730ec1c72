"""A finding with its words: the numbers printed, the names put in, the sentence chosen."""

from collections.abc import Mapping

from pycore.asks.answers import FindingAnswer, ShownTexts
from pycore.calc.finding import Finding
from pycore.ground.units import Manner, show, show_typed, unit_of
from pycore.ground.words import has, say

NAMED = (
    "zone",
    "kind",
    "attenuator",
    "first_id",
    "output",
    "point",
    "section",
    "near",
    "amplifier",
)
TYPED = ("tap_w", "tap_at_v", "line_v", "rated_w", "rated_at_v", "direct_ohm", "limit", "each_w")


def shown_finding(finding: Finding, names: Mapping[str, str], manner: Manner) -> FindingAnswer:
    """The finding as the page gets it."""
    place = names.get(next(iter(finding.where.values()), ""), "")
    shown = _shown(finding, manner)
    texts = {**_texts(finding, names, manner), **_plain(shown, manner), "place": place}
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
        "limit": finding.limit,
        "values": dict(finding.values),
        "words": say("finding", finding.code, texts, language=manner.language),
        "remedy": _remedy(finding, texts, manner),
        "title": say("title", finding.what, texts, language=manner.language),
        "shown": shown,
        "share_fraction": share if isinstance(share, float) else None,
    }


def _remedy(finding: Finding, texts: Mapping[str, str], manner: Manner) -> str | None:
    if not has("remedy", finding.code):
        return None
    return say("remedy", finding.code, texts, language=manner.language)


def _shown(finding: Finding, manner: Manner) -> ShownTexts:
    """The finding's own numbers as texts: a range where the value is not one number."""
    shown: ShownTexts = {"value": range_text(finding, manner)}
    if finding.low is not None:
        shown["low"] = show(finding.low, finding.unit, manner)
    if finding.high is not None:
        shown["high"] = show(finding.high, finding.unit, manner)
    if finding.limit is not None:
        shown["limit"] = show_typed(finding.limit, finding.unit, manner)
    if finding.unit == "w" and finding.limit is not None:
        most = finding.high if finding.value is None else finding.value
        if finding.limit > 0 and most is not None:
            shown["share"] = show(most / finding.limit, "fraction", manner)
        if most is not None:
            shown["left"] = show(max(0.0, finding.limit - most), "w", manner)
    return shown


def range_text(finding: Finding, manner: Manner) -> str:
    """One number, a range, a least, or "not known"."""
    if finding.value is not None:
        return show(finding.value, finding.unit, manner)
    if finding.low is not None and finding.high is not None:
        ends = {
            "low": show(finding.low, finding.unit, manner),
            "high": show(finding.high, finding.unit, manner),
        }
        return say("face", "range", ends, language=manner.language)
    if finding.low:
        least = {"low": show(finding.low, finding.unit, manner)}
        return say("face", "at_least", least, language=manner.language)
    return say("face", "not_known", language=manner.language)


def _plain(shown: ShownTexts, manner: Manner) -> dict[str, str]:
    unknown = say("face", "not_known", language=manner.language)
    texts = dict.fromkeys(("limit", "left", "share"), unknown)
    texts.update({name: str(text) for name, text in shown.items()})
    return texts


def _texts(finding: Finding, names: Mapping[str, str], manner: Manner) -> dict[str, str]:
    """Every value of a finding as text, its unit read from its name."""
    texts: dict[str, str] = {}
    unknown = say("face", "not_known", language=manner.language)
    for name, value in finding.values.items():
        if value is None:
            texts[name] = unknown
        elif isinstance(value, str):
            texts[name] = names.get(value, value) if name in NAMED else value
        else:
            unit = unit_of(name) or ("fraction" if name == "share" else "count")
            # a change of level is said as "quieter" or "louder", so its size alone is printed
            size = abs(value) if name == "change_db" else value
            texts[name] = (show_typed if name in TYPED else show)(size, unit, manner)
    if finding.unit == "w" and finding.limit is not None and finding.low is not None:
        texts["excess"] = show(max(0.0, finding.low - finding.limit), "w", manner)
    return texts

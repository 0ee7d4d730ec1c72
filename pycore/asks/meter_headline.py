"""The one line above a diagnosis: what matters first."""

from collections.abc import Sequence
from typing import NamedTuple

from pycore.asks.meter_answers import BundleAnswer, GroupAnswer, ReadingAnswer
from pycore.asks.meter_readings import reading_named
from pycore.asks.meter_tell import Tell
from pycore.calc.diagnosis import Diagnosis
from pycore.calc.finding import Verdict
from pycore.calc.judged import FLAT
from pycore.calc.missing import one_missing

MOST_LIKELY = 0.5
DEAD = ("foreign_none",)
BEFORE = "line_changed"
UNJUDGED = ("heard", "noted", "set_aside", BEFORE)


class Headline(NamedTuple):
    """A few words, how bad it is, and the sentence behind it."""

    words: str
    verdict: Verdict
    reason: str


def headline_of(
    told: Diagnosis,
    readings: Sequence[ReadingAnswer],
    *,
    groups: Sequence[GroupAnswer],
    bundles: Sequence[BundleAnswer],
    tell: Tell,
) -> Headline:
    """Foreign volts go first, then what must not be connected; then contradictions, or what
    was found."""
    fed = next((one for one in readings if told.live and one["code"] == "foreign_live"), None)
    if fed is not None:
        texts = {"shown": fed["shown"], "remedy": fed["remedy"] or ""}
        return Headline(tell.say("meter", "live"), "over", tell.say("meter", "live_act", **texts))
    flat = next((one for one in readings if one["code"] in FLAT), None)
    if flat is not None:
        reason = _flat_reason(flat, bundles[0], tell=tell)
        return Headline(tell.say("meter", "do_not_connect"), "over", reason)
    if told.contradictions:
        pair = told.contradictions[0]
        code = "contradiction_same" if pair.same else "contradiction"
        named = {one.taken.id: reading_named(one, tell) for one in told.meants}
        reason = tell.say("meter", code, one=named[pair.one], other=named[pair.other])
        return Headline(tell.say("meter", "contradiction"), "unknown", reason)
    if not told.proof.evidence and not told.proof.ears.any and not told.proof.legs:
        return _nothing(readings, tell=tell)
    first = groups[0]["suspects"][0]
    if told.settled and first["fault"] != "healthy":
        return Headline(tell.say("meter", "settled"), "over", first["words"])
    return _likeliest(told, readings, lead=bundles[0], tell=tell)


def _flat_reason(flat: ReadingAnswer, lead: BundleAnswer, *, tell: Tell) -> str:
    """Why a line must not be connected; one that reads as it should is too heavy as it is drawn,
    or else a ranking led by "nothing is wrong" would seem to say the opposite."""
    inside = flat["position"] is not None and 0 <= flat["position"] <= 1
    if flat["code"] != "do_not_connect" or not inside or lead["fault"] != "healthy":
        return flat["words"]
    return tell.say("meter", "heavy_as_drawn", words=flat["words"])


def of_rough_count(headline: Headline, *, tell: Tell) -> Headline:
    """What was found on a line known by a count alone: said so, with what makes it sure."""
    if headline.words != tell.say("meter", "settled"):
        return headline
    reason = tell.say("meter", "settled_rough_why", words=headline.reason)
    return Headline(tell.say("meter", "settled_rough"), headline.verdict, reason)


def _nothing(readings: Sequence[ReadingAnswer], *, tell: Tell) -> Headline:
    """Nothing was read, or nothing that says anything, and why."""
    noted = (note for one in readings if one["code"] not in DEAD for note in reversed(one["notes"]))
    # that nothing feeds the line is all that a reading of foreign volts says
    dead = (one["words"] for one in readings if one["code"] in DEAD)
    before = next((one["words"] for one in readings if one["code"] == BEFORE), None)
    if before is not None:
        return Headline(tell.say("meter", "read_before"), "unknown", before)
    code = "no_evidence" if readings else "nothing_read"
    return Headline(tell.say("meter", code), "unknown", next(noted, next(dead, "")))


def _likeliest(
    told: Diagnosis, readings: Sequence[ReadingAnswer], *, lead: BundleAnswer, tell: Tell
) -> Headline:
    """What leads, alike faults that nothing tells apart counted together. As expected is said
    only where every reading was judged so, never as set only; and nothing is wrong never of a
    reading outside its band without saying that it lies there."""
    measured = [one for one in readings if one["code"] not in UNJUDGED]
    fine = all(one["verdict"] in ("ok", "note") for one in measured)
    judged = any(one["code"] == "as_expected" for one in measured)
    words, healthy = lead["words"], lead["fault"] == "healthy"
    if judged and fine and not told.proof.provoked:
        if healthy:
            return _sound(told, words, tell=tell)
        reason = tell.say("meter", "inside_but", words=words)
        return Headline(tell.say("meter", "settled_healthy"), "note", reason)
    if healthy:
        off = next((one["words"] for one in measured if one["verdict"] in ("over", "near")), "")
        reason = tell.say("meter", "healthy_outside", words=off) if off else words
        return Headline(tell.say("meter", "open"), "unknown", reason)
    if lead["share"] >= MOST_LIKELY:
        return Headline(tell.say("meter", "likeliest"), "near", words)
    return Headline(tell.say("meter", "open"), "unknown", words)


def _sound(told: Diagnosis, words: str, *, tell: Tell) -> Headline:
    """A line as expected, with the missing loudspeaker that these readings would not show; green
    only where what was read lies nearer to the sound line."""
    missing = one_missing(told)
    if missing is None:
        return Headline(tell.say("meter", "settled_healthy"), "ok", words)
    texts = {"n": f"{missing.loudspeakers}", "ohm": tell.show(missing.ohm, "ohm")}
    reason = tell.say("meter", "missing_unseen", **texts)
    if missing.nearer:
        return Headline(tell.say("meter", "sound_or_missing", **texts), "note", reason)
    return Headline(tell.say("meter", "settled_healthy"), "ok", reason)

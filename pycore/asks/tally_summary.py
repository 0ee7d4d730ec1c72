"""The large figures of a tally: sum, share, what is left, what still fits, and the verdict."""

from typing_extensions import TypedDict

from pycore.asks.answers import FindingAnswer, LeftBy, Seen
from pycore.asks.faces import left_by, parts_opened
from pycore.calc.finding import Verdict
from pycore.ground.units import Manner, show_typed
from pycore.ground.words import say
from pycore.jobs import Job

LOADS = ("pool_load_w", "output_load_w")


class FitAnswer(TypedDict):
    """How many more on one tap, with reserve and to the rating, and the limit met first."""

    words: str
    with_reserve: int | None
    to_rating: int | None
    first_limit: str
    finding: str


class TallySummary(TypedDict):
    """What a tally comes to, ready to print."""

    sum: str
    share: str
    share_fraction: float | None
    left: str
    left_by: LeftBy | None
    limit: str
    verdict: Verdict
    headline: str
    reason: str
    fits: list[FitAnswer]
    not_checked: list[str]
    verdict_finding: str | None
    finding: str | None
    share_finding: str | None
    left_finding: str | None


def summary_of(job: Job, seen: Seen, *, unread: int, manner: Manner) -> TallySummary:
    """The figures of the widest load: the shared watts where there are any, else the output.

    What `unread` rows ask for is not in them, so short of too much nothing is known.
    """
    summary = _read_summary(job, seen, manner=manner)
    return _with_unread(summary, unread, manner=manner) if unread else summary


def _with_unread(summary: TallySummary, unread: int, *, manner: Manner) -> TallySummary:
    """The figures of what is counted, without a verdict that more watts could change."""
    if summary["verdict"] == "over":
        return {**summary, "fits": []}
    code, values = "rows_unread" if unread > 1 else "row_unread", {"n": f"{unread}"}
    return {
        **summary,
        "verdict": "unknown",
        "headline": say("face", "not_known_yet", language=manner.language),
        "reason": say("face", code, values=values, language=manner.language),
        "verdict_finding": None,
        "fits": [],
    }


def _read_summary(job: Job, seen: Seen, *, manner: Manner) -> TallySummary:
    face = seen["faces"]["job"]
    main = _main_load(seen["findings"])
    shown = main["shown"] if main else {}
    watts = job.zones and any(zone.line for zone in job.zones)
    nothing = say("face", "nothing_counted", language=manner.language)
    no_volts = say("face", "no_line_volts", language=manner.language)
    return {
        "sum": shown.get("value", ""),
        "share": shown.get("share", ""),
        "share_fraction": main["share_fraction"] if main else None,
        "left": shown.get("left", ""),
        "left_by": left_by(main),
        "limit": shown.get("limit", ""),
        "verdict": face["verdict"] if watts else "note",
        "headline": face["headline"] if watts else nothing,
        "reason": face["reason"] if watts else "" if job.amplifiers else no_volts,
        "fits": _fits(job, seen["findings"], manner=manner) if watts else [],
        "not_checked": face["not_checked"] if watts else [],
        "verdict_finding": face["finding"] if watts else None,
        "finding": main["id"] if main else None,
        **parts_opened(main),
    }


def _main_load(findings: list[FindingAnswer]) -> FindingAnswer | None:
    for what in LOADS:
        for finding in findings:
            if finding["what"] == what and finding["state"] == "override":
                return finding
    return None


def _fits(job: Job, findings: list[FindingAnswer], *, manner: Manner) -> list[FitAnswer]:
    """What still fits, line by line; a line is named where there are several."""
    lines = {zone.id: zone.name for zone in job.zones if len(job.zones) > 1}
    counted = (one for one in findings if one["what"] == "what_fits" and one["high"] is not None)
    return [_fit(one, lines.get(one["where"]["zone"]), manner=manner) for one in counted]


def _fit(finding: FindingAnswer, line: str | None, *, manner: Manner) -> FitAnswer:
    values = finding["values"]
    tap_w, reserve, rating = values["tap_w"], values["with_reserve"], values["to_rating"]
    texts = {"with_reserve": f"{reserve}", "to_rating": f"{rating}"}
    if isinstance(tap_w, float):
        texts["tap_w"] = show_typed(tap_w, "w", manner=manner)
    words = say("face", _code(finding), values=texts, language=manner.language)
    if line is not None:
        told = {"line": line, "fits": words}
        words = say("face", "tally_fits_on", values=told, language=manner.language)
    return {
        "words": words,
        "with_reserve": reserve if isinstance(reserve, int) else None,
        "to_rating": rating if isinstance(rating, int) else None,
        "first_limit": str(values.get("first_what") or ""),
        "finding": finding["id"],
    }


def _code(finding: FindingAnswer) -> str:
    """With reserve, without, or none; a count by some of the limits only is a most."""
    partly = finding["values"].get("missing_id") is not None
    if finding["value"]:
        return "tally_fits_partly" if partly else "tally_fits"
    if finding["high"]:
        return "tally_fits_rating_partly" if partly else "tally_fits_rating"
    return "tally_fits_none"

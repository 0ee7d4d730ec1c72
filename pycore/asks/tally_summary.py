"""The large figures of a tally: sum, share, what is left, what still fits, and the verdict."""

from typing_extensions import TypedDict

from pycore.asks.answers import FindingAnswer, Seen
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
    limit: str
    verdict: Verdict
    headline: str
    reason: str
    fits: list[FitAnswer]
    not_checked: list[str]
    finding: str | None


def summary_of(job: Job, seen: Seen, manner: Manner) -> TallySummary:
    """The figures of the widest load: the shared watts where there are any, else the output."""
    face = seen["faces"]["job"]
    main = _main_load(seen["findings"])
    shown = main["shown"] if main else {}
    watts = job.zones and any(zone.line for zone in job.zones)
    nothing = say("face", "nothing_counted", language=manner.language)
    return {
        "sum": shown.get("value", ""),
        "share": shown.get("share", ""),
        "share_fraction": main["share_fraction"] if main else None,
        "left": shown.get("left", ""),
        "limit": shown.get("limit", ""),
        "verdict": face["verdict"] if watts else "note",
        "headline": face["headline"] if watts else nothing,
        "reason": face["reason"] if watts else "",
        "fits": _fits(seen["findings"], manner) if watts else [],
        "not_checked": face["not_checked"] if watts else [],
        "finding": main["id"] if main else None,
    }


def _main_load(findings: list[FindingAnswer]) -> FindingAnswer | None:
    for what in LOADS:
        for finding in findings:
            if finding["what"] == what and finding["state"] == "override":
                return finding
    return None


def _fits(findings: list[FindingAnswer], manner: Manner) -> list[FitAnswer]:
    answers: list[FitAnswer] = []
    for finding in findings:
        values = finding["values"]
        reserve, rating = values.get("with_reserve"), values.get("to_rating")
        if finding["what"] != "what_fits" or rating is None:
            continue
        code = "tally_fits" if reserve else "tally_fits_rating" if rating else "tally_fits_none"
        answers.append(_fit(finding, code, manner))
    return answers


def _fit(finding: FindingAnswer, code: str, manner: Manner) -> FitAnswer:
    values = finding["values"]
    tap_w, reserve, rating = values["tap_w"], values["with_reserve"], values["to_rating"]
    texts = {"with_reserve": f"{reserve}", "to_rating": f"{rating}"}
    if isinstance(tap_w, float):
        texts["tap_w"] = show_typed(tap_w, "w", manner)
    return {
        "words": say("face", code, texts, language=manner.language),
        "with_reserve": reserve if isinstance(reserve, int) else None,
        "to_rating": rating if isinstance(rating, int) else None,
        "first_limit": str(values.get("first_what") or ""),
        "finding": finding["id"],
    }

"""Looking at a job: what `findings`, `edit` and every other ask that shows a job answers."""

from pycore.asks.answers import Seen, SeenJob
from pycore.asks.faces import faces_of
from pycore.asks.fields import add_fields
from pycore.asks.names import names_of
from pycore.asks.requests import JobBody
from pycore.asks.shown import shown_finding
from pycore.asks.verdict_words import LIVE, LOSSES, METERED
from pycore.calc.check import check_job
from pycore.calc.finding import Finding, Verdict
from pycore.calc.solve import rows_of
from pycore.ground.units import Manner
from pycore.jobs import Job

ORDER: tuple[Verdict, ...] = ("over", "unknown", "near", "ok", "note")
# What can hurt whoever touches it comes before all else, what burns before what is too quiet, and
# what was measured before what was worked out.
GRAVEST = (LIVE, METERED)
LEAST = LOSSES


def see(job: Job, manner: Manner) -> Seen:
    """All findings of a job with their words, worst first, and the faces of its things."""
    checked = check_job(job)
    names = names_of(job, language=manner.language)
    ordered = sorted(checked.findings, key=_rank)
    shown = [shown_finding(finding, names, manner=manner) for finding in ordered]
    faces = faces_of(checked, shown, names=names, manner=manner)
    add_fields(faces, job, lines=checked.lines, manner=manner)
    return {"findings": shown, "points": rows_of(checked.lines), "faces": faces}


def _rank(finding: Finding) -> tuple[int, int, bool, float]:
    """Worst first, of those the gravest; the override state, which gives the headline, before
    the other; then the load that takes the largest share of its limit."""
    share = finding.values.get("share")
    taken = share if isinstance(share, float) else 0.0
    usual = len(GRAVEST) + (finding.what in LEAST)
    gravity = next((at for at, whats in enumerate(GRAVEST) if finding.what in whats), usual)
    return ORDER.index(finding.verdict), gravity, finding.state == "set", -taken


def see_job(job: Job, manner: Manner) -> SeenJob:
    """The same, with the job itself."""
    return {**see(job, manner), "job": job}


def findings(body: JobBody, manner: Manner) -> Seen:
    """The ask `findings`."""
    return see(body.job, manner)

"""All findings of a job in one call."""

from typing import NamedTuple

from pycore.calc.finding import Finding
from pycore.calc.fits import fit_findings
from pycore.calc.judge import Limit, finding_of
from pycore.calc.limits import Loads, limits_of, loads_of
from pycore.calc.marks import mark_findings
from pycore.jobs import Job


class Checked(NamedTuple):
    """A job with its loads, its limits and its findings."""

    job: Job
    loads: Loads
    limits: tuple[Limit, ...]
    findings: tuple[Finding, ...]


def check_job(job: Job) -> Checked:
    """Every limit that applies, every mark that disagrees, and what still fits."""
    loads = loads_of(job)
    limits = limits_of(loads)
    findings = (
        *(finding_of(limit) for limit in limits),
        *mark_findings(loads),
        *fit_findings(loads, limits),
    )
    return Checked(job, loads, limits, findings)

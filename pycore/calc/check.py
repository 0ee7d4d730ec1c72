"""All findings of a job in one call."""

from typing import NamedTuple

from pycore.calc.finding import Finding
from pycore.calc.fits import fit_findings
from pycore.calc.judge import Limit, finding_of
from pycore.calc.limits import Loads, limits_of, loads_of
from pycore.calc.line import findings_of
from pycore.calc.marks import mark_findings
from pycore.calc.metered import metered_findings
from pycore.calc.own_loads import own_load_findings
from pycore.calc.solve import Lines, solve_lines
from pycore.jobs import Job


class Checked(NamedTuple):
    """A job with its loads, its limits, its solved lines and its findings."""

    job: Job
    loads: Loads
    limits: tuple[Limit, ...]
    lines: Lines
    findings: tuple[Finding, ...]


def check_job(job: Job) -> Checked:
    """Every limit that applies, what each zone asks, the marks, the lines, what a meter said, and
    what still fits."""
    loads = loads_of(job)
    limits = limits_of(loads)
    lines = solve_lines(job)
    findings = (
        *(finding_of(limit) for limit in limits),
        *own_load_findings(loads),
        *mark_findings(loads),
        *findings_of(lines),
        *metered_findings(job),
        *fit_findings(loads, limits),
    )
    return Checked(job, loads, limits, lines, findings)

"""All findings about the line as it hangs: losses, notes on them, and what a meter reads."""

from collections.abc import Iterator

from pycore.calc.finding import Finding
from pycore.calc.line_loss import limit_of, loss_finding
from pycore.calc.line_more import more_findings
from pycore.calc.line_ohms import ohm_findings
from pycore.calc.quietest import quietest_finding
from pycore.calc.solve import Lines, solve_lines
from pycore.jobs import Job


def line_findings(job: Job) -> tuple[Finding, ...]:
    """Everything the solved lines of a job say."""
    return findings_of(solve_lines(job))


def findings_of(lines: Lines) -> tuple[Finding, ...]:
    """The same of lines that are solved already."""
    outputs = [output for amplifier in lines.job.amplifiers for output in amplifier.outputs]
    return (*_zone_findings(lines), *ohm_findings(lines, outputs))


def _zone_findings(lines: Lines) -> Iterator[Finding]:
    for (_, state), line in lines.solved.items():
        if state == "override":
            loss = loss_finding(line, limit_of(line, lines.job.limits.loss_db))
            if loss is not None:
                yield loss
            yield from more_findings(line)
        quietest = quietest_finding(line) if state == "set" else None
        if quietest is not None:
            yield quietest

"""The core's own answer for a line of stems, in the order of the stems."""

from pycore.calc.finding import State
from pycore.calc.lay import Asked, lay_out
from pycore.calc.pairs import pair_of
from pycore.calc.solve import Run, run
from pycore.jobs import Job
from tests.samples.lines import Stem, make_job


def solve_stems(stems: list[Stem], *, hz: float, state: State, line_v: float) -> list[complex]:
    """Volts at every stem, by the core."""
    job = make_job(stems, line_v=line_v)
    solved, order = solve_job(job, hz=hz, state=state)
    at = {point: solved.flow.at[node] * line_v for node, point in enumerate(order, start=1)}
    return [at[f"p{number}"] for number in range(len(stems))]


def solve_job(job: Job, *, hz: float, state: State) -> tuple[Run, list[str]]:
    """The first zone of a job solved, and the ids of its points in the order of its nodes."""
    pairs = {kind.id: pair_of(kind, job.limits.conductor_c) for kind in job.kinds.cables}
    line_v = job.amplifiers[0].outputs[0].line_v
    laid = lay_out(job.zones[0], kinds=job.kinds, pairs=pairs, line_v=line_v)
    return run(laid, Asked(hz, state)), [point.id for point in laid.points]

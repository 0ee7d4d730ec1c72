"""The ask `tally`: so many loudspeakers on such taps, on one amplifier, as an unsaved job.

Ids are numbered from the hand and counter the page gives; the page moves its counter on
to `next` when the tally is kept, so no id is ever used twice.
"""

from typing_extensions import TypedDict

from pycore.asks.answers import Faces, FindingAnswer, ProblemAnswer, Seen
from pycore.asks.refused import problem_answer
from pycore.asks.requests import TallyBody, TallyRow
from pycore.asks.see import see
from pycore.asks.shown import range_text
from pycore.asks.tally_job import Figures, Row, job_of
from pycore.asks.tally_summary import TallySummary, summary_of
from pycore.calc.limits import loads_of
from pycore.calc.rows import row_finding, row_of
from pycore.calc.solve import PointRow
from pycore.ground.problems import BadText, Problem
from pycore.ground.units import Manner, read, show, show_typed, true_voltage, unit_of
from pycore.ground.words import say
from pycore.jobs import Job

MOST_OF_A_ROW = 500
MOST_POINTS = 2000
# Far beyond any line, and within the bounds of a job.
MOST = {"w": 1_000_000.0, "v": 10_000.0}
LEAST = 0.1


class RowAnswer(TypedDict):
    """A row as it reads, with its tap, what it adds up to, or what is wrong with it.

    Without line volts nothing is counted: `sum` is empty. `finding` opens its working.
    """

    shown: str
    tap: str
    sum: str
    finding: str | None
    problem: ProblemAnswer | None


class TallyAnswer(TypedDict):
    """The tally as a job, looked at, with its rows and its summary."""

    job: Job
    findings: list[FindingAnswer]
    points: list[PointRow]
    faces: Faces
    rows: list[RowAnswer]
    next: int
    summary: TallySummary
    problems: list[ProblemAnswer]


class Desk:
    """The typed numbers of a tally, read; what could not be read is kept as problems."""

    def __init__(self, body: TallyBody, manner: Manner) -> None:
        self.manner = manner
        self.problems: list[ProblemAnswer] = []
        line_v = self.number("line_v", body.line_v)
        self.line_v = true_voltage(line_v) if line_v else None
        self.amplifier_w = self.number("amplifier_w", body.amplifier_w)
        self.outputs_w = [
            self.number(f"outputs.{place}.max_w", output.max_w)
            for place, output in enumerate(body.outputs)
        ]

    def number(self, field: str, text: str) -> float | None:
        """A typed number; None when it is empty or could not be read."""
        try:
            unit = unit_of(field) or "w"
            return in_range(read(text, unit, manner=self.manner), text, most=MOST[unit])
        except Problem as problem:
            problem.where["field"] = field
            self.problems.append(problem_answer(problem, self.manner))
            return None


def in_range(number: float | None, text: str, *, most: float) -> float | None:
    """The number, refused where no line could have it."""
    if number is not None and not LEAST <= number <= most:
        raise BadText("number_out_of_range", text=text)
    return number


def tally(body: TallyBody, manner: Manner) -> TallyAnswer:
    """The ask `tally`."""
    desk = Desk(body, manner)
    rows: list[Row] = []
    answers = []
    for row in body.rows:
        room = MOST_POINTS - sum(one.how_many for one in rows)
        read_row, answer = _read_row(row, max(1, len(body.outputs)), room=room, manner=manner)
        answers.append(answer)
        if read_row is not None:
            rows.append(read_row)
    figures = Figures(desk.line_v, desk.amplifier_w, tuple(desk.outputs_w), tuple(rows))
    job, unused = job_of(body, figures, manner=manner)
    _add_up(answers, figures, job=job, manner=manner)
    seen: Seen = see(job, manner)
    unread = sum(answer["problem"] is not None for answer in answers)
    summary = summary_of(job, seen, unread=unread, manner=manner)
    return {
        "job": job,
        **seen,
        "rows": answers,
        "next": unused,
        "summary": summary,
        "problems": desk.problems,
    }


def _read_row(
    row: TallyRow, outputs: int, *, room: int, manner: Manner
) -> tuple[Row | None, RowAnswer]:
    """A row, refused where no more than `room` loudspeakers can be taken."""
    try:
        count = read(row.count, "count", manner=manner)
        if count is None:
            raise BadText("count_needed")
        if not 1 <= count <= MOST_OF_A_ROW:
            raise BadText("count_out_of_range", text=row.count, most=MOST_OF_A_ROW)
        if count > room:
            raise BadText("tally_full", most=MOST_POINTS)
        tap_w = in_range(read(row.tap_w, "w", manner=manner), row.tap_w, most=MOST["w"])
        if tap_w is None:
            raise BadText("tap_needed")
    except Problem as problem:
        answer = problem_answer(problem, manner)
        return None, {"shown": "", "tap": "", "sum": "", "finding": None, "problem": answer}
    made = Row(int(count), tap_w, min(row.output, outputs - 1))
    texts = {
        "count": show(count, "count", manner=manner),
        "tap_w": show_typed(tap_w, "w", manner=manner),
    }
    shown = say("face", "tally_row", values=texts, language=manner.language)
    tap = texts["tap_w"]
    return made, {"shown": shown, "tap": tap, "sum": "", "finding": None, "problem": None}


def _add_up(answers: list[RowAnswer], figures: Figures, *, job: Job, manner: Manner) -> None:
    """Write into each row what it asks for, as the finding of its loudspeakers says."""
    loads = loads_of(job)
    waiting = [list(reversed(zone.line)) for zone in job.zones]
    read_rows = (answer for answer in answers if answer["problem"] is None)
    for row, answer in zip(figures.rows, read_rows, strict=True):
        if not waiting:
            return
        points = tuple(waiting[row.output].pop() for _ in range(row.how_many))
        added = row_of(loads, job.zones[row.output], points=points)
        made = row_finding(added) if added else None
        if made is not None:
            answer["sum"] = range_text(made, manner)
            answer["finding"] = made.id

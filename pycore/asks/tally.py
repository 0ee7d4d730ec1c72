"""The ask `tally`: so many loudspeakers on such taps, on one amplifier, as an unsaved job.

Ids are numbered from the hand and counter the page gives; the page moves its counter on
to `next` when the tally is kept, so no id is ever used twice.
"""

import json
from collections.abc import Callable, Iterator
from typing import Any, NamedTuple

from typing_extensions import TypedDict

from pycore.asks.answers import Faces, FindingAnswer, PointRow, ProblemAnswer, Seen
from pycore.asks.refused import problem_answer
from pycore.asks.requests import TallyBody, TallyRow
from pycore.asks.see import see
from pycore.asks.tally_summary import TallySummary, summary_of
from pycore.ground.problems import BadText, Problem
from pycore.ground.units import Manner, read, show, show_typed, true_voltage, unit_of
from pycore.ground.words import say
from pycore.jobs import Job
from pycore.jobs.catalogue import DEFAULT_LIMITS
from pycore.jobs.job import FORMAT, VERSION

MOST_OF_A_ROW = 500
MOST_W = 1_000_000.0


class RowAnswer(TypedDict):
    """A row as it reads, what it adds up to, or what is wrong with it."""

    shown: str
    sum: str
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


class Row(NamedTuple):
    """A row that was read."""

    how_many: int
    tap_w: float
    output: int


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
            return in_range(read(text, unit_of(field) or "w", self.manner), text)
        except Problem as problem:
            problem.where["field"] = field
            self.problems.append(problem_answer(problem, self.manner))
            return None


def in_range(number: float | None, text: str) -> float | None:
    """The number, refused where no line could have it."""
    if number is not None and not 0 < number <= MOST_W:
        raise BadText("number_out_of_range", text=text)
    return number


def tally(body: TallyBody, manner: Manner) -> TallyAnswer:
    """The ask `tally`."""
    desk = Desk(body, manner)
    rows: list[Row] = []
    answers = []
    for row in body.rows:
        read_row, answer = _read_row(row, max(1, len(body.outputs)), manner)
        answers.append(answer)
        if read_row is not None:
            rows.append(read_row)
    job, unused = _job(body, desk, rows)
    seen: Seen = see(job, manner)
    summary = summary_of(job, seen, manner)
    return {
        "job": job,
        **seen,
        "rows": answers,
        "next": unused,
        "summary": summary,
        "problems": desk.problems,
    }


def _read_row(row: TallyRow, outputs: int, manner: Manner) -> tuple[Row | None, RowAnswer]:
    try:
        count = read(row.count, "count", manner)
        if count is None or not 1 <= count <= MOST_OF_A_ROW:
            raise BadText("count_out_of_range", text=row.count, most=MOST_OF_A_ROW)
        tap_w = in_range(read(row.tap_w, "w", manner), row.tap_w)
        if tap_w is None:
            raise BadText("tap_needed")
    except Problem as problem:
        return None, {"shown": "", "sum": "", "problem": problem_answer(problem, manner)}
    made = Row(int(count), tap_w, min(row.output, outputs - 1))
    texts = {"count": show(count, "count", manner), "tap_w": show_typed(tap_w, "w", manner)}
    shown = say("face", "tally_row", texts, language=manner.language)
    return made, {"shown": shown, "sum": show(count * tap_w, "w", manner), "problem": None}


def _job(body: TallyBody, desk: Desk, rows: list[Row]) -> tuple[Job, int]:
    """The tally as a job: one amplifier, a line on each output, lengths not known."""
    counter = body.ids.next

    def new_id() -> str:
        nonlocal counter
        counter += 1
        return f"{body.ids.hand}{counter - 1}"

    def called(code: str, number: int) -> str:
        return say("face", code, {"n": str(number)}, language=desk.manner.language)

    several = len(body.outputs) > 1
    amplifier_id = new_id()
    outputs: list[dict[str, Any]] = []
    zones: list[dict[str, Any]] = []
    for place in range(max(1, len(body.outputs))):
        output_w = desk.outputs_w[place] if several else desk.amplifier_w
        output_id, zone_id = new_id(), new_id()
        name = called("tally_zone_n" if several else "tally_zone", place + 1)
        line_v = desk.line_v or 0.0
        outputs.append(
            {
                "id": output_id,
                "name": called("tally_output", place + 1),
                "line_v": line_v,
                "max_w": output_w,
            }
        )
        own = [row for row in rows if row.output == place]
        line = list(_points(own, name, line_v, new_id)) if line_v else []
        zones.append({"id": zone_id, "name": name, "output": output_id, "line": line})
    pool = {"w": desk.amplifier_w, "outputs": [one["id"] for one in outputs]}
    amplifier = {
        "id": amplifier_id,
        "name": called("tally_amplifier", 1),
        "pools": [pool] if several and desk.amplifier_w else None if several else [],
        "outputs": outputs,
    }
    return _made(body, amplifier if desk.line_v else None, zones), counter


def _points(
    rows: list[Row], name: str, line_v: float, new_id: Callable[[], str]
) -> Iterator[dict[str, Any]]:
    after: str | None = None
    number = 0
    for row in rows:
        for _ in range(row.how_many):
            number += 1
            point_id = new_id()
            fitted = {"is": "loudspeaker", "tap_w": row.tap_w, "tap_at_v": line_v}
            fitted |= {"label": f"{name} {number}", "connected": True}
            yield {"id": point_id, "after": after, "fitted": fitted}
            after = point_id


def _made(body: TallyBody, amplifier: dict[str, Any] | None, zones: list[dict[str, Any]]) -> Job:
    """Without line volts nothing can be counted: then the job has no amplifier and no zones."""
    raw: dict[str, Any] = {
        "format": FORMAT,
        "version": VERSION,
        "id": body.ids.job,
        "name": body.name,
        "rev": 0,
        "limits": DEFAULT_LIMITS.model_dump(),
        "kinds": {},
        "amplifiers": [amplifier] if amplifier else [],
        "zones": zones if amplifier else [],
    }
    return Job.model_validate_json(json.dumps(raw))

"""The job a tally stands for: one amplifier, a line on each output, lengths not known."""

import json
from collections.abc import Iterator
from typing import Any, NamedTuple

from pycore.asks.requests import TallyBody
from pycore.ground.units import Manner
from pycore.ground.words import say
from pycore.jobs import Job
from pycore.jobs.catalogue import DEFAULT_LIMITS
from pycore.jobs.job import FORMAT, VERSION

LETTERS = 26


class Row(NamedTuple):
    """A row that was read."""

    how_many: int
    tap_w: float
    output: int


class Figures(NamedTuple):
    """The numbers of a tally; None is not known. Without outputs the amplifier has one."""

    line_v: float | None
    amplifier_w: float | None
    outputs_w: tuple[float | None, ...]
    rows: tuple[Row, ...]


class Numbering:
    """Ids by the hand and counter the page gave."""

    def __init__(self, hand: str, first: int) -> None:
        self.hand, self.next = hand, first

    def new_id(self) -> str:
        """An id no other thing has."""
        self.next += 1
        return f"{self.hand}{self.next - 1}"


def job_of(body: TallyBody, figures: Figures, *, manner: Manner) -> tuple[Job, int]:
    """The job, and the first counter it left unused.

    Without line volts nothing can be counted: then the job has no amplifier and no zones.
    """
    numbering = Numbering(body.ids.hand, body.ids.next)
    made = _supply(figures, numbering, manner=manner) if figures.line_v else ([], [])
    raw: dict[str, Any] = {
        "format": FORMAT,
        "version": VERSION,
        "id": body.ids.job,
        "name": body.name,
        "rev": 0,
        "limits": DEFAULT_LIMITS.model_dump(),
        "kinds": {},
        "amplifiers": made[0],
        "zones": made[1],
    }
    return Job.model_validate_json(json.dumps(raw)), numbering.next


def _supply(
    figures: Figures, numbering: Numbering, *, manner: Manner
) -> tuple[list[dict[str, Any]], list[dict[str, Any]]]:
    """The amplifier with its outputs, and a zone on each."""
    amplifier = {"id": numbering.new_id(), "name": _called("tally_amplifier", 0, manner=manner)}
    maxima_w = figures.outputs_w or (figures.amplifier_w,)
    several = len(maxima_w) > 1
    if maxima_w == (None,):
        maxima_w = (figures.amplifier_w,)
    outputs: list[dict[str, Any]] = []
    zones: list[dict[str, Any]] = []
    for place, max_w in enumerate(maxima_w):
        output_id, zone_id = numbering.new_id(), numbering.new_id()
        name = _called("tally_zone_n" if several else "tally_zone", place, manner=manner)
        rows = [row for row in figures.rows if row.output == place]
        line = list(_points(rows, name, line_v=figures.line_v, numbering=numbering))
        output = {"id": output_id, "name": _called("tally_output", place, manner=manner)}
        outputs.append({**output, "line_v": figures.line_v, "max_w": max_w})
        zones.append({"id": zone_id, "name": name, "output": output_id, "line": line})
    return [{**amplifier, "pools": _pools(figures, outputs), "outputs": outputs}], zones


def _pools(figures: Figures, outputs: list[dict[str, Any]]) -> list[dict[str, Any]] | None:
    """The amplifier's watts, shared by the outputs; None where nobody has said whether they are."""
    if not figures.outputs_w:
        return []
    if figures.amplifier_w is None:
        return None
    return [{"w": figures.amplifier_w, "outputs": [one["id"] for one in outputs]}]


def _called(code: str, place: int, *, manner: Manner) -> str:
    """Outputs and their lines go by letters, as on the pad; past them by numbers."""
    letter = chr(ord("A") + place) if place < LETTERS else str(place + 1)
    return say("face", code, values={"n": letter}, language=manner.language)


def _points(
    rows: list[Row], name: str, *, line_v: float | None, numbering: Numbering
) -> Iterator[dict[str, Any]]:
    """One loudspeaker after the other, as they would hang on one line."""
    after: str | None = None
    taps_w = [row.tap_w for row in rows for _ in range(row.how_many)]
    for number, tap_w in enumerate(taps_w, start=1):
        point_id = numbering.new_id()
        fitted = {"is": "loudspeaker", "tap_w": tap_w, "tap_at_v": line_v}
        fitted |= {"label": f"{name} {number}", "connected": True}
        yield {"id": point_id, "after": after, "fitted": fitted}
        after = point_id

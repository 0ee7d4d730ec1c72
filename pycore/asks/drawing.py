"""The ask `drawing`: a zone's line ready to be drawn, every place and text worked out.

Places are in the drawing's own units, rows and lanes; the page only puts things there.
"""

from collections.abc import Mapping
from typing import NamedTuple

from typing_extensions import TypedDict

from pycore.asks.drawing_texts import cable_changes, caption, limit_words, ticks_of
from pycore.asks.names import names_of
from pycore.asks.point_lines import point_line
from pycore.asks.shown import Bounds, bounds_text, marks_of_loss
from pycore.calc.between import Ends, Numbers, ends_of
from pycore.calc.finding import Finding, State
from pycore.calc.line_loss import limit_of, loss_finding
from pycore.calc.line_more import more_findings
from pycore.calc.ripple import Reach, solve_within
from pycore.calc.sketch import Sketch, Spot, sketch_of
from pycore.calc.solve import Line, Lines
from pycore.calc.tones import DARKEST, Tone, bounds_db, tone_of
from pycore.calc.whatif import far_end
from pycore.edit.change import find_zone
from pycore.ground.units import Manner, show, show_length
from pycore.ground.words import say
from pycore.jobs import Closed, Job, Point, Zone
from pycore.jobs.base import Id


class DrawingBody(Closed):
    """A job, the zone to draw, and in which state."""

    job: Job
    zone: Id
    state: State = "override"


class DrawnPoint(TypedDict):
    """A point with the section that leads to it. `x` is its lane, `y` its place in rows."""

    id: str
    x: int
    y: float
    row: int
    from_x: int
    from_y: float
    known: bool
    drawn_as: str
    title: str
    line: str
    length: str
    tone: Tone
    figure: str
    finding: str | None
    worst: bool
    far: bool
    costliest: bool
    home_run: bool


class RulerMark(TypedDict):
    """A mark of the ruler beside the drawing."""

    y: float
    words: str


class Caption(TypedDict):
    """Words in a row that stands empty."""

    row: int
    words: str


class ToneWords(TypedDict):
    """What a tone stands for."""

    tone: Tone
    words: str


class DrawingAnswer(TypedDict):
    """A zone's line to be drawn. `limit` says the loss limit in all four ways."""

    zone: str
    state: State
    states_differ: bool
    rows: int
    lanes: int
    to_scale: bool
    points: list[DrawnPoint]
    ticks: list[RulerMark]
    captions: list[Caption]
    tones: list[ToneWords]
    limit: str


class Desk(NamedTuple):
    """What is at hand while a zone is drawn."""

    zone: Zone
    state: State
    line: Line | None
    rows: Mapping[str, Numbers]
    limit_db: float
    marked: Mapping[str, str | None]
    names: Mapping[str, str]
    manner: Manner


def drawing(body: DrawingBody, manner: Manner) -> DrawingAnswer:
    """The ask `drawing`."""
    zone = find_zone(body.job, body.zone)
    desk = _desk(body.job, zone, state=body.state, manner=manner)
    sketch = sketch_of(zone.line)
    captions = _captions(desk, sketch)
    # what a caption says of a home run its point need not say again
    told = {sketch.spots[0].point.id} if captions else set()
    return {
        "zone": zone.id,
        "state": body.state,
        "states_differ": any(one.fitted.is_ == "attenuator" for one in zone.line)
        or zone.page_output not in (None, zone.output),
        "rows": sketch.rows,
        "lanes": sketch.lanes,
        "to_scale": sketch.metres_a_row is not None,
        "points": [_point(desk, spot, captioned=spot.point.id in told) for spot in sketch.spots],
        "ticks": [{"y": y, "words": words} for y, words in ticks_of(sketch, manner)],
        "captions": captions,
        "tones": _tones(desk),
        "limit": limit_words(desk.limit_db, manner),
    }


def _desk(job: Job, zone: Zone, *, state: State, manner: Manner) -> Desk:
    lines = solve_within(job, Reach(frozenset((zone.id,))))
    line = lines.solved.get((zone.id, state))
    rows: dict[str, Numbers] = {}
    if line is not None:
        ids = (point.id for point in line.laid.points)
        rows = dict(zip(ids, ends_of(line), strict=True))
    limit_db = job.limits.loss_db if zone.loss_db is None else zone.loss_db
    marked = _marked(lines, zone, job_loss_db=job.limits.loss_db)
    names = names_of(job, language=manner.language)
    return Desk(zone, state, line, rows, limit_db, marked, names, manner)


def _marked(lines: Lines, zone: Zone, *, job_loss_db: float) -> dict[str, str | None]:
    """The points a person looks for: the worst, the costliest section, the far end."""
    found: dict[str, Finding] = {}
    line = lines.solved.get((zone.id, "override"))
    if line is not None:
        loss = loss_finding(line, limit_of(line, job_loss_db))
        found = {one.what: one for one in (loss, *more_findings(line)) if one is not None}
    far = far_end(zone)
    loss_found = found.get("zone_loss_db")
    # with a length missing farther on nobody can say which one loses most
    named = loss_found is not None and (loss_found.value, loss_found.high) != (None, None)
    return {
        "worst": _named(loss_found, "point") if named else None,
        "costliest": _named(found.get("zone_wasteful_section"), "section"),
        "far": far.id if far else None,
    }


def _named(finding: Finding | None, value: str) -> str | None:
    name = finding.values.get(value) if finding else None
    return name if isinstance(name, str) else None


def _point(desk: Desk, spot: Spot, *, captioned: bool) -> DrawnPoint:
    point = spot.point
    row = desk.rows.get(point.id)
    figure, finding = _figure(desk, spot, row=row)
    return {
        "id": point.id,
        "x": spot.lane,
        "y": spot.y,
        "row": spot.row,
        "from_x": spot.from_lane,
        "from_y": spot.from_y,
        "known": spot.known,
        "drawn_as": _drawn_as(point),
        "title": desk.names.get(point.id, ""),
        "line": point_line(point, desk.manner),
        "length": _length(desk, point, captioned=captioned),
        "tone": tone_of(_most_db(row), desk.limit_db),
        "figure": figure,
        "finding": finding,
        "worst": point.id == desk.marked["worst"],
        "far": point.id == desk.marked["far"],
        "costliest": point.id == desk.marked["costliest"],
        "home_run": point.after is None and not captioned,
    }


def _drawn_as(point: Point) -> str:
    """What is fitted, and whether it stands off."""
    fitted = point.fitted
    away = fitted.is_ == "loudspeaker" and not fitted.connected
    off = away or (fitted.is_ == "attenuator" and fitted.off)
    return f"{fitted.is_}_off" if off else fitted.is_


def _length(desk: Desk, point: Point, *, captioned: bool) -> str:
    """The section's length, and its cable where that is another than before it."""
    length = "?" if point.length_m is None else show_length(point.length_m, manner=desk.manner)
    if captioned or not cable_changes(desk.zone, point):
        return length
    cable = desk.names.get(point.cable or "", "")
    code = "length_of" if cable else "length_no_cable"
    texts = {"length": length, "cable": cable}
    return say("drawing", code, values=texts, language=desk.manner.language)


def _most_db(row: Numbers | None) -> float | None:
    """The loss a point is drawn by: where it lies in a range, the most it can be."""
    if row is None:
        return None
    loss = row["loss_db"]
    return loss.value if loss.value is not None else loss.high


def _figure(desk: Desk, spot: Spot, *, row: Numbers | None) -> tuple[str, str | None]:
    """Cable loss in a page; the level as it is set. Of junctions and controls neither."""
    if spot.point.fitted.is_ not in ("loudspeaker", "existing") or row is None:
        return "", None
    name = "loss_db" if desk.state == "override" else "level_db"
    ends = row[name]
    if ends == Ends(None):
        return "?", None
    finding = f"point_{name}:{spot.point.id}:{desk.state}"
    marks = marks_of_loss(desk.limit_db) if name == "loss_db" else ()
    return bounds_text(Bounds(*ends), "db", manner=desk.manner, marks=marks), finding


def _captions(desk: Desk, sketch: Sketch) -> list[Caption]:
    """The home run named in the middle of the rows it leaves empty."""
    first = next(iter(sketch.spots), None)
    if first is None or first.row < 2 or first.point.after is not None:
        return []
    words = caption(first.point, names=desk.names, manner=desk.manner)
    return [{"row": first.row // 2, "words": words}]


def _tones(desk: Desk) -> list[ToneWords]:
    tones: list[ToneWords] = []
    bounds = bounds_db(desk.limit_db)
    for tone, most_db in bounds.items():
        texts = {"most": show(most_db, "db", manner=desk.manner)}
        words = say("drawing", "tone_to", values=texts, language=desk.manner.language)
        tones.append({"tone": tone, "words": words})
    texts = {"most": show(bounds[4], "db", manner=desk.manner)}
    beyond = say("drawing", "tone_beyond", values=texts, language=desk.manner.language)
    unknown = say("drawing", "tone_unknown", language=desk.manner.language)
    return [*tones, {"tone": DARKEST, "words": beyond}, {"tone": 0, "words": unknown}]

"""From the body of an ask to a question: typed readings read, a bare count made a line."""

import math
from collections.abc import Mapping
from typing import Any, NamedTuple

from pycore.asks.meter_bodies import AboutIn, CostsIn, DiagnoseBody, ExpectedBody, ReadingIn
from pycore.calc import priors
from pycore.calc.diagnosis import Question, Step
from pycore.calc.reading import OHMS, Taken, taken_of
from pycore.calc.site import Given
from pycore.calc.two_faults import Progress
from pycore.ground.problems import BadCommand, BadText, BrokenJob, Problem
from pycore.ground.units import Manner, read, true_voltage
from pycore.ground.words import say
from pycore.jobs import Amplifier, Job, Kinds, Loudspeaker, Output, Point, Zone
from pycore.jobs.catalogue import DEFAULT_LIMITS
from pycore.jobs.job import FORMAT, VERSION
from pycore.jobs.records import UNIT_OF, Spot

OPEN_WORDS = ("ol", "o.l", "o.l.", "0l", "open", "inf", "∞", "infinity")
HEARD_WORDS = ("well", "weak", "silent", "loud", "distorted")
MOST_ABOUT = 200
# What a typed number is in, and the bounds the job's own readings have.
BOUNDS: Mapping[str, tuple[str, float, float]] = {
    "tolerance_pct": ("pct", 0.0, 1000.0),
    "temperature_c": ("c", -60.0, 200.0),
    "leads_ohm": ("ohm", 0.0, 100.0),
}
OUTPUT, ZONE = "about-output", "about-zone"


class Line(NamedTuple):
    """The job and place that are asked about; `guessed` when it was made from a count."""

    job: Job
    where: dict[str, str]
    guessed: bool


def line_of(body: DiagnoseBody | ExpectedBody, manner: Manner) -> Line:
    """The line in question: of the job, or made from a bare count.

    Raises BadCommand `meter_no_line` without either.
    """
    if body.job is not None:
        if body.where is None:
            raise BadCommand("meter_no_line", where={"field": "where"})
        return Line(body.job, place_of(body.where), guessed=False)
    if body.about is None:
        raise BadCommand("meter_no_line", where={"field": "job"})
    job = about_job(body.about, manner)
    where = place_of(body.where) if body.where is not None else {"zone": ZONE}
    return Line(job, where, guessed=True)


def place_of(spot: Spot) -> dict[str, str]:
    """A place as a mapping: exactly one of an output, a zone or a point.

    Raises BrokenJob `reading_place`.
    """
    places = {name: one for name, one in spot.model_dump().items() if one is not None}
    if len(places) != 1:
        raise BrokenJob("reading_place", where={"field": "where"})
    return places


def given_of(body: DiagnoseBody | ExpectedBody, line: Line) -> Given:
    """What was said of the line and the meter; a guessed count leaves the loads more open."""
    said = body.load_tolerance_pct
    load_pct = priors.LOAD_PCT if said is None else max(said, 0.0)
    if line.guessed:
        load_pct += priors.COUNT_PCT
    leads = body.leads_ohm if isinstance(body, DiagnoseBody) else None
    return Given(min(load_pct, priors.MOST_PCT - 1), leads)


def question_of(body: DiagnoseBody, line: Line, *, manner: Manner) -> Question:
    """Everything a diagnosis needs."""
    taken = tuple(
        with_due(taken_in(one, manner=manner, field=f"readings.{place}"), line.job)
        for place, one in enumerate(body.readings)
    )
    kept = tuple(taken_of(one) for one in line.job.readings if one.baseline)
    costs = costs_of(body.costs)
    given = given_of(body, line)
    return Question(line.job, line.where, taken, kept, given, body.complaint, costs)


def costs_of(said: CostsIn) -> priors.Costs:
    """What each access costs; a word is so many times the usual."""
    costs: dict[str, Any] = {}
    for name, usual in priors.COSTS._asdict().items():
        value = getattr(said, name)
        costs[name] = (usual or 1.0) * priors.EFFORTS[value] if isinstance(value, str) else value
    return priors.Costs(**costs)


def step_of(body: DiagnoseBody) -> Step:
    """Where to go on, and for how long."""
    if body.resume is None:
        return Step(None, body.budget)
    resume = body.resume
    return Step(Progress(resume.next_first, resume.firsts, resume.kept), body.budget)


def taken_in(one: ReadingIn, *, manner: Manner, field: str) -> Taken:
    """A reading of this visit, what was typed of it read. `field`: where it stands in the body."""
    pct = number_of(one.tolerance_pct, "tolerance_pct", manner=manner, field=field)
    return Taken(
        id=one.id,
        at=one.at,
        place=next(iter(place_of(one.where).values())),
        looking=one.looking,
        lifted=one.lifted,
        quantity=one.quantity,
        value=_without_leads(one, manner=manner, field=field),
        controls=one.controls,
        tolerance_pct=priors.METER_PCT if pct is None else pct,
        temperature_c=number_of(one.temperature_c, "temperature_c", manner=manner, field=field),
        instrument=one.instrument,
        baseline=one.baseline,
    )


def with_due(taken: Taken, job: Job) -> Taken:
    """A reading with what the line had to read then, where the job keeps that of this very one."""
    for one in job.readings:
        kept = taken_of(one) if one.id == taken.id else None
        if kept is not None and (kept.setting, kept.value) == (taken.setting, taken.value):
            return taken._replace(due=kept.due)
    return taken


def _without_leads(one: ReadingIn, *, manner: Manner, field: str) -> float | str:
    """What the instrument showed, less its leads where it read across the pair."""
    value = _value(one, manner=manner, field=f"{field}.value")
    leads_ohm = number_of(one.leads_ohm, "leads_ohm", manner=manner, field=field)
    if not leads_ohm or isinstance(value, str) or one.quantity not in OHMS or value <= 0:
        return value
    return max(value - leads_ohm, 0.0)


def _value(one: ReadingIn, *, manner: Manner, field: str) -> float | str:
    """What the instrument showed: a number, an open line, or how it plays."""
    value = one.value
    if isinstance(value, float):
        if one.quantity == "plays":
            raise BadText("reading_unread", where={"field": field}, text=f"{value:g}")
        return value
    word = value.strip().lower()
    if one.quantity == "plays":
        if word not in HEARD_WORDS:
            raise BadText("reading_unread", where={"field": field}, text=value)
        return word
    if word in OPEN_WORDS:
        return math.inf
    number = number_in(value, UNIT_OF[one.quantity], manner=manner, field=field)
    if number is None:
        raise BadText("reading_unread", where={"field": field}, text=value)
    return number


def number_of(said: float | str | None, name: str, *, manner: Manner, field: str) -> float | None:
    """A tolerance or a temperature as it was said, read if it was typed, within its bounds.

    Raises BadText `number_out_of_range`.
    """
    if not isinstance(said, str):
        return said
    unit, low, high = BOUNDS[name]
    number = number_in(said, unit, manner=manner, field=f"{field}.{name}")
    if number is not None and not low <= number <= high:
        raise BadText("number_out_of_range", where={"field": f"{field}.{name}"}, text=said)
    return number


def number_in(text: str, unit: str, *, manner: Manner, field: str) -> float | None:
    """A typed number; a problem names its field."""
    try:
        return read(text, unit, manner=manner)
    except Problem as problem:
        problem.where["field"] = field
        raise


def about_job(about: AboutIn, manner: Manner) -> Job:
    """A chain of so many loudspeakers, nothing known of its cable.

    Raises BadText `count_out_of_range` or `number_out_of_range`.
    """
    numbers = {
        name: number_in(text, unit, manner=manner, field=f"about.{name}")
        for name, text, unit in (
            ("count", about.count, "count"),
            ("tap_w", about.tap_w, "w"),
            ("line_v", about.line_v, "v"),
            ("amplifier_w", about.amplifier_w, "w"),
        )
    }
    count, tap_w, line_v = (numbers[name] or 0.0 for name in ("count", "tap_w", "line_v"))
    if not 1 <= count <= MOST_ABOUT:
        where = {"field": "about.count"}
        raise BadText("count_out_of_range", where=where, text=about.count, most=MOST_ABOUT)
    for name, value in (("tap_w", tap_w), ("line_v", line_v)):
        if not 0 < value <= 10_000:
            text = getattr(about, name)
            raise BadText("number_out_of_range", where={"field": f"about.{name}"}, text=text)
    at_v = true_voltage(line_v)
    line = tuple(_about_point(number, tap_w, at_v=at_v, manner=manner) for number in _to(count))
    return _job_of(line, line_v=at_v, max_w=numbers["amplifier_w"], manner=manner)


def _to(count: float) -> range:
    return range(1, int(count) + 1)


def _about_point(number: int, tap_w: float, *, at_v: float, manner: Manner) -> Point:
    label = say("meter", "about_point", values={"n": str(number)}, language=manner.language)
    fitted = Loudspeaker.model_validate(
        {"is": "loudspeaker", "label": label, "connected": True, "tap_w": tap_w, "tap_at_v": at_v}
    )
    after = f"about-{number - 1}" if number > 1 else None
    return Point(id=f"about-{number}", after=after, fitted=fitted)


def _job_of(line: tuple[Point, ...], *, line_v: float, max_w: float | None, manner: Manner) -> Job:
    names = {
        name: say("meter", f"about_{name}", language=manner.language)
        for name in ("zone", "output", "amplifier")
    }
    output = Output(id=OUTPUT, name=names["output"], line_v=line_v, max_w=max_w)
    return Job(
        format=FORMAT,
        version=VERSION,
        id="about",
        name=names["zone"],
        rev=0,
        limits=DEFAULT_LIMITS,
        kinds=Kinds(),
        amplifiers=(Amplifier(id="about-amplifier", name=names["amplifier"], outputs=(output,)),),
        zones=(Zone(id=ZONE, name=names["zone"], output=OUTPUT, line=line),),
    )

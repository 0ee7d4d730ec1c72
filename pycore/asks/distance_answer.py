"""What the two ways of measuring a distance share: typed numbers, heat, leads, and the answer."""

from collections.abc import Mapping, Sequence
from typing import NamedTuple, Self

from pycore.asks.explain import step_answer
from pycore.asks.meter_bodies import DistanceBody
from pycore.asks.meter_question import number_in
from pycore.asks.record_answers import MeasuredDistance, MeasuredPlace
from pycore.calc import priors
from pycore.calc.said import started
from pycore.formulas import meter
from pycore.ground.problems import BadCommand
from pycore.ground.units import Manner, show
from pycore.ground.words import say
from pycore.ground.working import Known, Origin, Step, step
from pycore.jobs.catalogue import DEFAULT_LIMITS

# No line of loudspeakers is as long, and no piece of pair as short is told from the meter's own
# leads (common practice, no source): then something else was read.
MOST_M, LEAST_M = 20_000.0, 0.5
# Below a metre no meter tells more than this of a place (common practice, no source).
FINEST_M = 0.1

UNITS = {
    "near_ohm": "ohm",
    "far_ohm": "ohm",
    "leads_ohm": "ohm",
    "route_m": "m",
    "conductor_c": "c",
    "tolerance_pct": "pct",
}


class Spotted(NamedTuple):
    """A place with its error; `point` and `share` of the section before it on a drawn line."""

    metres: float
    low_m: float
    high_m: float
    point: str | None = None
    share: float = 0.0
    length_m: float = 0.0
    code: str = "bare"
    texts: Mapping[str, str] = {}


class Copper(NamedTuple):
    """How warm the copper is counted, and by whose word."""

    heat_c: float
    said: Origin
    code: str


class Told(NamedTuple):
    """All that is known of where it lies, the likeliest place first, and how that came to be.

    `copper` is None where heat does not matter: a bare pair's capacitance.
    """

    spotted: tuple[Spotted, ...]
    own_ohm: float | None
    steps: tuple[Step, ...]
    assumptions: tuple[str, ...]
    copper: Copper | None = None

    @classmethod
    def on_pair(
        cls,
        metres: float,
        *,
        error_m: float,
        steps: Sequence[Step],
        own_ohm: float | None,
        assumptions: tuple[str, ...] = (),
        copper: Copper | None = None,
    ) -> Self:
        """The one place on a bare pair."""
        here_m = max(metres, 0.0)
        spot = Spotted(here_m, max(metres - error_m, 0.0), here_m + error_m)
        return cls((spot,), own_ohm, tuple(steps), assumptions, copper)


def typed_in(body: DistanceBody, manner: Manner) -> dict[str, float | None]:
    """The typed numbers read; the near reading is needed.

    Raises BadCommand `reading_unread` without it.
    """
    typed = {
        name: number_in(getattr(body, name), unit, manner=manner, field=name)
        for name, unit in UNITS.items()
    }
    if not (typed["near_ohm"] or 0.0) > 0:
        raise BadCommand("reading_unread", where={"field": "near_ohm"}, text=body.near_ohm)
    return typed


def copper_of(body: DistanceBody, typed: Mapping[str, float | None]) -> Copper:
    """How warm the copper is, bare or on a line: as typed, else as the job's limits say, and
    without a job as a new one starts. So one cable is as long on either screen, and a reading
    counts as warm as everything else the job works out."""
    said_c = typed["conductor_c"]
    if said_c is not None:
        return Copper(said_c, "typed", "copper_typed")
    limits = DEFAULT_LIMITS if body.job is None else body.job.limits
    said = started(limits.conductor_c, "c", name="conductor_c").origin
    code = "copper_start" if said == "start" else "copper_of_job"
    return Copper(limits.conductor_c, said, code)


def leads_off(typed: Mapping[str, float | None]) -> list[Step]:
    """Each reading without its leads, or the problem that only leads were read."""
    steps = []
    leads_ohm = typed["leads_ohm"] or 0.0
    for name in ("near_ohm", "far_ohm"):
        read_ohm = typed[name]
        if read_ohm is None:
            continue
        inputs = {
            "read_ohm": Known(read_ohm, "ohm", "typed"),
            "leads_ohm": Known(leads_ohm, "ohm", "typed"),
        }
        made = step("leads_off", meter.without_leads_ohm, inputs=inputs)
        if made.result <= 0:
            raise BadCommand("reading_is_leads", where={"field": name})
        steps.append(made)
    return steps


def tolerance_of(typed: Mapping[str, float | None]) -> float:
    """The meter's limit as a fraction: as typed, or as usual, never better than can be."""
    said = typed["tolerance_pct"]
    return max(priors.METER_PCT if said is None else said, priors.LEAST_PCT) / 100


def loose_of(read_ohm: float, typed: Mapping[str, float | None]) -> float:
    """How many ohms a reading may be off: its per cent, and last digit with contacts."""
    return read_ohm * tolerance_of(typed) + priors.METER_OHM


def believed(told: Told, body: DistanceBody, *, manner: Manner) -> Told:
    """What is told, unless no line has such a length.

    Raises BadCommand `distance_too_far`, or `distance_too_short`: the meter then saw no pair.
    """
    for one in told.spotted:
        shown = show(one.metres, "m", manner=manner)
        if one.metres > MOST_M:
            raise BadCommand("distance_too_far", where={"field": "near_ohm"}, length=shown)
        if body.fault == "break" and one.high_m < LEAST_M:
            raise BadCommand("distance_too_short", where={"field": "near_ohm"}, length=shown)
    return told


def answer_of(told: Told, manner: Manner) -> MeasuredDistance:
    """What is known, ready to print."""
    places = [_place(one, manner) for one in told.spotted]
    first = places[0]
    own_ohm = told.own_ohm
    return {
        "metres": first["metres"],
        "low": first["low"],
        "high": first["high"],
        "own_ohm": own_ohm,
        "shown": first["shown"],
        "range": first["range"],
        "own_shown": show(own_ohm, "ohm", manner=manner) if own_ohm is not None else "",
        "places": places,
        "steps": [step_answer(one, manner) for one in told.steps],
        "assumptions": _assumptions(told, manner),
    }


def _assumptions(told: Told, manner: Manner) -> list[str]:
    """What was taken for granted; how warm the copper is comes first, since one can change it."""
    said = [say("meter_assumed", code, language=manner.language) for code in told.assumptions]
    if told.copper is None:
        return said
    texts = {"copper_c": show(told.copper.heat_c, "c", manner=manner)}
    return [say("meter_assumed", told.copper.code, values=texts, language=manner.language), *said]


def _place(one: Spotted, manner: Manner) -> MeasuredPlace:
    ends = {name: _length(value, manner) for name, value in _ends(one).items()}
    shown = _length(one.metres, manner)
    texts = {**one.texts, **ends, "metres": shown}
    return {
        "point": one.point,
        "share": one.share,
        "low_share": _share_at(one, one.low_m),
        "high_share": _share_at(one, one.high_m),
        "metres": one.metres,
        "low": one.low_m,
        "high": one.high_m,
        "shown": shown,
        "range": say("meter_title", "band", values=ends, language=manner.language),
        "words": say("meter_place", one.code, values=texts, language=manner.language),
    }


def _length(metres: float, manner: Manner) -> str:
    """No finer than a meter tells it."""
    told_m = metres if metres >= 1 else round(metres / FINEST_M) * FINEST_M
    return show(told_m, "m", manner=manner)


def _share_at(one: Spotted, metres: float) -> float:
    """Where so many metres lie, as a share of the place's own section."""
    return one.share + (metres - one.metres) / one.length_m if one.length_m else 0.0


def _ends(one: Spotted) -> dict[str, float]:
    return {"low": one.low_m, "high": one.high_m}

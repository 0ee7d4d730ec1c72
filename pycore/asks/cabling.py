"""The asks `choose_cable` and `longest_run`: which cable to pull through a zone, and how far."""

from collections.abc import Mapping
from typing import Any, Literal, NamedTuple

from typing_extensions import TypedDict

from pycore.asks.names import names_of
from pycore.asks.shown import marks_of_loss
from pycore.calc.choice import CableChoice, LongestRun, Pick, choose_cable, longest_run
from pycore.calc.finding import FindingValue, Verdict
from pycore.calc.line_loss import NEAR_TIMES, SLACK
from pycore.ground.units import Manner, show, show_beside, show_most, show_typed, unit_of
from pycore.ground.words import ENGLISH, kind_name, say
from pycore.jobs import CableKind, Closed, Job, Zone
from pycore.jobs.base import Id
from pycore.jobs.catalogue_cables import cable_kinds

Stock = Literal["metric", "gauge", "job"]
TYPED = ("limit_db", "line_v")
MOST = ("longest_m", "far_m")
LOSSES = ("loss_db", "thinner_loss_db")
# A step up that gains less than this share of the best one is not worth a word.
WORTH = 0.2


class CableBody(Closed):
    """A job, a zone of it, and which cables are at hand."""

    job: Job
    zone: Id
    stock: Stock = "metric"


class ZoneBody(Closed):
    """A job and a zone of it."""

    job: Job
    zone: Id


class CablePick(TypedDict):
    """One proposal: a cable for some sections, the loss with it, and why none thinner.

    `command` puts it in; null where it is there already, or where nothing can be put in.
    `finding` opens the working of the loss, asked with that command.
    """

    title: str
    words: str
    why_not: str
    loss: str
    finding: str | None
    here: bool
    command: dict[str, Any] | None


class WayOut(TypedDict):
    """What would help where no cable does."""

    words: str
    passes: bool


class CableAnswer(TypedDict):
    """What to pull. `refused` says why nothing can be said; then the lists are empty."""

    refused: str | None
    now: str
    verdict: Verdict
    picks: list[CablePick]
    step_ups: list[CablePick]
    ways_out: list[WayOut]
    stock: list[str]


class LongestAnswer(TypedDict):
    """How far the line may run."""

    words: str
    known: bool


class Desk(NamedTuple):
    """What is at hand while proposals are written."""

    zone: Zone
    choice: CableChoice
    stocked: Mapping[str, CableKind]
    names: Mapping[str, str]
    manner: Manner

    def say(self, code: str, **values: FindingValue) -> str:
        """A sentence of the choice, its values printed by the units in their names."""
        texts = {name: self._text(name, value) for name, value in values.items()}
        return say("choice", code, values=texts, language=self.manner.language)

    def _text(self, name: str, value: FindingValue) -> str:
        if isinstance(value, float):
            return self._number(name, value)
        return self.names.get(str(value), str(value))

    def _number(self, name: str, value: float) -> str:
        """A limit as it was typed, the most cut off, a loss told from the limit."""
        unit = unit_of(name) or "count"
        if name in LOSSES:
            return self.loss(value)
        printer = show_typed if name in TYPED else show_most if name in MOST else show
        return printer(value, unit, manner=self.manner)

    def loss(self, loss_db: float) -> str:
        """A loss (dB) that does not read like the limit unless it is the limit."""
        marks = marks_of_loss(self.choice.limit_db)
        return show_beside(loss_db, "db", marks=marks, manner=self.manner)


def choose(body: CableBody, manner: Manner) -> CableAnswer:
    """The ask `choose_cable`."""
    stocked = stock_of(body.job, body.stock)
    choice = choose_cable(body.job, body.zone, stocked=stocked)
    zone = next(one for one in body.job.zones if one.id == body.zone)
    language = manner.language
    at_hand = {kind.id: kind_name(kind.name, language=language) for kind in stocked}
    names = {**at_hand, **names_of(body.job, language=language)}
    desk = Desk(zone, choice, {kind.id: kind for kind in stocked}, names, manner)
    return {
        "refused": desk.say(f"refused_{choice.refused}") if choice.refused else None,
        "now": _now(desk),
        "verdict": _verdict(choice),
        "picks": _picks(desk),
        "step_ups": _step_ups(desk),
        "ways_out": [
            {
                "words": desk.say(f"rescue_{one.way}", **_rescue_values(one._asdict())),
                "passes": one.passes,
            }
            for one in choice.rescues
        ],
        "stock": list(at_hand.values()),
    }


def stock_of(job: Job, stock: Stock) -> list[CableKind]:
    """The cables at hand: the job's own first, as they are there, then the usual ones."""
    own = list(job.kinds.cables)
    if stock == "job":
        return own
    usual = cable_kinds(ENGLISH["catalogue"])
    listed = [kind for kind in usual if (kind.awg is not None) == (stock == "gauge")]
    met = {_size(kind) for kind in own} | {kind.id for kind in own}
    return [*own, *(kind for kind in listed if not {_size(kind), kind.id} & met)]


def _size(kind: CableKind) -> tuple[object, ...]:
    """What makes two cables the same choice."""
    return (
        kind.awg,
        kind.area_mm2,
        kind.loop_ohm_per_km,
        kind.strand_class,
        kind.metal,
        bool(kind.tinned),
    )


def _now(desk: Desk) -> str:
    choice = desk.choice
    if choice.refused is not None or choice.loss_db is None:
        return ""
    return desk.say("now", loss_db=choice.loss_db, limit_db=choice.limit_db)


def _verdict(choice: CableChoice) -> Verdict:
    if choice.loss_db is None:
        return "unknown"
    most_db = choice.limit_db * SLACK
    if choice.loss_db <= most_db:
        return "ok"
    return "near" if choice.loss_db <= most_db * NEAR_TIMES else "over"


def _picks(desk: Desk) -> list[CablePick]:
    """For the whole line, and for the home run alone."""
    if desk.choice.refused is not None:
        return []
    pairs: tuple[tuple[Literal["all", "home_run"], Pick | None], ...] = (
        ("all", desk.choice.whole),
        ("home_run", desk.choice.home_run),
    )
    return [_pick(desk, sections, pick=pick) for sections, pick in pairs]


def _pick(desk: Desk, sections: Literal["all", "home_run"], *, pick: Pick | None) -> CablePick:
    title = desk.say(f"title_{sections}")
    limit_db = desk.choice.limit_db
    if pick is None:
        unknown = sections == "home_run" and desk.choice.loss_db is None
        words = desk.say("home_run_unknown" if unknown else "pick_none", limit_db=limit_db)
        return _proposal(title, words)
    why = desk.say(
        f"why_not_{pick.why_not}",
        thinner=pick.thinner or "",
        thinner_loss_db=pick.thinner_loss_db or 0.0,
    )
    words = desk.say("pick", cable=pick.cable, loss_db=pick.loss_db, limit_db=limit_db)
    meant = [one for one in desk.zone.line if sections == "all" or one.after is None]
    here = all(one.cable == pick.cable for one in meant)
    command = None if here else _command(desk, sections, cable=pick.cable)
    loss = desk.loss(pick.loss_db)
    made = _proposal(title, words)
    made.update({"why_not": why, "loss": loss, "here": here, "command": command})
    made["finding"] = _loss_of(desk)
    return made


def _proposal(title: str, words: str) -> CablePick:
    return {
        "title": title,
        "words": words,
        "why_not": "",
        "loss": "",
        "finding": None,
        "here": False,
        "command": None,
    }


def _loss_of(desk: Desk) -> str:
    """The id of the finding of the zone's loss."""
    return f"zone_loss_db:{desk.zone.id}:override"


def _command(desk: Desk, sections: object, *, cable: str) -> dict[str, Any]:
    kind = desk.stocked[cable].model_dump(exclude_none=True)
    return {"do": "set_cable", "zone": desk.zone.id, "sections": sections, "kind": kind}


def _step_ups(desk: Desk) -> list[CablePick]:
    """Single sections one step thicker, those that gain something."""
    proposals = []
    most_db = max((one.gain_db for one in desk.choice.step_ups), default=0.0)
    for one in desk.choice.step_ups:
        if one.gain_db < most_db * WORTH:
            continue
        words = desk.say(
            "step_up",
            cable=one.cable,
            section=one.section,
            loss_db=one.loss_db,
            gain_db=one.gain_db,
        )
        made = _proposal(desk.names.get(one.section, ""), words)
        made["loss"] = desk.loss(one.loss_db)
        made["finding"] = _loss_of(desk)
        made["command"] = _command(desk, [one.section], cable=one.cable)
        proposals.append(made)
    return proposals


def _rescue_values(values: Mapping[str, Any]) -> dict[str, FindingValue]:
    return {
        name: value
        for name, value in values.items()
        if name not in ("way", "passes") and value is not None
    }


def longest(body: ZoneBody, manner: Manner) -> LongestAnswer:
    """The ask `longest_run`."""
    told = longest_run(body.job, body.zone)
    zone = next(one for one in body.job.zones if one.id == body.zone)
    names = names_of(body.job, language=manner.language)
    desk = Desk(zone, CableChoice(zone.id, told.limit_db, None), {}, names, manner)
    return {"words": _longest_words(desk, told), "known": told.refused is None}


def _longest_words(desk: Desk, told: LongestRun) -> str:
    if told.refused is not None:
        return desk.say(f"refused_{told.refused}", limit_db=told.limit_db)
    there = dict.fromkeys(one.cable for one in desk.zone.line if one.cable is not None)
    cable = ", ".join(desk.names.get(one, one) for one in there)
    far_m = told.far_m or 0.0
    return desk.say("longest", cable=cable, longest_m=told.longest_m or 0.0, far_m=far_m)

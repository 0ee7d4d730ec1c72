"""The asks `compare` and `merge`: what the office planned against what the ladder did."""

from collections.abc import Sequence
from typing import Literal

from typing_extensions import TypedDict

from pycore.asks.answers import Faces, FindingAnswer
from pycore.asks.carrying import CompareBody, MergeBody
from pycore.asks.change_data import data_texts, reading_there, reading_title, reading_told
from pycore.asks.change_values import Voice, value_text, voice_of, zone_text
from pycore.asks.see import see
from pycore.calc.solve import PointRow
from pycore.edit.cells import Key
from pycore.edit.compare import NOTHING, THERE, Change, Side, compare, take_sides
from pycore.edit.order import is_order
from pycore.ground.units import Manner
from pycore.ground.words import has, say, say_count
from pycore.jobs import Job
from pycore.jobs.job import Base

Relation = Literal["same", "ahead", "behind", "only_mine", "only_theirs", "apart_known", "apart"]
PLACES = {"cable": "kind", "loudspeaker": "kind", "attenuator": "kind", "tick": "point"}
SIDES: tuple[Side, ...] = ("mine", "theirs", "both", "clash", "differs")


class ChangeAnswer(TypedDict):
    """One difference. `what` and `title` name the thing, the same for all its changes, which
    stand together; `base` is None when it is not known or the thing was not there.

    `usual` is the side a merge takes unless told; where `must_choose`, it has to be told.
    """

    id: str
    where: dict[str, str]
    what: str
    title: str
    field: str
    words: str
    mine: str | None
    theirs: str | None
    base: str | None
    side: Side
    usual: Literal["mine", "theirs"]
    must_choose: bool


class CompareAnswer(TypedDict):
    """All differences, how the two states stand to each other, and what is united anyway.

    `read`: the readings that mine has and the known base has not, in words.
    """

    changes: list[ChangeAnswer]
    relation: Relation
    words: str
    counts: dict[Side, int]
    united: list[str]
    read: list[str]


class MergeAnswer(TypedDict):
    """The merged job, looked at, and what of theirs was united with mine."""

    findings: list[FindingAnswer]
    points: list[PointRow]
    faces: Faces
    job: Job
    united: list[str]


def compare_jobs(body: CompareBody, manner: Manner) -> CompareAnswer:
    """The ask `compare`."""
    changes = compare(take_sides(body.mine, body.theirs, base=body.base))
    united = _united(body, manner=manner)
    sides = {change.side for change in changes}
    relation = _relation(body, sides, united=bool(united))
    here, there = voice_of(body.mine, manner), voice_of(body.theirs, manner)
    before = here if body.base is None else voice_of(body.base, manner)
    everyone = {**there.names, **here.names}
    voices = [one._replace(names={**everyone, **one.names}) for one in (here, there, before)]
    return {
        "changes": [_change(change, voices) for change in changes],
        "relation": relation,
        "words": say("link", relation, language=manner.language),
        "counts": {side: sum(change.side == side for change in changes) for side in SIDES},
        "united": united,
        "read": _read(body, here),
    }


def merge_jobs(body: MergeBody, manner: Manner) -> MergeAnswer:
    """The ask `merge`."""
    from pycore.carry.prints import print_of
    from pycore.edit.merge import States, merge

    states = States(body.mine, body.theirs, body.base)
    grown_from = Base(rev=body.theirs.rev, print=print_of(body.theirs))
    job = merge(states, body.taken, grown_from=grown_from)
    united = _united(body, manner=manner)
    return {**see(job, manner), "job": job, "united": united}


def _relation(body: CompareBody, sides: set[Side], *, united: bool) -> Relation:
    """How the two states are related, by what they grew from and by who changed anything."""
    from pycore.carry.prints import print_of

    if not sides and not united:
        return "same"
    if body.theirs.base is not None and body.theirs.base.print == print_of(body.mine):
        return "ahead"
    if body.mine.base is not None and body.mine.base.print == print_of(body.theirs):
        return "behind"
    if body.base is None:
        return "apart"
    if sides == {"mine"} and not united:
        return "only_mine"
    return "only_theirs" if sides <= {"theirs"} else "apart_known"


def _united(body: CompareBody, *, manner: Manner) -> list[str]:
    """What only theirs has and mine never had."""
    known = [body.mine] if body.base is None else [body.mine, body.base]
    readings = {reading.id for job in known for reading in job.readings}
    ticks = {tick for job in known for tick in job.ticks}
    counts = {
        "united_readings": sum(one.id not in readings for one in body.theirs.readings),
        "united_ticks": sum(one not in ticks for one in body.theirs.ticks),
    }
    return [
        say_count("link", code, count=count, language=manner.language)
        for code, count in counts.items()
        if count
    ]


def _read(body: CompareBody, voice: Voice) -> list[str]:
    """What was read here since the state both grew from; nothing where that is not known."""
    if body.base is None:
        return []
    before = {reading.id for reading in body.base.readings}
    return [reading_told(one, voice=voice) for one in body.mine.readings if one.id not in before]


def _change(change: Change, voices: Sequence[Voice]) -> ChangeAnswer:
    mine, theirs, base = _values(change, voices)
    voice = voices[1] if change.mine is False else voices[0]
    language = voice.manner.language
    field = change.cell
    if has("change_field", field):
        field = say("change_field", field, language=language)
    texts = {"field": field, "mine": mine or "", "theirs": theirs or "", "base": base or ""}
    family = change.key.family
    sorts = voice.sorts.get(change.key.id, ()) if family == "point" else ()
    what = ".".join((family, *sorts[:1]))
    return {
        "id": change.id,
        "where": _where(change.key),
        "what": say("change_thing", what, language=language),
        "title": _title(change.key, voice),
        "field": field,
        "words": say("change", _code(change), values=texts, language=language),
        "mine": mine,
        "theirs": theirs,
        "base": base,
        "side": change.side,
        "usual": change.usual,
        "must_choose": change.must_choose,
    }


def _title(key: Key, voice: Voice) -> str:
    if key.family == "reading":
        return reading_title(key.id, voice=voice)
    return voice.names.get(key.id, "")


def _values(change: Change, voices: Sequence[Voice]) -> list[str | None]:
    """The values on each side and before, as texts."""
    values = (change.mine, change.theirs, change.base)
    if change.cell == "definition":
        return data_texts(values, voices)
    if change.cell == THERE and change.key.family == "zone":
        return [
            zone_text(change.key.id, value, voice=v)
            for value, v in zip(values, voices, strict=True)
        ]
    if change.cell == THERE and change.key.family == "reading":
        return [
            reading_there(change.key.id, value, voice=v)
            for value, v in zip(values, voices, strict=True)
        ]
    return [
        value_text(change.cell, value, voice=v) for value, v in zip(values, voices, strict=True)
    ]


def _where(key: Key) -> dict[str, str]:
    return {PLACES.get(key.family, key.family): key.id} if key.id else {}


def _code(change: Change) -> str:
    """Which sentence says a change."""
    if change.cell == THERE:
        return f"there_{_how_there(change)}"
    if is_order(change.cell):
        return f"order_{change.side}"
    return "clash_new" if change.side == "clash" and change.base is NOTHING else change.side


def _how_there(change: Change) -> str:
    """Added by whoever has it, taken out by whoever has not, or only there."""
    has_it, lacks_it = ("mine", "theirs") if change.mine else ("theirs", "mine")
    if change.side == "differs":
        return f"only_{has_it}"
    if change.side == "clash":
        return f"clash_{lacks_it}"
    return f"gone_{lacks_it}" if change.base else f"added_{has_it}"

"""How the kinds of a job look in a list, and their numbers as a form shows them."""

from collections import Counter
from collections.abc import Iterator, Mapping
from functools import cache

from pycore.asks.answers import KindFace, KindFaces, RowFace
from pycore.asks.fields import texts_of
from pycore.ground.plain import NO_BREAK
from pycore.ground.units import (
    Manner,
    TapText,
    as_typed,
    show_taps,
    show_typed,
    true_voltage,
)
from pycore.ground.words import ENGLISH, kind_name, say, say_count
from pycore.jobs import AttenuatorKind, CableKind, Job, Kinds, LoudspeakerKind, Tap
from pycore.jobs.catalogue import attenuator_kinds, loudspeaker_kinds
from pycore.jobs.catalogue_cables import cable_kinds

Use = Mapping[str, int]
Kind = LoudspeakerKind | AttenuatorKind | CableKind


def kinds_used(job: Job) -> dict[str, Use]:
    """How many points of a job use each kind, by family."""
    points = [point for zone in job.zones for point in zone.line]
    kinds: dict[str, list[str | None]] = {"loudspeaker": [], "attenuator": []}
    for point in points:
        if point.fitted.is_ == "loudspeaker" or point.fitted.is_ == "attenuator":
            kinds[point.fitted.is_].append(point.fitted.kind)
    return {
        "loudspeakers": Counter(one for one in kinds["loudspeaker"] if one is not None),
        "attenuators": Counter(one for one in kinds["attenuator"] if one is not None),
        "cables": Counter(point.cable for point in points if point.cable is not None),
    }


def kind_faces(kinds: Kinds, used: Mapping[str, Use], *, manner: Manner) -> KindFaces:
    """The faces of all kinds."""
    return {
        "loudspeakers": {
            kind.id: _face(
                kind, _loudspeaker(kind, manner), used=used["loudspeakers"], manner=manner
            )
            for kind in kinds.loudspeakers
        },
        "attenuators": {
            kind.id: _face(kind, _attenuator(kind, manner), used=used["attenuators"], manner=manner)
            for kind in kinds.attenuators
        },
        "cables": {
            kind.id: _face(kind, _cable(kind, manner), used=used["cables"], manner=manner)
            for kind in kinds.cables
        },
    }


def _face(
    kind: Kind,
    parts: Iterator[str],
    *,
    used: Use,
    manner: Manner,
) -> KindFace:
    count = used.get(kind.id, 0)
    return {
        "title": kind_name(kind.name, language=manner.language),
        "lines": list(parts),
        "used": say_count("kind", "used", count=count, language=manner.language)
        if count
        else say("kind", "used.none", language=manner.language),
        "in_use": count > 0,
        "differs": _differs(kind),
        "fields": texts_of(kind, manner),
        "rows": list(_rows(kind, manner)) if isinstance(kind, LoudspeakerKind) else [],
    }


def _differs(kind: Kind) -> bool:
    """Whether the tool comes with one of this id that says otherwise."""
    return _content(_stocked().get((type(kind), kind.id), kind)) != _content(kind)


def _content(kind: Kind) -> Kind:
    """What a kind says: its name is the job's own, and the order of its taps is no matter."""
    if not isinstance(kind, LoudspeakerKind):
        return kind.model_copy(update={"name": ""})
    taps = tuple(sorted(kind.taps, key=lambda tap: (tap.at_v, tap.w or 0.0, tap.ohm or 0.0)))
    return kind.model_copy(update={"name": "", "taps": taps})


@cache
def _stocked() -> dict[tuple[type[Kind], str], Kind]:
    """What comes with the tool, by family and id: a job has copies, which a correction leaves."""
    names = ENGLISH["catalogue"]
    every: list[Kind] = [*loudspeaker_kinds(names), *attenuator_kinds(names)]
    every += cable_kinds(names)
    return {(type(kind), kind.id): kind for kind in every}


def _rows(kind: LoudspeakerKind, manner: Manner) -> Iterator[RowFace]:
    for at_v in _marks(kind):
        row = [tap for tap in kind.taps if tap.at_v == at_v]
        yield {
            "at_v": at_v,
            "line_v": true_voltage(at_v),
            "shown": as_typed(at_v, "v", manner=manner),
            "text": _row_text(row, manner).replace(NO_BREAK, " "),
            "taps": [
                {"tap_w": tap_w, "shown": show_typed(tap_w, "w", manner=manner)}
                for tap_w in sorted(tap.w for tap in row if tap.w and tap.allowed is not False)
            ],
        }


def _marks(kind: LoudspeakerKind) -> list[float]:
    """The voltages its rows are marked for, as they stand on it."""
    return list(dict.fromkeys(tap.at_v for tap in kind.taps))


def _row_text(row: list[Tap], manner: Manner) -> str:
    return show_taps([TapText(tap.w, tap.ohm) for tap in row], manner=manner)


def _loudspeaker(kind: LoudspeakerKind, manner: Manner) -> Iterator[str]:
    if not kind.taps:
        yield say("kind", "no_taps", language=manner.language)
    for at_v in _marks(kind):
        row = [tap for tap in kind.taps if tap.at_v == at_v]
        volts = show_typed(at_v, "v", manner=manner)
        texts = {"taps": _row_text(row, manner), "at_v": volts}
        yield say("kind", "row", values=texts, language=manner.language)
    if kind.tap_means == "delivered":
        yield say("kind", "delivered", language=manner.language)


def _attenuator(kind: AttenuatorKind, manner: Manner) -> Iterator[str]:
    volts = "rated" if kind.rated_at_v is not None else "rated_no_volts"
    code = volts if kind.rated_w is not None else "rated_not_known"
    yield say("kind", code, values=texts_of(kind, manner), language=manner.language)
    if kind.form is not None:
        yield say("kind", kind.form, language=manner.language)
    said = {True: "override_yes", False: "override_no", None: "override_not_known"}
    yield say("kind", said[kind.override], language=manner.language)


def _cable(kind: CableKind, manner: Manner) -> Iterator[str]:
    if kind.awg is not None:
        code = "cable_awg"
    elif kind.area_mm2 is not None:
        code = f"cable_area_{kind.strand_class}" if kind.strand_class else "cable_area"
    else:
        code = "cable_loop"
    metal = say("kind", kind.metal, language=manner.language)
    texts = {**texts_of(kind, manner), "metal": metal}
    yield say("kind", code, values=texts, language=manner.language)
    if kind.tinned:
        yield say("kind", "tinned", language=manner.language)

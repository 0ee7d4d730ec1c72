"""The asks `catalogue` and `version`: what comes with the tool."""

from typing_extensions import TypedDict

from pycore import __version__
from pycore.asks.answers import KindFaces
from pycore.asks.kind_faces import kind_faces
from pycore.asks.requests import NothingBody
from pycore.ground.units import Manner, show_typed
from pycore.ground.words import ENGLISH
from pycore.jobs import AttenuatorKind, CableKind, Kinds, LoudspeakerKind
from pycore.jobs.catalogue import (
    LINE_VOLTS,
    USUAL_TAPS_W,
    attenuator_kinds,
    loudspeaker_kinds,
)
from pycore.jobs.catalogue_cables import cable_kinds

NOT_USED: dict[str, dict[str, int]] = {"loudspeakers": {}, "attenuators": {}, "cables": {}}


class VersionAnswer(TypedDict):
    """The version of the core."""

    version: str


class LineVolts(TypedDict):
    """A usual line voltage and how it is printed."""

    line_v: float
    shown: str


class UsualTap(TypedDict):
    """A usual tap and how it is printed."""

    tap_w: float
    shown: str


class UsualTaps(TypedDict):
    """The usual taps at one line voltage."""

    line_v: float
    taps: list[UsualTap]


class CatalogueAnswer(TypedDict):
    """Generic kinds to start from and how they look, the usual voltages and taps.

    The page is built with this answer in it, so that it can be used before the core has started.
    """

    loudspeakers: list[LoudspeakerKind]
    attenuators: list[AttenuatorKind]
    cables: list[CableKind]
    line_volts: list[LineVolts]
    usual_taps: list[UsualTaps]
    names: dict[str, str]
    faces: KindFaces


def version(_body: NothingBody, _manner: Manner) -> VersionAnswer:
    """The ask `version`."""
    return {"version": __version__}


def catalogue(_body: NothingBody, manner: Manner) -> CatalogueAnswer:
    """The ask `catalogue`."""
    names = ENGLISH["catalogue"]
    loudspeakers = list(loudspeaker_kinds(names))
    attenuators = list(attenuator_kinds(names))
    cables = list(cable_kinds(names))
    every: list[LoudspeakerKind | AttenuatorKind | CableKind]
    every = [*loudspeakers, *attenuators, *cables]
    kinds = Kinds(
        loudspeakers=tuple(loudspeakers), attenuators=tuple(attenuators), cables=tuple(cables)
    )
    return {
        "loudspeakers": loudspeakers,
        "attenuators": attenuators,
        "cables": cables,
        "line_volts": [
            {"line_v": line_v, "shown": show_typed(line_v, "v", manner=manner)}
            for line_v in LINE_VOLTS
        ],
        "usual_taps": [
            {"line_v": line_v, "taps": [_tap(tap_w, manner) for tap_w in taps]}
            for line_v, taps in USUAL_TAPS_W.items()
        ],
        "names": {one.id: one.name for one in every},
        "faces": kind_faces(kinds, NOT_USED, manner=manner),
    }


def _tap(tap_w: float, manner: Manner) -> UsualTap:
    return {"tap_w": tap_w, "shown": show_typed(tap_w, "w", manner=manner)}

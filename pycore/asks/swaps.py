"""The ask `swaps`: which other loudspeakers could hang at a point, and what each would do.

Each kind is tried on the tap that would sound most like the one there now; where a kind
does not say how loud it plays, on the tap nearest in watts.
"""

import json
import math
from typing import Any

from typing_extensions import TypedDict

from pycore.asks.preview import Option, Tries
from pycore.calc.sound import sounds_db
from pycore.edit import read_command
from pycore.ground.problems import BadCommand
from pycore.ground.units import Manner, same_voltage, show_typed
from pycore.ground.words import ENGLISH, kind_name, say
from pycore.jobs import Closed, Job, Loudspeaker, LoudspeakerKind, Tap, Zone
from pycore.jobs.base import Id
from pycore.jobs.catalogue import loudspeaker_kinds


class SwapsBody(Closed):
    """A job and the loudspeaker that may be swapped."""

    job: Job
    point: Id


class Swap(TypedDict):
    """One kind on one of its taps: the command that fits it, and what that would do.

    `neighbour`: the nearest loudspeaker on the line is of this kind.
    """

    kind: str
    title: str
    line: str
    command: dict[str, Any]
    option: Option
    neighbour: bool


class SwapsAnswer(TypedDict):
    """The kinds of the job first, the nearest on the line before the others, then those that
    come with the tool."""

    options: list[Swap]


def swaps(body: SwapsBody, manner: Manner) -> SwapsAnswer:
    """The ask `swaps`."""
    zone, fitted = _place(body.job, body.point)
    line_v = _line_v(body.job, zone, fitted=fitted)
    own = body.job.kinds.loudspeakers
    known = {kind.id for kind in own}
    listed = [kind for kind in loudspeaker_kinds(ENGLISH["catalogue"]) if kind.id not in known]
    now = next((kind for kind in own if kind.id == fitted.kind), None)
    tries = Tries(body.job, manner)
    hops = _hops(zone, body.point)
    beside = min(hops.values(), default=0)
    options = []
    for kind in (*sorted(own, key=lambda one: hops.get(one.id, len(zone.line) + 1)), *listed):
        tap = None if kind.id == fitted.kind else _nearest(kind, fitted, now=now, line_v=line_v)
        if tap is not None:
            neighbour = hops.get(kind.id) == beside
            options.append(_swap(tries, body.point, kind=kind, tap=tap, neighbour=neighbour))
    return {"options": options}


def _place(job: Job, point: str) -> tuple[Zone, Loudspeaker]:
    for zone in job.zones:
        for one in zone.line:
            if one.id == point and one.fitted.is_ == "loudspeaker":
                return zone, one.fitted
    raise BadCommand("not_here", where={"point": point}, id=point)


def _hops(zone: Zone, point: str) -> dict[str, int]:
    """How many sections away the nearest other loudspeaker of each kind hangs."""
    beside: dict[str | None, list[str | None]] = {}
    for one in zone.line:
        beside.setdefault(one.id, []).append(one.after)
        beside.setdefault(one.after, []).append(one.id)
    away: dict[str | None, int] = {point: 0}
    queue = [point]
    for here in queue:  # it grows as it is walked
        for near in beside.get(here, ()):
            # what hangs beyond the terminals is on another run, and no neighbour
            if near is not None and near not in away:
                away[near] = away[here] + 1
                queue.append(near)
    hops: dict[str, int] = {}
    for one in zone.line:
        kind = one.fitted.kind if one.fitted.is_ == "loudspeaker" else None
        if kind is not None and one.id != point and one.id in away:
            hops[kind] = min(away[one.id], hops.get(kind, away[one.id]))
    return hops


def _line_v(job: Job, zone: Zone, *, fitted: Loudspeaker) -> float | None:
    """The volts of the line it hangs on; of its own row where the zone is landed nowhere."""
    outputs = {output.id: output for one in job.amplifiers for output in one.outputs}
    output = outputs.get(zone.page_output or zone.output or "")
    return output.line_v if output else fitted.tap_at_v


def _nearest(
    kind: LoudspeakerKind, fitted: Loudspeaker, *, now: LoudspeakerKind | None, line_v: float | None
) -> Tap | None:
    """Of the taps marked for this line, the one that sounds most like what hangs there."""
    if line_v is None:
        return None
    row = [tap for tap in kind.taps if _is_offered(tap, line_v)]
    if not row or not fitted.tap_w:
        return row[0] if row else None
    was_db, is_db = (sounds_db(one) if one else None for one in (now, kind))
    louder_db = is_db - was_db if was_db is not None and is_db is not None else 0.0
    wanted = math.log10(fitted.tap_w) - louder_db / 10
    return min(row, key=lambda tap: abs(math.log10(tap.w or 1.0) - wanted))


def _is_offered(tap: Tap, line_v: float) -> bool:
    return bool(tap.w) and tap.allowed is not False and same_voltage(tap.at_v, line_v)


def _swap(tries: Tries, point: str, *, kind: LoudspeakerKind, tap: Tap, neighbour: bool) -> Swap:
    command = {
        "do": "swap_loudspeaker",
        "point": point,
        "kind": kind.model_dump(exclude_none=True),
        "tap_w": tap.w,
        "tap_at_v": tap.at_v,
    }
    texts = {
        "tap_w": show_typed(tap.w or 0.0, "w", manner=tries.manner),
        "tap_at_v": show_typed(tap.at_v, "v", manner=tries.manner),
    }
    return {
        "kind": kind.id,
        "title": kind_name(kind.name, language=tries.manner.language),
        "line": say("face", "tap", values=texts, language=tries.manner.language),
        "command": command,
        "option": tries.option(read_command(json.dumps(command))),
        "neighbour": neighbour,
    }

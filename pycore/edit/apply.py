"""The one way a job changes: a command is read, applied, and the result keeps every rule."""

from typing import Annotated

from pydantic import Field, TypeAdapter

from pycore.edit.change import changed
from pycore.edit.fitting import ChangePoint, Connect, Disconnect, SetAttenuator, SetTap
from pycore.edit.hanging import AddPoints, MovePoint, RemovePoint
from pycore.edit.supply import (
    AddAmplifier,
    AddOutput,
    ChangeAmplifier,
    ChangeOutput,
    MoveAmplifier,
    MoveOutput,
    RemoveAmplifier,
    RemoveOutput,
)
from pycore.edit.whole import ChangeJob, DropKind, Restore, SetLimits, UseKind
from pycore.edit.zoning import AddZone, ChangeZone, MoveZone, RemoveZone
from pycore.jobs import Job, Tick
from pycore.jobs.zones import Point

Command = Annotated[
    ChangeJob
    | SetLimits
    | UseKind
    | DropKind
    | Restore
    | AddAmplifier
    | ChangeAmplifier
    | MoveAmplifier
    | RemoveAmplifier
    | AddOutput
    | ChangeOutput
    | MoveOutput
    | RemoveOutput
    | AddZone
    | ChangeZone
    | MoveZone
    | RemoveZone
    | AddPoints
    | MovePoint
    | RemovePoint
    | ChangePoint
    | SetTap
    | Connect
    | Disconnect
    | SetAttenuator,
    Field(discriminator="do"),
]
COMMANDS: TypeAdapter[Command] = TypeAdapter(Command)


def read_command(text: str | bytes) -> Command:
    """A command from its text. Raises pydantic's ValidationError, which the door words."""
    return COMMANDS.validate_json(text)


def apply(job: Job, command: Command) -> Job:
    """The job after a command; `rev` goes up by one, ticks on a changed tap are gone.

    Raises BadCommand when the command does not fit this job, BrokenJob when the result
    breaks a rule. The job given is never changed.
    """
    new = command.apply(job)
    return changed(new, rev=job.rev + 1, ticks=_living_ticks(new))


def _living_ticks(job: Job) -> tuple[Tick, ...]:
    """A tick stands for one tap at one point, and dies with it."""
    if not job.ticks:
        return ()
    points = {point.id: point for zone in job.zones for point in zone.line}
    return tuple(tick for tick in job.ticks if _still_true(tick, points.get(tick.point)))


def _still_true(tick: Tick, point: Point | None) -> bool:
    if point is None or point.fitted.is_ != "loudspeaker":
        return False
    fitted = point.fitted
    same_tap = (fitted.tap_w, fitted.tap_at_v) == (tick.tap_w, tick.tap_at_v)
    return same_tap and fitted.direct_ohm is None

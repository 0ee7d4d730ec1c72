"""The one way a job changes: a command is read, applied, and the result keeps every rule."""

from collections.abc import Iterator
from typing import Annotated, Any, get_args

from pydantic import BaseModel, Field, TypeAdapter

from pycore.edit.cabling import SetCable, SetLengths
from pycore.edit.change import changed
from pycore.edit.fitting import ChangePoint, Connect, Disconnect, SetAttenuator
from pycore.edit.hanging import AddPoints, MovePoint, RemovePoint
from pycore.edit.kinds import DropKind, UseKind
from pycore.edit.measuring import DropReading, KeepReading, MarkBaseline
from pycore.edit.runs import AddRun
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
from pycore.edit.swapping import SetTap, SetTaps, SwapLoudspeaker
from pycore.edit.ticking import Tick, Untick
from pycore.edit.ticks import living_ticks
from pycore.edit.whole import ChangeJob, Restore, SetLimits
from pycore.edit.zoning import AddZone, ChangeZone, MoveZone, RemoveZone
from pycore.ground.refusals import read_kind
from pycore.jobs import Job

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
    | AddRun
    | SetCable
    | SetLengths
    | MovePoint
    | RemovePoint
    | ChangePoint
    | SetTap
    | SetTaps
    | SwapLoudspeaker
    | Connect
    | Disconnect
    | SetAttenuator
    | KeepReading
    | DropReading
    | MarkBaseline
    | Tick
    | Untick,
    Field(discriminator="do"),
]
COMMANDS: TypeAdapter[Command] = TypeAdapter(Command)


def _choices(union: Any) -> Iterator[str]:
    """The words by which the models of a union are chosen: command names, families of kinds."""
    if isinstance(union, type) and issubclass(union, BaseModel):
        for name in ("do", "family"):
            if name in union.model_fields:
                yield from get_args(union.model_fields[name].annotation)
    for one in get_args(union):
        yield from _choices(one)


CHOICES = frozenset(_choices(Command))


def read_command(text: str | bytes) -> Command:
    """A command from its text. Raises BadText, with the field's own name as its place."""
    return read_kind(COMMANDS, text, tags=CHOICES)


def apply(job: Job, command: Command) -> Job:
    """The job after a command; `rev` goes up by one, ticks on a changed tap are gone.

    Raises BadCommand when the command does not fit this job, BrokenJob when the result
    breaks a rule. The job given is never changed.
    """
    new = command.apply(job)
    return changed(new, rev=job.rev + 1, ticks=living_ticks(new))

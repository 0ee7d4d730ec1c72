"""Making a changed copy of a frozen model, validated again; and finding things by id."""

from collections.abc import Iterable
from typing import Any, Protocol, TypeVar

from pydantic import ValidationError

from pycore.ground.problems import BadCommand
from pycore.ground.refusals import refusal
from pycore.jobs import Amplifier, Closed, Job, Output, Point, Zone

Model = TypeVar("Model", bound=Closed)


class Named(Protocol):
    """Anything with an id."""

    @property
    def id(self) -> str:
        """Its id."""


Thing = TypeVar("Thing", bound=Named)


def changed(model: Model, **fields: object) -> Model:
    """A copy with some fields changed. A plain model copy is not validated; this one is.

    Raises the problem that names the field when the result is out of bounds.
    """
    kind = type(model)
    now: dict[str, Any] = {}
    for name, field in kind.model_fields.items():
        now[field.alias or name] = fields[name] if name in fields else getattr(model, name)
    try:
        return kind.model_validate(now)
    except ValidationError as refused:
        raise refusal(refused) from None


def given(changes: Closed) -> dict[str, object]:
    """The fields a command names, null ones too: null means "not known"."""
    return {name: getattr(changes, name) for name in changes.model_fields_set}


def require(fields: dict[str, object], *names: str) -> None:
    """Refuse to make a field unknown that a job cannot do without.

    Raises BadCommand `cannot_be_unknown`.
    """
    for name in names:
        if name in fields and fields[name] is None:
            raise BadCommand("cannot_be_unknown", where={"field": f"changes.{name}"})


def replaced(things: tuple[Thing, ...], new: Thing) -> tuple[Thing, ...]:
    """The same things with one put in the place of its namesake."""
    return tuple(new if one.id == new.id else one for one in things)


def without(things: Iterable[Thing], gone: str) -> tuple[Thing, ...]:
    """The same things without one."""
    return tuple(one for one in things if one.id != gone)


def placed(things: tuple[Thing, ...], new: Thing, *, before: str | None) -> tuple[Thing, ...]:
    """The same things with one put before another, or last.

    Raises BadCommand `not_here`.
    """
    others = without(things, new.id)
    if before is None:
        return (*others, new)
    at = next((number for number, one in enumerate(others) if one.id == before), None)
    if at is None:
        raise BadCommand("not_here", where={"id": before}, id=before)
    return (*others[:at], new, *others[at:])


def find_amplifier(job: Job, wanted: str) -> Amplifier:
    """The amplifier with an id, or BadCommand `not_here`."""
    return _find(job.amplifiers, wanted, family="amplifier")


def find_zone(job: Job, wanted: str) -> Zone:
    """The zone with an id, or BadCommand `not_here`."""
    return _find(job.zones, wanted, family="zone")


def find_output(job: Job, wanted: str) -> tuple[Amplifier, Output]:
    """The output with an id and its amplifier, or BadCommand `not_here`."""
    for amplifier in job.amplifiers:
        for output in amplifier.outputs:
            if output.id == wanted:
                return amplifier, output
    raise BadCommand("not_here", where={"output": wanted}, id=wanted)


def find_point(job: Job, wanted: str) -> tuple[Zone, Point]:
    """The point with an id and its zone, or BadCommand `not_here`."""
    for zone in job.zones:
        for point in zone.line:
            if point.id == wanted:
                return zone, point
    raise BadCommand("not_here", where={"point": wanted}, id=wanted)


def _find(things: Iterable[Thing], wanted: str, *, family: str) -> Thing:
    for one in things:
        if one.id == wanted:
            return one
    raise BadCommand("not_here", where={family: wanted}, id=wanted)

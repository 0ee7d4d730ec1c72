"""The asks `start` and `edit`: commands read, typed numbers put in, applied."""

import json
from collections.abc import Callable, Mapping
from typing import Any

from pycore.asks.answers import SeenJob
from pycore.asks.baseline_guard import guard_baselines
from pycore.asks.requests import EditBody, StartBody
from pycore.asks.see import see_job
from pycore.calc.due import due_of
from pycore.edit import Command, apply, read_command
from pycore.edit.change import changed
from pycore.edit.measuring import KeepReading
from pycore.ground.problems import BadText, Problem
from pycore.ground.units import Manner, read, read_run, read_taps, show_typed, unit_of
from pycore.ground.units.table import TYPED
from pycore.jobs import Job, Kinds
from pycore.jobs.catalogue import DEFAULT_LIMITS
from pycore.jobs.job import FORMAT, VERSION

WHOLE = ("count", "awg")
TOO_FAR = {
    "number_too_small": "typed_too_small",
    "number_not_above": "typed_not_above",
    "number_too_large": "typed_too_large",
}


def start(body: StartBody, manner: Manner) -> SeenJob:
    """An empty job with the limits a new job starts with."""
    job = Job(
        format=FORMAT,
        version=VERSION,
        id=body.id,
        name=body.name,
        rev=0,
        limits=DEFAULT_LIMITS,
        kinds=Kinds(),
    )
    return see_job(job, manner)


def edit(body: EditBody, manner: Manner) -> SeenJob:
    """The job after a command, looked at."""
    command = command_of(body.command, body.typed, manner=manner)
    job = with_due(apply(body.job, command), command)
    guard_baselines(body.job, job, command=command, manner=manner)
    return see_job(job, manner)


def with_due(job: Job, command: Command) -> Job:
    """The job, a reading just kept in it with what the line has to read in this moment."""
    if not isinstance(command, KeepReading):
        return job
    kept = tuple(
        changed(one, due=due_of(job, one)) if one.id == command.id else one for one in job.readings
    )
    return changed(job, readings=kept)


def command_of(raw: Mapping[str, Any], typed: Mapping[str, str], *, manner: Manner) -> Command:
    """The command with what the person typed put in, validated as any text from outside.

    Raises BadText, said of what was typed.
    """
    raw = filled(raw, typed, manner=manner)
    if raw.get("do") == "tick" and not raw.get("at"):
        raw = {**raw, "at": manner.today}
    try:
        return read_command(json.dumps(raw))
    except BadText as problem:
        raise said_as_typed(problem, typed, manner=manner) from None


def filled(
    raw: Mapping[str, Any], typed: Mapping[str, str], *, manner: Manner
) -> Mapping[str, Any]:  # fmt: skip
    """What a page sends, with the numbers read that a person typed."""
    for field, text in typed.items():
        raw = _put(raw, field.split("."), value=read_field(field, text, manner=manner), field=field)
    return raw


def said_as_typed(problem: BadText, typed: Mapping[str, str], *, manner: Manner) -> BadText:
    """What is wrong with a number a person typed, said of what they typed."""
    field = problem.where.get("field", "")
    owner = next((one for one in typed if field == one or field.startswith(f"{one}.")), None)
    if owner is None:
        return problem
    where = {"field": owner}
    if problem.code in TOO_FAR:
        bound = float(problem.values["bound"])
        shown = show_typed(bound, unit_of(field) or "count", manner=manner)
        return BadText(TOO_FAR[problem.code], where=where, text=typed[owner], bound=shown)
    empty = problem.code == "number_expected" and not typed[owner].strip()
    return BadText("cannot_be_unknown", where=where) if empty else problem


def read_field(field: str, text: str, *, manner: Manner) -> object:
    """A typed number by the unit its field's name ends in; a problem names that field.

    A field named "run" is read as so many, so far apart; one named "taps" as a selector's row.
    """
    unit = unit_of(field)
    name = field.rsplit(".", 1)[-1]
    if name not in NOT_ONE_NUMBER and (unit is None or unit not in TYPED):
        raise BadText("field_not_typed", where={"field": field}, field=field)
    try:
        if name in NOT_ONE_NUMBER:
            return NOT_ONE_NUMBER[name](text, manner)
        number = read(text, unit or "", manner=manner)
        if name == "set_db" and number and not text.lstrip().startswith("+"):
            # Attenuators are marked with what they take away (common practice, no source).
            number = -abs(number)
    except Problem as problem:
        problem.where["field"] = field
        raise
    return int(number) if number is not None and unit in WHOLE else number


def _read_run(text: str, manner: Manner) -> dict[str, Any]:
    run = read_run(text, manner=manner)
    if run is None:
        raise BadText("run_needed")
    return {"count": run.how_many, "length_m": run.length_m}


def _read_row(text: str, manner: Manner) -> list[dict[str, Any]]:
    return [tap._asdict() for tap in read_taps(text, manner=manner)]


NOT_ONE_NUMBER: Mapping[str, Callable[[str, Manner], object]] = {
    "run": _read_run,
    "taps": _read_row,
}


def _put(raw: Any, path: list[str], *, value: object, field: str) -> Any:
    """A copy of nested lists and objects with one field set."""
    if not path:
        return value
    head, rest = path[0], path[1:]
    if isinstance(raw, list) and head.isascii() and head.isdigit() and int(head) < len(raw):
        at = int(head)
        return [*raw[:at], _put(raw[at], rest, value=value, field=field), *raw[at + 1 :]]
    if isinstance(raw, Mapping):
        return {
            **raw,
            head: _put(raw.get(head, {} if rest else None), rest, value=value, field=field),
        }
    raise BadText("field_not_typed", where={"field": field}, field=field)

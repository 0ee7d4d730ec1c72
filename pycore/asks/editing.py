"""The asks `start`, `edit` and `preview`: commands read, typed numbers put in, applied."""

import json
from collections.abc import Mapping
from typing import Any

from typing_extensions import TypedDict

from pycore.asks.answers import FindingAnswer, ProblemAnswer, SeenJob
from pycore.asks.names import names_of
from pycore.asks.refused import problem_answer
from pycore.asks.requests import EditBody, PreviewBody, StartBody
from pycore.asks.see import see_job
from pycore.asks.shown import shown_finding
from pycore.calc.check import check_job
from pycore.calc.finding import Verdict, worst
from pycore.edit import Command, apply, read_command
from pycore.ground.problems import BadText, Problem
from pycore.ground.units import Manner, read, read_run, show_typed, unit_of
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


class LoadChange(TypedDict):
    """One load before and after a command."""

    what: str
    where: dict[str, str]
    title: str
    shown_before: str
    shown_after: str
    share_before: float | None
    share_after: float | None
    verdict: Verdict


class Option(TypedDict):
    """What a command would do: a problem, or the loads it changes and the verdict on them."""

    verdict: Verdict
    words: str
    problem: ProblemAnswer | None
    loads: list[LoadChange]


class PreviewAnswer(TypedDict):
    """One option for each command, in the same order."""

    options: list[Option]


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
    return see_job(apply(body.job, command), manner)


def command_of(raw: Mapping[str, Any], typed: Mapping[str, str], *, manner: Manner) -> Command:
    """The command with what the person typed put in, validated as any text from outside."""
    for field, text in typed.items():
        raw = _put(raw, field.split("."), value=read_field(field, text, manner=manner), field=field)
    if raw.get("do") == "tick" and not raw.get("at"):
        raw = {**raw, "at": manner.today}
    try:
        return read_command(json.dumps(raw))
    except BadText as problem:
        raise _said_as_typed(problem, typed, manner=manner) from None


def _said_as_typed(problem: BadText, typed: Mapping[str, str], *, manner: Manner) -> BadText:
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


def read_field(field: str, text: str, *, manner: Manner) -> float | int | dict[str, Any] | None:
    """A typed number by the unit its field's name ends in; a problem names that field.

    A field named "run" is read as so many, so far apart.
    """
    if field.rsplit(".", 1)[-1] == "run":
        return _read_run(field, text, manner=manner)
    unit = unit_of(field)
    if unit is None or unit not in TYPED:
        raise BadText("field_not_typed", where={"field": field}, field=field)
    try:
        number = read(text, unit, manner=manner)
    except Problem as problem:
        problem.where["field"] = field
        raise
    return int(number) if number is not None and unit in WHOLE else number


def _read_run(field: str, text: str, *, manner: Manner) -> dict[str, Any]:
    try:
        run = read_run(text, manner=manner)
        if run is None:
            raise BadText("run_needed")
    except Problem as problem:
        problem.where["field"] = field
        raise
    return {"count": run.how_many, "length_m": run.length_m}


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


def preview(body: PreviewBody, manner: Manner) -> PreviewAnswer:
    """What each command would do, each tried by itself; the job is unchanged."""
    before = _judged(body.job, manner)
    return {"options": [_option(body, raw, before=before, manner=manner) for raw in body.commands]}


def _option(
    body: PreviewBody,
    raw: Mapping[str, Any],
    *,
    before: Mapping[str, FindingAnswer],
    manner: Manner,
) -> Option:
    try:
        job = apply(body.job, command_of(raw, body.typed, manner=manner))
    except Problem as problem:
        refused = problem_answer(problem, manner)
        words = refused["words"]
        return {"verdict": "unknown", "words": words, "problem": refused, "loads": []}
    after = _judged(job, manner)
    changed = [
        finding
        for one, finding in after.items()
        if one not in before or _numbers(before[one]) != _numbers(finding)
    ]
    verdict = worst([finding["verdict"] for finding in changed])
    words = next((one["words"] for one in changed if one["verdict"] == verdict), "")
    loads = [
        _change(before.get(finding["id"]), finding)
        for finding in changed
        if finding["unit"] == "w" and finding["state"] == "override"
    ]
    return {"verdict": verdict, "words": words, "problem": None, "loads": loads}


def _judged(job: Job, manner: Manner) -> dict[str, FindingAnswer]:
    """All that is judged of a job, by its ids: loads, losses and marks, in both states."""
    names = names_of(job)
    return {
        finding.id: shown_finding(finding, names, manner=manner)
        for finding in check_job(job).findings
        if finding.what != "what_fits"
    }


def _change(before: FindingAnswer | None, after: FindingAnswer) -> LoadChange:
    return {
        "what": after["what"],
        "where": after["where"],
        "title": after["title"],
        "shown_before": before["shown"].get("value", "") if before else "",
        "shown_after": after["shown"].get("value", ""),
        "share_before": before["share_fraction"] if before else None,
        "share_after": after["share_fraction"],
        "verdict": after["verdict"],
    }


def _numbers(finding: FindingAnswer) -> tuple[object, ...]:
    return tuple(finding[name] for name in ("code", "value", "low", "high", "limit"))

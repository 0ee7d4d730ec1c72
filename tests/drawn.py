"""Jobs drawn by hand, as short as they can be said, for the cases."""

import json
from typing import Any

import pytest

from pycore.calc.check import check_job
from pycore.calc.finding import Finding
from pycore.door import handle
from pycore.edit import apply, read_command
from pycore.jobs import Job

Raw = dict[str, Any]


def about(value: float, rel: float | None = None, abs: float | None = None) -> Any:  # noqa: A002
    """A number to compare with, within so much; also inside tuples, whatever is known of them."""
    return pytest.approx(value, rel=rel, abs=abs)


def speaker(tap_w: float | None, tap_at_v: float | None = 70.7, **more: object) -> Raw:
    """A loudspeaker on its tap."""
    at = {"is": "loudspeaker", "tap_w": tap_w, "tap_at_v": tap_at_v, "label": "", "connected": True}
    return {**at, **more}


def control(set_db: float = 0.0, **more: object) -> Raw:
    """A wall attenuator; nothing is known of it but how it stands."""
    return {"is": "attenuator", "set_db": set_db, "off": False, "label": "", **more}


def existing(**measured: object) -> Raw:
    """A part of a line that nobody has drawn."""
    return {"is": "existing", "label": "", **measured}


def junction() -> Raw:
    """A box where a line divides."""
    return {"is": "junction", "label": ""}


def chain(name: str, *fitted: Raw, after: str | None = None) -> list[Raw]:
    """Points one behind the other: ids are the name and a number, labels the same."""
    points: list[Raw] = []
    for number, one in enumerate(fitted, start=1):
        point_id = f"{name}{number}"
        label = one["label"] or point_id
        points.append({"id": point_id, "after": after, "fitted": {**one, "label": label}})
        after = point_id
    return points


def zone(name: str, *fitted: Raw, output: str | None = "o1", **more: object) -> Raw:
    """A zone with one chain on its line."""
    return {"id": name, "name": name, "output": output, "line": chain(f"{name}-", *fitted), **more}


def output(
    name: str = "o1", line_v: float = 70.7, max_w: float | None = None, **more: object
) -> Raw:
    """An output; its id is its name."""
    return {"id": name, "name": name, "line_v": line_v, "max_w": max_w, **more}


def raw_job(outputs: list[Raw], *zones: Raw, pools: list[Raw] | None = None, **more: object) -> Raw:
    """One amplifier whose outputs share nothing unless pools are given, and zones."""
    amplifier = {"id": "amp", "name": "amp", "pools": pools or [], "outputs": outputs}
    return {
        "format": "rungline-job",
        "version": 1,
        "id": "job",
        "name": "Drawn by hand",
        "rev": 0,
        "limits": {"loss_db": 0.5, "load_fraction": 0.8, "conductor_c": 30.0},
        "kinds": {},
        "amplifiers": [amplifier],
        "zones": list(zones),
        **more,
    }


def drawn(outputs: list[Raw], *zones: Raw, pools: list[Raw] | None = None, **more: object) -> Job:
    """The same as a job."""
    return Job.model_validate_json(json.dumps(raw_job(outputs, *zones, pools=pools, **more)))


def findings_of(job: Job) -> dict[str, Finding]:
    """Every finding by its name."""
    return {one.id: one for one in check_job(job).findings}


def found(job: Job, name: str) -> Finding:
    """One finding by its name: what, place, state."""
    return findings_of(job)[name]


def found_at(job: Job, what: str) -> list[str]:
    """The places that have a finding of one sort."""
    return [next(iter(one.where.values())) for one in check_job(job).findings if one.what == what]


def done(job: Job, **command: object) -> Job:
    """The job after a command."""
    return apply(job, read_command(json.dumps(command)))


def as_read(said: Any) -> Any:
    """An answer as it is read aloud: every space alike, those before a unit too.

    That these never break is held to account in tests/laws/test_units.py.
    """
    if isinstance(said, str):
        return said.replace("\u00a0", " ")
    if isinstance(said, dict):
        return {name: as_read(one) for name, one in said.items()}
    return [as_read(one) for one in said] if isinstance(said, list) else said


def ask(name: str, body: Raw, **manner: object) -> Raw:
    """What the door answers, as it is read: the body, or {"problem": ...}."""
    head = {"language": "en", "length": "m", "decimal": ".", "today": "2026-11-25", **manner}
    text = handle(json.dumps({"n": 1, "ask": name, "manner": head, "body": body}))
    answer: Raw = as_read(json.loads(text))
    body_or_all: Raw = answer.get("body", answer)
    return body_or_all

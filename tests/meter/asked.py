"""The meter asked through the door: the few helpers that its tests share."""

import json
from typing import Any

from pycore.door import handle
from pycore.jobs import Job
from tests.drawn import as_read
from tests.meter.lines import line_a


def ask(name: str, **body: Any) -> dict[str, Any]:
    """The body of an answer, or its problem."""
    request = {"n": 1, "ask": name, "body": body, "manner": {"language": "en"}}
    answer: dict[str, Any] = as_read(json.loads(handle(json.dumps(request))))
    body_or_problem: dict[str, Any] = answer.get("body", {"problem": answer.get("problem")})
    return body_or_problem


def plain(job: Job) -> dict[str, Any]:
    """A job as it crosses the door."""
    made: dict[str, Any] = json.loads(job.model_dump_json(exclude_none=True))
    return made


def reading(value: Any, **more: Any) -> dict[str, Any]:
    """A reading of the zone at the amplifier's end."""
    return {
        "id": "r1", "where": {"zone": "zone"}, "value": value, "quantity": "z_1k_ohm",
        "temperature_c": 20.0, "instrument": "m", **more,
    }  # fmt: skip


def said_of(value: Any, *, output: dict[str, Any] | None = None, **more: Any) -> dict[str, Any]:
    """What is said of one reading of line A."""
    job = plain(line_a(output=output or {}))
    answer = ask("diagnose", job=job, where={"zone": "zone"}, readings=[reading(value, **more)])
    assert "problem" not in answer, answer
    return answer

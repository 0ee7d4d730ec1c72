"""A request of every ask that is answered, for the door to be tried with."""

import json
import re
from pathlib import Path
from typing import Any

from pycore.asks.table import ASKS
from pycore.carry.saved import open_saved
from pycore.door import handle

Raw = dict[str, Any]
FOLDER = Path(__file__).resolve().parents[1] / "samples" / "version_1"
MANNER = {"language": "en", "length": "m", "decimal": ".", "today": "2026-11-25"}


def job_named(name: str) -> Raw:
    """One of the kept jobs as the door gives it back."""
    text = (FOLDER / f"{name}.json").read_text(encoding="utf-8")
    return open_saved(text).model_dump(mode="json", exclude_none=True)


FULL, TYPICAL = job_named("everything"), job_named("typical")
COMMAND = {"do": "change_output", "output": "q4x3", "changes": {"max_w": 60.0}}
TALLY = {
    "line_v": "70.7",
    "amplifier_w": "240",
    "outputs": [{"max_w": "120"}, {"max_w": ""}],
    "rows": [{"count": "6", "tap_w": "5", "output": 0}, {"count": "4", "tap_w": "7,5"}],
    "ids": {"job": "k7f1", "hand": "k7f", "next": 2},
    "name": "Tally",
}
BODIES: dict[str, Raw] = {
    "start": {"id": "k7f1", "name": "New job"},
    "edit": {"job": FULL, "command": COMMAND, "typed": {"changes.max_w": "75,5 W"}},
    "preview": {"job": FULL, "commands": [COMMAND, {"do": "connect", "point": "q4x13"}]},
    "what_if": {
        "job": FULL,
        "change": {"is": "voltage", "output": "q4x3"},
        "typed": {"line_v": "25"},
    },
    "working": {"job": FULL, "finding": "output_load_w:q4x3:override"},
    "tally": TALLY,
    "qr": {"text": "hello"},
}
BODIES |= {
    "drawing": {"job": FULL, "zone": "q4x9"},
    "swaps": {"job": FULL, "point": "q4x12"},
    "point_numbers": {"job": FULL, "point": "q4x12"},
    "choose_cable": {"job": FULL, "zone": "q4x9"},
    "longest_run": {"job": FULL, "zone": "q4x9"},
    "what_if": {"job": FULL, "change": {"is": "voltage", "output": "q4x3", "line_v": 100.0}},
    "expected": {"job": FULL, "where": {"zone": "q4x9"}},
    "expected_working": {"job": FULL, "where": {"zone": "q4x9"}},
    "records": {"job": FULL, "where": {"zone": "q4x9"}},
    "first_test": {"job": FULL, "since": "2026-01-01"},
    "share_working": {"job": FULL, "where": {"zone": "q4x9"}, "group": 0},
    "sheet": {"job": FULL, "which": "test"},
    "diagnose": {"job": FULL, "where": {"zone": "q4x9"}, "complaint": "weak_beyond"},
    "distance": {"near_ohm": "1.45", "cable": FULL["kinds"]["cables"][0]},
}
# What a field of this name holds in an ask that has no body of its own above.
FIELDS: Raw = {
    "job": FULL,
    "point": "q4x13",
    "zone": FULL["zones"][0]["id"],
    "mine": FULL,
    "theirs": {**FULL, "rev": 8},
    "jobs": [FULL, TYPICAL],
    "text": json.dumps(FULL),
}


def body_of(name: str) -> Raw:
    """The body of a request that the ask answers."""
    if name in BODIES:
        return BODIES[name]
    fields = ASKS[name].body.model_fields
    return {field: FIELDS[field] for field, one in fields.items() if one.is_required()}


def request_of(name: str, body: object) -> str:
    """The text of a request."""
    return json.dumps({"n": 7, "ask": name, "manner": MANNER, "body": body})


def answer_to(text: str) -> Raw:
    """The answer of the door, whose form is checked: a number, and a body or a problem."""
    said = handle(text)
    answer: Raw = json.loads(said)
    assert set(answer) in ({"n", "body"}, {"n", "problem"}), said[:200]
    if "problem" in answer:
        check_problem(answer["problem"])
    return answer


def check_problem(problem: Raw) -> None:
    """A problem has a code, plain words and a place, and is none that should not be."""
    assert set(problem) == {"code", "values", "words", "where", "remedy"}
    assert problem["code"] != "unexpected", problem
    assert problem["words"].strip()
    assert not re.search(r"\{[a-z_]+\}", problem["words"]), problem["words"]
    assert all(isinstance(one, str) for one in problem["where"].values())


BODIES["read_link"] = {"text": answer_to(request_of("write_link", {"job": FULL}))["body"]["text"]}

"""When a copy of the started engine may be made and woken: the page's own rules, run in Node."""

import json
import subprocess
from typing import Any

import pytest

from web.tools.places import WEB
from web.tools.ready_node import find_node

NOTES = {"starts": 0, "trying": False, "leaves": 0, "spoiled": 0, "off": "", "barred": []}
MUCH_ROOM = 10_000_000_000


def decide(rule: str, *arguments: object) -> Any:
    """Ask one of the rules."""
    script = (
        f"import * as policy from {json.dumps((WEB / 'snapshot' / 'policy.js').as_uri())};"
        f"console.log(JSON.stringify(policy.{rule}(...{json.dumps(arguments)}) ?? null))"
    )
    done = subprocess.run(
        [find_node(), "--no-warnings", "--input-type=module", "-e", script],
        capture_output=True, text=True, check=True,
    )  # fmt: skip
    return json.loads(done.stdout)


@pytest.mark.parametrize(
    ("memory", "starts", "may"),
    [(8, 0, True), (4, 0, True), (2, 9, False), (0.5, 9, False)],
)
def test_a_device_that_tells_its_memory_needs_more_than_two_gigabytes(
    memory: float, starts: int, may: bool
) -> None:
    device = {"memory": memory, "room": MUCH_ROOM}
    assert decide("mayMake", NOTES | {"starts": starts}, "key", device) is may


@pytest.mark.parametrize(("starts", "may"), [(0, False), (1, False), (2, True)])
def test_a_device_that_does_not_tell_it_needs_two_good_starts_before(
    starts: int, may: bool
) -> None:
    assert decide("mayMake", NOTES | {"starts": starts}, "key", {"room": MUCH_ROOM}) is may
    assert decide("mayMake", NOTES | {"starts": starts}, "key", {}) is may


def test_no_copy_is_made_where_room_is_short() -> None:
    assert not decide("mayMake", NOTES, "key", {"memory": 8, "room": 100_000_000})


@pytest.mark.parametrize("notes", [{"off": "why"}, {"barred": ["other", "key"]}])
def test_no_copy_is_used_or_made_where_one_has_failed(notes: dict[str, object]) -> None:
    assert not decide("mayUse", NOTES | notes, "key")
    assert not decide("mayMake", NOTES | notes, "key", {"memory": 8, "room": MUCH_ROOM})


def test_a_failed_key_is_barred_once_and_the_list_stays_short() -> None:
    assert decide("noteFailed", NOTES | {"barred": ["key"]}, "key")["barred"] == ["key"]
    many = [str(number) for number in range(40)]
    assert decide("noteFailed", NOTES | {"barred": many}, "key")["barred"] == [*many[-9:], "key"]


def test_a_mark_left_standing_ends_copies_unless_the_page_was_left_by_hand() -> None:
    assert decide("explainMark", NOTES, False) is None
    trying = NOTES | {"trying": True}
    assert decide("explainMark", trying, False)["off"]
    assert decide("explainMark", trying, True) == {"trying": False, "leaves": 1}
    assert decide("explainMark", trying | {"leaves": 2}, True)["off"]


def test_bytes_that_change_on_the_shelf_twice_end_copies() -> None:
    assert "off" not in decide("noteSpoiled", NOTES)
    assert decide("noteSpoiled", NOTES | {"spoiled": 1})["off"]

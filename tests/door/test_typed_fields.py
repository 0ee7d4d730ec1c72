"""What a person types comes back as the number it is, or as a plain sentence beside its field."""

from typing import Any

import pytest

from tests.door.examples import FULL, Raw, answer_to, request_of
from tests.drawn import as_read

POINT = {"do": "change_point", "point": "q4x12", "changes": {}}
SET_TAP = {"do": "set_tap", "point": "q4x12", "tap_w": None, "tap_at_v": 70.7}
OUTPUT = {"do": "change_output", "output": "q4x3", "changes": {}}
LIMITS = {"do": "set_limits", "changes": {}}
CONTROL = {"do": "set_attenuator", "point": "q4x11"}
ADD = {
    "do": "add_points",
    "zone": "q4x16",
    "splice": False,
    "points": [{"id": "new1", "fitted": {"is": "junction", "label": ""}}],
}


def edit(command: Raw, **typed: str) -> Raw:
    """The answer to a command with typed fields; two underscores stand for a point."""
    dotted = {name.replace("__", "."): text for name, text in typed.items()}
    return answer_to(request_of("edit", {"job": FULL, "command": command, "typed": dotted}))


def point_in(answer: Raw, point: str) -> Any:
    """A point of the job in an answer."""
    zones = answer["body"]["job"]["zones"]
    return next(one for zone in zones for one in zone["line"] if one["id"] == point)


def test_typed_numbers_are_read_by_the_end_of_their_name() -> None:
    assert point_in(edit(SET_TAP, tap_w="7,5 W"), "q4x12")["fitted"]["tap_w"] == 7.5
    assert point_in(edit(POINT, changes__length_m="20 ft"), "q4x12")["length_m"] == 6.096
    assert point_in(edit(ADD, points__0__length_m="12"), "new1")["length_m"] == 12.0
    assert (
        edit(LIMITS, changes__load_fraction="75 %")["body"]["job"]["limits"]["load_fraction"]
        == 0.75
    )
    assert point_in(edit(CONTROL, set_db="−12 dB"), "q4x11")["fitted"]["set_db"] == -12.0


@pytest.mark.parametrize(
    ("text", "set_db"), [("6", -6.0), ("6 dB", -6.0), ("-6", -6.0), ("0", 0.0)]
)
def test_a_setting_is_taken_as_attenuators_are_marked(text: str, set_db: float) -> None:
    # common practice, no source: a control is marked with the decibels it takes away
    assert point_in(edit(CONTROL, set_db=text), "q4x11")["fitted"]["set_db"] == set_db


def test_nothing_typed_is_not_known() -> None:
    answer = edit(OUTPUT, changes__max_w=" ")
    assert "max_w" not in answer["body"]["job"]["amplifiers"][0]["outputs"][0]


@pytest.mark.parametrize(
    ("command", "field", "text", "code", "words"),
    [
        (
            SET_TAP,
            "tap_w",
            "five",
            "number_unread",
            "“five” cannot be read as a number (W).",
        ),
        (SET_TAP, "tap_w", "1,500", "number_ambiguous", "Is “1,500” 1.5 or 1500?"),
        (SET_TAP, "tap_w", "-5", "typed_too_small", "“-5” is too little: the least is 0 W."),
        (OUTPUT, "changes__line_v", "", "cannot_be_unknown", "This one cannot be left empty."),
        (
            OUTPUT,
            "changes__line_v",
            "0",
            "typed_too_small",
            "“0” is too little: the least is 0.1 V.",
        ),
        (CONTROL, "set_db", "+6", "typed_too_large", "“+6” is too much: the most is 0 dB."),
        (ADD, "points__0__length_m", "20 kg", "unit_unread", None),
        (ADD, "points__0__length_m", "99 km", "typed_too_large", None),
        (LIMITS, "changes__load_fraction", "0.8", "share_unclear", None),
        (POINT, "changes__label", "5", "field_not_typed", None),
        (POINT, "nothing__at_all_w", "5", "field_unknown", None),
        (SET_TAP, "x_factor", "5", "field_not_typed", None),
    ],
)
def test_a_wrong_text_is_answered_beside_its_field(
    command: Raw, field: str, text: str, code: str, words: str | None
) -> None:
    problem = edit(command, **{field: text})["problem"]
    assert problem["code"] == code
    assert problem["where"]["field"] == (
        field.replace("__", ".") if code != "field_unknown" else "nothing"
    )
    assert words is None or as_read(problem["words"]) == words


def test_a_field_of_another_thing_is_named_with_its_place() -> None:
    command = {"do": "change_point", "point": "q4x10", "changes": {"rated_w": 5.0}}
    problem = answer_to(request_of("edit", {"job": FULL, "command": command}))["problem"]
    assert problem["where"] == {"point": "q4x10", "field": "changes.rated_w"}


def test_a_refused_command_answers_no_job_at_all() -> None:
    assert "body" not in edit(SET_TAP, tap_w="many")


@pytest.mark.parametrize(
    ("command", "field"),
    [
        ({"do": "set_tap", "point": "q4x12", "tap_w": -1.0}, "tap_w"),
        ({"do": "nothing"}, "do"),
        ({}, "do"),
        ({**ADD, "points": [{"id": "n", "fitted": {"is": "lamp"}}]}, "points.0.fitted.is"),
        (
            {"do": "use_kind", "family": "loudspeakers", "kind": {"id": "x", "name": "x"}},
            "kind.taps",
        ),
        ({"do": "use_kind", "family": "lamps", "kind": {}}, "family"),
    ],
)
def test_what_is_wrong_in_a_command_is_named_by_the_commands_own_fields(
    command: Raw, field: str
) -> None:
    problem = answer_to(request_of("edit", {"job": FULL, "command": command}))["problem"]
    assert problem["where"] == {"field": field}

"""Kinds of one's own: made, corrected, and taken out, from what a person types."""

from typing import Any

import pytest

from tests.door.examples import FULL, Raw, answer_to, request_of
from tests.drawn import as_read

OWN: Raw = {"id": "own1", "name": "Port horn", "taps": []}
CABLE: Raw = {"id": "own2", "name": "old red pair", "metal": "copper"}


def use(family: str, kind: Raw, /, job: Raw = FULL, rows: Any = None, **typed: str) -> Raw:
    """The answer to use_kind with typed fields; two underscores stand for a point."""
    command = {"do": "use_kind", "family": family, "kind": kind}
    command |= {"rows": rows} if rows is not None else {}
    dotted = {name.replace("__", "."): text for name, text in typed.items()}
    request = request_of("edit", {"job": job, "command": command, "typed": dotted})
    answer: Raw = as_read(answer_to(request))
    return answer


def own(answer: Raw, family: str, name: str = "own1") -> Raw:
    """The kind in the job of an answer."""
    kinds = answer["body"]["job"]["kinds"][family]
    [kind] = [kind for kind in kinds if kind["id"] == name]
    return dict(kind)


def test_a_loudspeaker_is_made_of_the_rows_of_its_selector() -> None:
    rows = [{"at_v": 100.0, "taps": None}, {"at_v": 70.7, "taps": None}, {"at_v": None}]
    typed: Raw = {"rows__0__taps": "30 / 15 / 7,5", "rows__1__taps": "15 7.5 8 ohm"}
    more: Raw = {
        "rows__2__at_v": "50 V",
        "rows__2__taps": "7.5",
        "kind__sensitivity_db": "101,5 dB",
    }
    kind = own(use("loudspeakers", OWN, rows=rows, **typed, **more), "loudspeakers")
    assert [(tap.get("w"), tap.get("ohm"), tap["at_v"]) for tap in kind["taps"]] == [
        (30.0, None, 100.0), (15.0, None, 100.0), (7.5, None, 100.0),
        (15.0, None, 70.7), (7.5, None, 70.7), (None, 8.0, 70.7), (7.5, None, 50.0),
    ]  # fmt: skip
    assert kind["sensitivity_db"] == 101.5


def test_a_row_printed_70_v_is_the_row_of_the_seventy_volt_line() -> None:
    answer = use("loudspeakers", OWN, rows=[{"at_v": None}], rows__0__at_v="70", rows__0__taps="5")
    assert own(answer, "loudspeakers")["taps"][0]["at_v"] == 70.7


def test_what_was_known_of_a_tap_beyond_its_watts_stays() -> None:
    tap = {"w": 30.0, "at_v": 100.0, "position": "A", "allowed": False}
    before = use("loudspeakers", {**OWN, "taps": [tap]})["body"]["job"]
    rows = [{"at_v": 100.0}]
    answer = use("loudspeakers", OWN, before, rows=rows, rows__0__taps="60 / 30")
    taps = own(answer, "loudspeakers")["taps"]
    assert [(one["w"], one.get("position"), one.get("allowed")) for one in taps] == [
        (60.0, None, None),
        (30.0, "A", False),
    ]


@pytest.mark.parametrize(
    ("typed", "code", "field"),
    [
        ({"rows__0__taps": "ten"}, "number_unread", "rows.0.taps"),
        ({"rows__0__taps": "15,30"}, "taps_unclear", "rows.0.taps"),
        ({"rows__0__taps": "9999999999 W"}, "typed_too_large", "rows.0.taps"),
        ({"rows__0__taps": "5", "rows__0__at_v": ""}, "cannot_be_unknown", "rows.0.at_v"),
        ({"rows__0__taps": "5", "kind__rated_w": "lots"}, "number_unread", "kind.rated_w"),
        ({"rows__0__taps": "5", "kind__coverage_h_deg": "400"}, "typed_too_large",
         "kind.coverage_h_deg"),
        ({"rows__0__taps": "5", "kind__transformer_loss_db": "-1"}, "typed_too_small",
         "kind.transformer_loss_db"),
    ],
)  # fmt: skip
def test_a_mistake_is_said_beside_its_field_and_changes_nothing(
    typed: Raw, code: str, field: str
) -> None:
    answer = use("loudspeakers", OWN, rows=[{"at_v": 100.0}], **typed)
    assert "body" not in answer
    assert (answer["problem"]["code"], answer["problem"]["where"]) == (code, {"field": field})
    assert answer["problem"]["remedy"]


def test_a_kind_needs_a_name() -> None:
    problem = use("cables", {**CABLE, "name": " ", "awg": 16})["problem"]
    assert (problem["code"], problem["where"]) == ("name_needed", {"field": "kind.name"})


@pytest.mark.parametrize(
    ("text", "loop_ohm_per_km"),
    [
        ("20", 20.0),
        ("20 ohm/km", 20.0),
        ("1.2 ohm / 50 m", 24.0),
        ("1,2 Ω on 50 m", 24.0),
        # 6.4 ohm over 1000 ft of 0.3048 m each
        ("6.4 ohm / 1000 ft", 20.997375),
        ("6.4 ohm per 1000 ft", 20.997375),
        ("6.4 ohm/kft", 20.997375),
    ],
)
def test_a_cable_is_made_by_what_its_loop_measures(text: str, loop_ohm_per_km: float) -> None:
    answer = use("cables", CABLE, kind__loop_ohm_per_km=text)
    assert own(answer, "cables", "own2")["loop_ohm_per_km"] == pytest.approx(loop_ohm_per_km)


def test_a_loop_measured_over_no_length_is_refused() -> None:
    problem = use("cables", CABLE, kind__loop_ohm_per_km="2 ohm / 0 m")["problem"]
    assert (problem["code"], problem["where"]["field"]) == ("number_unread", "kind.loop_ohm_per_km")


def test_inductance_and_capacitance_are_read_as_data_sheets_print_them() -> None:
    typed: Raw = {
        "kind__inductance_uh_per_m": "0.2 µH/ft",
        "kind__capacitance_pf_per_m": "30 pF/ft",
    }
    kind = own(use("cables", {**CABLE, "awg": 16}, **typed), "cables", "own2")
    assert kind["inductance_uh_per_m"] == pytest.approx(0.2 / 0.3048)
    assert kind["capacitance_pf_per_m"] == pytest.approx(30 / 0.3048)
    typed = {"kind__inductance_uh_per_m": "0.7 mH/km", "kind__capacitance_pf_per_m": "60 nF/km"}
    kind = own(use("cables", {**CABLE, "awg": 16}, **typed), "cables", "own2")
    assert (kind["inductance_uh_per_m"], kind["capacitance_pf_per_m"]) == (0.7, 60.0)


def test_each_kind_has_a_face_with_its_rows_and_whether_it_is_used() -> None:
    rows = [{"at_v": 100.0}, {"at_v": 70.7}]
    typed: Raw = {"rows__0__taps": "7.5 / 30", "rows__1__taps": "15 / 8 ohm"}
    answer = use("loudspeakers", OWN, rows=rows, **typed)
    face = answer["body"]["faces"]["kinds"]["loudspeakers"]["own1"]
    assert face["lines"] == ["7.5 / 30 W at 100 V", "15 W / 8 Ω at 70.7 V"]
    assert (face["in_use"], face["used"]) == (False, "not used in this job")
    assert [tap["shown"] for tap in face["rows"][0]["taps"]] == ["7.5 W", "30 W"]
    assert [tap["shown"] for tap in face["rows"][1]["taps"]] == ["15 W"]
    used = answer["body"]["faces"]["kinds"]["cables"]
    assert any(one["in_use"] for one in used.values())


def test_a_tap_that_is_not_allowed_is_listed_but_not_offered() -> None:
    taps = [{"w": 30.0, "at_v": 100.0, "allowed": False}, {"w": 15.0, "at_v": 100.0}]
    answer = use("loudspeakers", {**OWN, "taps": taps})
    [row] = answer["body"]["faces"]["kinds"]["loudspeakers"]["own1"]["rows"]
    assert row["text"] == "30 / 15 W"
    assert [tap["tap_w"] for tap in row["taps"]] == [15.0]

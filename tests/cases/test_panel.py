"""What a panel prints besides watts and ohms: high-pass filter, drive, wiring class."""

from typing import Any

import pytest

from tests.drawn import ask, drawn, found, found_at, output, raw_job, speaker, zone

HALL = zone("hall", speaker(5.0))


@pytest.mark.parametrize(
    ("hz", "code", "verdict"),
    [
        # 70 Hz or more for transformers: common practice, no source
        (70.0, "high_pass_set", "ok"),
        (100.0, "high_pass_set", "ok"),
        (69.0, "high_pass_low", "near"),
        (None, "high_pass_not_known", "note"),
    ],
)
def test_a_line_of_transformers_wants_a_high_pass_filter(
    hz: float | None, code: str, verdict: str
) -> None:
    known: dict[str, Any] = {} if hz is None else {"high_pass_hz": hz}
    one = found(drawn([output(max_w=100.0, **known)], HALL), "high_pass_hz:o1")
    assert (one.code, one.verdict, one.value) == (code, verdict, hz)


def test_a_filter_that_is_not_known_is_told_as_not_checked() -> None:
    def unchecked(**known: Any) -> list[str]:
        seen = ask("findings", {"job": raw_job([output(max_w=100.0, **known)], HALL)})
        told: list[str] = seen["faces"]["job"]["not_checked"]
        return told

    assert "high-pass filter" in unchecked()
    assert "high-pass filter" not in unchecked(high_pass_hz=80.0)


def test_a_drive_without_a_transformer_is_noted_with_what_it_forbids() -> None:
    job = raw_job([output(max_w=100.0, drive="direct")], HALL)
    direct = next(
        one for one in ask("findings", {"job": job})["findings"] if one["what"] == "drive"
    )
    assert direct["verdict"] == "note"
    assert "neither leg may meet earth" in direct["words"]
    assert found_at(drawn([output(drive="isolated")], HALL), "drive") == []
    assert found_at(drawn([output()], HALL), "drive") == []


def test_the_class_is_that_of_the_marking_and_the_local_code_decides() -> None:
    job = raw_job([output(max_w=100.0, marked_class="Class 2")], HALL)
    marked = next(
        one for one in ask("findings", {"job": job})["findings"] if one["what"] == "wiring_class"
    )
    assert marked["verdict"] == "note"
    assert "Class 2" in marked["words"]
    assert "local code decide" in marked["words"]
    assert found_at(drawn([output()], HALL), "wiring_class") == []

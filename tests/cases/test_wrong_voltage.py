"""Selectors on the wrong row or straight across the line."""

import pytest

from tests.drawn import about, ask, drawn, found, found_at, output, raw_job, speaker, zone


@pytest.mark.parametrize(
    ("marked_v", "line_v", "factor", "drawn_w", "verdict"),
    [
        # exact arithmetic: the square of the ratio of the volts
        (70.7, 100.0, 2.0006, 10.003, "over"),
        (25.0, 70.7, 7.99758, 39.988, "over"),
        (25.0, 100.0, 16.0, 80.0, "over"),
        (100.0, 70.7, 0.49985, 2.49925, "note"),
        (70.7, 25.0, 0.12504, 0.62521, "note"),
    ],
)
def test_a_row_for_another_voltage_is_flagged_with_its_factor(
    marked_v: float, line_v: float, factor: float, drawn_w: float, verdict: str
) -> None:
    job = drawn([output(line_v=line_v, max_w=500.0)], zone("hall", speaker(5.0, marked_v)))
    wrong = found(job, "wrong_voltage:hall-1")
    assert wrong.value == about(factor, rel=4e-5)
    assert wrong.values["drawn_w"] == about(drawn_w, rel=4e-5)
    assert wrong.verdict == verdict
    assert found(job, "output_load_w:o1:override").value == about(drawn_w, rel=4e-5)


@pytest.mark.parametrize("marked_v", [70.0, 70.7, 70.71067811865476, 71.0])
def test_marks_of_70_volt_lines_are_no_wrong_voltage(marked_v: float) -> None:
    # 70, 70.7, 71 and 100 through root 2 are printed for one line: common practice, no source
    for line_v in (70.0, 70.7, 71.0):
        job = drawn([output(line_v=line_v, max_w=10.0)], zone("hall", speaker(5.0, marked_v)))
        assert found_at(job, "wrong_voltage") == []
        assert found(job, "output_load_w:o1:override").value == about(5.0)


def test_what_is_disconnected_is_noted_before_somebody_connects_it() -> None:
    taps = [speaker(5.0, 25.0, connected=False), speaker(5.0, 100.0, connected=False)]
    job = drawn([output(max_w=100.0)], zone("hall", *taps))
    for point in ("hall-1", "hall-2"):
        wrong = found(job, f"wrong_voltage:{point}")
        assert (wrong.code, wrong.verdict) == ("voltage_waiting", "note")


def test_a_kind_with_one_row_tells_the_row_of_an_unread_mark() -> None:
    kind = {"id": "c", "name": "25 V only", "taps": [{"w": 5.0, "at_v": 25.0}]}
    known = {"loudspeakers": [kind]}
    job = drawn([output(max_w=100.0)], zone("a", speaker(5.0, None, kind="c")), kinds=known)
    assert found(job, "wrong_voltage:a-1").value == about(7.99758, rel=1e-5)
    assert found(job, "output_load_w:o1:override").value == about(39.988, abs=1e-3)


def test_delivered_watts_on_the_wrong_row_are_told_as_they_are_drawn() -> None:
    kind = {"id": "c", "name": "c", "taps": [{"w": 5.0, "at_v": 25.0}], "tap_means": "delivered"}
    known = {"loudspeakers": [{**kind, "transformer_loss_db": 1.0}]}
    job = drawn([output(max_w=100.0)], zone("a", speaker(5.0, 25.0, kind="c")), kinds=known)
    drawn_w = found(job, "output_load_w:o1:override").value
    assert drawn_w == about(39.988 * 1.2589, abs=5e-3)
    assert found(job, "wrong_voltage:a-1").values["drawn_w"] == about(drawn_w or 0.0)


@pytest.mark.parametrize(("line_v", "watts"), [(25.0, 78.125), (70.7, 624.811), (100.0, 1250.0)])
def test_a_low_impedance_selector_is_told_the_watts_it_would_take(
    line_v: float, watts: float
) -> None:
    # Ohm's law: 8 ohm straight across the line
    job = drawn([output(line_v=line_v, max_w=60.0)], zone("hall", speaker(5.0, direct_ohm=8.0)))
    direct = found(job, "direct_load_w:hall-1")
    assert (direct.value, direct.verdict) == (about(watts, rel=1e-6), "over")
    assert found(job, "output_load_w:o1:override").verdict == "over"
    assert found_at(job, "wrong_voltage") == []


def test_a_low_impedance_selector_that_is_disconnected_only_waits() -> None:
    waiting = speaker(5.0, direct_ohm=8.0, connected=False)
    job = drawn([output(max_w=60.0)], zone("hall", waiting))
    direct = found(job, "direct_load_w:hall-1")
    assert (direct.code, direct.verdict) == ("direct_waiting", "note")
    assert found(job, "output_load_w:o1:override").value == 0.0


def test_a_tap_its_kind_does_not_offer_is_noted_and_counted() -> None:
    kind = {"id": "c", "name": "ceiling", "taps": [{"w": 6.0, "at_v": 70.7}]}
    kind["taps"].append({"w": 12.0, "at_v": 70.7, "allowed": False})  # type: ignore[attr-defined]
    known = {"loudspeakers": [kind]}
    job = drawn(
        [output(max_w=100.0)],
        zone("a", speaker(5.0, kind="c"), speaker(12.0, kind="c"), speaker(6.0, kind="c")),
        kinds=known,
    )
    assert found(job, "tap_offered:a-1").verdict == "note"
    assert found(job, "tap_offered:a-2").verdict == "over"
    assert found_at(job, "tap_offered") == ["a-1", "a-2"]
    assert found(job, "output_load_w:o1:override").value == about(23.0)


def test_the_words_of_a_wrong_row_say_what_happens_and_what_helps() -> None:
    job = raw_job([output(line_v=100.0, max_w=60.0)], zone("hall", speaker(5.0, label="Bay 3")))
    seen = ask("findings", {"job": job})
    wrong = next(one for one in seen["findings"] if one["what"] == "wrong_voltage")
    assert wrong["words"].startswith("The tap of Bay 3 is marked for 70.7 V and the line is 100 V")
    assert "×2" in wrong["words"]
    assert "10 W" in wrong["words"]
    assert wrong["remedy"] == "Line dead, turn the selector to the row for 100 V."
    assert seen["faces"]["job"]["headline"] == "Something is wrong"

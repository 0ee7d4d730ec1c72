"""What is not known stays unknown: ranges, parts nobody has drawn, taps nobody could see."""

import pytest

from pycore.calc.finding import Finding
from tests.drawn import about, ask, drawn, existing, found, found_at, output, raw_job, speaker, zone

CEILING = {
    "id": "c",
    "name": "ceiling",
    "taps": [
        {"w": 6.0, "at_v": 100.0},
        {"w": 1.5, "at_v": 100.0},
        {"w": 3.0, "at_v": 70.7},
        {"w": 0.75, "at_v": 70.7},
        {"ohm": 8.0, "at_v": 70.7},
    ],
}
KINDS = {"loudspeakers": [CEILING]}


def load(max_w: float | None, *fitted: dict[str, object]) -> Finding:
    """The load of one zone on one output of so many watts."""
    job = drawn([output(max_w=max_w)], zone("hall", *fitted), kinds=KINDS)
    return found(job, "output_load_w:o1:override")


def test_one_unknown_tap_in_ten_gives_a_range() -> None:
    taps = [speaker(3.0, kind="c")] * 9 + [speaker(None, kind="c")]
    ranged = load(60.0, *taps)
    assert ranged.value is None
    # the lowest and the highest tap of its row for this line
    assert (ranged.low, ranged.high) == (about(27.75), about(30.0))
    assert ranged.verdict == "ok"


@pytest.mark.parametrize(
    ("max_w", "verdict"), [(40.0, "ok"), (30.0, "near"), (29.0, "unknown"), (27.0, "over")]
)
def test_a_range_is_over_when_its_least_is_and_unknown_when_only_its_most_is(
    max_w: float, verdict: str
) -> None:
    taps = [speaker(3.0, kind="c")] * 9 + [speaker(None, kind="c")]
    assert load(max_w, *taps).verdict == verdict


def test_an_unknown_tap_of_no_known_kind_has_no_most() -> None:
    ranged = load(60.0, speaker(5.0), speaker(None))
    assert (ranged.value, ranged.low, ranged.high) == (None, about(5.0), None)
    assert ranged.verdict == "unknown"


def test_an_unknown_tap_never_hides_an_overload() -> None:
    assert load(60.0, speaker(61.0), speaker(None)).verdict == "over"


def test_a_mark_nobody_could_read_is_one_its_kind_offers() -> None:
    ranged = load(60.0, speaker(6.0, None, kind="c"))
    # 6 W is a tap of the 100 V row only: 2.999 W on 70.7 V, exact arithmetic
    assert ranged.value == about(2.9991, abs=1e-4)


def test_watts_without_a_row_and_without_a_kind_have_no_most() -> None:
    ranged = load(60.0, speaker(5.0, None))
    assert (ranged.value, ranged.high, ranged.verdict) == (None, None, "unknown")


def test_a_row_without_watts_takes_the_taps_of_that_row() -> None:
    ranged = load(60.0, speaker(None, 100.0, kind="c"))
    assert ranged.low == about(0.74977, abs=1e-5)
    assert ranged.high == about(2.9991, abs=1e-4)


def test_an_existing_part_of_120_ohm_is_42_watts_planned_as_38_to_54() -> None:
    # Ohm's law; real lines read 0.9 to 1.3 of nominal: common practice, no source
    part = load(None, existing(ohm=120.0))
    assert part.value == about(41.654, abs=1e-3)
    assert part.low == about(37.49, abs=5e-3)
    assert part.high == about(54.15, abs=5e-3)


@pytest.mark.parametrize(
    ("max_w", "verdict"), [(70.0, "ok"), (60.0, "near"), (50.0, "unknown"), (37.0, "over")]
)
def test_an_existing_part_is_judged_by_the_range_it_lies_in(max_w: float, verdict: str) -> None:
    assert load(max_w, existing(ohm=120.0)).verdict == verdict


def test_what_is_left_beside_an_existing_part_is_reckoned_at_its_most() -> None:
    job = raw_job([output(max_w=60.0)], zone("hall", existing(ohm=120.0)))
    every = ask("findings", {"job": job})["findings"]
    seen = next(one for one in every if one["what"] == "output_load_w")
    assert seen["shown"]["value"] == "41.7 W (37.5 W to 54.2 W)"
    assert seen["shown"]["left"] == "at least 5.85 W"
    assert seen["shown"]["share"] == "at most 90.3 %"
    assert seen["share_fraction"] == about(54.15 / 60, abs=1e-4)


def test_an_existing_part_nobody_measured_has_no_most() -> None:
    part = load(60.0, existing())
    assert (part.value, part.low, part.high, part.verdict) == (None, 0.0, None, "unknown")


def test_an_existing_part_can_count_by_the_watts_on_its_label() -> None:
    assert load(60.0, existing(w=40.0)).value == about(40.0)


def test_what_was_measured_goes_before_a_label() -> None:
    assert load(60.0, existing(ohm=120.0, w=10.0)).value == about(41.654, abs=1e-3)


@pytest.mark.parametrize(
    ("loss_db", "low", "high"), [(1.0, 12.589, 12.589), (None, 11.220, 14.125), (0.0, 10.0, 10.0)]
)
def test_a_tap_that_states_what_is_delivered_draws_more(
    loss_db: float | None, low: float, high: float
) -> None:
    # 10 log10, definition of the decibel; 0.5 to 1.5 dB where nobody says: common practice
    kind = {"id": "d", "name": "d", "taps": [{"w": 10.0, "at_v": 70.7}], "tap_means": "delivered"}
    kinds = {"loudspeakers": [{**kind, "transformer_loss_db": loss_db}]}
    job = drawn([output(max_w=60.0)], zone("hall", speaker(10.0, kind="d")), kinds=kinds)
    made = found(job, "output_load_w:o1:override")
    assert (made.low, made.high) == (about(low, abs=1e-3), about(high, abs=1e-3))
    assert (made.value is None) == (loss_db is None)


def test_a_tap_of_0_watts_is_silent_not_a_fault() -> None:
    job = drawn([output(max_w=60.0, min_load_ohm=50.0)], zone("hall", speaker(0.0)))
    assert found(job, "output_load_w:o1:override").value == 0.0
    assert found(job, "output_impedance_ohm:o1:override").value is None


def test_unknown_goes_before_near_and_over_before_unknown() -> None:
    outputs = [output("o1", max_w=30.0), output("o2"), output("o3", max_w=30.0)]
    zones = [zone("a", speaker(30.0)), zone("b", speaker(5.0), output="o2")]
    seen = ask("findings", {"job": raw_job(outputs[:2], *zones)})
    assert seen["faces"]["job"]["verdict"] == "unknown"
    zones.append(zone("c", speaker(31.0), output="o3"))
    seen = ask("findings", {"job": raw_job(outputs, *zones)})
    assert seen["faces"]["job"]["verdict"] == "over"


def test_no_text_of_an_unknown_load_reads_as_a_number() -> None:
    job = raw_job([output(max_w=60.0)], zone("hall", speaker(None)))
    seen = ask("findings", {"job": job})
    face = seen["faces"]["things"]["hall"]
    assert (face["load"], face["verdict"]) == ("not known", "unknown")
    load_seen = next(one for one in seen["findings"] if one["what"] == "output_load_w")
    assert load_seen["words"].startswith("The load on amp is not known")
    assert "left" not in load_seen["shown"]
    assert "share" not in load_seen["shown"]


def test_lengths_nobody_entered_leave_the_loss_unknown() -> None:
    job = drawn([output(max_w=60.0)], zone("hall", speaker(5.0)))
    loss = found(job, "zone_loss_db:hall:override")
    assert (loss.value, loss.verdict) == (None, "unknown")
    assert found_at(job, "zone_loss_db") == ["hall"]


def said(job: dict[str, object], finding: str) -> str:
    """The sentence of a finding."""
    told = ask("findings", {"job": job})["findings"]
    return str(next(one["words"] for one in told if one["id"] == finding))


def test_a_load_of_which_nothing_is_known_is_said_in_whole_sentences() -> None:
    outputs = [output("o1", max_w=60.0), output("o2", max_w=60.0)]
    pools = [{"w": 100.0, "outputs": ["o1", "o2"]}]
    job = raw_job(outputs, zone("hall", speaker(None)), pools=pools)
    assert "is not known:" in said(job, "pool_load_w:amp:override")
    assert said(job, "zone_load_w:hall:override") == "The load of hall is not known."
    lost = said(job, "zone_loss_db:hall:override")
    assert "1 of its taps are" not in lost
    assert "not known" in lost
    wrong = raw_job(outputs, zone("hall", speaker(None, 100.0)))
    assert "(not known)" in said(wrong, "wrong_voltage:hall-1")

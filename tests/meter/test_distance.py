"""Shorts and breaks in metres. The readings are those of the reference lines, worked out by an
independent ladder solver and kept in the tables beside each check.
"""

from typing import Any

import pytest

from tests.meter.asked import ask, plain
from tests.meter.lines import AWG_16, job_of, line_a, speaker

BARE = {"id": "c", "name": "c", "loop_ohm_per_km": 26.875, "metal": "copper"}
OPEN_END = {**BARE, "capacitance_pf_per_m": 63.0}
LONE = speaker(1, after=None, tap_w=5.0, at_v=70.7, length_m=120.0, cable="pair")


def on_line_a(**more: Any) -> dict[str, Any]:
    """The distance on line A: 30 m, then nine times 10 m, 16 AWG at 20 °C."""
    return ask("distance", job=plain(line_a()), where={"zone": "zone"}, conductor_c="20", **more)


# Dead shorts at S1, S3, S5, S10 of line A, |Z| at 1 kHz, by an independent ladder solver.
@pytest.mark.parametrize(
    ("read_ohm", "metres"), [("0.815", 30.0), ("1.358", 50.0), ("1.899", 70.0), ("3.239", 120.0)]
)
def test_a_short_is_found_on_the_line_at_1_khz(read_ohm: str, metres: float) -> None:
    told = on_line_a(near_ohm=read_ohm)
    assert told["metres"] == pytest.approx(metres, abs=0.1)
    assert told["low"] < metres < told["high"]


# With windings of 5 % a short at 120 m reads as 107 m of bare cable, one at 70 m as 68.5 m
# (the same solver).
@pytest.mark.parametrize(("cable_m", "metres"), [(107.0, 120.0), (68.5, 70.0)])
def test_at_direct_current_the_windings_before_it_are_counted(
    cable_m: float, metres: float
) -> None:
    told = on_line_a(near_ohm=f"{cable_m * 0.026875:.4f}", quantity="dc_ohm")
    assert told["metres"] == pytest.approx(metres, abs=0.5)
    by_cable = next(one for one in told["steps"] if one["title"].startswith("To the short"))
    assert by_cable["result"].startswith(f"{cable_m:g}"[:3])


def test_what_windings_leave_open_makes_the_error_at_direct_current_larger() -> None:
    tones = on_line_a(near_ohm="1.899")
    direct = on_line_a(near_ohm=f"{68.5 * 0.026875:.4f}", quantity="dc_ohm")
    assert direct["high"] - direct["low"] > tones["high"] - tones["low"]


def test_heat_and_leads_are_taken_off() -> None:
    cold = on_line_a(near_ohm="1.899")
    leads = on_line_a(near_ohm="2.199", leads_ohm="0.3")
    assert leads["metres"] == pytest.approx(cold["metres"], rel=1e-6)
    # IEC 60228 Annex B: 254.5 / (234.5 + 50) = 0.8946 of the metres when the copper is at 50 °C
    body = {"job": plain(line_a()), "where": {"zone": "zone"}, "near_ohm": "1.899"}
    warm = ask("distance", conductor_c="50", **body)
    assert warm["metres"] == pytest.approx(70.0 * 254.5 / 284.5, rel=0.01)


def test_from_both_ends_the_ohms_of_the_short_itself_fall_out() -> None:
    # A bare pair so long, read so at its ends: 48.84 m and 0.1375 ohm. The loudspeakers on
    # line A, about 1000 ohm each, move that by a decimetre.
    told = on_line_a(near_ohm="1.45", far_ohm="2.05", far_point="s10")
    assert told["metres"] == pytest.approx(48.84, abs=0.3)
    assert told["own_ohm"] == pytest.approx(0.1375, abs=0.02)
    assert len(told["places"]) == 1


# |Z| of line A broken behind S5: 201.07 from the amplifier, 200.3 ohm from the far end.
def test_a_break_lies_on_the_section_whose_reading_agrees() -> None:
    near = on_line_a(fault="break", near_ohm="201.07")
    assert (near["low"], near["high"]) == (70.0, 80.0)
    both = on_line_a(fault="break", near_ohm="201.07", far_ohm="200.3", far_point="s10")
    assert [one["point"] for one in both["places"]] == ["s6"]


def test_breaks_that_the_tolerance_cannot_tell_apart_are_all_told() -> None:
    # 126.35 ohm is the reading of a break behind S8; S9's is 112.56, within 15 % of it.
    told = on_line_a(fault="break", near_ohm="126.35")
    assert {"s9", "s10"} <= {one["point"] for one in told["places"]}


def test_a_line_that_divides_has_a_short_on_each_branch_that_reads_so() -> None:
    # 50 m to S1 and S2; from S2 a branch of 40 m each way: 1.9 ohm is 70.7 m of either
    def hung(number: int, after: str | None, length_m: float) -> dict[str, Any]:
        return speaker(number, after=after, tap_w=5.0, at_v=70.7, length_m=length_m, cable="pair")

    line = [hung(1, None, 30.0), hung(2, "s1", 20.0), hung(3, "s2", 40.0), hung(4, "s2", 40.0)]
    job = plain(job_of(line, line_v=70.7, cable=AWG_16))
    told = ask("distance", job=job, where={"zone": "zone"}, near_ohm="1.9", conductor_c="20")
    assert {one["point"] for one in told["places"]} == {"s3", "s4"}
    for one in told["places"]:
        assert one["metres"] == pytest.approx(1.9 / 0.026875, rel=0.01)


def test_a_bare_pair_that_ends_too_soon_is_as_long_as_its_capacitance() -> None:
    # 25 m of 63 pF/m: 1 / (2 pi 1000 * 63e-12 * 25) = 101.1 kohm, by hand
    told = ask("distance", fault="break", near_ohm="101.05k", cable=OPEN_END)
    assert told["metres"] == pytest.approx(25.0, abs=0.05)
    assert told["low"] < 25 < told["high"]
    # two capacitors of one cable: 25 m and 50 m of 75 m, whatever it has a metre
    both = ask(
        "distance", fault="break", near_ohm="90k", far_ohm="45k", route_m="75", cable=OPEN_END
    )
    assert both["metres"] == pytest.approx(25.0, rel=1e-9)
    assert both["high"] - both["low"] < told["high"] - told["low"]


def test_next_to_the_end_no_place_is_told_finer_than_a_meter_can() -> None:
    told = ask("distance", near_ohm="0.0001", quantity="dc_ohm", cable=BARE)
    assert 0 < told["metres"] < 0.01
    assert told["shown"] == "0 m"
    near = ask("distance", near_ohm="0.0163", quantity="dc_ohm", cable=BARE)
    assert 0.5 < near["metres"] < 0.7
    assert near["shown"] == "0.6 m"


@pytest.mark.parametrize(
    ("more", "code"),
    [
        ({"near_ohm": "500"}, "no_short_reads_so"),
        ({"near_ohm": "20", "fault": "break"}, "no_break_reads_so"),
        ({"near_ohm": "20", "fault": "break", "quantity": "dc_ohm"}, "break_at_1k"),
        ({"near_ohm": "1.4", "far_ohm": "2"}, "far_box_needed"),
    ],
)
def test_what_has_no_place_on_the_line_is_said_with_a_way_on(
    more: dict[str, Any], code: str
) -> None:
    told = on_line_a(**more)
    assert told["problem"]["code"] == code
    assert told["problem"]["remedy"]


def test_ohms_without_a_cable_are_no_metres() -> None:
    assert ask("distance", near_ohm="1.4")["problem"]["code"] == "cable_needed"


def copper_of(told: dict[str, Any]) -> list[str]:
    """What is said of how warm the copper is counted."""
    return [one for one in told["assumptions"] if one.startswith("Copper counts")]


def test_one_cable_is_as_long_bare_as_drawn() -> None:
    job = plain(job_of([LONE], line_v=70.7, cable=AWG_16, limits={"conductor_c": 45.0}))
    [cable] = job["kinds"]["cables"]
    read = {"near_ohm": "2.2", "quantity": "dc_ohm"}
    bare = ask("distance", job=job, cable=cable, **read)
    drawn = ask("distance", job=job, where={"zone": "zone"}, **read)
    # the one loudspeaker at the far end, 5 % of 1000 ohm across the loop, hides two metres
    assert bare["metres"] == pytest.approx(drawn["metres"], rel=0.03)
    # IEC 60228 Annex B: 254.5 / (234.5 + 45) of the metres at 20 °C
    cold = ask("distance", job=job, cable=cable, conductor_c="20", **read)
    assert bare["metres"] == pytest.approx(cold["metres"] * 254.5 / 279.5, rel=1e-3)


def test_how_warm_the_copper_counts_is_said_and_by_whose_word() -> None:
    read = {"near_ohm": "2.2", "quantity": "dc_ohm", "cable": BARE}
    warm = plain(job_of([LONE], line_v=70.7, cable=AWG_16, limits={"conductor_c": 45.0}))
    [alone] = copper_of(ask("distance", **read))
    [of_job] = copper_of(ask("distance", job=warm, **read))
    [typed] = copper_of(ask("distance", job=warm, conductor_c="86 °F", **read))
    assert "30 °C, as in a new job" in alone
    assert "45 °C, as the job's limits say" in of_job
    assert "30 °C, as typed" in typed
    [drawn] = copper_of(on_line_a(near_ohm="1.899"))
    assert "20 °C, as typed" in drawn


def test_the_working_of_a_bare_pair_tells_its_heat() -> None:
    told = ask("distance", near_ohm="2.2", quantity="dc_ohm", cable=BARE)
    heat = next(one for one in told["steps"] if "30" in str(one["inputs"]))
    assert heat["result"] == "27.9 Ω/km"  # 26.875 * (1 + 0.00393 * 10)


def test_the_capacitance_of_a_bare_pair_does_not_ask_for_its_heat() -> None:
    told = ask("distance", fault="break", near_ohm="101.05k", cable=OPEN_END)
    assert not copper_of(told)


@pytest.mark.parametrize(("area_mm2", "loop_ohm_per_km"), [(1.5, 26.6), (4.0, 9.9)])
def test_a_tone_meets_the_inductance_of_a_bare_pair(
    area_mm2: float, loop_ohm_per_km: float
) -> None:
    # IEC 60228:2004 table 3 (second hand): 13.3 and 4.95 Ω/km at 20 °C; 0.63 µH/m is 3.958 Ω/km
    kind = {**BARE, "loop_ohm_per_km": loop_ohm_per_km, "inductance_uh_per_m": 0.63}
    read_ohm = 0.1 * abs(complex(loop_ohm_per_km, 3.958))
    read = {"near_ohm": f"{read_ohm:.5f}", "conductor_c": "20", "cable": kind}
    tone = ask("distance", quantity="z_1k_ohm", **read)
    direct = ask("distance", quantity="dc_ohm", **read)
    assert tone["metres"] == pytest.approx(100.0, rel=1e-3), area_mm2
    assert direct["metres"] == pytest.approx(1000 * read_ohm / loop_ohm_per_km, rel=1e-3)


def test_a_length_that_no_line_has_is_refused_with_what_to_measure() -> None:
    # 1e12 over (2 pi times 1000 Hz times 63 pF/m times 9 ohm): 281 km
    far = ask("distance", cable=OPEN_END, fault="break", quantity="z_1k_ohm", near_ohm="9")
    problem = far["problem"]
    assert problem["code"] == "distance_too_far"
    assert problem["where"] == {"field": "near_ohm"}
    assert "no line is so long" in problem["words"]
    assert "open pair at 1 kHz" in problem["remedy"]
    # 9 nF are 17.7 kilohms at 1 kHz, and 143 m of 63 pF/m
    near = ask("distance", cable=OPEN_END, fault="break", quantity="z_1k_ohm", near_ohm="17.7k")
    assert near["metres"] == pytest.approx(143.0, rel=0.01)


# 75 m of 26.875 ohm/km is a loop of 2.016 ohm: both ends of a dead short on it read that together,
# and no short on it reads less at both (arithmetic).
@pytest.mark.parametrize(
    ("near_ohm", "far_ohm"), [("0.1", "5"), ("5", "0.1"), ("0.3", "0.3"), ("0.1", "0.1")]
)
def test_two_ends_that_no_short_on_the_route_reads_give_no_place(
    near_ohm: str, far_ohm: str
) -> None:
    told = ask(
        "distance", near_ohm=near_ohm, far_ohm=far_ohm, route_m="75", quantity="dc_ohm",
        cable=BARE, conductor_c="20",
    )  # fmt: skip
    assert told["problem"]["code"] == "ends_disagree"
    assert told["problem"]["remedy"]


def test_a_short_at_one_end_lies_there_and_has_no_ohms_below_none() -> None:
    told = ask(
        "distance", near_ohm="0.01", far_ohm="1.95", route_m="75", quantity="dc_ohm",
        cable=BARE, conductor_c="20",
    )  # fmt: skip
    assert told["low"] == 0.0
    assert 0.0 <= told["metres"] < 2.0
    assert told["own_ohm"] == 0.0


@pytest.mark.parametrize(
    ("read", "code"),
    [
        ({"near_ohm": "9000M"}, "distance_too_short"),
        ({"near_ohm": "20", "far_ohm": "10", "route_m": "75"}, "no_such_pair"),
        ({"near_ohm": "90k", "far_ohm": "45k", "route_m": "9000"}, "no_such_pair"),
    ],
)
def test_what_no_open_pair_reads_gives_no_place(read: dict[str, Any], code: str) -> None:
    told = ask("distance", fault="break", cable=OPEN_END, **read)
    assert told["problem"]["code"] == code
    assert told["problem"]["remedy"]


@pytest.mark.parametrize("fault", ["short", "break"])
def test_a_line_without_any_length_gives_no_place_and_says_why(fault: str) -> None:
    line = [speaker(1, after=None, tap_w=5.0, at_v=70.7, length_m=0.0, cable="pair")]
    job = plain(job_of(line, line_v=70.7, cable=AWG_16))
    told = ask("distance", job=job, where={"zone": "zone"}, near_ohm="1.4", fault=fault)
    assert told["problem"]["code"] == "line_without_length"


def test_a_drawn_line_that_is_longer_than_any_gives_no_place_there_either() -> None:
    # three sections of 10 km, junctions between them, hardly a load: a loop of 26.875 ohm/km reads
    # 645 ohm at 24 km (arithmetic)
    def bare(number: int, after: str | None) -> dict[str, Any]:
        fitted = {"is": "junction", "label": f"J{number}"}
        return {"id": f"j{number}", "after": after, "length_m": 10_000.0, "cable": "pair",
                "fitted": fitted}  # fmt: skip

    line = [bare(1, None), bare(2, "j1"), bare(3, "j2")]
    job = plain(job_of(line, line_v=70.7, cable=AWG_16))
    told = ask(
        "distance", job=job, where={"zone": "zone"}, near_ohm="645", quantity="dc_ohm",
        conductor_c="20",
    )  # fmt: skip
    assert told["problem"]["code"] == "distance_too_far"

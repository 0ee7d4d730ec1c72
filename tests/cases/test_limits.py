"""Verdicts on outputs, panels and shared watts."""

import pytest

from pycore.asks.see import see
from pycore.ground.units import Manner
from tests.drawn import (
    about,
    as_read,
    ask,
    control,
    drawn,
    found,
    found_at,
    output,
    raw_job,
    speaker,
    zone,
)

MANNER = Manner("en", "m", ".", "")

# Sums and verdicts: exact arithmetic on nominal watts. The reserve kept, a fifth of the watts, is
# common practice, no source.


def test_six_at_5_watts_on_30_watts_are_near_not_over() -> None:
    job = drawn([output(max_w=30.0)], zone("hall", *[speaker(5.0)] * 6))
    load = found(job, "output_load_w:o1:override")
    assert (load.value, load.verdict) == (about(30.0), "near")


@pytest.mark.parametrize(
    ("count", "verdict"), [(16, "ok"), (17, "near"), (20, "near"), (21, "over")]
)
def test_a_100_watt_amplifier_carries_twenty_at_5_watts_and_no_more(
    count: int, verdict: str
) -> None:
    # common practice, no source; the fifth kept in reserve ends at sixteen
    job = drawn([output(max_w=100.0)], zone("hall", *[speaker(5.0)] * count))
    assert found(job, "output_load_w:o1:override").verdict == verdict


def test_twenty_at_5_watts_are_near_on_a_panel_printed_50_ohm() -> None:
    # 70.7 V and 100 W are 49.985 ohm, Ohm's law; a printed 50 is a rounded figure
    job = drawn([output(min_load_ohm=50.0)], zone("hall", *[speaker(5.0)] * 20))
    ohms = found(job, "output_impedance_ohm:o1:override")
    assert ohms.value == about(49.985, abs=5e-4)
    assert ohms.verdict == "near"
    more = drawn([output(min_load_ohm=50.0)], zone("hall", *[speaker(5.0)] * 21))
    assert found(more, "output_impedance_ohm:o1:override").verdict == "over"


@pytest.mark.parametrize(
    ("most_w", "verdict"),
    [
        # three of 5 W: a sum may miss its limit by its last digits, and by no more
        (15.0 * (1 - 5e-10), "near"),
        (15.0 * (1 - 3e-9), "over"),
        (18.75 * (1 - 5e-10), "ok"),
        (18.75 * (1 - 3e-9), "near"),
    ],
)
def test_a_sum_is_not_over_by_its_last_digits(most_w: float, verdict: str) -> None:
    job = drawn([output(max_w=most_w)], zone("hall", *[speaker(5.0)] * 3))
    assert found(job, "output_load_w:o1:override").verdict == verdict


@pytest.mark.parametrize(("printed_ohm", "verdict"), [(51.0, "near"), (51.01, "over")])
def test_a_printed_least_load_is_rounded_by_two_per_cent(printed_ohm: float, verdict: str) -> None:
    # 49.985 ohm are 2 % below 51.005 (Ohm's law)
    job = drawn([output(min_load_ohm=printed_ohm)], zone("hall", *[speaker(5.0)] * 20))
    assert found(job, "output_impedance_ohm:o1:override").verdict == verdict


def test_ohms_well_above_the_panel_are_in_order() -> None:
    job = drawn([output(min_load_ohm=50.0)], zone("hall", *[speaker(5.0)] * 10))
    assert found(job, "output_impedance_ohm:o1:override").verdict == "ok"


def test_a_panel_with_nothing_on_it_is_open_not_unknown() -> None:
    seen = ask("findings", {"job": raw_job([output(min_load_ohm=50.0)], zone("hall"))})
    ohms = next(one for one in seen["findings"] if one["what"] == "output_impedance_ohm")
    assert (ohms["verdict"], ohms["shown"]["value"]) == ("ok", "open")


def test_a_least_load_is_not_derived_from_the_maximum() -> None:
    job = drawn([output(max_w=120.0)], zone("hall", speaker(60.0)))
    assert found_at(job, "output_impedance_ohm") == []


def test_60_and_70_watts_on_one_120_watt_output_are_over_in_both_zones() -> None:
    job = raw_job([output(max_w=120.0)], zone("bay", speaker(60.0)), zone("quay", speaker(70.0)))
    seen = ask("findings", {"job": job})
    load = next(one for one in seen["findings"] if one["what"] == "output_load_w")
    assert (load["value"], load["verdict"]) == (about(130.0), "over")
    for name in ("bay", "quay"):
        face = seen["faces"]["things"][name]
        assert face["verdict"] == "over"
        assert face["reason"] == load["words"]
    assert "10 W too much" in load["words"]


def test_taps_can_be_mixed_freely_on_a_line() -> None:
    # common practice, no source: nothing but the sum counts
    taps = [speaker(watts) for watts in (5.0, 7.5, 2.5, 15.0, 10.0)]
    job = drawn([output(max_w=100.0)], zone("hall", *taps))
    assert found(job, "output_load_w:o1:override").value == about(40.0)
    assert found_at(job, "wrong_voltage") == []


def test_one_failed_loudspeaker_leaves_the_others_playing() -> None:
    # common practice, no source: all hang in parallel
    taps = [speaker(5.0), speaker(5.0, connected=False), speaker(5.0)]
    job = drawn([output(max_w=100.0)], zone("hall", *taps))
    assert found(job, "output_load_w:o1:override").value == about(10.0)


def test_a_load_without_a_maximum_is_unknown_and_keeps_its_number() -> None:
    job = drawn([output()], zone("hall", speaker(5.0)))
    load = found(job, "output_load_w:o1:override")
    assert (load.value, load.verdict, load.limit) == (about(5.0), "unknown", None)


def test_a_zone_on_no_output_says_so_and_is_not_counted() -> None:
    job = drawn([output(max_w=100.0)], zone("loft", speaker(5.0), output=None))
    assert found(job, "zone_landed:loft").verdict == "unknown"
    assert found(job, "output_load_w:o1:override").value == 0.0


# 240 W among four outputs of 120 W each
SHARED = [output(name, max_w=120.0) for name in ("o1", "o2", "o3", "o4")]
POOL = [{"w": 240.0, "outputs": ["o1", "o2", "o3", "o4"]}]


def test_outputs_that_all_pass_can_be_too_much_together() -> None:
    zones = [
        zone(f"z{n}", speaker(watts), output=f"o{n}")
        for n, watts in enumerate((60.0, 100.0, 40.0, 70.0), start=1)
    ]
    job = drawn(SHARED, *zones, pools=POOL)
    own = [found(job, f"output_load_w:o{n}:override").verdict for n in range(1, 5)]
    assert own == ["ok", "near", "ok", "ok"]
    pool = found(job, "pool_load_w:amp:override")
    assert (pool.value, pool.verdict) == (about(270.0), "over")


def test_a_control_hides_the_overload_until_somebody_pages() -> None:
    zones = [
        zone("z1", speaker(60.0)),
        zone("z2", control(-6.0, form="autotransformer"), speaker(100.0), output="o2"),
        zone("z3", speaker(40.0), output="o3"),
        zone("z4", speaker(70.0), output="o4"),
    ]
    job = drawn(SHARED, *zones, pools=POOL)
    as_set = found(job, "pool_load_w:amp:set")
    assert as_set.value == about(195.1, abs=0.05)
    assert as_set.verdict == "near"
    page = found(job, "pool_load_w:amp:override")
    assert (page.value, page.verdict) == (about(270.0), "over")


def test_zones_of_80_77_5_and_27_5_watts_ask_185_and_each_has_its_own_maximum() -> None:
    # common practice, no source
    zones = [
        zone(f"z{n}", speaker(watts), output=f"o{n}")
        for n, watts in enumerate((80.0, 77.5, 27.5), start=1)
    ]
    outputs = [output(f"o{n}", max_w=100.0) for n in range(1, 4)]
    job = drawn(outputs, *zones, pools=[{"w": 250.0, "outputs": ["o1", "o2", "o3"]}])
    assert found(job, "pool_load_w:amp:override").value == about(185.0)
    assert found(job, "output_load_w:o1:override").value == about(80.0)
    assert found(job, "output_load_w:o2:override").value == about(77.5)
    assert found(job, "output_load_w:o3:override").value == about(27.5)


def test_what_else_draws_on_a_pool_counts_in_it() -> None:
    pools = [{"w": 100.0, "outputs": ["o1"], "other_w": 60.0}]
    job = drawn([output()], zone("hall", speaker(45.0)), pools=pools)
    pool = found(job, "pool_load_w:amp:override")
    assert (pool.value, pool.verdict) == (about(105.0), "over")


def test_each_of_two_pools_has_a_finding_of_its_own() -> None:
    outputs = [output("o1"), output("o2")]
    pools = [{"w": 50.0, "outputs": ["o1"]}, {"w": 100.0, "outputs": ["o2"]}]
    zones = [zone("a", speaker(60.0)), zone("b", speaker(60.0), output="o2")]
    job = drawn(outputs, *zones, pools=pools)
    assert found(job, "pool_load_w:amp:override:0").verdict == "over"
    assert found(job, "pool_load_w:amp:override:1").verdict == "ok"


def test_outputs_of_which_nobody_knows_whether_they_share_are_unknown() -> None:
    raw = raw_job([output("o1", max_w=50.0), output("o2", max_w=50.0)], zone("a", speaker(5.0)))
    raw["amplifiers"][0]["pools"] = None
    seen = ask("findings", {"job": raw})
    pool = next(one for one in seen["findings"] if one["what"] == "pool_load_w")
    assert (pool["code"], pool["verdict"]) == ("pool_not_known_unknown", "unknown")
    assert seen["faces"]["job"]["verdict"] == "unknown"


def test_a_load_a_hair_above_its_maximum_does_not_print_as_equal_to_it() -> None:
    job = raw_job([output(max_w=120.0)], zone("hall", speaker(120.4)))
    load = ask("findings", {"job": job})["findings"][0]
    assert load["verdict"] == "over"
    assert load["shown"]["value"] == "120.4 W"
    assert load["shown"]["limit"] == "120 W"
    assert load["shown"]["share"] == "100.3 %"


def test_what_is_left_to_an_output_is_the_smaller_of_its_own_and_its_shared_watts() -> None:
    """Arithmetic: of 300 W shared, 200 W and 90 W are asked for: 10 W are left on either."""
    outputs = [output("o1", max_w=240.0), output("o2", max_w=240.0)]
    zones = [zone("hall", speaker(200.0)), zone("yard", speaker(90.0), output="o2")]
    job = drawn(outputs, *zones, pools=[{"w": 300.0, "outputs": ["o1", "o2"]}])
    seen = see(job, MANNER)
    faces = seen["faces"]["things"]
    assert [faces[one]["left"] for one in ("o1", "o2")] == ["10\u00a0W", "10\u00a0W"]
    # 290 of 300 W is past the four fifths that are planned for, so neither mark says "fits"
    assert [faces[one]["verdict"] for one in ("o1", "o2")] == ["near", "near"]
    assert [bool(faces[one].get("left_by")) for one in ("o1", "o2")] == [True, True]
    (second,) = (
        one
        for one in seen["findings"]
        if one["what"] == "output_load_w" and one["where"] == {"output": "o2"}
        and one["state"] == "override"
    )  # fmt: skip
    assert (second["code"], second["verdict"]) == ("output_load_ok_shared", "ok")
    assert "10\u00a0W left" in second["words"]


def test_ohms_just_past_what_is_planned_for_do_not_read_as_planned() -> None:
    # 40 W at 70.7 V are 124.962 ohm, Ohm's law; four fifths of what a printed 100 bears is 125
    job = raw_job([output(min_load_ohm=100.0)], zone("hall", *[speaker(5.0)] * 8))
    told = ask("findings", {"job": job})["findings"]
    ohms = next(one for one in told if one["id"] == "output_impedance_ohm:o1:override")
    assert ohms["verdict"] == "near"
    assert as_read(ohms["shown"]["value"]) == "124.96 Ω"


def test_a_limit_that_was_worked_out_is_told_from_the_load_on_it() -> None:
    # 35.03 W at 100 V are 24.766 W at 70.7 V: the load of 24.78 W is over, and must look it
    wall = control(rated_w=35.03, rated_at_v=100.0)
    job = raw_job([output(max_w=100.0)], zone("hall", wall, speaker(24.78)))
    told = ask("findings", {"job": job})["findings"]
    load = next(one for one in told if one["id"] == "attenuator_load_w:hall-1:override")
    assert load["verdict"] == "over"
    assert as_read(load["shown"]["value"]) == "24.78 W"
    assert as_read(load["shown"]["limit"]) == "24.77 W"


def test_where_both_leave_as_much_an_output_speaks_of_its_own_maximum() -> None:
    outputs = [output("o1", max_w=100.0), output("o2", max_w=100.0)]
    pools = [{"w": 100.0, "outputs": ["o1", "o2"]}]
    job = drawn(outputs, zone("hall", speaker(10.0)), pools=pools)
    load = found(job, "output_load_w:o1:override")
    assert (load.code, load.values["left_by"]) == ("output_load_ok", None)
    assert load.values["left_w"] == about(90.0)


def test_shared_watts_leave_no_more_than_the_outputs_can_take() -> None:
    # by arithmetic: 240 W less 90 leave 150, but the outputs only 60 less 50 and 60 less 40
    outputs = [output("o1", max_w=60.0), output("o2", max_w=60.0)]
    pools = [{"w": 240.0, "outputs": ["o1", "o2"]}]
    zones = [zone("hall", speaker(50.0)), zone("court", speaker(40.0), output="o2")]
    told = ask("findings", {"job": raw_job(outputs, *zones, pools=pools)})
    face = told["faces"]["things"]["amp"]
    assert (as_read(face["left"]), face["left_by"]) == ("30 W", "feeds")
    pool = next(one for one in told["findings"] if one["id"] == "pool_load_w:amp:override")
    assert pool["code"] == "pool_load_ok_feeds"
    assert "30 W left, all that its outputs can still take" in pool["words"]
    assert told["faces"]["things"]["o1"].get("left_by") is None


def test_what_is_left_of_a_pool_is_its_own_where_one_output_has_no_maximum() -> None:
    outputs = [output("o1", max_w=60.0), output("o2", max_w=None)]
    pools = [{"w": 240.0, "outputs": ["o1", "o2"]}]
    job = drawn(outputs, zone("hall", speaker(50.0)), pools=pools)
    load = found(job, "pool_load_w:amp:override")
    assert (load.values["left_w"], load.values["left_by"]) == (about(190.0), None)


def test_at_most_is_never_said_of_a_number_that_only_a_full_load_makes() -> None:
    # o1 draws 10 to 50 W of its 60; o2 nobody knows. So o1 has at most 50 W left, not 10
    outputs = [output("o1", max_w=60.0), output("o2", max_w=200.0)]
    pools = [{"w": 240.0, "outputs": ["o1", "o2"]}]
    taps = [{"w": w, "at_v": 70.7} for w in (10.0, 50.0)]
    kinds = {"loudspeakers": [{"id": "k", "name": "Kind", "taps": taps}]}
    zones = [zone("hall", speaker(None, kind="k")), zone("court", speaker(None), output="o2")]
    job = drawn(outputs, *zones, pools=pools, kinds=kinds)
    load = found(job, "output_load_w:o1:override")
    assert (load.values["left_w"], load.values["left_most_w"]) == (None, about(50.0))

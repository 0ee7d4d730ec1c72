"""Wall attenuators: what they may carry, what the line feels of them, what a page reaches."""

import pytest

from tests.drawn import (
    about,
    ask,
    control,
    drawn,
    existing,
    found,
    found_at,
    output,
    raw_job,
    speaker,
    zone,
)

LINE_70 = [output(max_w=500.0)]
LINE_100 = [output(line_v=100.0, max_w=500.0)]


def test_60_watts_of_70_volt_taps_ask_120_watts_of_a_control_on_100_volts() -> None:
    # exact arithmetic: each tap draws (100 / 70.7) squared times its marked watts
    wall = control(rated_w=100.0, rated_at_v=100.0)
    job = drawn(LINE_100, zone("hall", wall, *[speaker(30.0)] * 2))
    load = found(job, "attenuator_load_w:hall-1:override")
    assert load.value == about(120.04, abs=0.01)
    assert (load.limit, load.verdict) == (100.0, "over")


def test_below_its_marked_volts_a_control_may_carry_less() -> None:
    # its winding carries the same amperes: watts fall with the volts, exact arithmetic
    wall = control(rated_w=100.0, rated_at_v=100.0)
    job = drawn(LINE_70, zone("hall", wall, speaker(60.0)))
    load = found(job, "attenuator_load_w:hall-1:override")
    assert load.limit == about(70.7)
    assert load.verdict == "near"


def test_above_its_marked_volts_a_control_is_over_whatever_it_carries() -> None:
    wall = control(rated_w=100.0, rated_at_v=70.7)
    for below in ([], [speaker(1.0, 100.0)]):
        job = drawn(LINE_100, zone("hall", wall, *below))
        load = found(job, "attenuator_load_w:hall-1:override")
        assert (load.verdict, load.code) == ("over", "attenuator_volts_over")


def test_a_control_marked_70_stands_rightly_on_a_70_7_volt_line() -> None:
    # 70, 70.7 and 71 are printed for one line: common practice, no source
    wall = control(rated_w=50.0, rated_at_v=70.0)
    job = drawn(LINE_70, zone("hall", wall, speaker(10.0)))
    load = found(job, "attenuator_load_w:hall-1:override")
    assert (load.verdict, load.limit) == ("ok", about(50.0))


@pytest.mark.parametrize(
    "known", [{}, {"rated_w": 100.0}, {"rated_at_v": 70.7}, {"rated_w": 0.0, "rated_at_v": 70.7}]
)
def test_a_control_of_which_the_rating_is_not_known_is_unknown(known: dict[str, float]) -> None:
    job = drawn(LINE_70, zone("hall", control(**known), speaker(10.0)))
    assert found(job, "attenuator_load_w:hall-1:override").verdict == "unknown"


def test_a_control_counts_everything_below_it_and_below_the_next_at_full_level() -> None:
    wall = control(-12.0, rated_w=40.0, rated_at_v=70.7, form="autotransformer")
    job = drawn(LINE_70, zone("hall", wall, speaker(10.0), wall, speaker(20.0)))
    assert found(job, "attenuator_load_w:hall-1:override").value == about(30.0)
    assert found(job, "attenuator_load_w:hall-3:override").value == about(20.0)


def test_what_hangs_before_a_control_is_not_carried_by_it() -> None:
    wall = control(rated_w=40.0, rated_at_v=70.7)
    job = drawn(LINE_70, zone("hall", speaker(30.0), wall, speaker(10.0)))
    assert found(job, "attenuator_load_w:hall-2:override").value == about(10.0)


def test_a_kind_says_what_a_fitted_control_does_not() -> None:
    kind = {"id": "wall", "name": "wall", "rated_w": 20.0, "rated_at_v": 70.7}
    walls = {"attenuators": [kind]}
    job = drawn(LINE_70, zone("a", control(kind="wall"), speaker(10.0)), kinds=walls)
    assert found(job, "attenuator_load_w:a-1:override").limit == about(20.0)
    own = control(kind="wall", rated_w=50.0)
    job = drawn(LINE_70, zone("a", own, speaker(10.0)), kinds=walls)
    assert found(job, "attenuator_load_w:a-1:override").limit == about(50.0)


@pytest.mark.parametrize(
    ("form", "off", "low", "high"),
    [
        ("autotransformer", False, 25.119, 25.119),
        ("pad", False, 100.0, 100.0),
        (None, False, 25.119, 100.0),
        ("pad", True, 0.0, 0.0),
        (None, True, 0.0, 0.0),
    ],
)
def test_what_the_line_feels_of_100_watts_below_a_control_at_minus_6(
    form: str | None, off: bool, low: float, high: float
) -> None:
    # ideal transformer, 10 to the power -0.6; a pad burns the rest and the line feels all
    job = drawn(LINE_70, zone("hall", control(-6.0, form=form, off=off), speaker(100.0)))
    load = found(job, "output_load_w:o1:set")
    assert (load.low, load.high) == (about(low, abs=1e-3), about(high, abs=1e-3))
    assert found(job, "output_load_w:o1:override").value == about(100.0)


def test_insertion_is_one_more_ratio_of_an_autotransformer() -> None:
    # ideal transformer: -6 dB and 1 dB of insertion are -7 dB, 0.19953 of the watts
    wall = control(-6.0, form="autotransformer", insertion_db=1.0)
    job = drawn(LINE_70, zone("hall", wall, speaker(100.0)))
    assert found(job, "output_load_w:o1:set").value == about(19.953, abs=1e-3)


def test_a_control_with_nothing_below_it_leaves_the_load_known() -> None:
    job = drawn(LINE_70, zone("hall", speaker(5.0), control()))
    assert found(job, "output_load_w:o1:set").value == about(5.0)


@pytest.mark.parametrize(
    ("override", "verdict"), [(False, "over"), (None, "unknown"), (True, "ok")]
)
def test_below_a_control_that_stands_off_a_page_is_heard_only_when_it_overrides(
    override: bool | None, verdict: str
) -> None:
    wall = control(off=True, override=override)
    job = drawn(LINE_70, zone("hall", speaker(5.0), wall, speaker(5.0)))
    assert found(job, "heard_in_page:hall-3:set").verdict == verdict
    assert found_at(job, "heard_in_page") == ["hall-3"]


def test_the_worst_of_two_controls_that_stand_off_decides() -> None:
    job = drawn(
        LINE_70,
        zone(
            "hall",
            control(off=True, override=True),
            control(off=True, override=False),
            speaker(5.0),
        ),
    )
    heard = found(job, "heard_in_page:hall-3:set")
    assert (heard.verdict, heard.values["attenuator"]) == ("over", "hall-2")


def test_what_is_disconnected_or_not_off_is_not_asked_about() -> None:
    walls = zone("hall", control(off=True), speaker(5.0, connected=False))
    job = drawn(LINE_70, walls, zone("quay", control(-24.0), speaker(5.0)))
    assert found_at(job, "heard_in_page") == []


def test_below_two_controls_that_are_off_the_one_nothing_overrides_decides() -> None:
    walls = [control(off=True), control(off=True, override=False), speaker(5.0)]
    heard = found(drawn(LINE_70, zone("hall", *walls)), "heard_in_page:hall-3:set")
    assert (heard.verdict, heard.values["attenuator"]) == ("over", "hall-2")
    walls = [control(off=True, override=True), control(off=True), speaker(5.0)]
    heard = found(drawn(LINE_70, zone("hall", *walls)), "heard_in_page:hall-3:set")
    assert (heard.verdict, heard.values["attenuator"]) == ("unknown", "hall-2")


PAGE = [output("o1", max_w=100.0), output("page", max_w=100.0)]


def test_a_zone_with_a_page_output_asks_it_of_that_one_in_a_page() -> None:
    job = drawn(PAGE, zone("a", speaker(60.0), page_output="page"), zone("b", speaker(30.0)))
    loads = {
        name: found(job, f"output_load_w:{name}").value
        for name in ("o1:set", "o1:override", "page:set", "page:override")
    }
    assert loads == {
        "o1:set": about(90.0),
        "o1:override": about(30.0),
        "page:set": 0.0,
        "page:override": about(60.0),
    }


def test_two_zones_moved_to_one_page_output_can_be_too_much_for_it() -> None:
    outputs = [output("o1", max_w=100.0), output("o2", max_w=100.0), output("page", max_w=100.0)]
    zones = [
        zone("a", speaker(60.0), page_output="page"),
        zone("b", speaker(60.0), output="o2", page_output="page"),
    ]
    job = drawn(outputs, *zones)
    assert found(job, "output_load_w:page:override").verdict == "over"
    assert found(job, "output_load_w:o1:set").verdict == "ok"


def test_a_programme_line_of_more_volts_than_the_page_line_is_looked_at_too() -> None:
    outputs = [output("o1", line_v=100.0, max_w=200.0), output("page", max_w=200.0)]
    wall = control(rated_w=50.0, rated_at_v=70.7)
    job = drawn(outputs, zone("a", wall, speaker(10.0), page_output="page"))
    assert found(job, "attenuator_load_w:a-1:set").verdict == "over"
    wrong = found(job, "wrong_voltage:a-2")
    assert (wrong.value, wrong.verdict) == (about(2.0006, abs=1e-4), "over")


def test_an_existing_part_below_a_control_counts_in_it() -> None:
    wall = control(rated_w=40.0, rated_at_v=70.7)
    job = drawn(LINE_70, zone("hall", wall, existing(ohm=120.0)))
    assert found(job, "attenuator_load_w:hall-1:override").verdict == "unknown"


def test_the_control_card_names_what_it_may_carry() -> None:
    wall = control(rated_w=35.0, rated_at_v=100.0, label="Foyer control")
    job = raw_job(LINE_70, zone("hall", wall, speaker(30.0)))
    face = ask("findings", {"job": job})["faces"]["things"]["hall-1"]
    # 35 W at 100 V is 24.745 W at 70.7 V, exact arithmetic
    assert (face["title"], face["verdict"]) == ("Foyer control", "over")
    assert (face["load"], face["limit"]) == ("30 W", "24.7 W")

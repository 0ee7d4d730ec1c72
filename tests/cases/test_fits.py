"""What still fits, counted by hand beside."""

import pytest

from tests.drawn import ask, control, drawn, existing, found, output, raw_job, speaker, zone

CEILING = {
    "id": "c",
    "name": "ceiling",
    "taps": [{"w": 5.0, "at_v": 70.7}, {"w": 10.0, "at_v": 70.7}, {"w": 10.0, "at_v": 100.0}],
}


@pytest.mark.parametrize(
    ("count", "reserve", "rating"), [(0, 16, 20), (10, 6, 10), (16, 0, 4), (20, 0, 0), (25, 0, 0)]
)
def test_twenty_at_5_watts_are_all_that_100_watts_take(
    count: int, reserve: int, rating: int
) -> None:
    # exact arithmetic; four fifths of 100 W are sixteen
    taps = [speaker(5.0, label="a")] * count or [speaker(5.0, connected=False)]
    job = drawn([output(max_w=100.0)], zone("hall", *taps))
    fits = found(job, "what_fits:hall:5@70.7")
    assert (fits.value, fits.high) == (reserve, rating)
    assert (fits.values["first_what"], fits.values["first_id"]) == ("output_load_w", "o1")


def test_every_tap_the_kinds_of_the_job_offer_for_this_line_is_counted() -> None:
    job = drawn(
        [output(max_w=100.0)],
        zone("hall", speaker(5.0, kind="c")),
        kinds={"loudspeakers": [CEILING]},
    )
    fives, tens = found(job, "what_fits:hall:5@70.7.c"), found(job, "what_fits:hall:10@70.7.c")
    assert (fives.value, fives.high) == (15, 19)
    assert (tens.value, tens.high) == (7, 9)
    assert [one.values["which"] for one in (fives, tens)] == ["5@70.7.c", "10@70.7.c"]


def test_the_first_limit_can_be_the_shared_watts() -> None:
    outputs = [output("o1", max_w=120.0), output("o2", max_w=120.0)]
    zones = [zone("a", speaker(10.0)), zone("b", speaker(80.0), output="o2")]
    job = drawn(outputs, *zones, pools=[{"w": 150.0, "outputs": ["o1", "o2"]}])
    fits = found(job, "what_fits:a:10@70.7")
    # 90 W of 150 W: three more reach 120 W, six more 150 W
    assert (fits.value, fits.high, fits.values["first_what"]) == (3, 6, "pool_load_w")


def test_the_first_limit_can_be_the_control_above_the_far_end() -> None:
    wall = control(rated_w=35.0, rated_at_v=70.7)
    job = drawn([output(max_w=500.0)], zone("a", wall, speaker(10.0)))
    fits = found(job, "what_fits:a:10@70.7")
    assert (fits.value, fits.high) == (1, 2)
    assert (fits.values["first_what"], fits.values["first_id"]) == ("attenuator_load_w", "a-1")


def test_a_control_turned_down_still_counts_each_one_more_below_it_in_full() -> None:
    # its programme line has more volts than the page line, so it is looked at as it stands: at
    # -12 dB the line feels a sixteenth of what is added, the control itself carries all of it
    wall = control(set_db=-12.0, form="autotransformer", rated_w=35.0, rated_at_v=100.0)
    outputs = [output("o1", line_v=100.0, max_w=900.0), output("page", max_w=900.0)]
    job = drawn(outputs, zone("a", wall, speaker(5.0), page_output="page"))
    fits = found(job, "what_fits:a:5@70.7")
    # 5 W at 70.7 V are 10.002 W at 100 V, Ohm's law: three in all are 30.006 W of 35, and over 28
    assert (fits.value, fits.high) == (1, 2)
    assert fits.values["first_what"] == "attenuator_load_w"
    assert fits.values["first_state"] == "set"


def test_the_first_limit_can_be_the_panels_least_load() -> None:
    job = drawn([output(max_w=500.0, min_load_ohm=100.0)], zone("a", speaker(10.0)))
    fits = found(job, "what_fits:a:10@70.7")
    # 100 ohm are 49.98 W, Ohm's law; the rounded print may be passed by 2 %: five in all
    assert (fits.high, fits.values["first_what"]) == (4, "output_impedance_ohm")


def test_a_range_is_counted_at_its_most() -> None:
    job = drawn([output(max_w=60.0)], zone("a", existing(ohm=240.0), speaker(5.0)))
    fits = found(job, "what_fits:a:5@70.7")
    # 20.83 W read as much as 27.08 W; with 5 W more, 15.9 W of the reserve and 27.9 W are left
    assert (fits.value, fits.high) == (3, 5)


def test_without_a_maximum_nobody_can_say_how_many() -> None:
    job = drawn([output()], zone("a", speaker(5.0)))
    fits = found(job, "what_fits:a:5@70.7")
    assert (fits.value, fits.high, fits.verdict) == (None, None, "unknown")


def test_with_some_limits_known_the_count_is_said_to_be_partial() -> None:
    job = drawn([output()], zone("a", speaker(5.0)), pools=[{"w": 50.0, "outputs": ["o1"]}])
    fits = found(job, "what_fits:a:5@70.7")
    assert (fits.value, fits.high, fits.code) == (7, 9, "fits_partly")
    assert (fits.verdict, fits.values["missing_id"]) == ("unknown", "o1")


def test_with_a_load_in_doubt_nobody_can_say_how_many() -> None:
    job = drawn([output(max_w=60.0)], zone("a", speaker(5.0), speaker(None)))
    assert found(job, "what_fits:a:5@70.7").verdict == "unknown"


def test_tiny_taps_are_counted_to_a_thousand() -> None:
    job = drawn([output(max_w=1000.0)], zone("a", speaker(0.25)))
    fits = found(job, "what_fits:a:0.25@70.7")
    assert (fits.value, fits.code) == (1000, "fits_all")


def test_the_words_name_the_limit_that_is_met_first() -> None:
    seen = ask("findings", {"job": raw_job([output(max_w=100.0)], zone("a", speaker(5.0)))})
    fits = next(one for one in seen["findings"] if one["what"] == "what_fits")
    assert fits["words"] == (
        "15 more at 5 W with reserve, 19 to the rating. The first limit met is that of amp."
    )

"""The tally: so many at so many watts, as a person types it."""

import pytest

from pycore.carry.saved import open_saved
from tests.drawn import Raw, ask


def tally(
    *rows: tuple[str, str, int], volts: str = "70.7", amplifier: str = "120", outputs: str = ""
) -> Raw:
    """A tally of rows (count, watts, output); the outputs' own watts stand between bars."""
    own = [{"max_w": text.strip()} for text in outputs.split("|")] if outputs else []
    body: Raw = {"line_v": volts, "amplifier_w": amplifier, "outputs": own, "name": "Tally"}
    body["rows"] = [{"count": n, "tap_w": watts, "output": at} for n, watts, at in rows]
    return ask("tally", {**body, "ids": {"job": "k7f1", "hand": "k7f", "next": 2}})


def test_six_at_5_and_four_at_7_5_are_60_watts_half_of_120() -> None:
    # exact arithmetic; a fifth kept in reserve is common practice, no source
    told = tally(("6", "5", 0), ("4", "7,5", 0))
    summary = told["summary"]
    assert [(row["shown"], row["sum"]) for row in told["rows"]] == [
        ("6 × 5 W", "30 W"),
        ("4 × 7.5 W", "30 W"),
    ]
    assert (summary["sum"], summary["share"], summary["left"]) == ("60 W", "50 %", "60 W")
    assert (summary["verdict"], summary["headline"]) == ("ok", "The watts fit")
    assert [fits["words"] for fits in summary["fits"]] == ["7 more at 5 W", "4 more at 7.5 W"]


def test_a_tally_in_order_still_says_what_was_not_checked() -> None:
    unchecked = " ".join(tally(("6", "5", 0))["summary"]["not_checked"])
    for word in ("cable", "controls", "voltage row"):
        assert word in unchecked


@pytest.mark.parametrize(
    ("count", "verdict", "headline"),
    [("4", "ok", "The watts fit"), ("6", "near", "No reserve"), ("7", "over", "Too much")],
)
def test_fives_on_30_watts(count: str, verdict: str, headline: str) -> None:
    summary = tally((count, "5", 0), amplifier="30")["summary"]
    assert (summary["verdict"], summary["headline"]) == (verdict, headline)


def test_a_tally_kept_as_a_job_has_unknown_lengths_and_no_loss_figure() -> None:
    told = tally(("6", "5", 0))
    job = open_saved(ask("save", {"job": told["job"]})["text"])
    points = [point for zone in job.zones for point in zone.line]
    assert {(point.length_m, point.cable) for point in points} == {(None, None)}
    for finding in told["findings"]:
        if finding["what"].startswith("zone_loss"):
            assert finding["value"] is None
            assert finding["verdict"] != "ok"
    assert [row["loss_db"] for row in told["points"]] == [None] * len(told["points"])


def test_ids_are_numbered_from_the_hand_and_counter_of_the_page() -> None:
    told = tally(("2", "5", 0))
    line = told["job"]["zones"][0]["line"]
    assert [point["id"] for point in line] == ["k7f5", "k7f6"]
    assert (told["job"]["id"], told["next"]) == ("k7f1", 7)


def test_outputs_share_the_amplifiers_watts() -> None:
    rows = (("6", "10", 0), ("10", "10", 1), ("4", "10", 2), ("7", "10", 3))
    summary = tally(*rows, amplifier="240", outputs="120|120|120|120")["summary"]
    assert (summary["sum"], summary["verdict"]) == ("270 W", "over")
    assert summary["reason"].startswith("270 W is asked of the 240 W that outputs of")


def test_what_is_left_is_what_the_outputs_can_still_take() -> None:
    # by arithmetic: of 240 W 180 are left, of two outputs of 60 W only 20 and 40
    rows = (("4", "10", 0), ("2", "10", 1))
    summary = tally(*rows, amplifier="240", outputs="60|60")["summary"]
    assert (summary["left"], summary["left_by"]) == ("60 W", "feeds")
    alone = tally(*rows, amplifier="90", outputs="60|60")["summary"]
    assert (alone["left"], alone["left_by"]) == ("30 W", None)


def test_one_output_has_its_own_maximum_beside_the_amplifiers() -> None:
    summary = tally(("14", "5", 0), amplifier="120", outputs="60")["summary"]
    assert (summary["verdict"], summary["headline"]) == ("over", "Too much")


def test_a_line_is_named_where_there_are_several() -> None:
    told = tally(("6", "5", 0), ("6", "5", 1), outputs="60|60")["summary"]
    assert [fits["words"] for fits in told["fits"]] == [
        "Line A · 3 more at 5 W",
        "Line B · 3 more at 5 W",
    ]


def test_a_count_by_some_of_the_limits_is_said_to_be_a_most() -> None:
    told = tally(("6", "5", 0), ("6", "5", 1), outputs="|60")["summary"]
    assert told["fits"][0]["words"] == "Line A · at most 7 more at 5 W"
    assert told["verdict"] == "unknown"


def test_without_watts_of_the_amplifier_the_sum_stands_and_the_rest_is_unknown() -> None:
    summary = tally(("6", "5", 0), amplifier="")["summary"]
    assert (summary["sum"], summary["verdict"]) == ("30 W", "unknown")
    assert (summary["share"], summary["left"], summary["fits"]) == ("", "", [])


def test_without_line_volts_nothing_is_counted_and_that_is_said() -> None:
    told = tally(("6", "5", 0), volts="")
    assert (told["rows"][0]["sum"], told["rows"][0]["finding"]) == ("", None)
    assert told["summary"]["verdict"] == "note"
    assert "line voltage" in told["summary"]["reason"]


@pytest.mark.parametrize("volts", ["70", "70.7", "71", "70,7 V"])
def test_the_70_volt_marks_are_one_line(volts: str) -> None:
    # common practice, no source
    told = tally(("6", "5", 0), volts=volts)
    assert told["job"]["amplifiers"][0]["outputs"][0]["line_v"] == 70.7
    assert told["summary"]["sum"] == "30 W"


@pytest.mark.parametrize(
    ("row", "code"),
    [
        (("", "5", 0), "count_needed"),
        (("0", "5", 0), "count_out_of_range"),
        (("501", "5", 0), "count_out_of_range"),
        (("2.5", "5", 0), "number_not_whole"),
        (("6", "", 0), "tap_needed"),
        (("6", "0", 0), "number_out_of_range"),
        (("6", "-5", 0), "number_out_of_range"),
        (("6", "1,500", 0), "number_ambiguous"),
        (("6", "five", 0), "number_unread"),
    ],
)
def test_a_row_that_cannot_be_read_is_told_and_the_others_are_counted(
    row: tuple[str, str, int], code: str
) -> None:
    told = tally(("6", "5", 0), row)
    assert told["rows"][1]["problem"]["code"] == code
    assert told["summary"]["sum"] == "30 W"


@pytest.mark.parametrize(
    ("field", "code"),
    [
        ({"volts": "abc"}, "number_unread"),
        ({"volts": "20000"}, "number_out_of_range"),
        ({"amplifier": "0"}, "number_out_of_range"),
        ({"outputs": "60|x"}, "number_unread"),
    ],
)
def test_a_field_that_cannot_be_read_is_told_by_its_name(field: dict[str, str], code: str) -> None:
    (problem,) = tally(("6", "5", 0), **field)["problems"]
    names = {"volts": "line_v", "amplifier": "amplifier_w", "outputs": "outputs.1.max_w"}
    assert problem["code"] == code
    assert problem["where"] == {"field": names[next(iter(field))]}


def test_a_tally_of_more_than_can_hang_says_so_and_counts_the_first() -> None:
    told = tally(*[("500", "0.25", 0)] * 5, amplifier="9999")
    assert told["rows"][4]["problem"]["code"] == "tally_full"
    assert told["summary"]["sum"] == "500 W"


def test_a_person_who_writes_commas_reads_commas() -> None:
    body: Raw = {"line_v": "70,7", "amplifier_w": "120", "outputs": [], "name": "Tally"}
    body["rows"] = [{"count": "3", "tap_w": "7,5", "output": 0}]
    told = ask("tally", {**body, "ids": {"job": "a", "hand": "k7f", "next": 2}}, decimal=",")
    assert told["rows"][0]["shown"] == "3 × 7,5 W"
    assert told["summary"]["sum"] == "22,5 W"


def test_while_a_row_may_be_read_two_ways_nothing_is_said_to_fit() -> None:
    told = tally(("2", "1,500 W", 0), ("2", "5", 0))
    summary = told["summary"]
    assert told["rows"][0]["problem"]["code"] == "number_ambiguous"
    assert (summary["verdict"], summary["headline"]) == ("unknown", "Not known yet")
    assert summary["reason"] == "One row waits for an answer, and is not counted."
    assert (summary["fits"], summary["verdict_finding"]) == ([], None)


def test_a_lone_row_without_an_answer_is_not_nothing() -> None:
    assert tally(("2", "1,500 W", 0))["summary"]["headline"] == "Not known yet"
    assert tally(("2", "1500 W", 0), ("2", "x", 0), ("", "5", 0))["summary"]["verdict"] == "over"


def test_too_much_stays_too_much_whatever_an_unread_row_asks_for() -> None:
    summary = tally(("2", "1,500 W", 0), ("30", "5", 0))["summary"]
    assert (summary["verdict"], summary["headline"]) == ("over", "Too much")
    assert summary["fits"] == []

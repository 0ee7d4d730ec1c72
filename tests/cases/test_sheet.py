"""The test sheet: what every zone should read, as tables, and safe in a spreadsheet."""

import csv
import io
from typing import Any

import pytest

from pycore.sheets.comma import quoted
from tests.meter.asked import ask, plain
from tests.meter.lines import line_a


def sheet(**more: Any) -> dict[str, Any]:
    """The test sheet of line A."""
    return ask("sheet", job=plain(line_a(**more)), which="test")


def cell(told: dict[str, Any], table: str, row: str, column: str) -> dict[str, Any]:
    """One cell by the names of its table, row and column."""
    one = next(each for each in told["tables"] if table in each["title"])
    place = next(at for at, head in enumerate(one["heads"]) if column in head["words"])
    found: dict[str, Any] = next(each for each in one["rows"] if row in each[0]["shown"])[place]
    return found


def test_the_ends_and_every_box_are_those_of_an_independent_ladder_solver() -> None:
    told = sheet()
    # Line A, |Z| at 1 kHz with its cable 101.54 ohm; direct current 6.54 ohm with 5 % windings;
    # what is left before a break behind S5, looked at from S5, is close to 5000 / 25 = 200 ohm.
    assert cell(told, "amplifier", "1 kHz, controls", "read")["shown"] == "102 Ω"
    assert cell(told, "amplifier", "ohmmeter, direct current, c", "read")["shown"] == "6.54 Ω"
    assert cell(told, "each box, impedance meter, 1 kHz", "S5", "without")["shown"] == "200 Ω"
    assert cell(told, "each box, impedance meter, 1 kHz", "S10", "Outward")["shown"] == "1000 Ω"
    assert (
        cell(told, "each box, impedance meter, 1 kHz", "S5", "alone")["within"] == "869 Ω to 1150 Ω"
    )


def test_below_the_least_load_the_first_thing_said_is_do_not_connect() -> None:
    assert sheet()["warnings"] == []
    told = sheet(output={"min_load_ohm": 120.0})
    assert told["warnings"][0].startswith("Do not connect")
    assert told["csv"].splitlines()[1].startswith("Do not connect")


def test_the_paper_itself_carries_the_cautions_and_certifies_nothing() -> None:
    told = sheet()
    for words in ("Lock the amplifier off", "fire panel", "Never leg to leg", "certifies nothing"):
        assert any(words in note for note in told["notes"]), words
        assert words in told["csv"]


def test_without_a_control_both_states_are_one_and_it_says_so() -> None:
    titles = [table["title"] for table in sheet()["tables"]]
    assert not any("bypassed, " in title for title in titles)
    ends = next(one for one in sheet()["tables"] if "at the amplifier" in one["title"])
    assert "No control hangs on Zone" in ends["notes"][0]


def test_before_any_ohms_the_sheet_asks_for_foreign_volts_and_legs_to_earth() -> None:
    first = sheet()["tables"][1]  # behind the head of the sheet
    assert first["title"] == "Zone: before anything else, line lifted and locked off"
    told = [(row[0]["shown"].split(":")[0], row[1]["shown"]) for row in first["rows"]]
    assert told == [
        ("Foreign volts, alternating and direct", "none: at most 1 V"),
        ("Each leg to earth by ohmmeter", "at least 1 MΩ"),
    ]


def test_a_zone_on_no_output_is_named_with_the_reason() -> None:
    job = plain(line_a())
    job["zones"][0]["output"] = None
    told = ask("sheet", job=job, which="test")
    assert [one["title"] for one in told["tables"]] == ["The job", "Measured by"]
    assert told["warnings"][0].startswith("Zone is left out")


def test_the_same_numbers_stand_in_the_spreadsheet_with_their_bands_apart() -> None:
    rows = list(csv.reader(io.StringIO(sheet()["csv"])))
    heads = next(row for row in rows if row and row[0] == "Box")
    s5 = next(row for row in rows if row and row[0] == "S5")
    values = dict(zip(heads, s5, strict=True))
    assert float(values["From the amplifier (m)"]) == 70
    low = float(values["That one alone, from (ohm)"])
    high = float(values["That one alone, to (ohm)"])
    assert low < float(values["That one alone (ohm)"]) < high


def reading(name: str, value: float | str, **more: Any) -> dict[str, Any]:
    """A reading of the zone that is kept in the job."""
    return {
        "id": name, "at": "2026-03-02", "where": {"zone": "zone"}, "looking": "out",
        "quantity": "z_1k_ohm", "value": value, "controls": "open", "tolerance_pct": 5.0,
        "instrument": "Bench meter", "baseline": False, **more,
    }  # fmt: skip


def kept_sheet(*readings: dict[str, Any]) -> dict[str, Any]:
    """The test sheet of line A with readings kept in its job."""
    return ask("sheet", job={**plain(line_a()), "readings": list(readings)}, which="test")


def test_what_is_kept_stands_in_its_line_with_day_and_instrument_and_all_else_is_to_write_on() -> (
    None
):
    told = kept_sheet(
        reading("r1", 104.0, at="2025-05-01", instrument="Old meter"),
        reading("r2", 101.0),
        reading("r3", 205.0, where={"point": "s5"}, looking="back", lifted=["s6"]),
        reading("r4", 0.2, quantity="foreign_v"),
    )
    one = cell(told, "amplifier", "meter, 1 kHz, controls", "Read")
    assert (one["shown"], one["line"]) == ("101 Ω", False)
    assert (
        one["within"]
        == "2026-03-02, Bench meter; before that 104 Ω (as expected), 2025-05-01, Old meter"
    )
    assert one["judged"].startswith("as expected: should read 8")
    assert cell(told, "before anything else", "Foreign", "Read")["shown"] == "0.2 V"
    assert cell(told, "amplifier", "ohmmeter, direct current, c", "Read")["line"]
    at_box = cell(told, "each box, impedance meter", "S5", "Read, and")
    assert at_box["shown"] == "205 Ω"
    assert at_box["within"].startswith("back toward the amplifier, controls at 0 dB, lifted: S6")
    assert cell(told, "each box, impedance meter", "S6", "Read, and")["line"]
    assert cell(told, "each box, ohmmeter", "S5", "Read, and")["line"]


def test_each_reading_says_in_words_how_it_is_judged_and_what_it_should_read() -> None:
    told = kept_sheet(reading("r1", 190.0), reading("r2", 4e3, quantity="earth_ohm"),
                      reading("r3", 101.0, where={"output": "out"}))  # fmt: skip
    band = cell(told, "amplifier", "meter, 1 kHz, controls", "Should")["within"]
    one = cell(told, "amplifier", "meter, 1 kHz, controls", "Read")
    assert one["judged"] == f"too high: should read {band}"
    assert cell(told, "before anything else", "Each leg", "Read")["judged"] == "not in order"
    others = next(one for one in told["tables"] if one["title"] == "Readings kept besides these")
    place = [head["words"] for head in others["heads"]].index("Judged")
    assert others["rows"][0][place]["shown"].startswith("as expected: should read")


def test_what_has_no_line_on_the_sheet_is_listed_behind_it() -> None:
    heard = reading("r1", "weak", quantity="plays", where={"point": "s3"})
    told = kept_sheet(heard, reading("r2", 101.0))
    others = next(one for one in told["tables"] if one["title"] == "Readings kept besides these")
    assert [[one["shown"] for one in row] for row in others["rows"]] == [
        ["2026-03-02", "S3", "by ear", "weak", "", "Bench meter"]
    ]
    assert not any("besides" in one["title"] for one in kept_sheet()["tables"])


def test_more_than_a_meter_shows_is_written_so_and_is_no_number() -> None:
    told = kept_sheet(reading("r1", 1e12, quantity="earth_ohm"))
    one = cell(told, "before anything else", "Each leg", "Read")
    assert one["shown"] == "more than the meter can show"
    assert "1e+12" not in told["csv"]


def test_the_head_names_job_place_day_and_outputs_and_the_end_is_for_a_name() -> None:
    told = sheet(output={"max_w": 120.0})
    rows = {row[0]["shown"]: row[1] for row in told["tables"][0]["rows"]}
    assert rows["Job"]["shown"] == plain(line_a())["name"]
    assert rows["Place"]["line"]
    assert "70.7 V, at most 120 W" in list(rows.values())[-1]["shown"]
    signed = told["tables"][-1]
    assert [(row[0]["shown"], row[1]["line"]) for row in signed["rows"]] == [
        ("Name", True), ("Date", True), ("Signature", True),
    ]  # fmt: skip
    assert "who measured and when, and nothing more" in signed["notes"][0]


def test_in_the_spreadsheet_day_and_instrument_have_a_column_of_their_own() -> None:
    rows = list(csv.reader(io.StringIO(kept_sheet(reading("r1", 101.0))["csv"])))
    heads = next(row for row in rows if "Read (ohm)" in row)
    line = next(row for row in rows if row and row[0].startswith("impedance meter, 1 kHz"))
    values = dict(zip(heads, line, strict=True))
    assert float(values["Read (ohm)"]) == 101
    assert values["Read: judged"] == "as expected"
    low, high = (float(values[f"Read: should read, {end} (ohm)"]) for end in ("from", "to"))
    assert low < 101 < high
    assert values["Read: when, by what"] == "2026-03-02, Bench meter"


def test_with_a_decimal_comma_cells_part_at_semicolons() -> None:
    import json

    from pycore.door import handle

    body = {"job": plain(line_a()), "which": "test"}
    request = {"n": 1, "ask": "sheet", "body": body, "manner": {"language": "en", "decimal": ","}}
    text = json.loads(handle(json.dumps(request)))["body"]["csv"]
    rows = list(csv.reader(io.StringIO(text), delimiter=";"))
    s5 = next(row for row in rows if row and row[0] == "S5")
    assert "," in s5[2]


@pytest.mark.parametrize(
    ("text", "safe"),
    [
        ("=1+1", "'=1+1"),
        ("+33", "'+33"),
        ("-7", "'-7"),
        ("@SUM(A1)", "'@SUM(A1)"),
        ("\t=1", "'\t=1"),
        ('=a"b,c', '"\'=a""b,c"'),
        ("Nave 1", "Nave 1"),
        ("one\ntwo", '"one\ntwo"'),
    ],
)
def test_no_cell_is_ever_a_formula(text: str, safe: str) -> None:
    assert quoted(text) == safe


def test_a_name_that_looks_like_a_formula_stays_text_in_the_spreadsheet() -> None:
    job = plain(line_a())
    job["zones"][0]["line"][0]["fitted"]["label"] = '=HYPERLINK("x")'
    text = ask("sheet", job=job, which="test")["csv"]
    rows = [row for row in csv.reader(io.StringIO(text)) if row]
    assert any(row[0] == '\'=HYPERLINK("x")' for row in rows)
    assert not any(one.startswith(("=", "+", "@")) for row in rows for one in row)

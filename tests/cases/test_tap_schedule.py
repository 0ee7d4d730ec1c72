"""The tap schedule: what hangs where, on which tap, how it is known, and what nobody knows."""

import csv
import io
import json
from typing import Any

from pycore.jobs import Job
from tests.meter.asked import ask, plain
from tests.samples.halls import job_of
from tests.samples.lines import speaker


def hall() -> Job:
    """Three in a row: one set and ticked, one from the drawing, one of which nothing is known."""
    return job_of(
        [
            speaker(0, length_m=30.0, tap_w=5.0, fitted={"seen": "set", "label": "Door"}),
            speaker(1, length_m=10.0, tap_w=5.0, fitted={"seen": "drawing", "label": "Desk"}),
            speaker(2, length_m=None, tap_w=None, cable=None, fitted={"label": "Loft"}),
        ]
    )


def schedule(job: Job) -> dict[str, Any]:
    """The schedule of a job with a tick at its first loudspeaker."""
    raw = plain(job)
    tick = {"point": "p0", "tap_w": 5.0, "tap_at_v": 70.7, "at": "2026-11-20", "initials": "AB"}
    return ask("sheet", job={**raw, "ticks": [tick]}, which="taps")


def row(told: dict[str, Any], name: str) -> list[dict[str, Any]]:
    """The cells of one thing that hangs on the line."""
    table = next(one for one in told["tables"] if one["title"].startswith("Hall"))
    found: list[dict[str, Any]] = next(each for each in table["rows"] if each[0]["shown"] == name)
    return found


def test_a_loudspeaker_tells_its_tap_its_cable_and_how_its_tap_is_known() -> None:
    told = schedule(hall())
    door = [one["shown"] for one in row(told, "Door")]
    assert door[1:3] == ["the terminals", "5 W at 70.7 V"]
    assert door[4].startswith("30 m · pair")
    assert door[5].endswith("dB")
    assert door[6] == "set on site; ticked 2026-11-20 AB"
    desk = [one["shown"] for one in row(told, "Desk")]
    assert (desk[1], desk[6]) == ("Door", "from the drawing")


def test_what_was_entered_later_stands_where_it_hangs() -> None:
    raw = plain(hall())
    zone = raw["zones"][0]
    zone["line"] = [zone["line"][at] for at in (2, 0, 1)]
    table = ask("sheet", job=raw, which="taps")["tables"][1]
    assert [cells[0]["shown"] for cells in table["rows"]] == ["Door", "Desk", "Loft"]


def test_what_is_not_known_is_a_line_to_write_on_and_never_a_number() -> None:
    loft = row(schedule(hall()), "Loft")
    assert [one["line"] for one in loft[3:]] == [True, True, True, True]
    assert loft[2]["shown"] == "tap not known"


def test_a_junction_is_of_no_kind_and_only_a_loudspeaker_has_a_tap_that_is_known() -> None:
    box = {"is": "junction", "label": "Box"}
    job = job_of([{"id": "j", "after": None, "length_m": 3.0, "cable": "c", "fitted": box}])
    cells = row(ask("sheet", job=plain(job), which="taps"), "Box")
    assert [one["shown"] for one in cells[1:5]] == ["the terminals", "junction", "–", "3 m · pair"]
    assert cells[6]["shown"] == "–"


def test_it_says_what_it_rests_on_what_nobody_checked_and_that_it_certifies_nothing() -> None:
    told = schedule(hall())
    notes = " ".join(told["notes"])
    for words in ("not what was measured", "Lock the amplifier off", "certifies nothing"):
        assert words in notes
    assert "Not checked:" in notes
    assert told["running"].startswith("Tap schedule: ")


def test_what_is_wrong_comes_before_the_tables() -> None:
    raw = json.loads(json.dumps(plain(hall())))
    raw["zones"][0]["line"][1]["fitted"]["tap_at_v"] = 25.0
    told = ask("sheet", job=raw, which="taps")
    assert any("Desk" in words for words in told["warnings"])


def test_it_goes_into_a_spreadsheet_as_it_is_shown() -> None:
    rows = list(csv.reader(io.StringIO(schedule(hall())["csv"])))
    assert any(line[:3] == ["Door", "the terminals", "5 W at 70.7 V"] for line in rows)

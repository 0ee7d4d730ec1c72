"""The meter through the door: what a person types, and what they are told."""

import ast
import json
import re
from pathlib import Path
from typing import get_args

import pytest

from pycore.asks.meter_bodies import Complaint
from pycore.asks.meter_tell import AT_START
from pycore.calc.complaints import COMPLAINTS
from pycore.calc.priors import CABLE_FACTORS, FAMILY_WEIGHTS
from pycore.ground.words import ENGLISH
from tests.meter.asked import ask, plain, reading, said_of
from tests.meter.lines import line_a
from tests.meter.test_faults import branched

ROOT = Path(__file__).resolve().parents[2]


def codes_in(*names: str, call: str) -> set[str]:
    """The codes that these files give a call as its first word."""
    found: set[str] = set()
    for name in names:
        tree = ast.parse((ROOT / "pycore" / name).read_text(encoding="utf-8"))
        for node in ast.walk(tree):
            if isinstance(node, ast.Call) and ast.unparse(node.func) == call and node.args:
                first = node.args[0]
                if isinstance(first, ast.Constant) and isinstance(first.value, str):
                    found.add(first.value)
    return found


def test_every_fault_every_verdict_and_every_complaint_has_words() -> None:
    families = {"healthy", *FAMILY_WEIGHTS}
    cables = {f"cable_{name}" for _, name in CABLE_FACTORS}
    lines = {f"{family}_line" for family in AT_START}
    assert families - {"cable"} | cables | lines | {"two"} == set(ENGLISH["fault"])
    assert families | {"two"} == set(ENGLISH["fault_short"])
    assert codes_in("calc/verdicts.py", call="Verdict") <= set(ENGLISH["meter_verdict"])
    assert set(COMPLAINTS) == set(ENGLISH["complaint"]) == set(get_args(Complaint))
    for one in COMPLAINTS.values():
        assert set(one.families) <= set(FAMILY_WEIGHTS)
        assert set(one.others) <= set(ENGLISH["complaint_other"])
        assert one.test in ENGLISH["complaint_test"]


def test_every_note_assumption_and_blind_spot_has_words() -> None:
    told = set(ENGLISH["meter_note"])
    text = "".join(
        (ROOT / "pycore" / "calc" / name).read_text(encoding="utf-8")
        for name in ("reading.py", "evidence.py", "amperes.py")
    )
    named = set(
        re.findall(r'"((?:reads|tolerance|other|no_near|amps|ohms|controls)_[a-z_]+)"', text)
    )
    assert named - {"controls_as_set"} <= told
    fills = (ROOT / "pycore" / "calc" / "fill.py").read_text(encoding="utf-8")
    assumed = set(re.findall(r'"((?:taps|lengths|cables|existing|range)_[a-z_]+)"', fills))
    assert assumed
    assert assumed <= set(ENGLISH["meter_assumed"])
    unseen = (ROOT / "pycore" / "calc" / "unseen.py").read_text(encoding="utf-8")
    assert set(re.findall(r'"([a-z]+_[a-z_]+)"', unseen)) - {"earth_ohm"} <= set(
        ENGLISH["meter_blind"]
    ) | {"wrong_row"}


def test_no_sentence_ever_calls_a_line_safe_to_connect() -> None:
    for table, words in ENGLISH.items():
        for code, text in words.items():
            assert "safe to connect" not in text.lower(), (table, code)


@pytest.mark.parametrize(
    ("typed", "code", "note"),
    [
        ("0", "do_not_connect_short", "Zero"),
        ("-0.1", "do_not_connect_short", "Below zero"),
        ("OL", "reads_open_line", "open line"),
        ("open", "reads_open_line", "open line"),
        ("2 MΩ", "reads_open_line", ""),
        ("101,5", "as_expected", ""),
        ("101.5", "as_expected", ""),
        ("120", "look_closer", ""),
        ("201", "not_as_expected", ""),
    ],
)
def test_a_reading_is_sorted_before_anything_is_divided(typed: str, code: str, note: str) -> None:
    [judged] = said_of(typed)["expected"]
    assert judged["code"] == code
    assert any(note in said for said in judged["notes"]) or not note


def test_a_number_may_come_as_a_number() -> None:
    for value in (-1.0, 0.0, 1e12, 101.5):
        assert said_of(value)["expected"][0]["code"]


def test_no_more_than_the_leads_is_a_short() -> None:
    answer = ask(
        "diagnose", job=plain(line_a()), where={"zone": "zone"}, leads_ohm=0.4,
        readings=[reading("0.4")],
    )  # fmt: skip
    [judged] = answer["expected"]
    assert judged["code"] == "do_not_connect_short"
    assert "leads" in judged["notes"][0]


def test_a_tolerance_of_nothing_is_half_a_per_cent_and_of_everything_infers_nothing() -> None:
    [exact] = said_of("101.5", tolerance_pct=0.0)["expected"]
    assert exact["notes"] == ["No reading is better than 0.5 %; that is taken."]
    answer = said_of("201", tolerance_pct=100.0)
    assert answer["expected"][0]["verdict"] == "unknown"
    assert answer["groups"][0]["suspects"][0]["fault"] == "healthy"
    assert said_of("201", tolerance_pct=300.0)["headline"] != "Found"


@pytest.mark.parametrize("typed", ["", "abc", "1e400", "NaN"])
def test_what_is_no_reading_is_a_problem_at_its_field(typed: str) -> None:
    answer = ask("diagnose", job=plain(line_a()), where={"zone": "zone"}, readings=[reading(typed)])
    assert answer["problem"]["where"] == {"field": "readings.0.value"}
    assert answer["problem"]["remedy"]


def test_below_the_least_load_it_says_flatly_do_not_connect() -> None:
    answer = said_of("60", output={"max_w": 60.0})  # 83.3 Ω at 70.7 V
    assert answer["headline"] == "Do not connect"
    assert answer["verdict"] == "over"
    assert answer["expected"][0]["code"] == "do_not_connect"
    printed = said_of("60", output={"min_load_ohm": 70.0})
    assert printed["expected"][0]["code"] == "do_not_connect"


def test_inside_the_tolerance_of_the_least_load_it_stays_off() -> None:
    answer = said_of("100", output={"min_load_ohm": 98.0})
    [judged] = answer["expected"]
    assert judged["code"] == "at_the_limit"
    assert judged["remedy"] == (
        "Null the leads, lift the other zones, measure again; leave it off."
    )


def test_in_order_it_is_as_expected_and_never_more() -> None:
    answer = said_of("101.5")
    assert (answer["headline"], answer["verdict"]) == ("As expected", "ok")
    assert any("voltage row" in one for one in answer["cannot_see"])
    assert any("Polarity" in one for one in answer["cannot_see"])
    assert any("earthed leg" in one for one in answer["cannot_see"])


def test_nobody_is_sent_up_a_ladder_for_a_line_that_is_as_expected() -> None:
    answer = said_of("101.5")
    assert answer["headline"] == "As expected"
    assert answer["next"] is None or set(answer["next"]["where"]) & {"zone", "output"}
    assert answer["next"] is not None or answer["next_reason"].startswith("Nothing more to measure")
    job = plain(line_a())
    complained = ask("diagnose", job=job, where={"zone": "zone"}, readings=[reading("101.5")],
                     complaint="one_quiet")  # fmt: skip
    assert complained["next"] is not None


def test_a_home_run_that_reads_well_is_read_again_through_its_fuse_and_plug() -> None:
    job = plain(line_a())
    costs = {"listen": None, "earth": None, "tone": None}
    told = ask("diagnose", job=job, where={"zone": "zone"}, readings=[reading("101.5")],
               complaint="zone_silent", costs=costs)  # fmt: skip
    assert told["next"]["where"] == {"output": "out"}
    assert "fuses, relays and plugs in their places" in told["next"]["words"]


def test_a_reading_that_says_nothing_is_told_with_the_reason() -> None:
    told = ask("diagnose", job=plain(branched()), where={"zone": "zone"},
               readings=[reading("6", quantity="dc_ohm")])  # fmt: skip
    assert told["headline"] == "Nothing to go by yet"
    assert told["reason"].startswith("Controls hide the line from an ohmmeter")


def test_a_section_from_the_amplifier_is_called_so() -> None:
    told = said_of("0.5")
    first = told["groups"][0]["suspects"][0]
    assert first["words"] == "The pair is shorted between the amplifier and S1."
    assert "beyond" not in first["distance"]["words"]


def test_with_controls_as_set_no_line_is_judged() -> None:
    job = plain(branched())
    told = ask("expected", job=job, where={"zone": "zone"}, controls="set")
    as_set = next(
        one for one in told["heads"] if one["controls"] == "set" and "zone" in one["where"]
    )
    answer = ask(
        "diagnose", job=job, where={"zone": "zone"},
        readings=[reading(as_set["band"]["value"], controls="set")],
    )  # fmt: skip
    assert answer["expected"][0]["code"] == "agrees_as_set"
    assert answer["headline"] != "As expected"


def test_odds_are_words_until_the_line_has_a_baseline() -> None:
    answer = said_of("201")
    assert not any("%" in group["rank"] for group in answer["groups"])
    assert "ranking" in answer["odds"]
    job = plain(line_a())
    kept = {**reading(101.5), "id": "b1", "at": "2025-01-01", "looking": "out", "lifted": [],
            "controls": "open", "tolerance_pct": 5.0, "baseline": True}  # fmt: skip
    job["readings"] = [kept]
    answer = ask("diagnose", job=job, where={"zone": "zone"}, readings=[reading("201")])
    assert all("%" in group["rank"] for group in answer["groups"])
    assert "against_baseline" not in json.dumps(answer)
    assert "Judged against this line's own baseline." in answer["expected"][0]["notes"]


def test_a_bare_count_is_enough_to_begin() -> None:
    answer = ask(
        "diagnose",
        about={"count": "10", "tap_w": "5 W", "line_v": "70.7"},
        readings=[reading("201", where={"zone": "about-zone"})],
    )
    assert answer["groups"][0]["suspects"][0]["fault"] == "cut"
    assert answer["groups"][0]["suspects"][0]["where"] in (
        {"point": f"about-{n}"} for n in (5, 6, 7)
    )
    assert any("guess" in one for one in answer["assumptions"])
    assert any("3 to 30 m" in one for one in answer["assumptions"])
    assert answer["job"]["zones"][0]["line"][9]["fitted"]["label"] == "Loudspeaker 10"


def test_a_place_that_is_not_there_is_a_problem_with_a_remedy() -> None:
    for where in ({"zone": "nowhere"}, {"output": "nowhere"}, {"point": "nowhere"}, {}):
        answer = ask("diagnose", job=plain(line_a()), where=where)
        assert answer["problem"]["words"]
    lost = line_a()
    zone = lost.zones[0].model_copy(update={"output": None})
    answer = ask("diagnose", job=plain(lost.model_copy(update={"zones": (zone,)})),
                 where={"zone": "zone"})  # fmt: skip
    assert answer["problem"]["code"] == "meter_not_landed"
    assert answer["problem"]["remedy"]


def test_an_empty_zone_and_a_zone_of_one_are_told_too() -> None:
    empty = line_a()
    zone = empty.zones[0].model_copy(update={"line": ()})
    job = plain(empty.model_copy(update={"zones": (zone,)}))
    told = ask("expected", job=job, where={"zone": "zone"})
    assert told["heads"][0]["band"]["shown"] == "open"
    answer = ask("diagnose", job=job, where={"zone": "zone"}, readings=[reading("OL")])
    assert answer["expected"][0]["code"] == "open_as_expected"
    one = ask("diagnose", about={"count": "1", "tap_w": "5", "line_v": "100"})
    assert one["groups"]


def test_a_count_or_tap_that_cannot_be_is_a_problem_at_its_field() -> None:
    for field, text in (("count", "0"), ("count", "1000"), ("tap_w", ""), ("line_v", "-5")):
        about = {"count": "10", "tap_w": "5", "line_v": "70.7", field: text}
        answer = ask("diagnose", about=about)
        assert answer["problem"]["where"] == {"field": f"about.{field}"}


def test_expected_tells_the_amplifier_end_in_every_state_and_every_box() -> None:
    told = ask("expected", job=plain(branched()), where={"zone": "zone"})
    assert {one["controls"] for one in told["heads"]} == {"open", "set", "override"}
    assert {one["quantity"] for one in told["heads"]} == {"z_1k_ohm", "dc_ohm"}
    assert [one["point"] for one in told["boxes"]] == ["s1", "s2", "c", "s3", "s4", "s5", "s6"]
    assert "Lock the amplifier off" in told["cautions"][0]
    assert "fire panel" in told["cautions"][1]


def test_a_line_planned_below_the_least_load_is_told_before_anything_is_measured() -> None:
    job = plain(line_a(output={"max_w": 30.0}))
    told = ask("expected", job=job, where={"zone": "zone"})
    head = told["heads"][0]
    assert head["verdict"] == "over"
    assert head["words"].startswith("Do not connect")


def test_the_table_of_complaints_names_suspects_and_the_deciding_test() -> None:
    told = ask("complaint")["complaints"]
    assert len(told) == len(COMPLAINTS)
    assert all(one["words"] and one["test"] for one in told)
    assert all(one["suspects"] for one in told if one["code"] != "something_wrong")
    [hum] = ask("complaint", complaint="hum_with_rain")["complaints"]
    assert hum["suspects"][0] == "leg to earth"


def test_a_short_on_a_cable_nobody_has_drawn_is_placed_in_metres() -> None:
    cable = {"id": "c", "name": "c", "loop_ohm_per_km": 26.875, "metal": "copper"}
    ends = {"near_ohm": "1.45", "far_ohm": "2.05", "route_m": "120", "conductor_c": "20"}
    both = ask("distance", **ends, cable=cable)
    assert both["metres"] == pytest.approx(48.837, abs=5e-4)
    assert both["own_ohm"] == pytest.approx(0.1375, abs=5e-5)
    assert both["low"] < both["metres"] < both["high"]
    one = ask("distance", near_ohm="3.6", quantity="dc_ohm", conductor_c="50", cable=cable)
    assert one["metres"] == pytest.approx(120.0, abs=0.3)  # 20 K of heat would be 7.9 % too far
    leads = ask("distance", near_ohm="0.3", leads_ohm="0.3", cable=cable)
    assert leads["problem"]["code"] == "reading_is_leads"
    assert ask("distance", near_ohm="1", far_ohm="1", cable=cable)["problem"]["remedy"]

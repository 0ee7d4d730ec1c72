"""What is asked for next, what it would cost, and searches that take more than one reading."""

from typing import Any

import pytest

from tests.meter.asked import ask, plain, reading, said_of
from tests.meter.lines import line_a


def test_contradictory_readings_are_named_as_a_pair() -> None:
    pair = [reading("101.5"), {**reading("500"), "id": "r2"}]
    answer = ask("diagnose", job=plain(line_a()), where={"zone": "zone"}, readings=pair)
    alone = ask("diagnose", job=plain(line_a()), where={"zone": "zone"}, readings=pair[1:])
    assert (answer["headline"], answer["reason"]) == (alone["headline"], alone["reason"])
    assert answer["contradictions"][0]["readings"] == ["r1", "r2"]


def test_the_next_reading_names_place_looking_and_what_each_outcome_means() -> None:
    following = said_of("201")["next"]
    assert following["words"].startswith("At S")
    assert following["cautions"][0].startswith("Lock the amplifier off")
    assert len(following["outcomes"]) >= 2
    assert sum(one["share"] for one in following["outcomes"]) == pytest.approx(1.0, abs=0.01)
    assert all(one["suspects"] for one in following["outcomes"])


DEAF = {"listen": None, "tone": None, "earth": None}


def test_costs_of_access_move_the_next_reading() -> None:
    job = plain(line_a())
    body = {"job": job, "where": {"zone": "zone"}, "readings": [reading("115")],
            "complaint": "one_quiet"}  # fmt: skip
    dear = ask("diagnose", **body, costs={**DEAF, "box": 900.0})
    assert set(dear["next"]["where"]) & {"zone", "output"}
    cheap = ask("diagnose", **body, costs={**DEAF, "box": 0.5})
    assert set(cheap["next"]["where"]) == {"point"}


BROKEN = {
    "where": {"zone": "zone"}, "readings": [reading("201")], "complaint": "silent_beyond",
}  # fmt: skip
NOWHERE = {"box": "never", "control": "never", "probe": "never", "open_another": "never"}


def test_what_cannot_be_done_here_is_said_in_a_word_and_not_asked_for() -> None:
    job = plain(line_a())
    deaf = {"listen": "never", "tone": "never", "earth": "never"}
    assert ask("diagnose", job=job, **BROKEN)["next"]["quantity"] == "plays"
    box = ask("diagnose", job=job, **BROKEN, costs=deaf)["next"]
    assert box["quantity"] == "z_1k_ohm"
    assert set(box["where"]) == {"point"}
    told = ask("diagnose", job=job, **BROKEN, costs={**deaf, **NOWHERE})
    assert told["next"] is None or set(told["next"]["where"]) & {"zone", "output"}
    assert sum(one["share"] for one in told["groups"]) == pytest.approx(1.0, abs=0.2)


def test_a_word_is_so_many_times_the_usual_cost() -> None:
    job = plain(line_a())
    easy, usual, hard, harder = (
        ask("diagnose", job=job, **BROKEN, costs={**DEAF, "box": cost})["next"]
        for cost in ("easy", "usual", "hard", 40.0)
    )
    assert hard["cost"] == 4 * usual["cost"] == 16 * easy["cost"]
    assert set(hard["where"]) == {"point"}
    assert set(harder["where"]) & {"zone", "output"}  # once more there, before so hard a climb
    answer = ask("diagnose", job=job, **BROKEN, costs={"box": "sometimes"})
    assert answer["problem"]["remedy"]


def test_a_long_diagnosis_goes_on_where_it_stopped() -> None:
    # no single fault of this line makes these three readings
    readings = [
        reading("500.7", tolerance_pct=3.0),
        {**reading("250", tolerance_pct=3.0), "id": "r2", "where": {"point": "s10"},
         "looking": "back"},
        {**reading("10000", tolerance_pct=3.0), "id": "r3", "where": {"point": "s5"}},
    ]  # fmt: skip
    body: dict[str, Any] = {"job": plain(line_a()), "where": {"zone": "zone"}, "readings": readings}
    at_once = ask("diagnose", **body, budget=5_000_000)
    assert at_once["done"]
    answer = ask("diagnose", **body, budget=1)
    rounds = 1
    while not answer["done"]:
        assert 0 < answer["share"] < 1
        answer = ask("diagnose", **body, budget=1, resume=answer["resume"])
        rounds += 1
    assert rounds > 2
    assert answer["groups"] == at_once["groups"]


def test_two_faults_are_named_where_one_does_not_explain() -> None:
    readings = [
        reading("1000", tolerance_pct=2.0),
        {**reading("667", tolerance_pct=2.0), "id": "r2", "where": {"point": "s10"},
         "looking": "back"},
        {**reading("180", tolerance_pct=2.0), "id": "r3", "where": {"point": "s5"}},
    ]  # fmt: skip
    answer = ask(
        "diagnose", job=plain(line_a()), where={"zone": "zone"}, readings=readings,
        load_tolerance_pct=2.0, budget=5_000_000,
    )  # fmt: skip
    assert any(one["fault"] == "two" and one["share"] > 0.1 for one in answer["families"])
    pair = next(one for group in answer["groups"] for one in group["suspects"] if "also" in one)
    assert pair["words"].startswith("Two faults.")


def test_what_is_left_is_named_in_the_sentence_that_sends_one_there() -> None:
    told = said_of("0.5")
    assert told["settled"]
    words = told["groups"][0]["suspects"][0]["words"]
    assert words == "The pair is shorted between the amplifier and S1."
    assert told["next_reason"] == f"This is left. {words} Go and look there."


def test_that_a_line_is_dead_is_said_as_such_and_not_by_a_footnote() -> None:
    volts = reading("0.3", quantity="foreign_v")
    told = ask("diagnose", job=plain(line_a()), where={"zone": "zone"}, readings=[volts])
    assert told["headline"] == "Nothing to go by yet"
    assert told["reason"] == told["expected"][0]["words"]
    assert "common practice" not in told["reason"]

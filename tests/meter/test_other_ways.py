"""The next thing to do may be to listen, to read volts or legs to earth: only where it can be."""

from typing import Any

import pytest

from pycore.calc.belief import Holding
from pycore.calc.diagnosis import Diagnosis, faults_of
from pycore.calc.faults import Fault
from pycore.calc.hearing import Ears
from pycore.calc.listening import Room, listened
from pycore.calc.priors import COSTS
from pycore.calc.reading import Taken
from tests.meter.asked import ask, plain, reading
from tests.meter.at import site_at
from tests.meter.lines import line_a
from tests.meter.taken import first_of, heard, share_of, taken, told_by
from tests.meter.test_tables import BREAKS_A

NOT_BY_EAR = COSTS._replace(listen=None)
ONLY_TONE = COSTS._replace(listen=None, earth=None)


def next_of(told: Diagnosis) -> tuple[str, str]:
    """What is asked for next, and where."""
    assert told.next is not None
    return told.next.test.quantity, told.next.test.place


def broken_after_5(**more: Any) -> Diagnosis:
    """Line A reads 201.1 Ω: broken behind its fifth loudspeaker, or thereabouts."""
    return told_by(line_a(), [taken("zone", 201.1, tolerance_pct=5.0)], **more)


def test_one_look_around_comes_before_a_ladder_where_it_tells_as_much() -> None:
    told = broken_after_5(complaint="silent_beyond")
    assert next_of(told) == ("plays", "zone")
    best = told.next.outcomes[0] if told.next else None
    assert best is not None
    assert best.kind is not None
    wired = told.site.circuits.wired
    assert wired.ids[best.kind.node] == "s6"  # type: ignore[union-attr]


@pytest.mark.parametrize("after", [5, 7, 9])
def test_what_is_heard_then_finds_the_break(after: int) -> None:
    readings = [taken("zone", BREAKS_A[after - 1], tolerance_pct=10.0)]
    told = told_by(line_a(), readings, complaint="silent_beyond")
    assert next_of(told) == ("plays", "zone")
    readings += [heard(f"s{one}", "well" if one <= after else "silent") for one in range(1, 11)]
    told = told_by(line_a(), readings, complaint="silent_beyond")
    assert first_of(told) in (("cut", f"s{after + 1}"), ("dead", "s10"))
    assert told.next is None or told.next.test.quantity != "plays"


@pytest.mark.parametrize("complaint", [None, "protect_at_once", "protect_on_bass"])
def test_nothing_is_played_on_a_line_nobody_has_in_use_or_that_trips_its_amplifier(
    complaint: str | None,
) -> None:
    told = broken_after_5(complaint=complaint)
    assert next_of(told)[0] not in ("plays", "volts")


def test_nothing_is_played_on_what_may_be_short_or_is_below_the_least_load() -> None:
    short = told_by(line_a(), [taken("zone", 1.9)], complaint="silent_beyond")
    assert share_of(short, "short") > 0.2
    assert next_of(short)[0] not in ("plays", "volts")
    small = line_a(output={"min_load_ohm": 250.0})
    told = told_by(small, [taken("zone", 201.1)], complaint="silent_beyond")
    assert next_of(told)[0] not in ("plays", "volts")


def test_what_cannot_be_done_is_not_asked_for() -> None:
    assert next_of(broken_after_5(complaint="silent_beyond", costs=NOT_BY_EAR))[0] != "plays"
    dear = COSTS._replace(listen=500.0)
    assert next_of(broken_after_5(complaint="silent_beyond", costs=dear))[0] != "plays"


def test_a_zone_that_has_been_heard_whole_is_not_listened_to_again() -> None:
    told = told_by(
        line_a(), [taken("zone", 201.1), heard("zone", "well")], complaint="something_wrong"
    )
    assert told.next is None or next_of(told)[0] != "plays"


def test_what_is_said_of_one_loudspeaker_goes_before_what_is_said_of_its_zone() -> None:
    both = told_by(line_a(), [heard("zone", "well"), heard("s4", "silent")])
    each = [heard(f"s{one}", "silent" if one == 4 else "well") for one in range(1, 11)]
    assert both.suspects[0].share == pytest.approx(told_by(line_a(), each).suspects[0].share)
    assert first_of(both) == ("dead", "s4")


def test_patterns_that_sound_alike_are_one_and_clear_ones_are_seldom_mixed_up() -> None:
    site = site_at(line_a())
    wired = site.circuits.wired
    end, middle = wired.node_of["s10"], wired.node_of["s5"]
    cut = [one for one in faults_named(site, "cut") if one.node in (end, middle)]
    dead = [one for one in faults_named(site, "dead") if one.node == end]
    held = [Holding(one, 1 / 3, number, 0.0, 0.0) for number, one in enumerate([*cut, *dead])]
    guesses, patterns = listened(held, Room(Ears(site, []), wired.starts[0]))
    assert len(patterns) == 2  # the last one dead or cut off sounds the same
    own = [one.share for one in guesses if one.suspect == 0]
    assert max(own) > 0.99 / 3


def faults_named(site: Any, family: str) -> list[Fault]:
    """The faults of one kind."""

    return [one for one in faults_of(site) if one.family == family]


def test_volts_are_read_near_first_and_then_at_the_box_that_was_named() -> None:
    job = line_a()
    readings: list[Taken] = [taken("zone", 118.0, tolerance_pct=2.0)]
    more = {"complaint": "weak_beyond", "costs": ONLY_TONE, "load_pct": 2.0}
    told = told_by(job, readings, **more)
    assert next_of(told) == ("volts", "zone")
    then = told.next.then if told.next else ""
    assert then.startswith("s")
    readings.append(taken("zone", 20.0, quantity="volts", tolerance_pct=2.0))
    told = told_by(job, readings, **more)
    assert next_of(told)[0] == "volts"
    assert next_of(told)[1].startswith("s")


def test_hum_with_rain_is_looked_for_at_the_legs_and_then_by_parts() -> None:
    more = {"complaint": "hum_with_rain", "costs": NOT_BY_EAR}
    readings = [taken("zone", 101.5, tolerance_pct=2.0)]
    told = told_by(line_a(), readings, **more)
    assert next_of(told) == ("earth_ohm", "zone")
    readings.append(taken("zone", 5000.0, quantity="earth_ohm"))
    told = told_by(line_a(), readings, **more)
    assert share_of(told, "earthed") > 0.5
    assert next_of(told)[0] == "earth_ohm"
    assert next_of(told)[1].startswith("s")


def test_through_the_door_each_way_has_words_cautions_and_outcomes() -> None:
    body = {"job": plain(line_a()), "where": {"zone": "zone"}}
    listen = ask("diagnose", **body, readings=[reading(200.0)], complaint="silent_beyond")["next"]
    assert listen["quantity"] == "plays"
    assert listen["outcomes"][0]["shown"] == ("S6 and all beyond it: silent; the rest: in order")
    assert any("protects" in one for one in listen["cautions"])
    earth = ask(
        "diagnose", **body, readings=[reading(101.5)], complaint="hum_with_rain",
        costs={"listen": None},
    )["next"]  # fmt: skip
    assert {one["shown"] for one in earth["outcomes"]} <= {
        "below 100 kΩ", "100 kΩ to 1 MΩ", "1 MΩ or more",
    }  # fmt: skip
    tone = {"costs": {"listen": None, "earth": None}}
    first = [{**reading(118.0), "tolerance_pct": 2.0}]
    near = ask("diagnose", **body, readings=first, complaint="weak_beyond",
               load_tolerance_pct=2.0, **tone)["next"]  # fmt: skip
    assert near["quantity"] == "volts"
    assert near["where"] == {"zone": "zone"}
    assert "%" in near["outcomes"][0]["shown"]
    first.append({**reading(20.0, quantity="volts"), "id": "r2", "tolerance_pct": 2.0})
    far = ask("diagnose", **body, readings=first, complaint="weak_beyond",
              load_tolerance_pct=2.0, **tone)["next"]  # fmt: skip
    assert far["quantity"] == "volts"
    assert " V" in far["outcomes"][0]["shown"]
    assert any("hurt" in one for one in far["cautions"])

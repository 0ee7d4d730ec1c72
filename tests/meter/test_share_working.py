"""How a share came to be: what is shown is what was weighed."""

import math
from collections.abc import Sequence
from typing import Any

import pytest

from pycore.asks.meter_tell import Tell
from pycore.asks.share_working import share_steps
from pycore.calc.diagnosis import Diagnosis
from pycore.calc.likelihood import log_likelihood
from pycore.calc.reading import Taken
from pycore.calc.weigh import unmeasured
from pycore.ground.units import Manner
from tests.meter.asked import ask, plain, reading
from tests.meter.lines import line_a
from tests.meter.taken import heard, taken, told_by


def body(value: str) -> dict[str, Any]:
    """One reading of line A at the amplifier's end."""
    return {
        "job": plain(line_a()),
        "where": {"zone": "zone"},
        "readings": [reading(value)],
    }


def test_the_reading_is_set_against_what_the_suspect_would_read() -> None:
    told = ask("share_working", **body("230"), group=0)
    # Line A broken behind S4 reads 250.96 ohm (independent ladder solver): 230 is 8.4 % below
    assert told["title"].startswith("The line is broken between S4 and S5")
    assert told["steps"][0]["put_in"] == "230 Ω / 251 Ω − 1"
    assert told["steps"][0]["result"].startswith("−8.3")


@pytest.mark.parametrize("group", [0, 1, 2])
def test_the_last_step_is_the_share_of_the_group(group: int) -> None:
    groups = ask("diagnose", **body("230"))["groups"]
    told = ask("share_working", **body("230"), group=group)
    shown = told["steps"][-1]["result"].replace("\u00a0", " ").removesuffix(" %")
    assert float(shown) / 100 == pytest.approx(groups[group]["share"], rel=0.01)
    assert told["result"] == groups[group]["rank"]


def test_it_says_that_odds_rest_on_common_practice() -> None:
    told = ask("share_working", **body("230"), group=0)
    assert "common practice" in told["assumptions"][0]


def test_a_group_that_is_gone_is_said_so() -> None:
    assert ask("share_working", **body("230"), group=99)["problem"]["code"] == "share_gone"


# No single fault of line A makes these.
TWO = [
    taken("zone", 1000.0, tolerance_pct=2.0),
    taken("s10", 667.0, looking="back", tolerance_pct=2.0),
    taken("s5", 180.0, tolerance_pct=2.0),
]
CASES: list[tuple[Sequence[Taken], str | None]] = [
    ([], None),
    ([taken("zone", 230.0)], None),
    ([taken("zone", 230.0), taken("s10", 140.0, looking="back")], "silent_beyond"),
    ([taken("zone", 113.0), heard("s4", "silent"), heard("s5", "well")], "one_quiet"),
    ([taken("zone", 101.0), taken("zone", 5e3, quantity="earth_ohm")], "hum_with_rain"),
    (TWO, None),
]


def steps_of(told: Diagnosis, place: int) -> dict[str, float]:
    """The result of each step of a group's share, the last of a code."""
    tell = Tell(
        told.site.circuits.wired, Manner(language="en", length="m", decimal=".", today="2026-11-25")
    )
    return {one.code: one.result for one in share_steps(told, place, tell=tell)}


@pytest.mark.parametrize(("readings", "complaint"), CASES)
def test_the_steps_come_out_at_the_share_of_every_group_exactly(
    readings: Sequence[Taken], complaint: str | None
) -> None:
    told = told_by(line_a(), readings, complaint=complaint, load_pct=2.0)
    for place, group in enumerate(told.groups[:12]):
        assert steps_of(told, place)["cause_share"] == pytest.approx(group.share, rel=1e-9)


@pytest.mark.parametrize(("readings", "complaint"), CASES)
def test_what_was_weighed_is_the_prior_times_how_the_readings_fit(
    readings: Sequence[Taken], complaint: str | None
) -> None:
    told = told_by(line_a(), readings, complaint=complaint, load_pct=2.0)
    weighed, proof = told.weighed, told.proof
    alone = [fault._replace(also=None) for fault in weighed.faults]
    others = [fault.also or weighed.faults[0] for fault in weighed.faults]
    ears = unmeasured(alone, proof), unmeasured(others, proof)
    nothing = unmeasured(weighed.faults[:1], proof)[0]
    for number, log in enumerate(weighed.logs):
        fit = log_likelihood(weighed.rows[number], proof.shared) if readings else 0.0
        fit += ears[0][number] + ears[1][number] - nothing
        assert log - fit == pytest.approx(weighed.priors[number], abs=1e-6)


def test_two_faults_open_with_the_prior_of_both_as_it_was_weighed() -> None:
    told = told_by(line_a(), TWO, load_pct=2.0)
    best = max(range(len(told.weighed.faults)), key=lambda each: told.weighed.logs[each])
    pair = told.weighed.faults[best]
    assert pair.also is not None
    singles = [each for each, one in enumerate(told.weighed.faults) if one.also is None]
    whole = math.fsum(math.exp(told.weighed.priors[each]) for each in singles)
    by_fault = {told.weighed.faults[each]: told.weighed.priors[each] for each in singles}
    each = [math.exp(by_fault[one]) / whole for one in (pair._replace(also=None), pair.also)]
    steps = steps_of(told, 0)
    # one in five as likely as by itself: a second, independent fault (common practice, no source)
    assert steps["pair_prior"] == pytest.approx(each[0] * each[1] * 0.2, rel=1e-9)
    assert steps["pair_prior"] * whole == pytest.approx(math.exp(told.weighed.priors[best]))


def readings_of(two: Sequence[Taken]) -> list[dict[str, Any]]:
    """The same readings as they cross the door."""
    return [
        {**reading(one.value, tolerance_pct=2.0), "id": f"r{place}", "looking": one.looking,
         "where": {"zone" if one.place == "zone" else "point": one.place}}
        for place, one in enumerate(two)
    ]  # fmt: skip


def test_what_is_explained_is_what_the_search_had_found_when_it_was_shown() -> None:
    asked = {
        "job": plain(line_a()), "where": {"zone": "zone"}, "readings": readings_of(TWO),
        "load_tolerance_pct": 2.0,
    }  # fmt: skip
    part = ask("diagnose", **asked, budget=1)
    assert not part["done"]
    whole = ask("diagnose", **asked, budget=5_000_000)
    for told in (part, whole):
        for group in (0, 1):
            working = ask("share_working", **asked, group=group, resume=told["searched"])
            shown = working["steps"][-1]["result"].replace("\u00a0", " ").removesuffix(" %")
            share = told["groups"][group]["share"]
            assert float(shown) / 100 == pytest.approx(share, rel=0.01)
            assert working["title"] == told["groups"][group]["suspects"][0]["words"]


@pytest.mark.parametrize(
    "pair", [[99999, 0, 5.0], [-1, -2, 5.0], [3, 3, 5.0], [5, 6, 1e308], [5, 6, -1e308]]
)
def test_a_search_that_is_handed_back_wrong_breaks_nothing(pair: list[float]) -> None:
    asked = {
        "job": plain(line_a()), "where": {"zone": "zone"}, "readings": readings_of(TWO),
        "load_tolerance_pct": 2.0, "resume": {"next_first": 1000, "firsts": 16, "kept": [pair]},
    }  # fmt: skip
    told = ask("diagnose", **asked)
    assert math.fsum(one["share"] for one in told["groups"]) <= 1 + 1e-9
    assert ask("share_working", **asked, group=0)["steps"]

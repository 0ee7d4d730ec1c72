"""How a share came to be: what is shown is what was weighed."""

from typing import Any

import pytest

from tests.meter.lines import line_a
from tests.meter.test_asks import ask, plain, reading


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

"""What a tap or another kind would do, told before it is taken, and what comes of taking it."""

import json
import math
from typing import Any

import pytest

from pycore.asks.preview import Option, preview
from pycore.asks.requests import PreviewBody
from pycore.asks.swaps import SwapsBody, swaps
from pycore.calc.check import check_job
from pycore.edit import apply, read_command
from pycore.ground.units import Manner, show
from pycore.jobs import Job
from tests.drawn import as_read
from tests.samples.halls import attenuator, job_of, row_of
from tests.samples.lines import speaker

MANNER = Manner("en", "m", ".", "2026-11-25")
# 10·log10 of 2, of 0.4 (decibel, by its definition)
DOUBLE_DB, TWO_FIFTHS_DB = "+3.01 dB", "−3.98 dB"
KINDS: list[dict[str, Any]] = [
    {"id": "near", "name": "Near", "taps": [{"w": 5.0, "at_v": 70.7}], "sensitivity_db": 90.0},
    {
        "id": "loud",
        "name": "Loud",
        "taps": [{"w": w, "at_v": 70.7} for w in (0.5, 2.0, 5.0)],
        "sensitivity_db": 94.0,
    },
    {"id": "mute", "name": "Says nothing", "taps": [{"w": 6.0, "at_v": 70.7}]},
    {"id": "other", "name": "Other line", "taps": [{"w": 6.0, "at_v": 100.0}]},
]


def hall(**more: Any) -> Job:
    """A control of 30 W, and behind it four loudspeakers of 5 W, ten metres apart."""
    control = attenuator(None, rated_w=30.0, rated_at_v=70.7)
    points = [speaker(n, length_m=more.get("length_m", 10.0), tap_w=5.0) for n in range(4)]
    points[0]["after"] = "v"
    return job_of([control, *points])


def would(job: Job, *taps_w: float, point: str = "p1") -> list[Option]:
    """What each tap would do at a loudspeaker."""
    commands: tuple[dict[str, Any], ...] = tuple(
        {"do": "set_tap", "point": point, "tap_w": tap_w, "tap_at_v": 70.7} for tap_w in taps_w
    )
    return preview(PreviewBody(job=job, commands=commands), MANNER)["options"]


def told(option: Option) -> dict[str, str]:
    """Its effects by what they are of."""
    return {effect["what"]: as_read(effect["shown"]) for effect in option["effects"]}


def test_a_tap_tells_what_it_does_to_all_it_bears_on() -> None:
    (option,) = would(hall(), 10.0)
    effects = told(option)
    assert list(effects) == ["this", "zone", "output", "control", "far"]
    assert effects["zone"] == "25 W"
    assert effects["output"] == "5 %"  # 25 W of 500 W
    assert effects["control"] == "83.3 %"  # 25 W of 30 W
    assert option["verdict"] == "near"


def test_double_the_watts_are_three_decibels_more_and_a_little_cable_less() -> None:
    job = hall(length_m=0.0)
    more, less = would(job, 10.0, 2.0)
    assert told(more)["this"] == DOUBLE_DB
    assert told(less)["this"] == TWO_FIFTHS_DB


def test_without_lengths_the_change_is_by_taps_alone_and_the_far_end_is_left_out() -> None:
    (option,) = would(hall(length_m=None), 10.0)
    assert told(option)["this"] == DOUBLE_DB
    assert "far" not in told(option)


def test_the_effects_are_what_is_found_once_the_tap_is_turned() -> None:
    job = hall()
    (option,) = would(job, 10.0)
    command = {"do": "set_tap", "point": "p1", "tap_w": 10.0, "tap_at_v": 70.7}
    after = check_job(apply(job, read_command(json.dumps(command))))
    loss = next(one for one in after.findings if one.what == "zone_loss_db")
    assert loss.value is not None
    assert told(option)["far"] == as_read(show(loss.value, "db", manner=MANNER))
    (load,) = (one for one in option["loads"] if one["what"] == "attenuator_load_w")
    assert as_read([load["shown_before"], load["shown_after"]]) == ["20 W", "25 W"]


def test_the_present_tap_keeps_its_limits_too_and_the_first_that_does_not_is_told() -> None:
    # 80 % of the 30 W of the control are 24 W: 15 W of the others and 9 W
    assert [option["keeps"] for option in would(hall(), 5.0, 9.0, 9.1)] == [True, True, False]


def test_a_command_that_does_not_fit_is_an_option_that_cannot_be() -> None:
    (option,) = would(hall(), 5.0, point="v")
    assert option["problem"] is not None
    assert option["problem"]["code"] == "field_not_here"
    assert (option["effects"], option["keeps"]) == ([], False)


def test_a_swap_is_tried_on_the_tap_that_sounds_most_like_what_hangs_there() -> None:
    job = with_kinds(job_of([speaker(0, length_m=0.0, tap_w=5.0)]), kind="near")
    options = {one["kind"]: one for one in swaps(SwapsBody(job=job, point="p0"), MANNER)["options"]}
    # 94 dB instead of 90 dB: 5 W · 10^(−0.4) is 1.99 W
    assert options["loud"]["command"]["tap_w"] == 2.0
    assert as_read(options["loud"]["line"]) == "2 W at 70.7 V"
    # 10·log10(2 / 5) + 94 − 90
    assert told(options["loud"]["option"])["this"] == "+0.021 dB"
    assert "this" not in told(options["mute"]["option"])
    assert "near" not in options
    assert "other" not in options


def test_the_kind_that_hangs_nearest_is_offered_first_and_called_a_neighbours() -> None:
    job = with_kinds(job_of([speaker(n, length_m=5.0, tap_w=5.0) for n in range(4)]), kind="near")
    raw = json.loads(job.model_dump_json(exclude_none=True, by_alias=True))
    for number, kind in enumerate(("loud", "near", "near", "mute")):
        raw["zones"][0]["line"][number]["fitted"]["kind"] = kind
    job = Job.model_validate_json(json.dumps(raw))
    wanted = {"p1": ["loud", "mute"], "p2": ["mute", "loud"], "p3": ["near", "loud"]}
    for point, kinds in wanted.items():
        options = swaps(SwapsBody(job=job, point=point), MANNER)["options"]
        assert [one["kind"] for one in options][:2] == kinds
        assert [one["kind"] for one in options if one["neighbour"]] == kinds[:1]


def with_kinds(job: Job, *, kind: str) -> Job:
    """The job with the kinds of this file, its first loudspeaker of one of them."""
    raw = json.loads(job.model_dump_json(exclude_none=True, by_alias=True))
    raw["kinds"]["loudspeakers"] = KINDS
    raw["zones"][0]["line"][0]["fitted"]["kind"] = kind
    return Job.model_validate_json(json.dumps(raw))


def test_taking_a_swap_does_what_it_said() -> None:
    job = with_kinds(job_of([speaker(0, length_m=0.0, tap_w=5.0)]), kind="near")
    options = swaps(SwapsBody(job=job, point="p0"), MANNER)["options"]
    horn = next(one for one in options if one["kind"] == "horn_30w")
    after = apply(job, read_command(json.dumps(horn["command"])))
    fitted = after.zones[0].line[0].fitted
    assert fitted.is_ == "loudspeaker"
    assert fitted.kind == "horn_30w"
    assert after.kinds.loudspeakers[-1].id == "horn_30w"
    load = next(one for one in check_job(after).findings if one.what == "output_load_w")
    assert fitted.tap_w == pytest.approx(load.value)


@pytest.mark.parametrize(("tap_means", "tap_w"), [("delivered", 5.0), ("drawn", 2.5), (None, 2.5)])
def test_a_swap_counts_what_a_transformer_loses_only_of_watts_that_are_drawn(
    tap_means: str | None, tap_w: float
) -> None:
    # 5 W delivered sound as 5 W without any loss; 5 W drawn, 3.01 dB of them lost, as half as many
    own: dict[str, Any] = {**KINDS[0], "tap_means": tap_means, "transformer_loss_db": 3.0103}
    other: dict[str, Any] = {**KINDS[1], "sensitivity_db": 90.0}
    other["taps"] = [{"w": w, "at_v": 70.7} for w in (1.0, 2.5, 5.0, 10.0)]
    raw = json.loads(job_of([speaker(0, length_m=0.0, tap_w=5.0)]).model_dump_json(by_alias=True))
    raw["kinds"]["loudspeakers"] = [own, other]
    raw["zones"][0]["line"][0]["fitted"]["kind"] = "near"
    job = Job.model_validate_json(json.dumps(raw))
    options = swaps(SwapsBody(job=job, point="p0"), MANNER)["options"]
    (loud,) = (one for one in options if one["kind"] == "loud")
    assert loud["command"]["tap_w"] == tap_w


def test_more_watts_are_as_much_less_loud_as_the_cable_takes_more() -> None:
    job = hall(length_m=400.0)
    (option,) = would(job, 10.0)
    command = {"do": "set_tap", "point": "p1", "tap_w": 10.0, "tap_at_v": 70.7}
    after = apply(job, read_command(json.dumps(command)))
    lost = [row_of(each, "p1")["loss_db"] for each in (job, after)]
    assert lost[1] - lost[0] > 0.1
    louder_db = 10 * math.log10(2) - (lost[1] - lost[0])
    assert told(option)["this"] == f"+{as_read(show(louder_db, 'db', manner=MANNER))}"

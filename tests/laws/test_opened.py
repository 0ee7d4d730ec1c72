"""Whatever number a list shows can be opened, and its working ends in the number that is shown."""

import json
from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from pycore.asks.explain import working
from pycore.asks.opened import open_finding
from pycore.asks.preview import preview
from pycore.asks.requests import PreviewBody, WorkingBody
from pycore.asks.see import see
from pycore.calc.check import check_job
from pycore.calc.judge import Limit, left_of
from pycore.calc.own_loads import own_loads
from pycore.calc.parts_of_limit import part_findings
from pycore.edit import apply, read_command
from pycore.ground.units import Manner
from pycore.jobs import Job
from tests.laws.test_workings import ends_of
from tests.strategies import jobs

POINT = Manner("en", "m", ".", "2026-11-25")


@given(jobs())
def test_every_figure_of_a_face_opens_and_shows_the_same(job: Job) -> None:
    for face in see(job, POINT)["faces"]["things"].values():
        for shown, finding in (
            (face["load"], face["finding"]),
            (face["share"], face["share_finding"]),
            (face["left"], face["left_finding"]),
        ):
            assert bool(shown) == bool(finding)
            if finding is not None:
                told = working(WorkingBody(job=job, finding=finding), POINT)
                assert told["steps"], finding
                assert told["result"] == shown or _finer(told["result"], shown)


@given(jobs())
def test_no_output_looks_free_that_shares_watts_which_are_not(job: Job) -> None:
    """Neither its mark nor what is left of it says more than its pool does."""
    seen = see(job, POINT)
    for amplifier in job.amplifiers:
        pools = amplifier.pools or ()
        for number, pool in enumerate(pools):
            which = number if len(pools) > 1 else None
            (shared,) = (
                one
                for one in check_job(job).limits
                if one.what == "pool_load_w" and one.state == "override"
                and one.where == {"amplifier": amplifier.id} and one.values["which"] == which
            )  # fmt: skip
            for output in pool.outputs:
                face = seen["faces"]["things"][output]
                if shared.verdict() in ("near", "over"):
                    assert face["verdict"] in ("near", "over", "unknown"), face
                left = next(
                    (
                        one["values"]["left_w"]
                        for one in seen["findings"]
                        if one["what"] == "output_load_w" and one["where"] == {"output": output}
                        and one["state"] == "override"
                    ),
                    None,
                )  # fmt: skip
                if isinstance(left, float) and shared.draw.high is not None:
                    assert left <= max(0.0, (shared.most_w or 0.0) - shared.draw.high) + 1e-9


def _finer(result: str, shown: str) -> bool:
    """A list tells a load just past its limit with all its figures; the working rounds it."""
    return float(result.split("\u00a0", maxsplit=1)[0]) == pytest.approx(
        float(shown.split("\u00a0", maxsplit=1)[0]), rel=0.01
    )


@given(jobs())
def test_a_share_and_what_is_left_end_in_the_last_step(job: Job) -> None:
    checked = check_job(job)
    for finding, limit in part_findings(checked):
        opened = open_finding(checked, finding.id)
        assert opened.finding == finding
        last = opened.story.steps[-1]
        assert last.result == pytest.approx(ends_of(finding)[-1], rel=1e-9, abs=1e-9)
        assert last.equation.unit == finding.unit
        if finding.unit == "w" and limit.draw.high is not None and finding.value:
            assert finding.value == pytest.approx(min(leaves_w(limit)))


def leaves_w(limit: Limit) -> list[float]:
    """What is left of a limit, and of the pool of an output or all outputs of a pool."""

    def alone_w(one: Limit) -> float:
        return max(0.0, (one.most_w or 0.0) - (one.draw.high or 0.0))

    if limit.shared is not None and limit.shared.most_w:
        return [alone_w(limit), alone_w(limit.shared)]
    if limit.feeds and all(one.most_w for one in limit.feeds):
        return [alone_w(limit), sum(alone_w(one) for one in limit.feeds)]
    return [alone_w(limit)]


@given(jobs())
def test_no_pool_looks_free_whose_outputs_are_not(job: Job) -> None:
    """What a list says is left of shared watts is never more than its outputs can still take."""
    for limit in check_job(job).limits:
        left = left_of(limit)
        if limit.what != "pool_load_w" or left is None:
            continue
        most_w = [one.most_w for one in limit.feeds]
        if most_w and all(most_w):
            draws = [one.draw.high if left.sure else one.draw.low for one in limit.feeds]
            each = zip(most_w, draws, strict=True)
            room_w = sum(max(0.0, (most or 0.0) - (draw or 0.0)) for most, draw in each)
            assert left.watts <= room_w + 1e-9


@given(jobs())
def test_the_loads_of_the_zones_add_up_to_those_of_their_output(job: Job) -> None:
    checked = check_job(job)
    full = {
        one.where["zone"]: one.draw for one in own_loads(checked.loads) if one.state == "override"
    }
    for limit in checked.limits:
        if limit.what == "output_load_w" and limit.state == "override":
            together = sum(full[zone].low for zone in limit.zones)
            assert together == pytest.approx(limit.draw.low, rel=1e-9, abs=1e-9)


@given(jobs())
def test_a_zone_has_no_limit_so_its_load_is_only_told(job: Job) -> None:
    for finding in check_job(job).findings:
        if finding.what == "zone_load_w":
            assert (finding.verdict, finding.limit) == ("note", None)


@given(jobs(), st.data())
def test_every_number_of_a_preview_opens_as_it_would_be(job: Job, data: st.DataObject) -> None:
    spots = [p.id for zone in job.zones for p in zone.line if p.fitted.is_ == "loudspeaker"]
    assume(spots)
    tap_w = data.draw(st.sampled_from((2.5, 7.5, 30.0)))
    command: dict[str, Any] = {
        "do": "set_tap",
        "point": data.draw(st.sampled_from(spots)),
        "tap_w": tap_w,
    }
    command["tap_at_v"] = data.draw(st.sampled_from((70.7, 100.0)))
    (option,) = preview(PreviewBody(job=job, commands=(command,)), POINT)["options"]
    assume(option["problem"] is None)
    after = check_job(apply(job, read_command(json.dumps(command))))
    for effect in option["effects"]:
        body = WorkingBody(job=job, finding=effect["finding"], commands=(command,))
        told = working(body, POINT)
        assert told["result"] == effect["shown"]
        opened = open_finding(after, effect["finding"], before=check_job(job).lines)
        last = opened.story.steps[-1]
        assert last.result == pytest.approx(ends_of(opened.finding)[-1], rel=1e-9, abs=1e-9)

"""A load as a share of its limit, and what is left of that: made when somebody opens one.

Both speak of the most the load can be; where there is no most, of the least it is.
"""

from collections.abc import Iterator
from typing import Literal

from pycore.calc.check import Checked
from pycore.calc.finding import Finding
from pycore.calc.judge import Limit, left_of
from pycore.calc.load_story import Bound, load_steps
from pycore.calc.said import most_of
from pycore.formulas import power
from pycore.ground.working import Known, Step, Working, computed, step

Part = Literal["share", "left_w"]
PARTS: dict[str, dict[Part, str]] = {
    "output_load_w": {"share": "output_load_share", "left_w": "output_load_left_w"},
    "pool_load_w": {"share": "pool_load_share", "left_w": "pool_load_left_w"},
    "attenuator_load_w": {"share": "attenuator_load_share", "left_w": "attenuator_load_left_w"},
}


def part_id(load: str, part: Part) -> str:
    """The id of a part of a load by the load's own: "output_load_w:o1:set" has a share."""
    what, _, rest = load.partition(":")
    return f"{PARTS[what][part]}:{rest}"


def part_findings(checked: Checked) -> Iterator[tuple[Finding, Limit]]:
    """The share and what is left of every load in watts that has a limit."""
    for limit in checked.limits:
        if limit.what in PARTS and limit.most_w:
            for part in PARTS[limit.what]:
                yield _part(limit, part, most_w=limit.most_w), limit


def _part(limit: Limit, part: Part, *, most_w: float) -> Finding:
    share = part == "share"
    value, low, high = _share_ends(limit, most_w) if share else _left_ends(limit)
    return Finding(
        code=f"load_{part}",
        what=PARTS[limit.what][part],
        where=limit.where,
        state=limit.state,
        unit="fraction" if share else "w",
        verdict=limit.verdict(),
        value=value,
        low=low,
        high=high,
        values={
            "which": limit.values.get("which"),
            "most_w": most_w,
            "fraction": limit.fraction if share else None,
        },
    )


Ends = tuple[float | None, float | None, float | None]


def _share_ends(limit: Limit, most_w: float) -> Ends:
    """The share a load takes: one number, else at most, or of a load without a most at least."""
    _, least_w, high_w = limit.draw
    if high_w is None:
        return None, power.share_of_watts(load_w=least_w, most_w=most_w), None
    share = power.share_of_watts(load_w=high_w, most_w=most_w)
    return (share, None, None) if least_w == high_w else (None, None, share)


def _left_ends(limit: Limit) -> Ends:
    """What is left: one number, else at least so much, or of a load without a most at most."""
    left = left_of(limit)
    if left is None:
        return None, None, None
    if not left.sure:
        return None, None, left.watts
    return (left.watts, None, None) if left.exact else (None, left.watts, None)


def part_working(checked: Checked, finding: Finding, *, limit: Limit) -> Working:
    """The load at its most, and the share it takes or what it leaves."""
    least = any(one.draw.high is None for one in (limit, *_beside(limit)))
    bound: Bound = "low" if least else "high"
    if finding.unit == "fraction" or not _beside(limit):
        return _part_steps(checked, finding, limit=limit, bound=bound)
    return _left_working(checked, finding, limit=limit, bound=bound)


def _beside(limit: Limit) -> tuple[Limit, ...]:
    """What else has a say in what is left: the pool of an output, or the outputs of a pool."""
    shared = limit.shared
    if shared is not None:
        return (shared,) if shared.most_w else ()
    return limit.feeds if all(one.most_w for one in limit.feeds) else ()


def _left_working(checked: Checked, finding: Finding, *, limit: Limit, bound: Bound) -> Working:
    """What is left of the limit and of what stands beside it, and the smaller of the two."""
    each = (limit, *_beside(limit))
    told = [_part_steps(checked, finding, limit=one, bound=bound) for one in each]
    own, *others = (one.steps[-1] for one in told)
    steps: list[Step] = []
    for working in told:  # the taps of an output are told with its pool
        steps.extend(one for one in working.steps if one not in steps)
    assumptions = tuple(dict.fromkeys(one for working in told for one in working.assumptions))
    if limit.shared is not None:
        inputs = {"own_w": computed(own), "shared_w": computed(others[0])}
        last = step("left_of_both", power.left_of_both_w, inputs=inputs)
        return Working((*steps, last), assumptions)
    each_w = Known(tuple(one.result for one in others), "w", "computed")
    together = step("left_of_outputs", power.sum_of_left_w, inputs={"each_w": each_w})
    inputs = {"shared_w": computed(own), "outputs_w": computed(together)}
    last = step("left_of_all", power.left_of_pool_w, inputs=inputs)
    return Working((*steps, together, last), assumptions)


def _part_steps(checked: Checked, finding: Finding, *, limit: Limit, bound: Bound) -> Working:
    """The same of one limit alone."""
    if limit.draw.value is not None and limit.draw.low == limit.draw.high:
        bound = "value"
    told = load_steps(checked, limit, bounds=(bound,))
    inputs = {
        "load_w": computed(told.steps[-1]),
        "most_w": most_of(checked.loads, limit, worked_out="computed"),
    }
    if finding.unit == "fraction":
        last = step("share_of_limit", power.share_of_watts, inputs=inputs)
        return Working((*told.steps, last), told.assumptions)
    code = _left_code(finding, limit)
    named = {"output": limit.where["output"]} if code == "left_of_output" else {}
    last = step(code, power.left_of_watts_w, inputs=inputs, **named)
    return Working((*told.steps, last), told.assumptions)


def _left_code(finding: Finding, limit: Limit) -> str:
    """What is left is told of the limit it is asked of, of a pool, or of one of its outputs."""
    if limit.what == "pool_load_w":
        return "left_of_pool"
    return "left_of_limit" if limit.what == finding.what.replace("_left", "") else "left_of_output"

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
from pycore.ground.working import Working, computed, step

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
    own = _part_steps(checked, finding, limit=limit)
    left = left_of(limit)
    if finding.unit == "fraction" or limit.shared is None or left is None:
        return own
    shared = _part_steps(checked, finding, limit=limit.shared)
    if not shared.steps:
        return own
    both = {"own_w": computed(own.steps[-1]), "shared_w": computed(shared.steps[-1])}
    last = step("left_of_both", power.left_of_both_w, inputs=both)
    assumptions = tuple(dict.fromkeys((*own.assumptions, *shared.assumptions)))
    return Working((*own.steps, *shared.steps, last), assumptions)


def _part_steps(checked: Checked, finding: Finding, *, limit: Limit) -> Working:
    """The same of one limit alone; none where it has no watts."""
    if not limit.most_w:
        return Working((), ())
    bound: Bound = "high"
    if limit.draw.high is None:
        bound = "low"
    elif limit.draw.value is not None and limit.draw.low == limit.draw.high:
        bound = "value"
    told = load_steps(checked, limit, bounds=(bound,))
    inputs = {
        "load_w": computed(told.steps[-1]),
        "most_w": most_of(checked.loads, limit, worked_out="computed"),
    }
    share = finding.unit == "fraction"
    equation = power.share_of_watts if share else power.left_of_watts_w
    code = f"{'share' if share else 'left'}_of_limit"
    code = "left_of_pool" if limit.what == "pool_load_w" and not share else code
    last = step(code, equation, inputs=inputs)
    return Working((*told.steps, last), told.assumptions)

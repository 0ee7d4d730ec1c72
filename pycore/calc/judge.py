"""A load against what may be asked of it: the one rule for every limit in watts or ohms."""

from collections.abc import Mapping
from typing import Literal, NamedTuple

from pycore.calc.draws import Draw
from pycore.calc.finding import Finding, FindingValue, State, Verdict
from pycore.formulas import power

SLACK = 1 + 1e-9
# A printed minimum load is a rounded figure: within 2 % of it is "near", never "over".
PRINTED = 0.98
# Less than this is an open line: its ohms say nothing.
LEAST_W = 1e-9


class Limit(NamedTuple):
    """One limit and the load on it: `zones` (or the attenuator at `point`) make up that load.

    `shared`: the pool whose watts an output takes, where it is in one. `feeds`: of a pool, the
    outputs that take its watts, each by its own maximum.
    """

    what: str
    code: str
    where: Mapping[str, str]
    state: State
    draw: Draw
    most_w: float | None
    fraction: float
    zones: frozenset[str]
    point: str | None = None
    line_v: float | None = None
    min_load_ohm: float | None = None
    forbidden: bool = False
    values: Mapping[str, FindingValue] = {}
    shared: "Limit | None" = None
    feeds: tuple["Limit", ...] = ()

    def verdict(self, draw: Draw | None = None) -> Verdict:
        """The verdict on the load as it is, or on another load in its place."""
        if self.forbidden:
            return "over"
        load = self.draw if draw is None else draw
        if self.what == "output_impedance_ohm":
            return self._judge_impedance(load)
        return judge_load(load, self.most_w, fraction=self.fraction)

    def _judge_impedance(self, load: Draw) -> Verdict:
        """The same rule in ohms: the most watts the printed minimum lets through."""
        if self.line_v is None or self.min_load_ohm is None:
            return "unknown"
        most_w = power.impedance_of_watts_ohm(line_v=self.line_v, load_w=self.min_load_ohm)
        return judge_load(load, most_w / PRINTED, fraction=self.fraction * PRINTED)


class Left(NamedTuple):
    """Watts that are left of a limit. `sure`: at least so many, else at most; `exact`: no other
    number is possible. `by`: what leaves no more, where that is not the limit itself."""

    watts: float
    sure: bool
    exact: bool
    by: Literal["shared", "feeds"] | None


class _Ends(NamedTuple):
    """The least and the most watts that can be left; no least where a load has no most."""

    least: float | None
    most: float


def left_of(limit: Limit) -> Left | None:
    """What is left of a limit: of an output in a pool the smaller of what the two leave; of a
    pool no more than its outputs take together, each up to its own maximum.

    None where there is no limit to be left of.
    """
    own = _left_alone(limit)
    if own is None:
        return None
    feeds = _left_together(limit.feeds)
    if feeds is not None:
        return _smaller(own, feeds, by="feeds")
    shared = _left_alone(limit.shared) if limit.shared is not None else None
    return _left(own, by=None) if shared is None else _smaller(own, shared, by="shared")


def _left_alone(limit: Limit) -> _Ends | None:
    if not limit.most_w:
        return None
    _, low, high = limit.draw
    least_w = power.left_of_watts_w(load_w=high, most_w=limit.most_w) if high is not None else None
    return _Ends(least_w, power.left_of_watts_w(load_w=low, most_w=limit.most_w))


def _left_together(feeds: tuple[Limit, ...]) -> _Ends | None:
    """What all outputs of a pool can still take; None where one has no maximum of its own."""
    each = [_left_alone(one) for one in feeds]
    known = [one for one in each if one is not None]
    if not known or len(known) < len(each):
        return None
    least = [one.least for one in known if one.least is not None]
    least_w = power.sum_of_left_w(each_w=tuple(least)) if len(least) == len(known) else None
    return _Ends(least_w, power.sum_of_left_w(each_w=tuple(one.most for one in known)))


def _smaller(own: _Ends, other: _Ends, *, by: Literal["shared", "feeds"]) -> Left:
    """The smaller of two numbers that both hold, and the other's name where that is it."""
    if own.least is None or other.least is None:
        most_w = min(own.most, other.most)
        return _left(_Ends(None, most_w), by=by if other.most < own.most else None)
    ends = _Ends(min(own.least, other.least), min(own.most, other.most))
    return _left(ends, by=by if other.least < own.least else None)


def _left(ends: _Ends, *, by: Literal["shared", "feeds"] | None) -> Left:
    if ends.least is None:
        return Left(ends.most, sure=False, exact=ends.most == 0, by=by)
    return Left(ends.least, sure=True, exact=ends.least in (0, ends.most), by=by)


def judge_load(load: Draw, most_w: float | None, *, fraction: float) -> Verdict:
    """ok up to `fraction` of `most_w` (W), near up to all of it, over beyond; else unknown."""
    if most_w is None:
        return "unknown"
    if load.low > most_w * SLACK:
        return "over"
    if load.high is None or load.high > most_w * SLACK:
        return "unknown"
    return "ok" if load.high <= most_w * fraction * SLACK else "near"


def finding_of(limit: Limit) -> Finding:
    """The finding a limit makes."""
    if limit.what == "output_impedance_ohm":
        return _impedance_finding(limit)
    most_w, (_, low, high) = limit.most_w, limit.draw
    speaks_w = low if high is None else high
    share = power.share_of_watts(load_w=speaks_w, most_w=most_w) if most_w else None
    left = left_of(limit)
    code = limit.code if limit.forbidden else f"{limit.code}_{limit.verdict()}"
    return Finding(
        code=f"{code}_{left.by}" if left and left.by and limit.verdict() == "ok" else code,
        what=limit.what,
        where=limit.where,
        state=limit.state,
        unit="w",
        verdict=limit.verdict(),
        value=limit.draw.value,
        low=limit.draw.low,
        high=limit.draw.high,
        limit=most_w,
        values={
            "share": share,
            "fraction": limit.fraction,
            "left_w": left.watts if left and left.sure else None,
            "left_exact": int(left.exact) if left else None,
            "left_most_w": left.watts if left and not left.sure else None,
            "left_by": left.by if left else None,
            **_place_of_shared(limit, left),
            **limit.values,
        },
    )


def _place_of_shared(limit: Limit, left: Left | None) -> dict[str, FindingValue]:
    """The amplifier whose shared watts leave an output less than its own maximum does."""
    if limit.shared is None or left is None or left.by != "shared":
        return {}
    return {"shared_by": limit.shared.where["amplifier"]}


def _impedance_finding(limit: Limit) -> Finding:
    assert limit.line_v is not None
    verdict = limit.verdict()
    return Finding(
        code="impedance_open" if _open(limit.draw.high) else f"{limit.code}_{verdict}",
        what=limit.what,
        where=limit.where,
        state=limit.state,
        unit="ohm",
        verdict=verdict,
        value=_ohms(limit.line_v, limit.draw.value),
        low=_ohms(limit.line_v, limit.draw.high),
        high=_ohms(limit.line_v, limit.draw.low),
        limit=limit.min_load_ohm,
        values={"fraction": limit.fraction, **limit.values},
    )


def _ohms(line_v: float, load_w: float | None) -> float | None:
    """Nominal ohms of a load; None where there is no load, or none known."""
    if load_w is None or _open(load_w):
        return None
    return power.impedance_of_watts_ohm(line_v=line_v, load_w=load_w)


def _open(load_w: float | None) -> bool:
    return load_w is not None and load_w < LEAST_W

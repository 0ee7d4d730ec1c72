"""A load against what may be asked of it: the one rule for every limit in watts or ohms."""

from collections.abc import Mapping
from typing import NamedTuple

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

    `shared`: the pool whose watts an output takes, where it is in one.
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
    """Watts that are left of a limit; `by`: what leaves them. `sure`: at least so many;
    `exact`: no more either."""

    watts: float
    sure: bool
    exact: bool
    by: Limit


def left_of(limit: Limit) -> Left | None:
    """What is left of a limit: of an output in a pool the smaller of what the two leave.

    None where there is no limit to be left of.
    """
    own = _left_alone(limit)
    shared = _left_alone(limit.shared) if limit.shared is not None else None
    if own is None or shared is None:
        return own
    least = shared if shared.watts < own.watts else own
    return least._replace(sure=own.sure and shared.sure, exact=own.exact and shared.exact)


def _left_alone(limit: Limit) -> Left | None:
    if not limit.most_w:
        return None
    _, low, high = limit.draw
    load_w = low if high is None else high
    left_w = power.left_of_watts_w(load_w=load_w, most_w=limit.most_w)
    return Left(left_w, high is not None, low == high or left_w == 0, limit)


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
    by_pool = left is not None and left.by is not limit
    code = limit.code if limit.forbidden else f"{limit.code}_{limit.verdict()}"
    return Finding(
        code=f"{code}_shared" if by_pool and limit.verdict() == "ok" else code,
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
            "left_by": next(iter(left.by.where.values())) if left and by_pool else None,
            **limit.values,
        },
    )


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

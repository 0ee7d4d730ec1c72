"""What still fits: how many more loudspeakers before the first limit, and which limit that is.

A number is found by adding loudspeakers at the far end and judging every limit they touch
again, never by dividing what is left. The law test adds them by the command itself.
"""

from collections.abc import Callable, Iterator
from typing import NamedTuple

from pycore.calc.draws import Draw, Lookup, draw_of
from pycore.calc.finding import Finding, FindingValue, Verdict
from pycore.calc.judge import Limit
from pycore.calc.limits import Loads
from pycore.calc.zone_loads import WHOLE, Share
from pycore.ground.units import same_voltage
from pycore.jobs import Loudspeaker, Zone

MOST_COUNTED = 1000
FIRST = ("first_what", "first_id", "first_state", "first_which", "each_most_w")
ALLOWED_WITH_RESERVE: tuple[Verdict, ...] = ("ok",)
ALLOWED_TO_RATING: tuple[Verdict, ...] = ("ok", "near")


class Offer(NamedTuple):
    """One tap that may be added: watts, its marked volts, and the kind that offers it."""

    tap_w: float
    tap_at_v: float
    kind: str | None


class Touched(NamedTuple):
    """A limit that one more loudspeaker at the far end of a zone would add to, and its volts."""

    limit: Limit
    line_v: float
    share: Share

    def adding(self, each: Draw) -> "Adding":
        """The same with what each one more adds, whose draw at these volts is known."""
        return Adding(self.limit, each if self.share == WHOLE else each.between(*self.share))


class Adding(NamedTuple):
    """A limit, and what each one more would add to its load."""

    limit: Limit
    more: Draw

    def verdict_with(self, count: int) -> Verdict:
        """The verdict with `count` more of them."""
        return self.limit.verdict(self.limit.draw.plus(self.more, count))


class Counted(NamedTuple):
    """The limit the next one breaks (None: none met), and how many keep every limit."""

    first: Adding | None
    more: int


class Counting(NamedTuple):
    """A count at both marks, by the limits that have one; `missing` is one that has none."""

    judged: tuple[Adding, ...]
    missing: Limit | None
    reserve: Counted
    rating: Counted

    @property
    def first(self) -> Adding | None:
        """The limit met first."""
        return self.rating.first or self.reserve.first

    @property
    def known(self) -> bool:
        """Whether the count is true: a limit was met, or all of them are known."""
        return bool(self.judged) and (self.first is not None or self.missing is None)


def fit_findings(loads: Loads, limits: tuple[Limit, ...]) -> Iterator[Finding]:
    """For every landed zone and every tap on offer there: how many more."""
    lookup = Lookup.of(loads.job.kinds)
    drawn: dict[tuple[Offer, float], Draw] = {}
    for zone in loads.job.zones:
        line_v = loads.line_v(zone, "override")
        if line_v is None:
            continue
        touched = touched_by(loads, limits, zone=zone)
        for offer in offers_in(loads, zone, line_v=line_v):
            for one in touched:
                if (offer, one.line_v) not in drawn:
                    made = draw_of(made_of(offer), lookup, line_v=one.line_v)
                    drawn[offer, one.line_v] = made
            adding = tuple(one.adding(drawn[offer, one.line_v]) for one in touched)
            yield _finding(zone, offer, counting=_count(adding))


def counting_of(
    loads: Loads, limits: tuple[Limit, ...], *, zone: str, which: str
) -> Counting | None:
    """The same count of one offer by its name, with all it was counted by; None without it."""
    here = loads.zones[zone]
    line_v = loads.line_v(here, "override")
    offers = offers_in(loads, here, line_v=line_v) if line_v is not None else ()
    offer = next((one for one in offers if _which(one) == which), None)
    if offer is None:
        return None
    lookup, made = Lookup.of(loads.job.kinds), made_of(offer)
    touched = touched_by(loads, limits, zone=here)
    return _count(tuple(one.adding(draw_of(made, lookup, line_v=one.line_v)) for one in touched))


def offers_in(loads: Loads, zone: Zone, *, line_v: float) -> tuple[Offer, ...]:
    """The taps marked for this line: of every kind in the job, and those the zone uses."""
    offers: dict[Offer, None] = {}
    for kind in loads.job.kinds.loudspeakers:
        for tap in kind.taps:
            if tap.w and tap.allowed is not False and same_voltage(tap.at_v, line_v):
                offers[Offer(tap.w, tap.at_v, kind.id)] = None
    for point in zone.line:
        one = point.fitted
        if one.is_ != "loudspeaker" or one.kind is not None or one.tap_at_v is None:
            continue
        if one.tap_w and same_voltage(one.tap_at_v, line_v):
            offers[Offer(one.tap_w, one.tap_at_v, None)] = None
    return tuple(offers)


def made_of(offer: Offer) -> Loudspeaker:
    """The loudspeaker an offer stands for."""
    return Loudspeaker.model_construct(
        is_="loudspeaker",
        kind=offer.kind,
        tap_w=offer.tap_w,
        tap_at_v=offer.tap_at_v,
        label="",
        connected=True,
    )


def touched_by(loads: Loads, limits: tuple[Limit, ...], *, zone: Zone) -> tuple[Touched, ...]:
    """The limits a loudspeaker at the far end of the zone adds to, and what share of it.

    Where no control stands lower, both states are one and the same: it is asked once.
    """
    touched: dict[tuple[object, ...], Touched] = {}
    for limit in limits:
        asked = loads.asked.get((zone.id, limit.state))
        line_v = loads.line_v(zone, limit.state)
        if asked is None or line_v is None:
            continue
        below_control = limit.point is not None and limit.point in asked.end_attenuators
        if below_control or zone.id in limit.zones:
            lessened = limit.state == "set" and not below_control
            share = asked.end_share if lessened else WHOLE
            which = (limit.what, _place(limit), limit.values.get("which"))
            touched.setdefault((*which, limit.draw, line_v, share), Touched(limit, line_v, share))
    return tuple(touched.values())


def _count(adding: tuple[Adding, ...]) -> Counting:
    judged = tuple(one for one in adding if _has_a_limit(one.limit))
    missing = next((one.limit for one in adding if not _has_a_limit(one.limit)), None)
    if any(one.limit.verdict() == "unknown" for one in judged):
        judged = ()  # with a load that is only partly known, no count would be true
    reserve = _how_many(judged, ALLOWED_WITH_RESERVE)
    return Counting(judged, missing, reserve, _how_many(judged, ALLOWED_TO_RATING))


def _finding(zone: Zone, offer: Offer, *, counting: Counting) -> Finding:
    by, known, missing = counting.first, counting.known, counting.missing
    reserve, rating = counting.reserve.more, counting.rating.more
    return Finding(
        code=_code(offer, known, by=by, missing=missing),
        what="what_fits",
        where={"zone": zone.id},
        state=None,
        unit="count",
        verdict="note" if known and missing is None else "unknown",
        value=float(reserve) if known else None,
        high=float(rating) if known else None,
        values={
            "which": _which(offer),
            "tap_w": offer.tap_w,
            "tap_at_v": offer.tap_at_v,
            "kind": offer.kind,
            "with_reserve": reserve if known else None,
            "to_rating": rating if known else None,
            "missing_id": _place(missing) if missing else None,
            **_first_met(by if known else None),
        },
    )


def _which(offer: Offer) -> str:
    kind = f".{offer.kind}" if offer.kind else ""
    return f"{offer.tap_w:.12g}@{offer.tap_at_v:.12g}{kind}"


def _place(limit: Limit) -> str:
    return next(iter(limit.where.values()))


def _first_met(by: Adding | None) -> dict[str, FindingValue]:
    """The limit that the next one would break, and the most that each adds to its load."""
    if by is None:
        return dict.fromkeys(FIRST)
    limit = by.limit
    values = (limit.what, _place(limit), limit.state, limit.values.get("which"), by.more.high)
    return dict(zip(FIRST, values, strict=True))


def _code(offer: Offer, known: bool, *, by: Adding | None, missing: Limit | None) -> str:
    """Whether a count is known, a limit was met, and the kind has a name: one sentence each."""
    if not known:
        return "fits_unknown"
    met = "fits_all" if by is None else "fits_partly" if missing else "fits"
    return f"{met}_kind" if offer.kind else met


def _has_a_limit(limit: Limit) -> bool:
    return limit.forbidden or limit.most_w is not None or limit.min_load_ohm is not None


def _how_many(adding: tuple[Adding, ...], allowed: tuple[Verdict, ...]) -> Counted:
    """The most that keep every limit, and the limit the next one breaks."""

    def breaks(count: int) -> Adding | None:
        return next((one for one in adding if one.verdict_with(count) not in allowed), None)

    if breaks(1) is not None:
        return Counted(breaks(1), 0)
    count = _last_that_keeps(breaks)
    return Counted(breaks(count + 1), count)


def _last_that_keeps(breaks: Callable[[int], Adding | None]) -> int:
    """Doubling, then halving: loads only grow, so the verdicts only worsen."""
    good = 1
    while good < MOST_COUNTED and breaks(good * 2) is None:
        good *= 2
    bad = good * 2
    while bad - good > 1:
        middle = (good + bad) // 2
        good, bad = (middle, bad) if breaks(middle) is None else (good, middle)
    return min(good, MOST_COUNTED)

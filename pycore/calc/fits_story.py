"""How a count of what still fits came to be: the limit met first, before and after.

It is told at both marks: with the reserve that is planned for, and to the rating. Each time
with as many more as fit, and with one more than that; then every other limit that was asked.
"""

from collections.abc import Iterator
from typing import NamedTuple

from pycore.calc.check import Checked
from pycore.calc.draw_story import Told, told_draws, typed
from pycore.calc.draws import NOTHING, Lookup
from pycore.calc.finding import Finding
from pycore.calc.fits import Adding, Counted, Counting, Offer, counting_of, made_of
from pycore.calc.judge import PRINTED, Limit
from pycore.calc.limits import Loads
from pycore.calc.said import most_of, started
from pycore.formulas import power
from pycore.ground.working import Known, Step, Working, computed, step


class Mark(NamedTuple):
    """One of the two marks: a load keeps within it, or is past it."""

    within: str
    past: str


class Trying(NamedTuple):
    """The loads of the job, and the draws (W) of one more that are told."""

    loads: Loads
    told_w: frozenset[float]


RESERVE = Mark("fits_in_reserve", "fits_past_reserve")
RATING = Mark("fits_in_rating", "fits_past_rating")


def fits_working(checked: Checked, finding: Finding) -> Working:
    """The limits with as many more as fit, and the first one with one more than that."""
    counting = counting_of(
        checked.loads,
        checked.limits,
        zone=finding.where["zone"],
        which=str(finding.values["which"]),
    )
    told = ("counted_by_trial", "at_the_end")
    if counting is None or finding.high is None:
        return Working((), told)
    each = tuple(_each_steps(checked, finding))
    told_w = frozenset(made.result for made in each)
    return Working((*each, *_steps(Trying(checked.loads, told_w), counting)), told)


def _each_steps(checked: Checked, finding: Finding) -> Iterator[Step]:
    """What one more of the tap on offer draws."""
    zone, values = checked.loads.zones[finding.where["zone"]], finding.values
    line_v = checked.loads.line_v(zone, "override")
    tap_w, tap_at_v, kind = values["tap_w"], values["tap_at_v"], values["kind"]
    if line_v is not None and isinstance(tap_w, float) and isinstance(tap_at_v, float):
        offer = Offer(tap_w, tap_at_v, kind if isinstance(kind, str) else None)
        one = Told(made_of(offer), NOTHING, line_v, said="tried")
        yield from told_draws([one], Lookup.of(checked.job.kinds))


def _steps(trying: Trying, counting: Counting) -> Iterator[Step]:
    reserve, rating = counting.reserve, counting.rating
    if reserve.first is not None:
        yield from _bound_steps(trying, reserve.first.limit, planned=True)
        yield from _met(trying, reserve, mark=RESERVE)
    if rating.first is not None:
        yield from _bound_steps(trying, rating.first.limit, planned=False)
        yield from _met(trying, rating, mark=RATING)
    if rating.more:
        for one in counting.judged:
            if one is not rating.first:
                yield from _load(trying, one, count=rating.more, code="fits_other")


def _met(trying: Trying, counted: Counted, *, mark: Mark) -> Iterator[Step]:
    """The first limit with the count, and with one more."""
    first, count = counted
    assert first is not None
    if first.limit.forbidden:
        yield from _load(trying, first, count=1, code="fits_forbidden")
        return
    if first.verdict_with(0) == first.verdict_with(1) and not count:
        yield from _load(trying, first, count=0, code="fits_already")
    else:
        yield from _load(trying, first, count=count, code=mark.within)
    yield from _load(trying, first, count=count + 1, code=mark.past)


def _load(trying: Trying, one: Adding, *, count: int, code: str) -> Iterator[Step]:
    """The load of a limit with so many more, at its most: a count is as good as its worst case."""
    limit, most_w = one.limit, one.more.high
    if limit.draw.high is None or most_w is None:
        return
    inputs = {
        "load_w": Known(limit.draw.high, "w", "elsewhere"),
        "count": Known(float(count), "count", "tried"),
        "each_w": Known(most_w, "w", "computed" if most_w in trying.told_w else "elsewhere"),
    }
    made = step(code, power.load_with_more_w, inputs=inputs, **_named(limit), n=str(count))
    yield made
    if limit.what == "output_impedance_ohm":
        if limit.line_v is not None and made.result:
            ohms = {"line_v": typed(limit.line_v, "v"), "load_w": computed(made)}
            yield step("impedance", power.impedance_of_watts_ohm, inputs=ohms)
    elif limit.most_w:
        share = {"load_w": computed(made), "most_w": _most(trying, limit)}
        yield step("share_of_limit", power.share_of_watts, inputs=share)


def _bound_steps(trying: Trying, limit: Limit, *, planned: bool) -> Iterator[Step]:
    """What a limit lets through: with the reserve planned for, or as its panel prints it."""
    fraction = started(limit.fraction, "fraction", name="load_fraction")
    if limit.min_load_ohm is not None:
        least = typed(limit.min_load_ohm, "ohm")
        if planned:
            inputs = {"min_load_ohm": least, "planned_fraction": fraction}
            yield step("planned_least", power.planned_least_ohm, inputs=inputs, **_named(limit))
        else:
            inputs = {"min_load_ohm": least, "printed_share": Known(PRINTED, "factor", "assumed")}
            yield step("printed_least", power.printed_least_ohm, inputs=inputs, **_named(limit))
    elif limit.most_w and planned:
        inputs = {"most_w": _most(trying, limit), "planned_fraction": fraction}
        yield step("planned_most", power.planned_most_w, inputs=inputs, **_named(limit))


def _most(trying: Trying, limit: Limit) -> Known:
    return most_of(trying.loads, limit, worked_out="elsewhere")


def _named(limit: Limit) -> dict[str, str]:
    """What a limit is and where, as codes: the words are found where a step is printed."""
    return {"what": limit.what, "place": next(iter(limit.where.values()))}

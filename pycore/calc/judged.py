"""A reading judged by what the line had to read when it was read, and by what it must never be."""

import math
from collections.abc import Sequence
from typing import NamedTuple

from pycore.calc.due import Outdated, alike, band_now, band_then, outdated, was_due
from pycore.calc.expected import Band, band_of_baseline
from pycore.calc.reading import OHMS, Meant
from pycore.calc.site import Site
from pycore.calc.verdicts import Verdict, judge, least_of

FLAT = ("do_not_connect", "do_not_connect_short", "at_the_limit")
CHANGED = Verdict("line_changed", "note")


class Judged(NamedTuple):
    """A reading with its band and verdict. `again`: its own baseline made the band. `mark`: by
    what its verdict is called. `outdated`: the line has changed since it was read."""

    band: Band | None
    again: bool
    verdict: Verdict
    mark: str
    outdated: Outdated | None


def judged(site: Site, one: Meant, *, baselines: Sequence[Meant]) -> Judged:
    """A reading judged where it was taken; one of a line that has changed since has no say in
    what is to be thought of the line today, unless it told of what no tap mends."""
    old = outdated(site, one)
    band, again = band_for(site, one, baselines=baselines)
    verdict = judge_at(site, one, band=band)
    mark = _mark(one, verdict=verdict, band=band)
    stays = old is None or (verdict.code in FLAT and not was_due(one, old.then))
    return Judged(band, again, verdict if stays else CHANGED, mark, old)


def baseline_of(site: Site, one: Meant, *, baselines: Sequence[Meant]) -> Meant | None:
    """The latest baseline that was taken as a reading was, of the line as it was then."""
    again = [
        each
        for each in baselines
        if each.taken.setting == one.taken.setting and _one_line(site, one, base=each)
    ]
    return max(again, key=lambda each: each.taken.at, default=None)


def _one_line(site: Site, one: Meant, *, base: Meant) -> bool:
    """Whether a reading and a baseline are of the same line; what was kept without what was due
    is taken to be of the line as it is."""
    old, old_base = outdated(site, one), outdated(site, base)
    if old is None or old_base is None:
        return old is None and old_base is None
    return alike(old.then, old_base.then)


def band_for(site: Site, one: Meant, *, baselines: Sequence[Meant]) -> tuple[Band | None, bool]:
    """What a reading should have been, and whether its own baseline says so."""
    if one.taken.quantity not in OHMS or one.taken.place not in site.circuits.wired.node_of:
        return None, False
    best = baseline_of(site, one, baselines=baselines)
    kept = band_of_baseline(best) if best is not None else None
    if kept is not None:
        return kept, True
    return band_then(one) or band_now(site, one), False


def judge_at(site: Site, one: Meant, *, band: Band | None) -> Verdict:
    """The verdict on a reading where it was taken."""
    wired = site.circuits.wired
    least = least_of(wired.output, wired.line_v)
    node = wired.node_of.get(one.taken.place)
    here = node is not None and wired.points[node] is None
    # a page's own state is the worst load; as set, a control may hide the line behind it
    as_set = one.taken.controls == "set" and any(
        wired.fitted(each) == "attenuator" for each in (wired.beyond(node) if node else ())
    )
    if node == 0 and one.taken.controls == "set":
        as_set = any(wired.fitted(each) == "attenuator" for each in range(len(wired.ids)))
    return judge(one, band, least=least, at_rack=here, controls=as_set)


def _mark(one: Meant, *, verdict: Verdict, band: Band | None) -> str:
    """Which word a verdict has: where it is off its band also to which side."""
    if verdict.verdict not in ("near", "over") or band is None or one.sign == "nothing":
        return verdict.verdict
    value = {"open": math.inf, "short": 0.0}.get(one.sign, one.value)
    if value is None or (band.low or 0.0) <= value <= (band.high or math.inf):
        return verdict.verdict
    return f"{verdict.verdict}_{'low' if value < (band.low or 0.0) else 'high'}"

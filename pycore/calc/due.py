"""What a line had to read when it was read, kept with the reading, and whether that has changed.

A reading is true of the line it was taken on. Once a tap is turned or a length is corrected
another number is to be read there, and the old one says nothing of the line as it is now.
"""

import math
from typing import NamedTuple

from pycore.calc import priors
from pycore.calc.evidence import hidden_from_direct
from pycore.calc.expected import Band, band_at, tolerances_of
from pycore.calc.reading import OHMS, Meant, sort_reading, taken_of
from pycore.calc.site import Given, Site, condition_of, site_of, stand_of
from pycore.ground.problems import Problem
from pycore.jobs import Job, Reading
from pycore.jobs.records import Due

FIGURES = 4  # more than any meter shows; each figure is two letters in a link


class Outdated(NamedTuple):
    """A reading of a line that has changed since: what was to be read then, and what now."""

    then: Band
    now: Band


def band_now(site: Site, one: Meant) -> Band | None:
    """What the line as it is should read where a reading was taken; None where nothing says."""
    if one.taken.quantity not in OHMS or one.taken.place not in site.circuits.wired.node_of:
        return None
    if one.taken.quantity == "dc_ohm" and hidden_from_direct(site, one):
        return None
    tolerances = tolerances_of(site, meter_fraction=min(one.meter_fraction, priors.MOST_PCT / 100))
    condition, stand = condition_of(site, one.taken), stand_of(site, one.taken)
    band, _ = band_at(site, condition, stand=stand, tolerances=tolerances)
    return band


def band_then(one: Meant) -> Band | None:
    """What was to be read when a reading was taken, where that was kept."""
    due = one.taken.due
    if due is None:
        return None
    whole = due.high / due.value - 1 if due.high and due.value else one.meter_fraction
    return Band(due.value, due.low, due.high, whole, 0.0)


def due_of(job: Job, reading: Reading) -> Due | None:
    """What the line has to read where a reading is being kept; None where nothing says."""
    if reading.quantity not in OHMS:
        return None
    place = reading.where.model_dump(exclude_none=True)
    try:
        site = site_of(job, place, given=Given(priors.LOAD_PCT, None))
        band = band_now(site, sort_reading(taken_of(reading), leads_ohm=None))
    except Problem:  # it hangs on no output, or what it names is not there: then nothing is due
        return None
    if band is None:
        return None
    return Due(value=_few(band.value), low=_few(band.low) or 0.0, high=_few(band.high))


def outdated(site: Site, one: Meant) -> Outdated | None:
    """Whether what is to be read now lies elsewhere, beyond what one meter repeats.

    A short is one whatever hangs there: it stands until it is read again.
    """
    then = band_then(one)
    if then is None or one.sign == "short":
        return None
    now = band_now(site, one)
    return None if now is None or alike(then, now) else Outdated(then, now)


def alike(then: Band, now: Band) -> bool:
    """Whether two bands are of one line: open both, or within what one meter repeats."""
    if not then.value or not now.value:
        return not then.value and not now.value
    return abs(math.log(now.value / then.value)) <= math.log1p(priors.REPEAT_PCT / 100)


def was_due(one: Meant, then: Band) -> bool:
    """Whether a reading is not below what was to be read then: if it is, that is a fault, which
    no change of taps mends."""
    return one.sign != "short" and (one.value is None or one.value >= (then.low or 0.0))


def _few(value: float | None) -> float | None:
    return None if value is None else float(f"{value:.{FIGURES}g}")

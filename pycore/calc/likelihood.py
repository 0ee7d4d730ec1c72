"""How well a fault agrees with all readings together, as a logarithm.

Readings share what may be off: all loudspeakers alike, all copper alike, one meter's scale.
So they are weighed together, by their covariance, and not one by one. A tolerance is a
limit either way within which all is equally likely: its variance is a third of its square
(JCGM 100:2008, 4.3.7, from memory). The tails are kept heavier than a normal law's, by
Student's law, so that one odd reading does not settle everything.
"""

import math
from collections.abc import Sequence
from typing import NamedTuple

from pycore.calc import priors


class Row(NamedTuple):
    """One reading against one fault: how far off it is (ln), how far it follows the loads
    and the copper, and the variance that is its own. `beyond`: it only says "at least"."""

    off: float
    follows: float
    copper: float
    variance: float
    beyond: bool = False


class Shared(NamedTuple):
    """What the readings have in common: which loads (1 kHz or direct), which instrument, and
    each instrument's own scale; the variances of loads and copper."""

    loads: tuple[int, ...]
    instruments: tuple[str, ...]
    gains: tuple[float, ...]
    load_variances: tuple[float, ...]
    copper_variance: float


def log_likelihood(rows: Sequence[Row], shared: Shared) -> float:
    """The logarithm of how likely these readings are."""
    counted = [number for number, row in enumerate(rows) if not row.beyond]
    total = 0.0
    if len(counted) < len(rows):
        total = sum(_beyond(rows, shared, number=number) for number in range(len(rows)))
    if len(counted) == 2:
        return total + _two(rows, shared, counted=counted)
    if len(counted) > 2:
        return total + _together(rows, shared, counted=counted)
    if counted:
        variance = covariance(rows, shared, one=counted[0], other=counted[0])
        distance = rows[counted[0]].off ** 2 / variance
        return total + _student(distance, math.log(variance), count=1)
    return total


def _beyond(rows: Sequence[Row], shared: Shared, *, number: int) -> float:
    """A reading beyond what the meter shows: no news, or as far off as it falls short."""
    row = rows[number]
    if not row.beyond or row.off <= 0:
        return 0.0
    variance = covariance(rows, shared, one=number, other=number)
    return _student(row.off**2 / variance, 0.0, count=1)


def covariance(rows: Sequence[Row], shared: Shared, *, one: int, other: int) -> float:
    """What two readings may be off together (ln²)."""
    first, second = rows[one], rows[other]
    total = first.copper * second.copper * shared.copper_variance
    if shared.loads[one] == shared.loads[other]:
        total += first.follows * second.follows * shared.load_variances[shared.loads[one]]
    if one == other:
        total += first.variance + shared.gains[one] ** 2
    elif shared.instruments[one] == shared.instruments[other]:
        total += shared.gains[one] * shared.gains[other]
    return total


def _two(rows: Sequence[Row], shared: Shared, *, counted: list[int]) -> float:
    """Two readings: the same as for several, written out because it is met most."""
    one, other = counted
    first, second = rows[one].off, rows[other].off
    own = covariance(rows, shared, one=one, other=one)
    its = covariance(rows, shared, one=other, other=other)
    both = covariance(rows, shared, one=one, other=other)
    size = max(own * its - both * both, LEAST_VARIANCE**2)
    distance = (its * first * first - 2 * both * first * second + own * second * second) / size
    return _student(distance, math.log(size), count=2)


def _together(rows: Sequence[Row], shared: Shared, *, counted: list[int]) -> float:
    """Several readings by the triangular root of their covariance."""
    root: list[list[float]] = []
    solved: list[float] = []
    log_size = distance = 0.0
    for number, one in enumerate(counted):
        line: list[float] = []
        for place in range(number):
            above = root[place]
            rest = covariance(rows, shared, one=one, other=counted[place])
            rest -= sum(line[each] * above[each] for each in range(place))
            line.append(rest / above[place])
        own = covariance(rows, shared, one=one, other=one) - sum(each * each for each in line)
        own = math.sqrt(max(own, LEAST_VARIANCE))
        left = rows[one].off - sum(a * b for a, b in zip(line, solved, strict=True))
        line.append(own)
        root.append(line)
        solved.append(left / own)
        log_size += 2 * math.log(own)
        distance += solved[-1] ** 2
    return _student(distance, log_size, count=len(counted))


LEAST_VARIANCE = 1e-12


def _student(distance: float, log_size: float, *, count: int) -> float:
    freedom = priors.DOUBT_FREEDOM
    return -0.5 * log_size - 0.5 * (freedom + count) * math.log1p(distance / freedom)

"""How well a fault agrees with all readings together, as a logarithm.

Readings share what may be off: all loudspeakers alike, all copper alike, one meter's scale.
So they are weighed together, by their covariance, and not one by one. A tolerance is a
limit either way within which all is equally likely: its variance is a third of its square
(JCGM 100:2008, 4.3.7, from memory). The tails are kept heavier than a normal law's, by
Student's law, so that one odd reading does not settle everything.
"""

import math
from collections.abc import Sequence
from math import log, log1p
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


def log_likelihoods(faults: Sequence[Sequence[Row]], shared: Shared) -> list[float]:
    """The same of many faults' rows, quickly. Which readings are `beyond` is a matter of the
    readings, so it is the same for every fault."""
    counted = [number for number, row in enumerate(faults[0]) if not row.beyond] if faults else []
    alike = {(shared.loads[each], shared.instruments[each]) for each in counted}
    if len(counted) == 1:
        logs = _one_reading(faults, shared, number=counted[0])
    elif len(alike) == 1:
        logs = _one_instrument(faults, shared, counted=counted)
    else:
        return [log_likelihood(rows, shared) for rows in faults]
    for number in set(range(len(shared.loads))) - set(counted):
        for fault, rows in enumerate(faults):
            logs[fault] += _beyond(rows, shared, number=number)
    return logs


def _one_reading(faults: Sequence[Sequence[Row]], shared: Shared, *, number: int) -> list[float]:
    gain, copper_variance = shared.gains[number] ** 2, shared.copper_variance
    load_variance = shared.load_variances[shared.loads[number]]
    half = 0.5 * (priors.DOUBT_FREEDOM + 1)
    logs = []
    for rows in faults:
        off, follows, copper, own, _ = rows[number]
        variance = copper**2 * copper_variance + follows**2 * load_variance + own + gain
        distance = off**2 / variance
        logs.append(-0.5 * log(variance) - half * log1p(distance / priors.DOUBT_FREEDOM))
    return logs


def _one_instrument(
    faults: Sequence[Sequence[Row]], shared: Shared, *, counted: list[int]
) -> list[float]:
    """Readings of one instrument on the same loads, met most: three unknowns are shared, of
    copper, loads and scale, and what `_together` does is written out for them."""
    copper_deviation = math.sqrt(shared.copper_variance)
    load_deviation = math.sqrt(shared.load_variances[shared.loads[counted[0]]])
    scales = [(number, shared.gains[number]) for number in counted]
    half = 0.5 * (priors.DOUBT_FREEDOM + len(counted))
    logs = []
    for rows in faults:
        a, b, c, d, e, f = 1.0, 0.0, 0.0, 1.0, 0.0, 1.0  # one plus the matrix, upper half
        x = y = z = far = size = 0.0
        for number, by_scale in scales:
            off, follows, copper, own, _ = rows[number]
            own = max(own, LEAST_VARIANCE)
            by_copper, by_load = copper * copper_deviation, follows * load_deviation
            of_copper, of_load, of_scale = by_copper / own, by_load / own, by_scale / own
            a, b, c = a + of_copper * by_copper, b + of_copper * by_load, c + of_copper * by_scale
            d, e, f = d + of_load * by_load, e + of_load * by_scale, f + of_scale * by_scale
            x, y, z = x + of_copper * off, y + of_load * off, z + of_scale * off
            far, size = far + off * off / own, size + log(own)
        more, less = _three_unknowns((a, b, c, d, e, f), (x, y, z))
        far = max(far - less, 0.0)
        logs.append(-0.5 * (size + more) - half * log1p(far / priors.DOUBT_FREEDOM))
    return logs


def _three_unknowns(
    matrix: tuple[float, float, float, float, float, float], pulls: tuple[float, float, float]
) -> tuple[float, float]:
    """As `_unknowns`, of three: the triangular root, squared, and what each unknown explains."""
    a, b, c, d, e, f = matrix
    x, y, z = pulls
    b, c, e = b / a, c / a, e - b * c / a
    d -= b * b * a
    e /= d
    f -= c * c * a + e * e * d
    y -= b * x
    z -= c * x + e * y
    return log(a * d * f), x * x / a + y * y / d + z * z / f


def log_likelihood(rows: Sequence[Row], shared: Shared) -> float:
    """The logarithm of how likely these readings are."""
    if len(rows) == 1 and not rows[0].beyond:
        variance = covariance(rows, shared, one=0, other=0)
        return _student(rows[0].off ** 2 / variance, math.log(variance), count=1)
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
    """Several readings. What they share are few unknowns: one of the loads, one of the copper,
    one of each instrument; so the matrix to be solved is as small, however many readings."""
    names = {"copper": 0}
    for number in counted:
        names.setdefault(f"load {shared.loads[number]}", len(names))
        names.setdefault(f"meter {shared.instruments[number]}", len(names))
    size = len(names)
    matrix = [[0.0] * size for _ in range(size)]
    pulls = [0.0] * size
    log_size = distance = 0.0
    copper_deviation = math.sqrt(shared.copper_variance)
    load_deviations = [math.sqrt(one) for one in shared.load_variances]
    for number in counted:
        row, load = rows[number], shared.loads[number]
        variance = max(row.variance, LEAST_VARIANCE)
        log_size += math.log(variance)
        distance += row.off * row.off / variance
        told = (
            (0, row.copper * copper_deviation),
            (names[f"load {load}"], row.follows * load_deviations[load]),
            (names[f"meter {shared.instruments[number]}"], shared.gains[number]),
        )
        for one, by in told:
            weighted = by / variance
            pulls[one] += weighted * row.off
            for other, amount in told:
                matrix[one][other] += weighted * amount
    more_size, less = _unknowns(matrix, pulls)
    return _student(max(distance - less, 0.0), log_size + more_size, count=len(counted))


def _unknowns(matrix: list[list[float]], pulls: list[float]) -> tuple[float, float]:
    """What shared unknowns of variance one add to the size of the covariance (logarithm), and
    how much of the distance they explain: by the triangular root of one plus the matrix."""
    root: list[list[float]] = []
    solved: list[float] = []
    log_size = less = 0.0
    for number, pull in enumerate(pulls):
        line: list[float] = []
        for place in range(number):
            rest, above = matrix[number][place], root[place]
            for each in range(place):
                rest -= line[each] * above[each]
            line.append(rest / above[place])
        own, left = 1 + matrix[number][number], pull
        for each in range(number):
            own -= line[each] * line[each]
            left -= line[each] * solved[each]
        own = math.sqrt(max(own, LEAST_VARIANCE))
        line.append(own)
        root.append(line)
        solved.append(left / own)
        log_size += 2 * math.log(own)
        less += solved[-1] ** 2
    return log_size, less


LEAST_VARIANCE = 1e-12


def _student(distance: float, log_size: float, *, count: int) -> float:
    freedom = priors.DOUBT_FREEDOM
    return -0.5 * log_size - 0.5 * (freedom + count) * math.log1p(distance / freedom)

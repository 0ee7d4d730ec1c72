"""Two faults at once, tried where one cannot explain the readings; in steps, to be resumed.

The first is built into the circuit, and every second one is then weighed as cheaply as a
single fault is. Only those are tried as a first that explain most of the readings.
"""

import math
from collections.abc import Iterator, Sequence
from heapq import nlargest
from operator import itemgetter
from typing import NamedTuple

from pycore.calc import priors
from pycore.calc.evidence import Evidence, expected_by, rows_of
from pycore.calc.likelihood import Row, Shared, covariance, log_likelihoods
from pycore.calc.predict import Expected, look
from pycore.calc.second import NOT_PAIRED, Changed
from pycore.calc.suspects import key_of
from pycore.calc.weigh import Proof, Weighed, unmeasured

FIRSTS = 16
KEPT = 40
LOG = itemgetter(2)  # of a pair
MOST_LOG = 1e6  # so that what was handed back stays finite
MOST_SQUARED = 9.0  # of one reading: so that the one it does not explain does not count more


class Progress(NamedTuple):
    """How far the search has come: the next first fault, and the best pairs so far as numbers
    of two faults and their logarithm. `firsts` is how many there are."""

    next_first: int
    firsts: int
    kept: tuple[tuple[int, int, float], ...]

    @property
    def done(self) -> bool:
        """Whether all have been tried."""
        return self.next_first >= self.firsts


def firsts_of(weighed: Weighed, proof: Proof) -> list[int]:
    """The faults to try as a first: each the best of its kind and place, best first."""
    shared = proof.shared
    scored: dict[object, tuple[float, int]] = {}
    for number, fault in enumerate(weighed.faults):
        if fault.change.how in NOT_PAIRED:
            continue
        score = _explains(weighed.rows[number], shared)
        key = key_of(fault)
        if key not in scored or score < scored[key][0]:
            scored[key] = score, number
    return [number for _, number in sorted(scored.values())[:FIRSTS]]


def _explains(rows: Sequence[Row], shared: Shared) -> float:
    total = 0.0
    for number, row in enumerate(rows):
        if row.beyond and row.off <= 0:
            continue
        variance = covariance(rows, shared, one=number, other=number)
        total += min(row.off**2 / variance, MOST_SQUARED)
    return total


def search(weighed: Weighed, proof: Proof, *, so_far: Progress | None, budget: int) -> Progress:
    """Try more firsts with every second, for about `budget` weighings; at least one first,
    unless it goes on with a budget of nothing."""
    firsts = firsts_of(weighed, proof)
    kept = list(so_far.kept) if so_far else []
    place = so_far.next_first if so_far else 0
    spent = 0
    logs = weighed.priors
    total = log_total(logs)
    may_pair = [fault.change.how not in NOT_PAIRED for fault in weighed.faults]
    while place < len(firsts) and (spent < budget or (so_far is None and spent == 0)):
        first = firsts[place]
        pair_logs, _, _ = _seconds(first, weighed, proof=proof)
        pairs = [
            (first, second, pair_log + log_prior_of_two(logs[first], logs[second], total=total))
            for second, pair_log in enumerate(pair_logs)
            if may_pair[second] and weighed.faults[second].node != weighed.faults[first].node
        ]
        kept = nlargest(KEPT, _once([*kept, *nlargest(KEPT, pairs, key=LOG)]), key=LOG)
        spent += len(weighed.faults) * max(len(proof.evidence), 1)
        place += 1
    return Progress(place, len(firsts), tuple(kept))


def log_total(log_priors: Sequence[float]) -> float:
    """The logarithm of all single faults' weights together."""
    return math.log(math.fsum(math.exp(one) for one in log_priors))


def log_prior_of_two(first: float, second: float, *, total: float) -> float:
    """The logarithm of the weight of two faults, of their own: each is met by itself, and a
    second is as likely as `priors.SECOND_FAULT` of its own share."""
    return first - total + math.log(priors.SECOND_FAULT) + second


def _once(pairs: Sequence[tuple[int, int, float]]) -> list[tuple[int, int, float]]:
    """Each pair once, whichever of the two was tried first."""
    best: dict[tuple[int, int], tuple[int, int, float]] = {}
    for one in pairs:
        key = min(one[:2]), max(one[:2])
        if key not in best or one[2] > best[key][2]:
            best[key] = one
    return list(best.values())


Seconds = tuple[list[float], list[tuple[Expected, ...]], list[tuple[Row, ...]]]


def _seconds(first: int, weighed: Weighed, *, proof: Proof) -> Seconds:
    """Every fault beside a first one: its logarithm (no priors), what it makes of the readings."""
    faults = weighed.faults
    changed = Changed(proof.site.circuits, faults[first].change)
    evidence = [_with(one, changed, proof=proof) for one in proof.evidence]
    by_reading = [expected_by(one, faults) for one in evidence]
    row_lists = [
        rows_of(one, each, bias=proof.bias) for one, each in zip(evidence, by_reading, strict=True)
    ]
    expected = list(zip(*by_reading, strict=True))
    rows = list(zip(*row_lists, strict=True))
    shared = proof.shared
    more = unmeasured(faults, proof)
    own = more[first] - more[0]
    likely = log_likelihoods(rows, shared)
    logs = [log + each + own for log, each in zip(likely, more, strict=True)]
    return logs, expected, rows


def _with(one: Evidence, changed: Changed, *, proof: Proof) -> Evidence:
    """The same reading on the changed line; its baseline was taken before."""
    scope = look(
        changed,
        one.scope.condition,
        stand=one.scope.probe.stand,
        each_fraction=proof.site.each_fraction,
        rough=False,
    )
    return one._replace(scope=scope)


def with_pairs(weighed: Weighed, proof: Proof, *, found: Progress) -> Weighed:
    """The single faults and the best pairs, weighed together."""
    faults, logs = list(weighed.faults), list(weighed.logs)
    expected, rows = list(weighed.expected), list(weighed.rows)
    before = list(weighed.priors)
    total = log_total(weighed.priors)
    by_first: dict[int, list[tuple[int, float]]] = {}
    for first, second, log in _known(found.kept, count=len(weighed.faults)):
        by_first.setdefault(first, []).append((second, log))
    for first, seconds in by_first.items():
        _, all_expected, all_rows = _seconds(first, weighed, proof=proof)
        for second, log in seconds:
            faults.append(weighed.faults[first]._replace(also=weighed.faults[second]))
            logs.append(log)
            before.append(log_prior_of_two(before[first], before[second], total=total))
            expected.append(all_expected[second])
            rows.append(all_rows[second])
    return Weighed(faults, logs, before, expected, rows)


def _known(
    kept: Sequence[tuple[int, int, float]], *, count: int
) -> Iterator[tuple[int, int, float]]:
    """What was handed back may come from anywhere: only pairs of faults there are."""
    for first, second, log in kept:
        if 0 <= first < count and 0 <= second < count and first != second:
            yield first, second, min(log, MOST_LOG)

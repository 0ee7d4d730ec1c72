"""Do the readings agree: with any fault, and with each other."""

import math
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from pycore.calc.evidence import Evidence
from pycore.calc.likelihood import Row, Shared, covariance
from pycore.calc.weigh import Proof, Weighed

AGREES = 2.6  # deviations: one reading of a hundred is farther off by chance
APART = 3.5  # two readings that no fault brings closer than this exclude each other
TOLD = 200  # the likeliest faults are asked whether they explain everything


def misfit(rows: Sequence[Row], shared: Shared) -> float:
    """By how many deviations the worst reading is off."""
    return max((_off(rows, shared, number=number) for number in range(len(rows))), default=0.0)


def _off(rows: Sequence[Row], shared: Shared, *, number: int) -> float:
    row = rows[number]
    if row.beyond and row.off <= 0:
        return 0.0
    variance = covariance(rows, shared, one=number, other=number)
    return abs(row.off) / math.sqrt(variance)


def one_explains(weighed: Weighed, proof: Proof) -> bool:
    """Whether some fault that is not unlikely agrees with every reading."""
    shared = proof.shared
    best = sorted(range(len(weighed.logs)), key=lambda number: -weighed.logs[number])[:TOLD]
    return any(misfit(weighed.rows[number], shared) <= AGREES for number in best)


class Contradiction(NamedTuple):
    """Two readings (ids) that exclude each other. `same`: of one place, taken alike."""

    one: str
    other: str
    same: bool


def contradictions(weighed: Weighed, proof: Proof) -> list[Contradiction]:
    """Pairs of readings that cannot both be true of this line."""
    found = list(_same_place(proof.evidence))
    if found or len(proof.evidence) < 2 or one_explains(weighed, proof):
        return found
    shared = proof.shared
    count = len(proof.evidence)
    least = {(one, other): math.inf for one in range(count) for other in range(one)}
    alone = [math.inf] * count
    for rows in weighed.rows:
        off = [_off(rows, shared, number=number) for number in range(count)]
        alone = [min(pair) for pair in zip(alone, off, strict=True)]
        for pair, before in least.items():
            least[pair] = min(before, max(off[pair[0]], off[pair[1]]))
    for (one, other), off_by in least.items():
        if off_by > APART and max(alone[one], alone[other]) <= AGREES:
            ids = [proof.evidence[number].meant.taken.id for number in (other, one)]
            found.append(Contradiction(ids[0], ids[1], same=False))
    return found


def _same_place(evidence: Sequence[Evidence]) -> Iterator[Contradiction]:
    """Two readings of one place under the same circumstances that no tolerance joins."""
    for number, one in enumerate(evidence):
        for other in evidence[:number]:
            alike = one.meant.taken.setting == other.meant.taken.setting
            if not alike or one.kind == "volts":
                continue
            limit = math.log1p(one.meant.meter_fraction) + math.log1p(other.meant.meter_fraction)
            both = one.sign, other.sign
            off = abs(one.log_read - other.log_read)
            if both == ("number", "number"):
                for each in (one, other):
                    limit += math.log1p(each.meant.loose / (each.meant.value or 1.0))
            elif one.sign == other.sign:
                continue
            if off > limit:
                yield Contradiction(other.meant.taken.id, one.meant.taken.id, same=True)

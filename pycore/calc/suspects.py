"""Faults gathered into suspects: one family at one place, whatever its exact size."""

from collections.abc import Sequence
from typing import NamedTuple

from pycore.calc.faults import Fault
from pycore.calc.weigh import Weighed, shares_of

MOST_VARIANTS = 3

Key = tuple[str, int, str, int]


class Suspect(NamedTuple):
    """A family at a node (two of each where two faults are needed), with its share of all;
    `variants`: numbers of its likeliest faults, likeliest first."""

    key: Key
    share: float
    variants: tuple[int, ...]
    shares: tuple[float, ...]


def key_of(fault: Fault) -> Key:
    """What makes faults one suspect."""
    if fault.also is None:
        return fault.family, fault.node, "", -1
    return fault.family, fault.node, fault.also.family, fault.also.node


def gather(weighed: Weighed) -> list[Suspect]:
    """All suspects, likeliest first."""
    shares = shares_of(weighed.logs)
    members: dict[Key, list[int]] = {}
    for number, fault in enumerate(weighed.faults):
        members.setdefault(key_of(fault), []).append(number)
    suspects = []
    for key, numbers in members.items():
        numbers.sort(key=lambda number: -shares[number])
        best = tuple(numbers[:MOST_VARIANTS])
        whole = sum(shares[number] for number in numbers)
        suspects.append(Suspect(key, whole, best, tuple(shares[number] for number in best)))
    return sorted(suspects, key=lambda one: -one.share)


def thinned(suspects: Sequence[Suspect], *, most: int) -> list[Suspect]:
    """The likeliest half of `most` as they are, and of the rest an even sample that stands
    for it, shares and all: enough to choose a reading by."""
    if len(suspects) <= most:
        return [one for one in suspects if one.share > 0]
    kept = list(suspects[: most // 2])
    rest = suspects[most // 2 :]
    step = -(-len(rest) // (most - most // 2))
    by_place = sorted(rest, key=lambda one: (one.key[1], one.key))
    for start in range(0, len(by_place), step):
        some = by_place[start : start + step]
        best = max(some, key=lambda one: one.share)
        kept.append(best._replace(share=sum(one.share for one in some)))
    return [one for one in kept if one.share > 0]

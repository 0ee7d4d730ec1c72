"""The order of a list that two people changed."""

from collections.abc import Collection, Hashable, Sequence
from typing import TypeVar

One = TypeVar("One", bound=Hashable)


def is_order(cell: str) -> bool:
    """Whether a cell is the order of a list."""
    return cell.startswith("order")


def same_order(one: Sequence[One], other: Sequence[One]) -> bool:
    """Whether what both lists have stands in the same order in both."""
    both = set(one) & set(other)
    return [each for each in one if each in both] == [each for each in other if each in both]


def merged_order(
    first: Sequence[One], second: Sequence[One], *, kept: Collection[One]
) -> list[One]:
    """What is kept, in the order of the first list; what only the second has goes behind
    what stands before it there.

    Where the orders agree, keeping exactly what one list has gives exactly that list.
    """
    own = [each for each in first if each in kept]
    placed = set(own)
    behind: dict[One | None, list[One]] = {None: []}
    at: One | None = None
    for each in second:
        if each in placed:
            at = each
        elif each in kept:
            behind.setdefault(at, []).append(each)
    merged = list(behind[None])
    for each in own:
        merged += [each, *behind.get(each, ())]
    return merged

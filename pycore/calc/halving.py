"""A place found by halving what is left."""

from collections.abc import Callable

# Fifty halvings of a section leave less than a double can tell.
STEPS = 50


def halve(goes_on: Callable[[float], bool]) -> float:
    """Where from 0 to 1 it stops going on, by halving."""
    low, high = 0.0, 1.0
    for _ in range(STEPS):
        middle = (low + high) / 2
        if goes_on(middle):
            low = middle
        else:
            high = middle
    return (low + high) / 2

"""What a measurement gives: one named number with its unit."""

import json
import math
import statistics
from collections.abc import Sequence
from typing import NamedTuple


class Figure(NamedTuple):
    """One line of the result."""

    name: str
    value: float
    unit: str

    def write_line(self) -> str:
        """Write it for a machine."""
        return json.dumps({"name": self.name, "value": round(self.value, 3), "unit": self.unit})


def find_percentile(values: Sequence[float], share: float) -> float:
    """Give the value that this share of all values do not exceed."""
    ordered = sorted(values)
    return ordered[math.ceil(share * len(ordered)) - 1]


def summarize(name: str, milliseconds: Sequence[float]) -> list[Figure]:
    """Give the median and the 95th percentile of a series."""
    return [
        Figure(f"{name}, median", statistics.median(milliseconds), "ms"),
        Figure(f"{name}, 95th percentile", find_percentile(milliseconds, 0.95), "ms"),
    ]

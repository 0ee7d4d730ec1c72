"""How long a diagnosis takes through the door, for lines of many loudspeakers.

Processor time, so that what else the machine does counts less. A reading that no one fault
explains starts the search for two, which answers in pieces: the first piece is measured.
"""

import json
import time
from collections.abc import Iterator
from typing import Any

from pycore.door import handle
from tests.bench.figures import Figure
from tests.meter.asked import plain, reading
from tests.meter.test_large import large

SIZES = (20, 200, 2000)
REPEATS = 5
SECOND = {**reading(8.0), "id": "r2"}


def measure() -> Iterator[Figure]:
    """No reading, one, and two that exclude each other."""
    for count in SIZES:
        job = plain(large(count))
        middle = {**SECOND, "where": {"point": f"s{count // 2}"}}
        asked = {"no reading": [], "one reading": [reading(5.0)]}
        asked["two readings, first piece"] = [reading(5.0), middle]
        for name, readings in asked.items():
            yield Figure(f"{count:,} loudspeakers, {name}", _fastest_ms(job, readings), "ms")


def _fastest_ms(job: dict[str, Any], readings: list[dict[str, Any]]) -> float:
    body = {"job": job, "where": {"zone": "zone"}, "readings": readings}
    text = json.dumps({"n": 1, "ask": "diagnose", "body": body})
    times = []
    for _ in range(REPEATS):
        started = time.process_time()
        answer = handle(text)
        times.append(time.process_time() - started)
        assert '"body"' in answer
    return min(times) * 1000

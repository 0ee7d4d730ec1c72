"""How long the looks at a line take through the door: drawn, its cable chosen, what if.

Processor time, so that what else the machine does counts less.
"""

import json
import time
from collections.abc import Iterator
from typing import Any

from pycore.door import handle
from tests.bench.figures import Figure
from tests.bench.line import branching
from tests.samples.lines import make_job

SIZES = (20, 200, 2000)
REPEATS = 3


def measure() -> Iterator[Figure]:
    """Each ask of a line that branches, with a control every fifty."""
    for count in SIZES:
        job = make_job(branching(count)).model_dump(mode="json", by_alias=True, exclude_none=True)
        cable = job["kinds"]["cables"][-1]
        voltage = {"is": "voltage", "output": "o", "line_v": 100.0}
        other = {"is": "cable", "zone": "z", "sections": "all", "kind": cable}
        asks: dict[str, tuple[str, dict[str, Any]]] = {
            "drawn": ("drawing", {"zone": "z"}),
            "which cable": ("choose_cable", {"zone": "z"}),
            "how far it may run": ("longest_run", {"zone": "z"}),
            "what if another voltage": ("what_if", {"change": voltage}),
            "what if another cable": ("what_if", {"change": other}),
            "the loss worked out": ("working", {"finding": "zone_loss_db:z:override"}),
        }
        for name, (ask, body) in asks.items():
            yield Figure(f"{count:,} loudspeakers, {name}", _fastest_ms(ask, body, job=job), "ms")


def _fastest_ms(ask: str, body: dict[str, Any], *, job: dict[str, Any]) -> float:
    text = json.dumps({"n": 1, "ask": ask, "body": {"job": job, **body}})
    times = []
    for _ in range(REPEATS):
        started = time.process_time()
        answer = handle(text)
        times.append(time.process_time() - started)
        assert '"body"' in answer, answer[:200]
    return min(times) * 1000

"""Time every limit of a job inside the built runtime. Runs inside it.

ARGUMENT is JSON: {"job": a saved job as text, "rounds": how often}. Prints the milliseconds of
each round as JSON.
"""

import json
import time

from pycore.door import handle

task = json.loads(ARGUMENT)  # type: ignore[name-defined]  # noqa: F821
manner = {"language": "en", "length": "m", "decimal": ".", "today": "2026-11-25"}


def ask(name: str, body: object) -> str:
    """Ask the core one thing."""
    return handle(json.dumps({"n": 1, "ask": name, "manner": manner, "body": body}))


job = json.loads(ask("open_saved", {"text": task["job"]}))["body"]["job"]
milliseconds = []
for _ in range(task["rounds"]):
    started = time.perf_counter()
    answer = ask("findings", {"job": job})
    milliseconds.append((time.perf_counter() - started) * 1000)
    if not json.loads(answer)["body"]["findings"]:
        raise AssertionError("no finding for a job that has many")
print(json.dumps(milliseconds))

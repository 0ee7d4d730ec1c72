"""Jobs as they are taken over: two zones, and any of it may be missing."""

import random
from typing import Any

from pycore.jobs import Job
from tests.samples.lines import amplifier, cable_kinds, grow, make_line, read_job

CEILING: dict[str, Any] = {
    "id": "ceiling",
    "name": "ceiling",
    "taps": [{"w": w, "at_v": 70.7} for w in (1.25, 2.5, 5.0)] + [{"w": 5.0, "at_v": 100.0}],
}
DELIVERED: dict[str, Any] = {
    "id": "delivered",
    "name": "delivered",
    "tap_means": "delivered",
    "taps": [{"w": w, "at_v": 70.7} for w in (2.5, 5.0)],
}
ORDER = ("length_m", "cable", "tap", "kindless", "form", "insertion", "part", "off", "strap")


def make_patchy(chance: random.Random, count: int, *, gaps: float) -> Job:
    """A job of two zones with about `count` points each; `gaps`: how much is missing, 0 to 1."""
    zones: list[dict[str, Any]] = []
    for name in ("a", "b"):
        line = make_line(grow(chance, chance.randint(1, count)), prefix=name)
        for point in line:
            if chance.random() < gaps:
                _spoil(chance, point)
        zones.append({"id": f"z{name}", "name": name.upper(), "areas": [], "line": line})
    zones[0].update({"output": "o", "page_output": chance.choice([None, "o2"])})
    zones[1].update({"output": chance.choice(["o", "o2", None]), "loss_db": 1.0})
    rack = amplifier(70.7, chance.choice([None, 0.0, 2.0]))
    rack["outputs"].append({"id": "o2", "name": "Two", "line_v": chance.choice([70.7, 100.0])})
    kinds = {"cables": cable_kinds(), "loudspeakers": [CEILING, DELIVERED]}
    limits = {"loss_db": 0.5, "load_fraction": 0.8, "conductor_c": chance.choice([20.0, 45.0])}
    return read_job({"amplifiers": [rack], "zones": zones, "kinds": kinds, "limits": limits})


def _spoil(chance: random.Random, point: dict[str, Any]) -> None:
    """Take something away that may be missing, or make it odd."""
    what, fitted = chance.choice(ORDER), point["fitted"]
    if what in ("length_m", "cable"):
        point[what] = None
    elif what == "part":
        measured = chance.choice([{"ohm": 120.0}, {"w": 20.0}, {}])
        point["fitted"] = {"is": "existing", "label": "old part", **measured}
    elif fitted["is"] == "attenuator":
        fitted.update({"form": None} if what == "form" else {"insertion_db": None})
    elif fitted["is"] == "loudspeaker":
        kind = chance.choice(["ceiling", "delivered"])
        unknown = {"tap_w": None, "tap_at_v": None, "kind": None if what == "kindless" else kind}
        odd = {"off": {"connected": False}, "strap": {"direct_ohm": 8.0}}
        fitted.update(odd.get(what, unknown))

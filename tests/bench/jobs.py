"""Invented jobs of a given size, as a saved file: zones of fifty on one large output."""

import json
from typing import Any

ZONE_SIZE = 50
LINE_V = 70.7
TAP_W = 5.0


def write_job(count: int) -> str:
    """Write a job of `count` loudspeakers in chains, with an attenuator at the head of each."""
    zones = [
        make_zone(number, min(ZONE_SIZE, count - number * ZONE_SIZE))
        for number in range(-(-count // ZONE_SIZE))
    ]
    output = {"id": "o1", "name": "A", "line_v": LINE_V, "max_w": count * TAP_W * 1.5}
    job: dict[str, Any] = {
        "format": "rungline-job", "version": 1, "id": f"bench{count}", "name": f"{count}", "rev": 1,
        "limits": {"loss_db": 0.5, "load_fraction": 0.8, "conductor_c": 30.0},
        "kinds": {
            "cables": [{"id": "c1", "name": "1.5", "area_mm2": 1.5, "class": 5, "metal": "copper"}],
            "loudspeakers": [], "attenuators": [],
        },
        "amplifiers": [{"id": "a1", "name": "1", "pools": [], "outputs": [output]}],
        "zones": zones,
    }  # fmt: skip
    return json.dumps(job)


def make_zone(number: int, count: int) -> dict[str, Any]:
    """Make one chain: an attenuator, then loudspeakers eight metres apart."""
    head = f"z{number}w"
    wall = {"is": "attenuator", "set_db": 0.0, "off": False, "label": "wall",
            "rated_w": count * TAP_W * 1.5, "rated_at_v": LINE_V}  # fmt: skip
    line: list[dict[str, Any]] = [
        {"id": head, "after": None, "length_m": 10.0, "cable": "c1", "fitted": wall}
    ]
    for place in range(count):
        fitted = {"is": "loudspeaker", "tap_w": TAP_W, "tap_at_v": LINE_V, "connected": True,
                  "label": f"{number}.{place}"}  # fmt: skip
        line.append({"id": f"z{number}p{place}", "after": line[-1]["id"], "length_m": 8.0,
                     "cable": "c1", "fitted": fitted})  # fmt: skip
    return {"id": f"z{number}", "name": f"Zone {number}", "output": "o1", "areas": [], "line": line}

"""Invented jobs that travel: two amplifiers, zones by name, every length to a tenth of a metre."""

import json
import random
from collections.abc import Iterator
from itertools import count as count_up
from typing import Any

from pycore.ground.words import ENGLISH
from pycore.jobs import Job
from pycore.jobs.catalogue import attenuator_kinds, loudspeaker_kinds
from pycore.jobs.catalogue_cables import cable_kinds

Raw = dict[str, Any]
ROOMS = ("Foyer", "Corridor east", "Restaurant", "Hall 1", "Hall 2", "Kitchen", "Car park", "Gym")
SPOTS = ("door", "window", "bar", "till", "lift")
A_ZONE = 12


def make_traveller(loudspeakers: int, *, free_labels: bool, ticked: bool) -> Job:
    """A job of so many loudspeakers on random taps, the same each time.

    `free_labels`: each has a label of its own; else its zone's name and a number.
    """
    chance = random.Random(loudspeakers)
    ids = (f"m3q{number}" for number in count_up(2))
    amplifiers = [make_amplifier(number, ids) for number in (1, 2)]
    outputs = [output["id"] for amplifier in amplifiers for output in amplifier["outputs"]]
    zones: list[Raw] = []
    while loudspeakers > len(zones) * A_ZONE:
        size = min(A_ZONE, loudspeakers - len(zones) * A_ZONE)
        zone: Raw = {"id": next(ids), "name": name_room(len(zones))}
        zone["output"] = outputs[len(zones) % len(outputs)]
        zone["line"] = list(make_line(size, zone, ids=ids, chance=chance))
        zones.append(zone)
    points = [point for zone in zones for point in zone["line"]]
    for point in points if free_labels else ():
        point["fitted"]["label"] = label_freely(chance)
    ticks = [make_tick(point, chance) for point in points if ticked]
    return make_job(amplifiers, zones, ticks=ticks)


def name_room(number: int) -> str:
    """Name a zone."""
    turn, room = divmod(number, len(ROOMS))
    return ROOMS[room] if turn == 0 else f"{ROOMS[room]}, floor {turn}"


def label_freely(chance: random.Random) -> str:
    """Label a loudspeaker as somebody might."""
    riser, floor, number = chance.choice("ABCDEFGH"), chance.randint(1, 9), chance.randint(10, 99)
    return f"{riser}{floor}.{number} {chance.choice(SPOTS)}"


def make_amplifier(number: int, ids: Iterator[str]) -> Raw:
    """Make an amplifier with two outputs."""
    outputs = [
        {"id": next(ids), "name": name, "line_v": 100.0, "max_w": 250.0} for name in ("A", "B")
    ]
    return {"id": next(ids), "name": f"Amplifier {number}", "pools": [], "outputs": outputs}


def make_line(size: int, zone: Raw, *, ids: Iterator[str], chance: random.Random) -> Iterator[Raw]:
    """Make a chain of loudspeakers of one kind."""
    kind, taps = chance.choice(
        (("ceiling_6w", (1.5, 3.0, 6.0)), ("ceiling_20w", (2.5, 5.0, 10.0, 20.0)))
    )
    after = None
    for number in range(size):
        fitted = {"is": "loudspeaker", "kind": kind, "tap_w": chance.choice(taps)}
        fitted |= {"tap_at_v": 100.0, "label": f"{zone['name']} {number + 1}", "connected": True}
        length_m = round(chance.uniform(3, 15), 1)
        point = {"id": next(ids), "after": after, "length_m": length_m, "cable": "mm2_1_5"}
        yield point | {"fitted": fitted}
        after = point["id"]


def make_tick(point: Raw, chance: random.Random) -> Raw:
    """Tick a loudspeaker off at some moment of one month."""
    day, hour, minute = chance.randint(1, 28), chance.randint(7, 17), chance.randint(0, 59)
    tap = {name: point["fitted"][name] for name in ("tap_w", "tap_at_v")}
    at = f"2026-11-{day:02}T{hour:02}:{minute:02}:00Z"
    return {"point": point["id"], **tap, "at": at, "initials": "RK"}


def make_job(amplifiers: list[Raw], zones: list[Raw], *, ticks: list[Raw]) -> Job:
    """Put a job together with the kinds it uses."""
    names = ENGLISH["catalogue"]
    cables = [kind for kind in cable_kinds(names) if kind.id == "mm2_1_5"]
    ceilings = [kind for kind in loudspeaker_kinds(names) if kind.id.startswith("ceiling")]
    control = attenuator_kinds(names)[0]
    kinds: dict[str, list[Any]] = {
        "cables": cables, "loudspeakers": ceilings, "attenuators": [control],
    }  # fmt: skip
    raw = {
        "format": "rungline-job", "version": 1, "id": "m3q1", "name": "Harbour school",
        "place": "Ilverne", "rev": 87, "saved_at": "2026-11-25T10:31:00Z",
        "limits": {"loss_db": 0.5, "load_fraction": 0.8, "conductor_c": 30.0},
        "kinds": {
            family: [kind.model_dump(mode="json", by_alias=True) for kind in some]
            for family, some in kinds.items()
        },
        "amplifiers": amplifiers, "zones": zones, "ticks": ticks,
    }  # fmt: skip
    return Job.model_validate_json(json.dumps(raw))

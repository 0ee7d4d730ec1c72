"""A job taken apart for comparing: its things, and of each the values that change together.

A cell is what a person would change in one act: the tap with its voltage row, the place a
point hangs at, the name. Lists of things are not cells; their order is.
"""

from collections.abc import Iterator
from typing import Any, NamedTuple

from pycore.jobs import Closed, Job, Point
from pycore.jobs.fitted import Fitted

# field of what is fitted -> the cell it belongs to; a field that is not here is its own cell
TOGETHER = {
    **dict.fromkeys(("tap_w", "tap_at_v", "direct_ohm"), "tap"),
    **dict.fromkeys(("x_m", "y_m", "z_m"), "place_m"),
    **dict.fromkeys(("ohm", "hz", "w"), "measured"),
    **dict.fromkeys(("override", "override_sense"), "override"),
    **dict.fromkeys(("set_db", "off"), "setting"),
}
KINDS = {"cables": "cable", "loudspeakers": "loudspeaker", "attenuators": "attenuator"}
ORDER = "order"
# The ticks at one point are one thing under that point's id.
TICK, SIGNED = "tick", "signed"
Cells = dict[str, Any]


class Key(NamedTuple):
    """What a thing is, and its id; the job itself and its limits have none."""

    family: str
    id: str


class Thing(NamedTuple):
    """A thing with its cells, and what it is in, if it goes where that goes."""

    cells: Cells
    inside: Key | None


def take_apart(job: Job) -> dict[Key, Thing]:
    """All things of a job, in the order of their lists, supply before lines."""
    return dict(_things(job))


def _things(job: Job) -> Iterator[tuple[Key, Thing]]:
    lists = {"amplifiers": job.amplifiers, "areas": job.areas, "zones": job.zones}
    orders = {f"{ORDER}_{name}": _ids(some) for name, some in lists.items()}
    kinds = {f"{ORDER}_{name}": _ids(getattr(job.kinds, name)) for name in KINDS}
    own = {"name": job.name, "place": job.place, "notes": job.notes}
    yield Key("job", ""), Thing({**own, **_fields(job.limits), **orders, **kinds}, None)
    for name, family in KINDS.items():
        for kind in getattr(job.kinds, name):
            yield Key(family, kind.id), Thing({"definition": kind}, None)
    for amplifier in job.amplifiers:
        home = Key("amplifier", amplifier.id)
        order = {ORDER: _ids(amplifier.outputs)}
        yield home, Thing({**_fields(amplifier, "outputs"), **order}, None)
        for output in amplifier.outputs:
            cells = {"amplifier": amplifier.id, **_fields(output)}
            yield Key("output", output.id), Thing(cells, home)
    for area in job.areas:
        yield Key("area", area.id), Thing(_fields(area), None)
    yield from _of_zones(job)
    for reading in job.readings:
        yield Key("reading", reading.id), Thing({"definition": reading}, None)
    for point in dict.fromkeys(tick.point for tick in job.ticks):
        signed = tuple(tick for tick in job.ticks if tick.point == point)
        yield Key(TICK, point), Thing({SIGNED: signed}, None)


def _of_zones(job: Job) -> Iterator[tuple[Key, Thing]]:
    for zone in job.zones:
        home = Key("zone", zone.id)
        yield home, Thing({**_fields(zone, "line"), ORDER: _ids(zone.line)}, None)
        for point in zone.line:
            yield Key("point", point.id), Thing(_of_point(zone.id, point), home)


def _of_point(zone: str, point: Point) -> Cells:
    section = _fields(point, "after", "fitted")
    return {"hung": (zone, point.after), **section, **fitted_cells(point.fitted)}


def fitted_cells(fitted: Fitted) -> Cells:
    """What is fitted at a point, by cells; `is` says what it is."""
    cells: Cells = {"is": fitted.is_}
    for name in type(fitted).model_fields:
        if name == "is_":
            continue
        cell = TOGETHER.get(name, name)
        value = getattr(fitted, name)
        cells[cell] = (*cells.get(cell, ()), value) if name in TOGETHER else value
    return cells


def fitted_fields(cells: Cells, like: Fitted) -> dict[str, Any]:
    """The fields of a fitted thing from its cells; `like` is of the same sort."""
    fields: dict[str, Any] = {}
    groups = {name: iter(cells[name]) for name in set(TOGETHER.values()) & set(cells)}
    for name in type(like).model_fields:
        if name != "is_":
            fields[name] = next(groups[TOGETHER[name]]) if name in TOGETHER else cells[name]
    return fields


def _fields(model: Closed, *left_out: str) -> Cells:
    gone = {"id", *left_out}
    return {name: getattr(model, name) for name in type(model).model_fields if name not in gone}


def _ids(things: Any) -> tuple[str, ...]:
    return tuple(thing.id for thing in things)

"""Labels for points that come without one: the zone's name and the next number."""

import re
from collections.abc import Iterator

from pycore.edit.change import changed
from pycore.jobs import Point, Zone

# what goes between the zone's name and the number, so that one series never meets another
SERIES = {"loudspeaker": "", "attenuator": "A", "junction": "J", "existing": "E"}
# of a zone's name in a label, which may be 120 signs long itself
LONGEST_NAME = 110


def labelled(points: tuple[Point, ...], zone: Zone) -> tuple[Point, ...]:
    """The points, each that had an empty label now named after its zone."""
    counters = {kind: _numbers(zone, mark) for kind, mark in SERIES.items()}
    return tuple(
        point
        if point.fitted.label
        else changed(
            point,
            fitted=changed(point.fitted, label=next(counters[point.fitted.is_])),
        )
        for point in points
    )


def _numbers(zone: Zone, mark: str) -> Iterator[str]:
    """Labels of one series, from the number after the highest in use."""
    start = f"{zone.name[:LONGEST_NAME]} {mark}"
    pattern = re.compile(re.escape(start) + r"(\d{1,6})", re.ASCII)
    used = [pattern.fullmatch(point.fitted.label or "") for point in zone.line]
    number = max((int(found[1]) for found in used if found), default=0)
    while True:
        number += 1
        yield f"{start}{number}"

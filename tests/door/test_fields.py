"""A form shows what stands there now: each number of a face reads back as it is."""

from typing import Any

import pytest

from pycore.asks.see import see
from pycore.carry.saved import open_saved
from pycore.ground.units import Manner, read, unit_of
from tests.door.examples import FOLDER

MANNERS = [
    Manner("en", length, decimal, "2026-11-25") for length in ("m", "ft") for decimal in (".", ",")
]


def value_at(thing: Any, name: str) -> float:
    """The number a dotted field of a thing names; what is fitted stands in for its point."""
    head, _, rest = name.partition(".")
    if head.isdigit():
        return value_at(thing[int(head)], rest)
    value = getattr(thing, head, None)
    if value is None:
        value = getattr(thing.fitted, head)
    return value_at(value, rest) if rest else float(value)


@pytest.mark.parametrize("manner", MANNERS, ids=str)
@pytest.mark.parametrize("name", ["everything", "typical"])
def test_every_number_of_a_face_reads_back_as_it_is(name: str, manner: Manner) -> None:
    job = open_saved((FOLDER / f"{name}.json").read_text(encoding="utf-8"))
    faces = see(job, manner)["faces"]
    things: dict[str, Any] = {one.id: one for one in job.amplifiers}
    things |= {one.id: one for one in job.zones}
    things |= {one.id: one for amplifier in job.amplifiers for one in amplifier.outputs}
    things |= {one.id: one for zone in job.zones for one in zone.line}
    checked = 0
    for place, thing in {**things, "": job.limits}.items():
        face = faces["things"][place] if place else faces["job"]
        for field, text in face.get("fields", {}).items():
            number = read(text, unit_of(field) or "", manner=manner)
            assert number == pytest.approx(value_at(thing, field), rel=1e-6), (place, field)
            checked += 1
    assert checked > 20

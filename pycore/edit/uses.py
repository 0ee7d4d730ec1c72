"""What the changes of a side lean on: the output a zone is landed on, the point behind which
another hangs. Taking such a thing out on the other side cannot go unasked.

Kinds are left aside: a merge takes along every kind it needs.
"""

from collections.abc import Collection, Iterator

from pycore.edit.both_states import States
from pycore.edit.cells import Cells, Key


def used_by(states: States, clashing: Collection[Key]) -> set[Key]:
    """Everything that some change leans on; of things in a clash, all that they lean on."""
    used: set[Key] = set()
    for things in (states.mine, states.theirs):
        for key, thing in things.items():
            before = (states.base or {}).get(key)
            if before == thing and key not in clashing:
                continue
            old: Cells = {} if before is None or key in clashing else before.cells
            new = {name: it for name, it in thing.cells.items() if old.get(name) != it}
            used.update(_leans_on(new))
    return used


def _leans_on(cells: Cells) -> Iterator[Key]:
    for name in ("output", "page_output"):
        if cells.get(name) is not None:
            yield Key("output", cells[name])
    if "amplifier" in cells:
        yield Key("amplifier", cells["amplifier"])
    for area in cells.get("areas", ()):
        yield Key("area", area)
    if "hung" in cells:
        zone, after = cells["hung"]
        yield Key("zone", zone)
        if after is not None:
            yield Key("point", after)

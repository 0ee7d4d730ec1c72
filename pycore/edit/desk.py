"""A merge at work: both sides, which of them each change is taken from, and what comes of it."""

from collections.abc import Collection, Iterator, Mapping
from typing import Any, NamedTuple

from pycore.edit.cells import KINDS, Cells, Key
from pycore.edit.compare import FITTED, OF_THE_SECTION, THERE, Sides, Things, is_covered
from pycore.edit.order import merged_order
from pycore.jobs import Job

Models = Mapping[Key, Any]


class Desk(NamedTuple):
    """Both sides taken apart, their models by key, the side of each change, and all things
    of which something is taken from theirs."""

    sides: Sides
    models: tuple[Models, Models]
    picks: Mapping[tuple[Key, str], str]
    touched: Collection[Key]

    def theirs(self, key: Key, cell: str) -> bool:
        """Whether a change is taken from theirs; where both say the same, it is not."""
        return self.picks.get((key, cell)) == "theirs"

    def has(self, key: Key) -> bool:
        """Whether a thing is in the merged job."""
        if key in self.sides.mine and key in self.sides.theirs:
            return True
        has = self.sides.owner(key)[0]
        home = has[key].inside
        if home is not None and is_covered(key, self.sides):
            return self.has(home)
        return self.theirs(key, THERE) == (has is self.sides.theirs)

    def keys(self, family: str) -> Iterator[Key]:
        """The things of a family that are in the merged job."""
        every = dict.fromkeys((*self.sides.mine, *self.sides.theirs))
        return (key for key in every if key.family == family and self.has(key))

    def cells(self, key: Key) -> Cells:
        """The cells of a thing, each from the side it is taken from."""
        mine, theirs = self.sides.mine.get(key), self.sides.theirs.get(key)
        if mine is None or theirs is None:
            return self.sides.owner(key)[0][key].cells
        whole = (key, FITTED) in self.picks
        like = theirs.cells if self.theirs(key, FITTED) else mine.cells
        return {
            name: theirs.cells[name]
            if self.theirs(key, FITTED if whole and name not in OF_THE_SECTION else name)
            else mine.cells[name]
            for name in like
        }

    def model(self, key: Key, cell: str) -> Any:
        """The model of a thing on the side a cell of it is taken from."""
        mine, theirs = self.models
        if key in mine and key in theirs:
            return theirs[key] if self.theirs(key, cell) else mine[key]
        return mine[key] if key in mine else theirs[key]

    def is_mine_throughout(self, key: Key) -> bool:
        """Whether a thing of mine is taken as it is."""
        return key in self.sides.mine and key not in self.touched

    def order(self, key: Key, cell: str, *, kept: Collection[str]) -> list[str]:
        """A list in its merged order."""
        orders = [_order(side, key, cell=cell) for side in (self.sides.mine, self.sides.theirs)]
        if self.theirs(key, cell):
            orders.reverse()
        return merged_order(orders[0], orders[1], kept=kept)


def _order(side: Things, key: Key, *, cell: str) -> tuple[str, ...]:
    found: tuple[str, ...] = side[key].cells[cell] if key in side else ()
    return found


def models_of(job: Job) -> dict[Key, Any]:
    """Everything of a job by its key."""
    found: dict[Key, Any] = {Key("job", ""): job}
    for name, family in KINDS.items():
        found.update((Key(family, kind.id), kind) for kind in getattr(job.kinds, name))
    for amplifier in job.amplifiers:
        found[Key("amplifier", amplifier.id)] = amplifier
        found.update((Key("output", output.id), output) for output in amplifier.outputs)
    found.update((Key("area", area.id), area) for area in job.areas)
    for zone in job.zones:
        found[Key("zone", zone.id)] = zone
        found.update((Key("point", point.id), point) for point in zone.line)
    found.update((Key("reading", reading.id), reading) for reading in job.readings)
    return found

"""Two states of a job side by side, thing by thing and cell by cell.

With the state both grew from, each change has an owner: mine, theirs, both (alike) or a
clash. Without it, two values only differ, and a person chooses.
"""

from collections.abc import Iterator, Mapping
from typing import Any, Literal, NamedTuple

from pycore.edit.cells import SIGNED, TICK, Cells, Key, Thing, take_apart
from pycore.edit.order import is_order, merged_order, same_order
from pycore.edit.signed import signed_at, taken_back
from pycore.edit.uses import used_by
from pycore.jobs import Job

Side = Literal["mine", "theirs", "both", "clash", "differs"]
THERE, FITTED, IS = "there", "fitted", "is"
HOMES = ("amplifier", "zone")
OF_THE_SECTION = ("hung", "length_m", "cable", "joint_ohm")
Things = Mapping[Key, Thing]


class Nothing:
    """A value that is not there at all, which is not the same as one not known."""

    def __repr__(self) -> str:
        """For the reader of a failed test."""
        return "nothing"


NOTHING = Nothing()


class Change(NamedTuple):
    """One difference: where, in which cell, whose it is, and the values on each side.

    For the cell `there` the values say whether the thing is there. `base` is NOTHING when
    the state both grew from is not known, or had no such thing.
    """

    key: Key
    cell: str
    side: Side
    mine: Any
    theirs: Any
    base: Any

    @property
    def id(self) -> str:
        """Its name, the same whenever these states are compared."""
        return f"{self.key.family}.{self.key.id}.{self.cell}"

    @property
    def must_choose(self) -> bool:
        """Whether a merge needs a person to choose; an order nobody agrees on stays as mine."""
        return self.side in ("clash", "differs") and not is_order(self.cell)

    @property
    def usual(self) -> Literal["mine", "theirs"]:
        """Which side a merge takes when nobody says otherwise."""
        return "theirs" if self.side == "theirs" else "mine"


class Sides(NamedTuple):
    """Both states taken apart, and the one they grew from when it is known."""

    mine: Things
    theirs: Things
    base: Things | None

    def was(self, key: Key) -> Thing | None:
        """The thing in the state both grew from."""
        return None if self.base is None else self.base.get(key)

    def owner(self, key: Key) -> tuple[Things, Things]:
        """Of a thing only one side has: the side that has it, and the one that lacks it."""
        return (self.mine, self.theirs) if key in self.mine else (self.theirs, self.mine)


def take_sides(mine: Job, theirs: Job, *, base: Job | None) -> Sides:
    """Both states, and the third, taken apart."""
    before = None if base is None else take_apart(base)
    return Sides(take_apart(mine), take_apart(theirs), before)


def compare(sides: Sides) -> tuple[Change, ...]:
    """Every difference between two states. A reading or tick that only one has is none,
    unless the state both grew from had it too: then the other took it out."""
    keys = merged_order(list(sides.mine), list(sides.theirs), kept={*sides.mine, *sides.theirs})
    return _with_uses([change for key in keys for change in _of_thing(key, sides)], sides)


def is_covered(key: Key, sides: Sides) -> bool:
    """Whether a thing only one side has goes with what it is in, which only that side has too."""
    has, lacks = sides.owner(key)
    home = has[key].inside
    return key not in lacks and home is not None and home not in lacks


def _of_thing(key: Key, sides: Sides) -> Iterator[Change]:
    if key.family == TICK:
        yield from _of_ticks(key, sides)
    elif key in sides.mine and key in sides.theirs:
        yield from _of_cells(key, sides)
    elif not is_united(key, sides) and not is_covered(key, sides):
        here, was = key in sides.mine, sides.was(key) is not None
        before = NOTHING if sides.base is None else was
        yield Change(key, THERE, _side_there(key, sides), here, not here, before)


def is_united(key: Key, sides: Sides) -> bool:
    """Whether a thing that only one side has is added to the other without a word."""
    return key.family == "reading" and sides.was(key) is None


def _of_ticks(key: Key, sides: Sides) -> Iterator[Change]:
    """The ticks at one point: a difference only where a side took one back that both had."""
    gone_here, gone_there = taken_back(key, sides)
    if gone_here or gone_there:
        side: Side = "clash" if gone_here and gone_there else "mine" if gone_here else "theirs"
        mine, theirs, before = (
            signed_at(key, some) for some in (sides.mine, sides.theirs, sides.base or {})
        )
        yield Change(key, SIGNED, side, mine, theirs, before)


def _side_there(key: Key, sides: Sides) -> Side:
    """Whose change it is that only one side has a thing."""
    if sides.base is None:
        return "differs"
    if sides.was(key) is None:
        return "mine" if key in sides.mine else "theirs"
    if not _is_as_before(key, sides):
        return "clash"
    return "theirs" if key in sides.mine else "mine"


def _is_as_before(key: Key, sides: Sides) -> bool:
    """Whether a thing the other side took out, with all that went with it, was left alone."""
    has, lacks = sides.owner(key)
    inside: list[Key] = []
    if key.family in HOMES:
        inside = [one for one, thing in has.items() if thing.inside == key and one not in lacks]
    return all(sides.was(one) == has[one] for one in (key, *inside))


def _of_cells(key: Key, sides: Sides) -> Iterator[Change]:
    mine, theirs = sides.mine[key].cells, sides.theirs[key].cells
    if mine == theirs and (sides.base is None or sides.was(key) is None):
        return
    was = sides.was(key)
    before: Cells = {} if was is None else was.cells
    if mine.get(IS) != theirs.get(IS):
        mine, theirs, before = _whole(mine), _whole(theirs), _whole(before) if before else {}
    for cell, value in mine.items():
        then = before.get(cell, NOTHING)
        side = _side(cell, (value, theirs[cell], then), known=sides.base is not None)
        if side is not None:
            yield Change(key, cell, side, value, theirs[cell], then)


def _whole(cells: Cells) -> Cells:
    """The cells of a point with all that is fitted there as one."""
    section = {name: value for name, value in cells.items() if name in OF_THE_SECTION}
    return {**section, FITTED: {name: it for name, it in cells.items() if name not in section}}


def _side(cell: str, values: tuple[Any, Any, Any], *, known: bool) -> Side | None:
    """Whose change a cell's values show; None when there is none to speak of."""
    mine, theirs, before = values
    alike = same_order if is_order(cell) else _equal
    if alike(mine, theirs):
        changed_alike = before is not NOTHING and not is_order(cell) and before != mine
        return "both" if changed_alike else None
    if before is NOTHING:
        return "clash" if known else "differs"
    if alike(before, mine):
        return "theirs"
    return "mine" if alike(before, theirs) else "clash"


def _equal(one: Any, other: Any) -> bool:
    return bool(one == other)


def _with_uses(changes: list[Change], sides: Sides) -> tuple[Change, ...]:
    """Taking out what the other side newly uses is a clash, and so is what that needs in turn."""
    if sides.base is None:
        return tuple(changes)
    while True:
        used = used_by(sides, {change.key for change in changes if change.side == "clash"})
        marked = [
            change._replace(side="clash")
            if _is_taken_out(change) and change.key in used
            else change
            for change in changes
        ]
        if marked == changes:
            return tuple(changes)
        changes = marked


def _is_taken_out(change: Change) -> bool:
    return change.cell == THERE and change.base is True and change.side != "clash"

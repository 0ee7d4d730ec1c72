"""Ticks in a comparison of two states: which were taken back, and which a merge keeps.

A tick has no id and is never corrected: it is made, replaced or taken back. One that both
states grew from and one of them lacks was taken back there, unless it could not stand there
any more: then its tap was changed, which is a change of its own and brings no more with it.
"""

from collections.abc import Mapping

from pycore.edit.both_states import States, Things
from pycore.edit.cells import SIGNED, TICK, Key
from pycore.jobs import Tick

Ticks = tuple[Tick, ...]


def signed_at(key: Key, things: Things) -> Ticks:
    """The ticks at a point in one state."""
    ticks: Ticks = things[key].cells[SIGNED] if key in things else ()
    return ticks


def taken_back(key: Key, states: States) -> tuple[Ticks, Ticks]:
    """Of the ticks at a point: theirs that I took back, and mine that they took back."""
    before = signed_at(key, states.base or {})
    mine, theirs = signed_at(key, states.mine), signed_at(key, states.theirs)
    return (
        tuple(one for one in theirs if one in before and _took_back(one, mine, things=states.mine)),
        tuple(
            one for one in mine if one in before and _took_back(one, theirs, things=states.theirs)
        ),
    )


def merged_ticks(states: States, picks: Mapping[tuple[Key, str], str]) -> Ticks:
    """The ticks of both, mine first, without those that were taken back on the side taken."""
    every = dict.fromkeys((*states.mine, *states.theirs))
    kept: list[Tick] = []
    for key in every:
        if key.family == TICK:
            gone = taken_back(key, states)[picks.get((key, SIGNED)) == "theirs"]
            both = dict.fromkeys((*signed_at(key, states.mine), *signed_at(key, states.theirs)))
            kept += [one for one in both if one not in gone]
    return tuple(kept)


def _took_back(tick: Tick, own: Ticks, *, things: Things) -> bool:
    """Whether a state lacks a tick that could stand there."""
    point = things.get(Key("point", tick.point))
    if tick in own or point is None:
        return False
    return point.cells.get("tap") == (tick.tap_w, tick.tap_at_v, None)

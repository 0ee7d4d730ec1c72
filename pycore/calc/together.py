"""Alike faults at several places that nothing read so far tells apart, told as one.

Six loudspeakers of which each may be the dead one are six groups, since the next reading can
tell them apart; but what has been read says one thing only, that one of the six is dead. Split
up, none of them would ever lead the list, however likely they are together.
"""

from collections.abc import Sequence
from typing import NamedTuple

from pycore.calc.diagnosis import Diagnosis, Group
from pycore.calc.next_measurement import LOG_TWENTY

# What befalls a line as a whole, or nothing at all, is never one of several places.
WHOLE = ("healthy", "head_open", "cable", "wrong_zone")


class Bundle(NamedTuple):
    """Groups (by their number in a diagnosis) that are led by one kind of fault and agree with
    everything read and heard about as well; `share`: of all of them together."""

    family: str
    share: float
    groups: tuple[int, ...]


def bundled(told: Diagnosis) -> tuple[Bundle, ...]:
    """The groups of a diagnosis in bundles, likeliest first."""
    fits: list[float] = []
    members: list[list[int]] = []
    leads: dict[str, list[int]] = {}
    for number, group in enumerate(told.groups):
        family, fit = _led_by(told, group)
        place = next((one for one in leads.get(family, ()) if _alike(fits[one], fit)), None)
        if place is None:
            leads.setdefault(family, []).append(len(members))
            fits.append(fit)
            members.append([number])
        else:
            members[place].append(number)
    made = (_bundle(told, numbers) for numbers in members)
    return tuple(sorted(made, key=lambda one: -one.share))


def _alike(one: float, other: float) -> bool:
    return abs(one - other) <= LOG_TWENTY


def _led_by(told: Diagnosis, group: Group) -> tuple[str, float]:
    """The kind that leads a group, and how well what is known fits it (logarithm)."""
    suspect = told.suspects[group.suspects[0]]
    best = suspect.variants[0]
    family = suspect.key[0]
    if family in WHOLE or suspect.key[2]:
        family = f"{suspect.key}"
    return family, told.weighed.logs[best] - told.weighed.priors[best]


def _bundle(told: Diagnosis, numbers: Sequence[int]) -> Bundle:
    lead = told.suspects[told.groups[numbers[0]].suspects[0]]
    family = "two" if lead.key[2] else lead.key[0]
    return Bundle(family, sum(told.groups[one].share for one in numbers), tuple(numbers))

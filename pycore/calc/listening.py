"""What one look around would tell: which pattern of loudspeakers plays how, for every suspect.

Two patterns are confused the more the fewer loudspeakers tell them apart, and the worse ears
tell the two ways of playing (half the square of Bhattacharyya's coefficient as the odds of taking
one for the other, which lies between its bounds; from memory).
"""

import math
from collections.abc import Mapping, Sequence
from itertools import accumulate, pairwise
from typing import NamedTuple

from pycore.calc.belief import APART, KIND_VARIANCE, Holding
from pycore.calc.hearing import HEARD, Ears, Plays
from pycore.calc.information import Guess

MOST_PATTERNS = 40
LEAST = 1e-3
ALIKE: Mapping[tuple[Plays, Plays], float] = {
    (one, other): -math.log(
        sum(math.sqrt(HEARD[one][how] * HEARD[other][how]) for how in HEARD[one])
    )
    for one in HEARD
    for other in HEARD
}


class Pattern(NamedTuple):
    """How the loudspeaker at a node, those beyond it (up to `end`) and all others play."""

    node: int
    end: int
    own: Plays
    beyond: Plays
    others: Plays

    def at(self, node: int) -> Plays:
        """How one at a node plays."""
        if node == self.node:
            return self.own
        return self.beyond if self.node < node < self.end else self.others


class Room:
    """The loudspeakers of a zone, counted, so that patterns are quickly compared."""

    def __init__(self, ears: Ears, start: int) -> None:
        wired = ears.site.circuits.wired
        self.ears, self.first, self.last = ears, start, start + wired.sizes[start]
        self.sizes = wired.sizes
        inside = range(self.first, self.last)
        self.counts = [
            0, *accumulate(int(wired.fitted(node) == "loudspeaker") for node in inside)
        ]  # fmt: skip

    def count(self, node: int, end: int) -> int:
        """How many loudspeakers lie from a node up to another."""
        return self.counts[end - self.first] - self.counts[node - self.first]

    def pattern(self, one: Holding) -> Pattern:
        """How it would sound; what is not in this zone leaves it as it is."""
        fault = one.fault._replace(also=None)
        own, beyond, others = self.ears.playing(fault)
        node = fault.node
        if not self.first <= node < self.last:
            return Pattern(self.first, self.first, "well", "well", "well")
        end = node + self.sizes[node]
        if self.count(node, node + 1) == 0:
            own = beyond  # a home run, a control or a junction makes no sound itself
        return self._plain(Pattern(node, end, own, beyond, others))

    def _plain(self, one: Pattern) -> Pattern:
        """Patterns that sound the same, told in the same way."""
        rest = self.count(self.first, self.last) - self.count(one.node, one.end)
        if rest == 0 and one.own == one.beyond:
            return Pattern(self.first, self.last, one.own, one.own, one.own)
        if self.count(one.node, one.end) <= 1 and one.end > one.node:
            one = one._replace(beyond=one.others)
        if one.own == one.beyond == one.others:
            return Pattern(self.first, self.last, one.own, one.own, one.own)
        return one._replace(end=one.node + 1) if one.beyond == one.others else one

    def apart(self, one: Pattern, other: Pattern) -> float:
        """How well two patterns are told apart."""
        cuts = {self.first, self.last}
        for each in (one, other):
            cuts |= {each.node, min(each.node + 1, self.last), each.end}
        ordered = sorted(cuts)
        return math.fsum(
            self.count(start, end) * ALIKE[one.at(start), other.at(start)]
            for start, end in pairwise(ordered)
        )


def listened(held: Sequence[Holding], room: Room) -> tuple[list[Guess], list[Pattern]]:
    """Guesses of a look around: each suspect's pattern, and what it may be taken for; their
    middles number the patterns."""
    mine = [room.pattern(one) for one in held]
    shares: dict[Pattern, float] = {}
    for one, pattern in zip(held, mine, strict=True):
        shares[pattern] = shares.get(pattern, 0.0) + one.share
    patterns = sorted(shares, key=lambda one: -shares[one])[:MOST_PATTERNS]
    taken_for = {one: _taken_for(one, patterns, room=room) for one in patterns}
    guesses = [
        Guess(APART * number, KIND_VARIANCE, one.share * odds, one.suspect)
        for one, pattern in zip(held, mine, strict=True)
        if pattern in taken_for
        for number, odds in taken_for[pattern]
    ]
    return guesses, patterns


def _taken_for(one: Pattern, patterns: Sequence[Pattern], *, room: Room) -> list[tuple[int, float]]:
    """The numbers of the patterns it may be taken for, with the odds."""
    odds = [
        1.0 if one == other else 0.5 * math.exp(-2 * room.apart(one, other)) for other in patterns
    ]
    total = math.fsum(odds)
    return [(number, each / total) for number, each in enumerate(odds) if each >= LEAST * total]

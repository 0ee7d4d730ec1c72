"""The next reading to take: the one that tells most of which suspect it is, for its cost."""

import math
from collections.abc import Sequence
from typing import NamedTuple

from pycore.calc import earth
from pycore.calc.belief import APART, LEGS, Holding, Meter, guess
from pycore.calc.candidates import Test
from pycore.calc.fill import RECTANGLE
from pycore.calc.information import LOG_OPEN, Guess, bits_told, deviation_of
from pycore.calc.listening import Pattern, Room, listened
from pycore.calc.suspects import Suspect
from pycore.calc.weigh import Proof

# What taking and typing a reading costs by itself, in walks to the rack. With 1.0, readings that
# tell little were asked for because one stood there anyhow (DEVELOPERS.md has the figures).
A_READING = 2.0
LEAST_BITS = 0.03  # a reading that tells less is not worth a walk
TOLD_APART = 2.0  # deviations between two readings that are told apart
MOST_OUTCOMES = 5
HARDLY = 0.01  # of an answer that is a kind: suspects less likely than this are not named with it
RESOLVED_BY_EYE = ("earthed",)  # no reading of impedance sees it; one to earth does


class Asked(NamedTuple):
    """A test with what each held fault would make it read, and the bits it would tell.

    `kinds`: where answers are no numbers, what the middles (`APART` apart) stand for.
    """

    test: Test
    guesses: list[Guess]
    bits: float
    kinds: tuple[Pattern | earth.Leg, ...] = ()


class Outcome(NamedTuple):
    """One range the reading may fall in (ohm, or share of the near volts), or one kind of
    answer; how likely, and the suspects it would leave."""

    low: float
    high: float
    share: float
    suspects: tuple[int, ...]
    kind: Pattern | earth.Leg | None = None


class Next(NamedTuple):
    """The chosen test and what each outcome would mean. `then`: the place to read right after
    it, where the test by itself says nothing (volts near the amplifier, then far)."""

    test: Test
    bits: float
    outcomes: tuple[Outcome, ...]
    then: str = ""


def ask_all(
    held: Sequence[Holding], tests: Sequence[Test], *, proof: Proof, meter: Meter
) -> list[Asked]:
    """Every test, with what it would tell."""
    asked = []
    for test in tests:
        kinds: tuple[Pattern | earth.Leg, ...] = LEGS if test.quantity == "earth_ohm" else ()
        if test.quantity == "plays":
            guesses, patterns = listened(held, Room(proof.ears, test.stand.node))
            kinds = tuple(patterns)
        else:
            guesses = guess(held, test, proof=proof, meter=meter)
        asked.append(Asked(test, guesses, bits_told(guesses), kinds))
    return asked


def choose(asked: Sequence[Asked]) -> Next | None:
    """The test that tells most for its cost; None when none tells enough."""
    worth = [one for one in asked if one.bits >= LEAST_BITS]
    best = max(worth, key=lambda one: one.bits / (one.test.cost + A_READING), default=None)
    if best is None:
        return None
    outcomes = kinds_of(best) if best.kinds else outcomes_of(best.guesses)
    return Next(best.test, best.bits, outcomes)


def kinds_of(asked: Asked) -> tuple[Outcome, ...]:
    """Answers that are no numbers: each kind by itself, likeliest first."""
    found = []
    for number, kind in enumerate(asked.kinds):
        some = [one for one in asked.guesses if one.middle == APART * number and one.share > 0]
        least = HARDLY * math.fsum(one.share for one in some)
        if some:
            some = [one for one in some if one.share >= least]
            found.append(_outcome(some, low=0.0, high=0.0)._replace(kind=kind))
    return tuple(sorted(found, key=lambda one: -one.share)[:MOST_OUTCOMES])


def outcomes_of(guesses: Sequence[Guess]) -> tuple[Outcome, ...]:
    """The guesses that bear nearly all odds in order, parted at the widest gaps that a meter
    can tell apart; the few odds left over join the outcome they lie in or nearest to."""
    deviation = deviation_of(guesses)
    ordered = sorted(guesses, key=_middle)
    core = _core(ordered)
    gaps = [
        (_middle(core[place]) - _middle(core[place - 1]), place)
        for place in range(1, len(core))
        if _middle(core[place]) - _middle(core[place - 1]) > TOLD_APART * deviation
    ]
    cuts = sorted(place for _, place in sorted(gaps)[-(MOST_OUTCOMES - 1) :])
    spans = [
        (_middle(core[start]), _middle(core[end - 1]))
        for start, end in zip([0, *cuts], [*cuts, len(core)], strict=True)
    ]
    members: list[list[Guess]] = [[] for _ in spans]
    for one in ordered:
        members[_nearest(_middle(one), spans)].append(one)
    reach = RECTANGLE * deviation
    return tuple(
        _outcome(some, low=low - reach, high=high + reach)
        for some, (low, high) in zip(members, spans, strict=True)
    )


def _middle(one: Guess) -> float:
    return min(one.middle, LOG_OPEN)


def _core(ordered: Sequence[Guess]) -> list[Guess]:
    """The fewest guesses that bear nearly all odds, in the order given."""
    total = math.fsum(one.share for one in ordered)
    kept: set[int] = set()
    summed = 0.0
    for number in sorted(range(len(ordered)), key=lambda each: -ordered[each].share):
        if summed >= NEARLY_ALL * total:
            break
        summed += ordered[number].share
        kept.add(number)
    return [one for number, one in enumerate(ordered) if number in kept]


NEARLY_ALL = 0.97


def _nearest(middle: float, spans: Sequence[tuple[float, float]]) -> int:
    away = [max(low - middle, middle - high, 0.0) for low, high in spans]
    return away.index(min(away))


def _outcome(some: Sequence[Guess], *, low: float, high: float) -> Outcome:
    by_suspect: dict[int, float] = {}
    for one in some:
        by_suspect[one.suspect] = by_suspect.get(one.suspect, 0.0) + one.share
    return Outcome(
        math.exp(low),
        math.inf if high >= LOG_OPEN else math.exp(high),
        math.fsum(one.share for one in some),
        tuple(sorted(by_suspect, key=lambda each: -by_suspect[each])),
    )


def group(
    suspects: Sequence[Suspect], asked: Sequence[Asked], *, so_far: Sequence[float]
) -> list[list[int]]:
    """Suspects that no reading told apart or could tell apart, together; likeliest first.

    `so_far`: for each suspect, how well it agrees with the readings taken (logarithm).
    """
    middles = [_middles(one.guesses) for one in asked]
    limits = [TOLD_APART * deviation_of(one.guesses) for one in asked]
    groups: list[list[int]] = []
    for number, one in enumerate(suspects):
        for members in groups:
            leader = members[0]
            families = {one.key[0], suspects[leader].key[0]}
            if families & set(RESOLVED_BY_EYE) or abs(so_far[leader] - so_far[number]) > LOG_TWENTY:
                continue
            apart = (
                abs(each.get(number, math.inf) - each.get(leader, -math.inf)) > limit
                for each, limit in zip(middles, limits, strict=True)
            )
            if not any(apart):
                members.append(number)
                break
        else:
            groups.append([number])
    return groups


LOG_TWENTY = math.log(20.0)


def _middles(guesses: Sequence[Guess]) -> dict[int, float]:
    """For each suspect the middle of its likeliest variant."""
    best: dict[int, Guess] = {}
    for one in guesses:
        if one.suspect not in best or one.share > best[one.suspect].share:
            best[one.suspect] = one
    return {suspect: min(one.middle, LOG_OPEN) for suspect, one in best.items()}

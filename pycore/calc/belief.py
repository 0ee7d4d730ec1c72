"""What is believed after the readings so far, ready to be asked about the next one."""

import math
from collections.abc import Sequence
from typing import NamedTuple

from pycore.calc import earth, priors
from pycore.calc.candidates import Test
from pycore.calc.faults import Fault
from pycore.calc.information import LOG_OPEN, Guess
from pycore.calc.likelihood import Row, Shared
from pycore.calc.predict import Expected, expect_all, look
from pycore.calc.probe import Stand
from pycore.calc.reading import Meant
from pycore.calc.second import Changed
from pycore.calc.suspects import Suspect
from pycore.calc.volts import expect_volts
from pycore.calc.weigh import Proof, Weighed
from pycore.calc.wiring import DIRECT_HZ, TEST_HZ, Condition

ALWAYS_HELD = 24  # the likeliest, whatever their share: they are grouped by what is asked of them
LEAST_SHARE = 1e-6  # suspects less likely than this have no say in which reading comes next


class Holding(NamedTuple):
    """One fault still held possible: its share, its suspect's number, and what the readings
    say, if it is the one, of all loudspeakers reading high alike (ln, and variance)."""

    fault: Fault
    share: float
    suspect: int
    bias: float
    bias_variance: float


def hold(weighed: Weighed, proof: Proof, *, suspects: Sequence[Suspect]) -> list[Holding]:
    """The variants of the suspects, each with what it makes of the loudspeakers; but not of
    those too unlikely to have a say."""
    shared = proof.shared
    held = []
    for number, one in enumerate(suspects):
        if number >= ALWAYS_HELD and one.share < LEAST_SHARE:
            continue
        inside = math.fsum(one.shares) or 1.0
        for variant, share in zip(one.variants, one.shares, strict=True):
            if share <= 0.01 * inside:
                continue
            bias, variance = _bias(weighed.rows[variant], shared, proof=proof)
            fault = weighed.faults[variant]
            held.append(Holding(fault, one.share * share / inside, number, bias, variance))
    return held


def _bias(rows: Sequence[Row], shared: Shared, *, proof: Proof) -> tuple[float, float]:
    """By how much all loudspeakers read high, given the readings: one unknown, by least squares."""
    known = 1 / proof.load_variance if proof.load_variance > 0 else 1e12
    weight, pull = known, 0.0
    for number, row in enumerate(rows):
        if row.beyond or shared.loads[number]:
            continue
        noise = row.variance + shared.gains[number] ** 2
        noise += row.copper**2 * shared.copper_variance
        weight += row.follows**2 / noise
        pull += row.follows * row.off / noise
    return proof.bias + pull / weight, 1 / weight


class Meter(NamedTuple):
    """What the next reading will be taken with: its tolerance, and the baselines there are."""

    fraction: float
    references: Sequence[Meant]
    conductor_c: float


def guess(held: Sequence[Holding], test: Test, *, proof: Proof, meter: Meter) -> list[Guess]:
    """What the test would read, for each fault held possible."""
    if test.quantity == "earth_ohm":
        return _guess_legs(held, test, proof=proof)
    direct = test.quantity == "dc_ohm"
    condition = Condition(DIRECT_HZ if direct else TEST_HZ, test.controls, meter.conductor_c)
    expected = expect_held(proof, held, condition=condition, test=test)
    own = meter.fraction**2 / 3
    if test.quantity == "volts":
        return _guess_volts(held, expected, proof=proof, own=own)
    sharp = any(one.taken.setting == test.setting for one in meter.references)
    windings = proof.shared.load_variances[1] if direct else 0.0
    copper_variance = proof.site.copper_fraction**2
    guesses = []
    for one, each in zip(held, expected, strict=True):
        log_ohm, follows, variance = each
        loose = priors.METER_OHM / math.exp(min(log_ohm, LOG_OPEN))
        spread = own + loose**2 / 3 + variance
        if sharp:
            spread = priors.REPEAT_PCT**2 / 3e4 + loose**2 / 3
        else:
            log_ohm += follows * one.bias
            spread += follows**2 * (one.bias_variance + windings)
            spread += (1 - follows) ** 2 * copper_variance
        guesses.append(Guess(log_ohm, spread, one.share, one.suspect))
    return guesses


def _guess_volts(
    held: Sequence[Holding], expected: Sequence[Expected], *, proof: Proof, own: float
) -> list[Guess]:
    """Far volts against near ones: the meter's scale falls out, its chance does not."""
    copper_variance = proof.site.copper_fraction**2
    return [
        Guess(
            log_share + follows * one.bias,
            own + variance + follows**2 * (one.bias_variance + copper_variance),
            one.share,
            one.suspect,
        )
        for one, (log_share, follows, variance) in zip(held, expected, strict=True)
    ]


def _guess_legs(held: Sequence[Holding], test: Test, *, proof: Proof) -> list[Guess]:
    """A leg to earth reads good, damp or bad; `LEGS` says which middle stands for which."""
    condition = Condition(TEST_HZ, test.controls, proof.site.job.limits.conductor_c)
    probe = proof.site.circuits.probe(condition, test.stand)
    guesses = []
    for one in held:
        for middle, leg in enumerate(LEGS):
            log_odds = earth.log_likelihood(one.fault, [earth.Leakage(leg, probe)])
            share = one.share * math.exp(log_odds)
            guesses.append(Guess(APART * middle, KIND_VARIANCE, share, one.suspect))
    return guesses


LEGS: tuple[earth.Leg, ...] = ("bad", "damp", "good")
# Answers that are no numbers stand as middles so far apart, ten deviations, that none is taken
# for another; below zero, where no reading of ohms is cut off as open.
APART, KIND_VARIANCE = -1.0, 0.01


def expect_held(
    proof: Proof, held: Sequence[Holding], *, condition: Condition, test: Test
) -> list[Expected]:
    """What each held fault, or pair of faults, would make a test read."""
    site = proof.site
    found: list[Expected | None] = [None] * len(held)
    firsts: dict[Fault | None, list[int]] = {}
    for number, one in enumerate(held):
        first = None if one.fault.also is None else one.fault._replace(also=None)
        firsts.setdefault(first, []).append(number)
    for first, numbers in firsts.items():
        circuits = site.circuits if first is None else Changed(site.circuits, first.change)
        volts = test.quantity == "volts"
        stand = Stand(0, "out", frozenset(), bare=False) if volts else test.stand
        scope = look(
            circuits, condition, stand=stand, each_fraction=site.each_fraction, rough=not volts
        )
        faults = [held[number].fault.also or held[number].fault for number in numbers]
        each_of = expect_volts(scope, test.stand.node, faults=faults) if volts else None
        for number, each in zip(numbers, each_of or expect_all(scope, faults), strict=True):
            found[number] = each
    return [each for each in found if each is not None]

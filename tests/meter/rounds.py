"""A fault on a line, and three ways to find it: by the tool, by halving, by walking the line.

The truth is a circuit with the fault built in, loudspeakers that differ from nominal and a
meter that errs; none of the three sees anything but its readings.
"""

import math
import random
from typing import Any, NamedTuple

from pycore.calc.candidates import Test
from pycore.calc.circuits import Circuits
from pycore.calc.diagnosis import Diagnosis, Question, Step, diagnose, faults_of
from pycore.calc.faults import Fault
from pycore.calc.network import Network
from pycore.calc.priors import COSTS, FAMILY_WEIGHTS
from pycore.calc.probe import Stand
from pycore.calc.reading import OPEN_FROM_OHM, Taken
from pycore.calc.second import Changed
from pycore.calc.site import Given, Site, site_of
from pycore.calc.suspects import key_of
from pycore.calc.wiring import DIRECT_HZ, TEST_HZ, Condition
from pycore.jobs import Job
from tests.meter.lines import AWG_16, job_of, speaker

CONDITION = Condition(1000.0, "open", 20.0)
WHERE = {"zone": "zone"}
SHOWS_UP_TO_OHM = 20_000.0
FAMILIES = ("dead", "tap", "direct", "extra", "extra_low", "cut", "short", "joint")
MOST_READINGS = 40
BUDGET = 20_000
# Only ohms: halving and walking, beside which the tool is put, do not listen either.
BY_METER = COSTS._replace(listen=None, tone=None, earth=None)


class Case(NamedTuple):
    """A line, what is wrong with it, and how far readings may be off (per cent). `complaint`:
    somebody said something that names no fault."""

    job: Job
    site: Site
    fault: Fault
    pct: float
    seed: int
    complaint: str | None = "something_wrong"


class Truth(Circuits):
    """The line as it is: faulty, its loudspeakers each a little off."""

    def __init__(self, case: Case, chance: random.Random) -> None:
        super().__init__(case.site.circuits.wired)
        reach = case.pct / 100
        self.base = case.site.circuits
        self.fault = case.fault
        self.factors = [1 + chance.uniform(-reach, reach) for _ in self.wired.ids]

    def network(self, condition: Condition) -> Network:
        """The circuit with its own loudspeakers and the fault."""
        network = self.base.network(condition)
        loads = tuple(
            load_s / factor for load_s, factor in zip(network.load_s, self.factors, strict=True)
        )
        own = Circuits(self.wired)
        own._networks[condition] = network._replace(load_s=loads)
        return Changed(own, self.fault.change).network(condition)


class Meter:
    """Reads the truth anywhere, each time off by up to its tolerance."""

    def __init__(self, case: Case) -> None:
        self.chance = random.Random(case.seed)
        self.truth = Truth(case, self.chance)
        self.pct = case.pct
        self.count = 0

    def read(self, stand: Stand) -> float:
        """Ohms at a stand, or more than it shows."""
        return self._read(CONDITION, stand)

    def read_test(self, test: Test) -> float:
        """Ohms of a reading that was asked for."""
        hz = DIRECT_HZ if test.quantity == "dc_ohm" else TEST_HZ
        return self._read(CONDITION._replace(hz=hz), test.stand)

    def _read(self, condition: Condition, stand: Stand) -> float:
        self.count += 1
        seen_s = abs(self.truth.probe(condition, stand).seen_s)
        reach = self.pct / 100
        ohm = (1 / seen_s if seen_s > 1e-12 else math.inf) * (
            1 + self.chance.uniform(-reach, reach)
        )
        return ohm if ohm <= SHOWS_UP_TO_OHM else OPEN_FROM_OHM


def random_line(count: int, chance: random.Random) -> Job:
    """A line of so many loudspeakers: mostly a chain, with branches here and there."""
    tap_w = chance.choice([1.25, 2.5, 5.0]) if count > 20 else chance.choice([2.5, 5.0, 7.5])
    points: list[dict[str, Any]] = []
    for number in range(1, count + 1):
        after: str | None = f"s{number - 1}" if number > 1 else None
        if number > 3 and chance.random() < 0.08:
            after = f"s{chance.randrange(1, number)}"
        length_m = round(chance.uniform(20, 60) if number == 1 else chance.uniform(3, 15), 1)
        points.append(
            speaker(number, after=after, tap_w=tap_w, at_v=70.7, length_m=length_m, cable="pair")
        )
    return job_of(points, line_v=70.7, cable=AWG_16)


def random_case(seed: int, *, count: int, pct: float) -> Case:
    """A random line with one random fault, drawn as often as such faults are met."""
    chance = random.Random(seed)
    job = random_line(count, chance)
    site = site_of(job, WHERE, given=Given(pct, None))
    faults = [one for one in faults_of(site) if one.family in FAMILIES]
    family = chance.choices(FAMILIES, [FAMILY_WEIGHTS[one] for one in FAMILIES])[0]
    members = [one for one in faults if one.family == family]
    fault = chance.choices(members, [one.weight for one in members])[0]
    return Case(job, site, fault, pct, seed)


class Found(NamedTuple):
    """How a round ended: whether it said where, whether it had what is wrong first (`right`)
    and where (`same_box`), what it took in readings and ladders, and the share it gave."""

    said: bool
    right: bool
    same_box: bool
    readings: int
    ladders: int
    share: float


def taken_of_test(number: int, value: float, *, pct: float, test: Test) -> Taken:
    """A reading of a test that was asked for."""
    return Taken(
        id=f"r{number}",
        at="2026-01-01",
        place=test.place,
        looking=test.stand.looking,
        lifted=test.lifted,
        quantity=test.quantity,
        value=value,
        controls=test.controls,
        tolerance_pct=pct,
        temperature_c=20.0,
        instrument="meter",
        baseline=False,
    )


def by_the_tool(case: Case, *, to_the_end: bool) -> Found:
    """Ask, and measure what is asked for, until the box is known (or, to the end, what is
    wrong there), or until nothing tells more."""
    meter = Meter(case)
    taken: list[Taken] = []
    ladders = 0
    while True:
        told = diagnose(question_of(case, taken), Step(None, BUDGET))
        known = told.settled or (told.box is not None and not to_the_end)
        if known or told.next is None or len(taken) >= MOST_READINGS:
            break
        test = told.next.test
        if case.site.circuits.wired.points[test.stand.node] is not None:
            ladders += (not taken or taken[-1].place != test.place) + test.opened
        value = meter.read_test(test)
        taken.append(taken_of_test(len(taken), value, pct=case.pct, test=test))
    return found_by(case, told, readings=len(taken), ladders=ladders)


def question_of(case: Case, taken: list[Taken]) -> Question:
    """What the tool is asked after these readings."""
    given = Given(case.pct, None)
    return Question(case.job, WHERE, tuple(taken), (), given, case.complaint, BY_METER)


def found_by(case: Case, told: Diagnosis, *, readings: int, ladders: int) -> Found:
    """How a round of the tool ended."""
    top = told.groups[0]
    keys = [told.suspects[each].key for each in top.suspects]
    right = key_of(case.fault) in keys
    box = case.fault.node == told.box or (told.box is None and right)
    said = told.settled or told.box is not None
    return Found(said, right, box, readings, ladders, top.share)


def by_halving(case: Case) -> Found:
    """Plain halving: at the box in the middle of what is left, look outward, compare with what
    it should read; when the last box is not it, walk the line in order."""
    wired, meter = case.site.circuits.wired, Meter(case)
    limit = math.log(1 + 2 * case.pct / 100)
    left = set(range(2, len(wired.ids)))
    while len(left) > 1:
        middle = min(
            (node for node in left if node != min(left)),
            key=lambda node: abs(2 * len(left & set(wired.beyond(node))) - len(left)),
        )
        stand = Stand(middle, "out", frozenset(), bare=False)
        expected = 1 / abs(case.site.circuits.probe(CONDITION, stand).seen_s)
        off = abs(math.log(min(meter.read(stand), SHOWS_UP_TO_OHM) / expected)) > limit
        beyond = left & set(wired.beyond(middle))
        left = beyond if off else left - beyond
    meter.count += 1
    box = min(left)
    right = case.fault.node == box or wired.parents[case.fault.node] == box
    walked = 0 if right else case.fault.node - 1
    return Found(True, right, right, meter.count + walked, meter.count + walked, 1.0)


def by_walking(case: Case) -> Found:
    """Box after box from the amplifier, one reading each, until the faulty one."""
    return Found(True, True, True, case.fault.node - 1, case.fault.node - 1, 1.0)

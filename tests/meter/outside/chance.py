"""Random faults on random lines as they are met, worked out by ngspice.

By laws that the tool does not use: it takes every tolerance as a limit within which all is
equally likely. Here the loudspeakers of a line lie to one side together by a triangular law,
each differs from that by another, a meter is off by one factor in all it reads and shows three
digits, and what is wrong has any size. How often which kind of fault is met is the tool's own
list, common practice: with other frequencies no odds could be right.
"""

import math
import random
from typing import Any, NamedTuple

from pycore.calc.candidates import Test
from pycore.calc.diagnosis import Diagnosis, Question, Step, diagnose
from pycore.calc.fill import usual_taps_w
from pycore.calc.priors import CABLE_FACTORS, FAMILY_WEIGHTS, HEALTHY_WITH_COMPLAINT
from pycore.calc.reading import OPEN_FROM_OHM, Taken
from pycore.calc.site import Given
from pycore.jobs import Job
from tests.meter.lines import AWG_16, job_of, speaker
from tests.meter.outside.spice import HEALTHY, Asked, Injected, MeterAt, SpiceLine, read_each
from tests.meter.outside.test_injected import LINE_A
from tests.meter.rounds import BY_METER, taken_of_test

METER_PCT, LOAD_PCT = 5.0, 10.0
GAIN, LAST_OHM = 0.045, 0.1
SHOWS_UP_TO_OHM = 20_000.0
SQUARE_V = 70.7**2
WEIGHTS = {
    family: FAMILY_WEIGHTS[family]
    for family in (
        "dead", "tap", "direct", "extra", "extra_low", "cut", "head_open", "short", "joint",
        "cable", "wet", "earthed",
    )
} | {"healthy": HEALTHY_WITH_COMPLAINT}  # fmt: skip
DIRECT_HZ = 1e-3  # direct current, where ngspice wants a frequency


class Real(NamedTuple):
    """A line as the job says it is, as it really is (at 1 kHz and to an ohmmeter), and what is
    wrong: for ngspice, and as the tool calls it."""

    job: Job
    line: SpiceLine
    direct: SpiceLine
    fault: Injected
    key: tuple[str, int, str, int]
    gain: float


def real_line(seed: int) -> Real:
    """One line with one fault."""
    chance = random.Random(seed)
    count, tap_w = chance.randint(4, 16), chance.choice([2.5, 5.0, 7.5])
    after = [0] + [
        chance.randint(1, number) if chance.random() < 0.1 else number for number in range(1, count)
    ]
    metres = [float(chance.randint(10, 50))] + [
        float(chance.randint(3, 20)) for _ in range(1, count)
    ]
    points: list[dict[str, Any]] = [
        speaker(
            number, after=f"s{above}" if above else None, tap_w=tap_w, at_v=70.7,
            length_m=length_m, cable="pair",
        )
        for number, (above, length_m) in enumerate(zip(after, metres, strict=True), start=1)
    ]  # fmt: skip
    job = job_of(points, line_v=70.7, cable=AWG_16)
    alike = 1 + chance.triangular(-LOAD_PCT, LOAD_PCT) / 100
    ohms = [
        SQUARE_V / tap_w * alike * (1 + chance.triangular(-LOAD_PCT, LOAD_PCT) / 100)
        for _ in range(count)
    ]
    windings = chance.triangular(0.02, 0.10)
    line = LINE_A._replace(after=tuple(after), metres=tuple(metres), ohms=tuple(ohms))
    direct = line._replace(ohms=tuple(one * windings for one in ohms))
    family = chance.choices(list(WEIGHTS), list(WEIGHTS.values()))[0]
    at = chance.randint(1, count)
    if family == "short":
        at = chance.choices(range(1, count + 1), metres)[0]
    fault = _fault(family, at, line=line, tap_w=tap_w, chance=chance)
    return Real(job, line, direct, fault, _key(job, family, at), chance.uniform(-GAIN, GAIN))


def _key(job: Job, family: str, at: int) -> tuple[str, int, str, int]:
    """As the tool calls it: node 0 is the output, 1 the zone, then its points as they hang."""
    if family == "healthy":
        return family, 0, "", -1
    if family in ("head_open", "cable"):
        return family, 1, "", -1
    nodes = node_of(job)
    return family, nodes[f"s{at}"], "", -1


def node_of(job: Job) -> dict[str, int]:
    """The node of each loudspeaker, in the order the tool hangs them."""
    order: dict[str, int] = {}
    waiting = [one for one in job.zones[0].line if one.after is None]
    while waiting:
        point = waiting.pop(0)
        order[point.id] = len(order) + 2
        waiting = [one for one in job.zones[0].line if one.after == point.id] + waiting
    return order


def _fault(
    family: str, at: int, *, line: SpiceLine, tap_w: float, chance: random.Random
) -> Injected:
    """What a kind of fault is in ohms, of any size that is met."""
    about = chance.uniform(0.9, 1.1)
    others = [one for one in usual_taps_w(70.7) if one != tap_w]
    made = {
        "tap": Injected("load", at, line.ohms[at - 1] * tap_w / chance.choice(others)),
        "direct": Injected("load", at, 8.0 * about),
        "extra": Injected("beside", at, SQUARE_V / tap_w * about),
        "extra_low": Injected("beside", at, 8.0 * about),
        "wet": Injected("beside", at, math.exp(chance.uniform(math.log(500), math.log(3e4)))),
        "short": Injected("short", at, max(0.0, chance.uniform(-3.0, 3.0)), chance.random()),
        "joint": Injected("joint", at, _joint_ohm(line, at, loss_db=chance.uniform(0.5, 12.0))),
        "cable": Injected("cable", 0, chance.choice([factor for factor, _ in CABLE_FACTORS])),
        "dead": Injected("dead", at),
        "cut": Injected("cut", at),
    }
    return made.get(family, HEALTHY)


def _joint_ohm(line: SpiceLine, at: int, *, loss_db: float) -> float:
    """The ohms that cost so much of the level beyond a loudspeaker."""
    beyond = {at}
    for number, above in enumerate(line.after, start=1):
        if above in beyond:
            beyond.add(number)
    load_ohm = 1 / math.fsum(1 / line.ohms[number - 1] for number in beyond)
    return float(load_ohm * (10 ** (loss_db / 20) - 1))


class Trial:
    """One line, its readings so far, and what the tool says of them."""

    def __init__(self, seed: int) -> None:
        self.real = real_line(seed)
        self.taken: list[Taken] = []
        self.test: Test | None = None
        self.numbers = {node: int(one[1:]) for one, node in node_of(self.real.job).items()}

    def ask(self) -> Diagnosis:
        """What the tool says now; `test` is what it wants read next."""
        given = Given(LOAD_PCT, None)
        question = Question(
            self.real.job,
            {"zone": "zone"},
            tuple(self.taken),
            (),
            given,
            "something_wrong",
            BY_METER,
        )
        told = diagnose(question, Step(None, 1))
        self.test = told.next.test if told.next else None
        return told

    def wanted(self) -> Asked:
        """The reading the tool wants, for ngspice."""
        assert self.test is not None
        stand = self.test.stand
        at = self.numbers.get(stand.node, 0)
        lifted = frozenset(self.numbers[node] for node in stand.lifted)
        line = self.real.direct if self.test.quantity == "dc_ohm" else self.real.line
        return Asked(line, self.real.fault, MeterAt(at, stand.looking, lifted, stand.bare))

    def take(self, ohm: float) -> None:
        """Write down what the meter shows of so many ohms."""
        assert self.test is not None
        if self.real.key[0] == "head_open" and self.test.stand.node == 0:
            ohm = OPEN_FROM_OHM
        shown = float(f"{ohm * (1 + self.real.gain):.3g}")
        shown = OPEN_FROM_OHM if shown > SHOWS_UP_TO_OHM else round(shown, 1)
        self.taken.append(taken_of_test(len(self.taken), shown, pct=METER_PCT, test=self.test))


class First(NamedTuple):
    """What a first group was given, whether it had the fault, after how many readings."""

    share: float
    right: bool
    readings: int
    key: tuple[str, int, str, int]
    first: tuple[tuple[str, int, str, int], ...]


def follow(seeds: range, *, most: int) -> list[First]:
    """Follow the tool on every line, all of them a reading at a time, so that ngspice is
    started once a reading. Each line's first group is noted after each reading."""
    trials = [Trial(seed) for seed in seeds]
    found = []
    going = trials
    for count in range(most + 1):
        left = []
        for trial in going:
            told = trial.ask()
            keys = tuple(told.suspects[each].key for each in told.groups[0].suspects)
            if count:
                found.append(
                    First(told.groups[0].share, trial.real.key in keys, count, trial.real.key, keys)
                )
            if trial.test is not None:
                left.append(trial)
        going = left
        for hz, quantity in ((1000.0, "z_1k_ohm"), (DIRECT_HZ, "dc_ohm")):
            some = [trial for trial in going if trial.test and trial.test.quantity == quantity]
            for trial, ohm in zip(
                some, read_each([trial.wanted() for trial in some], hz=hz), strict=True
            ):
                trial.take(ohm)
    return found

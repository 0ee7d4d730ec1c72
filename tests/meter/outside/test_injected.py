"""Faults built into a netlist, read by ngspice, and handed to the tool.

The fault must stand in the first group; where the tolerance cannot tell it from others, it
must be among those the tool says agree. Which that is, is worked out here: every fault of
the list below is read by ngspice too, and those whose readings all lie within the tolerance
of the injected one's cannot be told from it.
"""

import math
from typing import NamedTuple

import pytest

from pycore.calc.agreement import AGREES, misfit
from pycore.calc.diagnosis import Diagnosis, Question, Step, diagnose
from pycore.calc.priors import COSTS
from pycore.calc.probe import Looking
from pycore.calc.reading import OPEN_FROM_OHM, Taken
from pycore.calc.site import Given
from pycore.jobs import Job
from tests.meter.lines import line_a
from tests.meter.outside.spice import HEALTHY, Injected, MeterAt, SpiceLine, read_many

TAP_OHM = 70.7**2 / 5
LINE_A = SpiceLine(
    after=tuple(range(10)),
    metres=(30.0, *[10.0] * 9),
    ohms=(TAP_OHM,) * 10,
    # 16 AWG by ASTM B258, 2 % for stranding, 1/58 Ω·mm²/m (IEC 60028), out and back
    loop_ohm_per_m=2 * 1.02 / 58 / (math.pi / 4 * (0.127 * 92 ** (20 / 39)) ** 2),
    henry_per_m=0.63e-6,
    farad_per_m=63e-12,
)
METERS = [MeterAt(), MeterAt(at=10, looking="back"), MeterAt(at=5)]


class Named(NamedTuple):
    """An injected fault and what the tool calls it."""

    fault: Injected
    family: str


def at_each(at: int) -> list[Named]:
    """One of each kind at one loudspeaker."""
    return [
        Named(Injected("dead", at), "dead"),
        Named(Injected("load", at, TAP_OHM / 2), "tap"),
        Named(Injected("load", at, TAP_OHM * 2), "tap"),
        Named(Injected("load", at, 8.0), "direct"),
        Named(Injected("beside", at, TAP_OHM), "extra"),
        Named(Injected("beside", at, 8.0), "extra_low"),
        Named(Injected("cut", at), "cut"),
        Named(Injected("short", at, 0.0, 0.3), "short"),
        Named(Injected("joint", at, 100.0), "joint"),
    ]


INJECTED = [Named(HEALTHY, "healthy"), *at_each(1), *at_each(5), *at_each(6), *at_each(10)]
KINDS = sorted({one.family for one in INJECTED})


def sizes_at(at: int) -> list[Injected]:
    """The kinds that have a size, in many sizes: a joint's and a short's ohms, a load's."""
    joints = [Injected("joint", at, 4.0 * 1.25**step) for step in range(30)]
    loads = [Injected("load", at, 4.0 * 1.25**step) for step in range(30)]
    shorts = [
        Injected("short", at, ohm, place)
        for ohm in (0.0, 0.3, 1.0, 3.0, 10.0)
        for place in (0.1, 0.3, 0.5, 0.7, 0.9)
    ]
    return [*joints, *loads, *shorts]


@pytest.fixture(scope="module")
def readings() -> dict[Injected, list[float]]:
    """What every fault makes the three meters read, by ngspice."""
    faults = [HEALTHY]
    for at in range(1, 11):
        faults += [one.fault for one in at_each(at)] + sizes_at(at)
    values = read_many(LINE_A, faults, METERS, hz=1000.0)
    return dict(zip(faults, values, strict=True))


def asked(job: Job, values: list[float], *, pct: float) -> Diagnosis:
    """The tool on these readings."""
    places: list[tuple[str, Looking]] = [("zone", "out"), ("s10", "back"), ("s5", "out")]
    taken = tuple(
        Taken(
            id=f"r{number}", at="2026-01-01", place=place, looking=looking, lifted=(),
            quantity="z_1k_ohm", value=min(value, OPEN_FROM_OHM), controls="open",
            tolerance_pct=pct, temperature_c=20.0, instrument="meter", baseline=False,
        )
        for number, (value, (place, looking)) in enumerate(zip(values, places, strict=True))
    )  # fmt: skip
    given = Given(0.0, None)
    question = Question(job, {"zone": "zone"}, taken, (), given, None, COSTS)
    return diagnose(question, Step(None, 10**9))


def alike(readings: dict[Injected, list[float]], fault: Injected, *, pct: float) -> list[Injected]:
    """The faults of other kinds or places whose every reading lies within the tolerance of this
    one's, and itself; above 20 kΩ a meter shows no difference, and below an ohm its last digit
    counts."""
    own = readings[fault]
    found = []
    for other, values in readings.items():
        if other != fault and (other.kind, other.at) == (fault.kind, fault.at):
            continue
        pairs = [(min(a, 2e4), min(b, 2e4)) for a, b in zip(own, values, strict=True)]
        if all(abs(math.log(a / b)) <= math.log1p(pct / 100) + 0.1 / min(a, b) for a, b in pairs):
            found.append(other)
    return found


def check(readings: dict[Injected, list[float]], one: Named, *, pct: float) -> bool:
    """Whether the fault stands first, or cannot be told and agrees; which of the two."""
    told = asked(line_a(), readings[one.fault], pct=pct)
    node = told.site.circuits.wired.node_of[f"s{one.fault.at}"] if one.fault.at else 0
    key = (one.family, node, "", -1)
    first = [told.suspects[number].key for number in told.groups[0].suspects]
    suspect = next(each for each in told.suspects if each.key == key)
    agrees = min(
        misfit(told.weighed.rows[number], told.proof.shared) for number in suspect.variants
    )
    assert agrees <= AGREES, (one, suspect.share, agrees)
    lonely = len(alike(readings, one.fault, pct=pct)) == 1
    assert key in first or not lonely, (one, first)
    return key in first


@pytest.mark.parametrize("pct", [2.0, 10.0])
@pytest.mark.parametrize("kind", KINDS)
def test_what_was_built_into_the_netlist_is_found(
    readings: dict[Injected, list[float]], kind: str, pct: float
) -> None:
    for one in INJECTED:
        if one.family == kind:
            check(readings, one, pct=pct)


def test_sharp_readings_put_most_faults_first(readings: dict[Injected, list[float]]) -> None:
    first = [check(readings, one, pct=0.5) for one in INJECTED]
    assert sum(first) >= 0.6 * len(first)


def test_a_fault_that_stands_alone_is_met_among_those_injected(
    readings: dict[Injected, list[float]],
) -> None:
    alone = [one for one in INJECTED if len(alike(readings, one.fault, pct=2.0)) == 1]
    assert len(alone) >= 4  # else the check above would let everything pass

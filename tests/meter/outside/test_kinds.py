"""The kinds of fault that befall controls, whole lines and legs, built into netlists.

Read by ngspice, handed to the tool: the kind must stand in the first group, or agree and be
among others that the same readings cannot tell from it. Which those are is worked out here,
from what ngspice reads with each of them. With the kinds of `test_injected` these are all.
"""

import math
from typing import NamedTuple

import pytest

from pycore.calc.agreement import AGREES, misfit
from pycore.calc.diagnosis import Diagnosis
from pycore.calc.priors import FAMILY_WEIGHTS
from pycore.calc.reading import OPEN_FROM_OHM, Taken
from pycore.jobs import Job
from tests.meter.lines import AWG_16, chain, job_of, line_a, speaker
from tests.meter.outside import test_injected
from tests.meter.outside.spice import HEALTHY, Asked, Injected, MeterAt, read_each
from tests.meter.outside.test_injected import LINE_A, TAP_OHM
from tests.meter.taken import taken, told_by

PCT = 2.0
SET_DB, INSERTION_DB = -6.0, 0.5


class Reads(NamedTuple):
    """A reading to take: the place, how the controls stand, the meter for ngspice."""

    place: str
    meter: MeterAt
    controls: str = "open"


def passed(db: float) -> float:
    """The ratio of a control at so many dB, with what it loses itself."""
    return float(10 ** ((db - INSERTION_DB) / 20))


# Four loudspeakers, a control, four more behind it; 10 m between all, as line A's cable.
def controlled() -> Job:
    """The job of that line."""
    control = {
        "is": "attenuator", "label": "C", "set_db": SET_DB, "off": False,
        "form": "autotransformer", "insertion_db": INSERTION_DB,
    }  # fmt: skip
    points = chain(4, tap_w=5.0, at_v=70.7, first_m=30.0, step_m=10.0)
    points.append({"id": "c", "after": "s4", "length_m": 10.0, "cable": "pair", "fitted": control})
    points += [
        speaker(
            number, after="c" if number == 5 else f"s{number - 1}", tap_w=5.0, at_v=70.7,
            length_m=10.0, cable="pair",
        )
        for number in range(5, 9)
    ]  # fmt: skip
    return job_of(points, line_v=70.7, cable=AWG_16)


CONTROLLED = LINE_A._replace(
    after=tuple(range(9)), metres=(30.0, *[10.0] * 8), ohms=(TAP_OHM,) * 9, control=5
)
AT_RACK = [Reads("zone", MeterAt(), controls) for controls in ("open", "set", "override")]
STANDS = {"open": passed(0.0), "set": passed(SET_DB), "override": 1.0}
# What the control really passes, for each way it is thought to stand.
WRONG: dict[str, dict[str, float]] = {
    "healthy": STANDS,
    "control_off": {**STANDS, "open": 0.0, "set": 0.0},
    "control_in": {**STANDS, "open": passed(-12.0), "set": passed(-12.0)},
    "control_reversed": {**STANDS, "set": passed(-SET_DB)},
    "override_fails": {**STANDS, "override": passed(SET_DB)},
}


def read_controls(kind: str) -> list[float]:
    """The amplifier's end in all three states, by ngspice."""
    lines = [CONTROLLED._replace(ratio=WRONG[kind][one.controls]) for one in AT_RACK]
    asked = [Asked(line, HEALTHY, MeterAt()) for line in lines]
    return read_each(asked, hz=1000.0)


def readings_of(values: list[float], reads: list[Reads], *, pct: float) -> list[Taken]:
    """The readings as they are typed."""
    return [
        taken(
            one.place, min(value, OPEN_FROM_OHM), id=f"r{number}", looking=one.meter.looking,
            controls=one.controls, tolerance_pct=pct,
        )
        for number, (one, value) in enumerate(zip(reads, values, strict=True))
    ]  # fmt: skip


def must_find(told: Diagnosis, key: tuple[str, int, str, int], *, lonely: bool) -> bool:
    """Whether it stands in the first group; where the readings leave it alone it must."""
    first = [told.suspects[number].key for number in told.groups[0].suspects]
    suspect = next(one for one in told.suspects if one.key == key)
    shared = told.proof.shared
    off = min(misfit(told.weighed.rows[number], shared) for number in suspect.variants)
    assert off <= AGREES, (key, off)
    assert key in first or not lonely, (key, first)
    return key in first


def same(ones: list[float], others: list[float], *, pct: float) -> bool:
    """Whether no reading tells two faults apart; above 20 kΩ a meter shows no difference."""
    pairs = [(min(a, 2e4), min(b, 2e4)) for a, b in zip(ones, others, strict=True)]
    return all(abs(math.log(a / b)) <= math.log1p(pct / 100) + 0.1 / min(a, b) for a, b in pairs)


@pytest.mark.parametrize("kind", list(WRONG))
def test_a_control_that_is_not_as_thought_is_found(kind: str) -> None:
    told = told_by(controlled(), readings_of(read_controls(kind), AT_RACK, pct=PCT), load_pct=0.0)
    node = told.site.circuits.wired.node_of["c"] if kind != "healthy" else 0
    every = {each: read_controls(each) for each in WRONG}
    lonely = [each for each in every if same(every[each], every[kind], pct=PCT)] == [kind]
    assert lonely  # in three states no kind of these reads as another
    must_find(told, (kind, node, "", -1), lonely=False)
    of_controls = [one for one in told.suspects if one.key[0] in WRONG]
    assert of_controls[0].key[0] == kind


WHOLE_LINES: list[tuple[str, Injected]] = [
    ("healthy", HEALTHY),
    ("cable", Injected("cable", 0, 1.6)),
    ("cable", Injected("cable", 0, 1 / 0.65)),  # copper-clad aluminium, 65 % of copper's
    ("cable", Injected("cable", 0, 2.5)),
    ("series", Injected("series", 0)),
]
ENDS = [Reads("zone", MeterAt()), Reads("s10", MeterAt(10, "back")), Reads("s5", MeterAt(5))]
# A heavy line, so that its cable counts: 10 × 60 W on 70.7 V and line A's cable.
HEAVY = LINE_A._replace(ohms=(70.7**2 / 60,) * 10)


def heavy() -> Job:
    """The job of that line."""
    points = chain(10, tap_w=60.0, at_v=70.7, first_m=30.0, step_m=10.0)
    return job_of(points, line_v=70.7, cable=AWG_16)


@pytest.mark.parametrize(("kind", "fault"), WHOLE_LINES)
def test_a_whole_line_of_other_cable_or_in_series_is_found(kind: str, fault: Injected) -> None:
    reads = ENDS[:1] if kind == "series" else ENDS
    values = read_each([Asked(HEAVY, fault, one.meter) for one in reads], hz=1000.0)
    told = told_by(heavy(), readings_of(values, reads, pct=PCT), load_pct=0.0)
    node = 0 if kind == "healthy" else told.site.circuits.wired.starts[0]
    assert must_find(told, (kind, node, "", -1), lonely=True)


def test_six_of_5_w_in_series_read_six_thousand_ohms_and_are_found() -> None:
    line = LINE_A._replace(after=tuple(range(6)), metres=(30.0, *[10.0] * 5), ohms=(TAP_OHM,) * 6)
    [ohm] = read_each([Asked(line, Injected("series", 0), MeterAt())], hz=1000.0)
    assert ohm == pytest.approx(6 * 70.7**2 / 5 + 80 * LINE_A.loop_ohm_per_m, rel=1e-6)
    points = chain(6, tap_w=5.0, at_v=70.7, first_m=30.0, step_m=10.0)
    told = told_by(job_of(points, line_v=70.7, cable=AWG_16), [taken("zone", ohm)])
    start = told.site.circuits.wired.starts[0]
    must_find(told, ("series", start, "", -1), lonely=True)


def test_a_line_landed_on_the_wrong_zone_reads_as_that_zone_and_is_found() -> None:
    other = chain(4, tap_w=2.5, at_v=70.7, first_m=50.0, step_m=15.0)
    other = [
        {**one, "id": f"o{one['id']}", "after": one["after"] and f"o{one['after']}"}
        for one in other
    ]
    beside = {"id": "other", "name": "Other", "output": "out", "line": other}
    line = LINE_A._replace(
        after=tuple(range(4)), metres=(50.0, *[15.0] * 3), ohms=(70.7**2 / 2.5,) * 4
    )
    [ohm] = read_each([Asked(line, HEALTHY, MeterAt())], hz=1000.0)
    told = told_by(line_a(zones=[beside]), [taken("zone", ohm, tolerance_pct=PCT)], load_pct=0.0)
    start = told.site.circuits.wired.starts[0]
    # one reading of 500 Ω may be a break behind the second loudspeaker too (500.7 Ω)
    must_find(told, ("wrong_zone", start, "", -1), lonely=False)
    far = told_by(
        line_a(zones=[beside]),
        [
            taken("zone", ohm, tolerance_pct=PCT),
            taken("s10", read_each([Asked(LINE_A, HEALTHY, MeterAt(10, "back"))], hz=1000.0)[0],
                  looking="back", tolerance_pct=PCT),
        ],
        load_pct=0.0,
    )  # fmt: skip
    must_find(far, ("wrong_zone", start, "", -1), lonely=True)


def test_a_fuse_or_relay_that_is_open_shows_at_the_output_and_not_at_the_line() -> None:
    [ohm] = read_each([Asked(LINE_A, HEALTHY, MeterAt())], hz=1000.0)
    told = told_by(
        line_a(),
        [taken("out", OPEN_FROM_OHM, id="all"), taken("zone", ohm, id="line", tolerance_pct=PCT)],
        where={"output": "out"},
        load_pct=0.0,
    )
    assert must_find(told, ("head_open", told.site.circuits.wired.starts[0], "", -1), lonely=True)


@pytest.mark.parametrize(("at", "ohm"), [(3, 500.0), (5, 1000.0), (8, 300.0), (5, 8000.0)])
def test_damp_across_the_pair_agrees_wherever_it_is(at: int, ohm: float) -> None:
    fault = Injected("beside", at, ohm)
    values = read_each([Asked(LINE_A, fault, one.meter) for one in ENDS], hz=1000.0)
    told = told_by(line_a(), readings_of(values, ENDS, pct=PCT), load_pct=0.0)
    node = told.site.circuits.wired.node_of[f"s{at}"]
    # an extra loudspeaker of any watts reads the same, so it can never stand alone
    must_find(told, ("wet", node, "", -1), lonely=False)


def test_a_leg_to_earth_is_found_where_impedance_shows_nothing() -> None:
    [ohm] = read_each([Asked(LINE_A, HEALTHY, MeterAt())], hz=1000.0)
    earth = taken("zone", 2000.0, id="earth", quantity="earth_ohm", tolerance_pct=PCT)
    told = told_by(line_a(), [taken("zone", ohm, tolerance_pct=PCT), earth], load_pct=0.0)
    families = {told.suspects[number].key[0] for number in told.groups[0].suspects}
    assert families == {"earthed"}
    assert sum(one.share for one in told.suspects if one.key[0] == "earthed") > 0.8


@pytest.mark.parametrize(
    ("dead", "fault", "family"),
    [(2, Injected("cut", 8), "cut"), (3, Injected("load", 7, TAP_OHM / 2), "tap")],
)
def test_two_at_once_are_among_what_agrees_where_one_explains_nothing(
    dead: int, fault: Injected, family: str
) -> None:
    line = LINE_A._replace(
        ohms=tuple(1e12 if number == dead else TAP_OHM for number in range(1, 11))
    )
    reads = [
        *ENDS, Reads("s2", MeterAt(2)), Reads("s3", MeterAt(3)), Reads("s4", MeterAt(4)),
        Reads("s8", MeterAt(8)),
    ]  # fmt: skip
    values = read_each([Asked(line, fault, one.meter) for one in reads], hz=1000.0)
    told = told_by(line_a(), readings_of(values, reads, pct=0.5), load_pct=0.0)
    assert not told.one_explains
    node_of = told.site.circuits.wired.node_of
    wanted = {("dead", node_of[f"s{dead}"]), (family, node_of[f"s{fault.at}"])}
    # a doubled tap and an extra loudspeaker in one box read the same: they stand as one group
    first = [told.suspects[number].key for number in told.groups[0].suspects]
    assert wanted in [{one[:2], one[2:]} for one in first]


def test_every_kind_in_the_list_is_built_into_some_netlist() -> None:
    here = {"cable", "series", "wrong_zone", "head_open", "wet", "earthed", *WRONG}
    assert here | set(test_injected.KINDS) == {*FAMILY_WEIGHTS, "healthy"}

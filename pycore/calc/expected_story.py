"""How a band came to be: what a meter should read at a place, step by step.

The steps run the equations by which the band itself was made; a test compares the two for
every view of every box. The cable of each kind is told once, and one section of it; how all
sections stand together is solved exactly, and told as the siemens the meter sees.
"""

import math
from collections.abc import Iterator
from typing import NamedTuple

from pycore.calc import priors
from pycore.calc.circuits import Circuits
from pycore.calc.expected import OPEN_OHM, Tolerances, follows_of
from pycore.calc.pairs import Pair, pair_of
from pycore.calc.predict import STEP
from pycore.calc.probe import Stand
from pycore.calc.reading import Meant
from pycore.calc.wiring import DIRECT_HZ, TEST_HZ, Condition
from pycore.formulas import cable, level, meter, power
from pycore.ground.sources import PRACTICE
from pycore.ground.working import Known, Origin, Step, computed, step


class Looked(NamedTuple):
    """A meter at a place under a condition, and what was said (`typed`) of the tolerances."""

    circuits: Circuits
    condition: Condition
    stand: Stand
    square: float
    tolerances: Tolerances
    typed: frozenset[str]

    @property
    def direct(self) -> bool:
        """Whether an ohmmeter is asked."""
        return self.condition.hz == DIRECT_HZ


def tell_band(looked: Looked) -> Iterator[Step]:
    """What the meter should read, how wide the band is, and its ends. Of an open line only
    what it would read beyond what meters show."""
    circuits, stand = looked.circuits, looked.stand
    seen_s = circuits.probe(looked.condition, stand).seen_s
    yield from _nominal_steps(looked)
    yield from _cable_steps(looked)
    if not seen_s:
        return
    parts = {"conductance_s": _solved(seen_s.real, "s"), "susceptance_s": _solved(seen_s.imag, "s")}
    value = step("meter_sees", level.magnitude_ohm, inputs=parts)
    yield value
    if value.result > OPEN_OHM:
        return
    heavier = looked.condition._replace(load_factor=STEP)
    heavy_ohm = 1 / abs(circuits.probe(heavier, stand).seen_s)
    yield from _band_steps(looked, value, heavy_ohm=heavy_ohm)


def tell_baseline(one: Meant) -> Iterator[Step]:
    """The band about a line's own baseline: what one meter repeats."""
    about = {
        "expected_ohm": Known(one.value or 0.0, "ohm", "typed"),
        "tolerance_fraction": _assumed(priors.REPEAT_PCT / 100),
    }
    yield step("meter_low_again", meter.band_low_ohm, inputs=about)
    yield step("meter_high_again", meter.band_high_ohm, inputs=about)


def _solved(value: float, unit: str) -> Known:
    return Known(value, unit, "computed")


def _assumed(value: float) -> Known:
    return Known(value, "fraction", "assumed", PRACTICE)


def _nominal_steps(looked: Looked) -> Iterator[Step]:
    """By watts alone, without cable; told only where no control stands in between."""
    probe = looked.circuits.probe(looked.condition._replace(hz=TEST_HZ), looked.stand)
    network = probe.network
    if any(one != 1 for each in (network.ratio, network.felt) for one in each):
        return
    wired = looked.circuits.wired
    square = wired.line_v**2
    watts = tuple(load_s.real * square for load_s in network.load_s if load_s)
    if not watts:
        return
    whole = step("meter_loads", power.sum_of_draws_w, inputs={"each_w": _watts(watts)})
    yield whole
    volts = Known(wired.line_v, "v", "typed")
    inputs = {"line_v": volts, "load_w": computed(whole)}
    nominal = step("meter_nominal", power.impedance_of_watts_ohm, inputs=inputs)
    yield nominal
    if looked.direct and not _straps(looked):
        usual = {"load_ohm": computed(nominal), "winding_fraction": _assumed(priors.WINDING_USUAL)}
        yield step("meter_windings", meter.winding_ohm, inputs=usual)


def _watts(each: tuple[float, ...]) -> Known:
    # rounded by a billionth of a watt, so that like taps are told together: "10 × 5 W"
    return Known(tuple(round(one, 9) for one in each), "w", "computed")


def _straps(looked: Looked) -> bool:
    """Whether a selector in reach stands on low impedance: its winding is no small share."""
    wired = looked.circuits.wired
    node_at = looked.circuits.probe(looked.condition, looked.stand).node_at
    return any(
        point is not None and getattr(point.fitted, "direct_ohm", None) is not None
        for point, new in zip(wired.points, node_at, strict=True)
        if new >= 0
    )


def _cable_steps(looked: Looked) -> Iterator[Step]:
    """Every cable in reach once, and the ohms of the section next to the meter."""
    wired = looked.circuits.wired
    probe = looked.circuits.probe(looked.condition, looked.stand)
    inside = _sections(looked)
    told: set[int] = set()
    for node in inside:
        pair = _pair(looked, node)
        if pair is not None and id(pair) not in told:
            told.add(id(pair))
            yield from _heated(looked, node, pair=pair).steps
    nearest = min(inside, key=lambda node: probe.section_at[node], default=None)
    pair = None if nearest is None else _pair(looked, nearest)
    if nearest is None or pair is None:
        return
    laid, own = wired.laid_at(nearest)
    ohm_per_km = _heated(looked, nearest, pair=pair).loop_ohm_per_km
    inputs = {
        "loop_ohm_per_km": _solved(ohm_per_km, "ohm_per_km"),
        "length_m": Known(laid.lengths_m[own], "m", "typed"),
        "joint_ohm": Known(laid.joints_ohm[own], "ohm", "typed"),
    }
    point = wired.points[nearest]
    name = (point.fitted.label or point.id) if point else ""
    yield step("line_ohms", cable.section_ohm, inputs=inputs, point=name)


def _sections(looked: Looked) -> list[int]:
    """The nodes behind the sections that the meter sees."""
    wired = looked.circuits.wired
    seen = looked.circuits.probe(looked.condition, looked.stand).section_at
    return [
        node
        for node, new in enumerate(seen)
        if new >= 0 and node not in (0, *wired.starts) and wired.lengths_m[node]
    ]


def pair_assumptions(looked: Looked) -> tuple[str, ...]:
    """What the cables that the meter sees take for granted (codes)."""
    pairs = [_pair(looked, node) for node in _sections(looked)]
    codes = [code for pair in pairs if pair is not None for code in pair.assumptions]
    return tuple(dict.fromkeys(codes))


def _pair(looked: Looked, node: int) -> Pair | None:
    laid, own = looked.circuits.wired.laid_at(node)
    return laid.pairs[own]


def _heated(looked: Looked, node: int, *, pair: Pair) -> Pair:
    """The pair of a section at the heat the reading was taken at, where its cable is known."""
    wired = looked.circuits.wired
    point, warm_c = wired.points[node], looked.condition.conductor_c
    if warm_c == wired.job.limits.conductor_c or point is None or point.cable is None:
        return pair
    kinds = {kind.id: kind for kind in wired.job.kinds.cables}
    return pair_of(kinds[point.cable], warm_c)


def _band_steps(looked: Looked, value: Step, *, heavy_ohm: float) -> Iterator[Step]:
    """How far the reading follows the loudspeakers, the whole tolerance, and both ends."""
    inputs = {
        "light_ohm": computed(value),
        "heavy_ohm": _solved(heavy_ohm, "ohm"),
        "more_fraction": Known(STEP - 1, "fraction", "assumed"),
    }
    follows = step("meter_follows", meter.load_share_of_ohms, inputs=inputs)
    yield follows
    share = _solved(follows_of(value.result, heavy_ohm), "fraction")
    loads = list(_load_steps(looked, value, share=share))
    yield from loads
    whole = step(
        "meter_tolerance",
        meter.whole_tolerance,
        inputs={
            "meter_fraction": _said(looked, "meter", value=looked.tolerances.meter),
            "load_fraction": _load_fraction(looked, loads),
            "load_share": share,
            "cable_fraction": _assumed(looked.tolerances.cable),
        },
    )
    yield whole
    yield from _end_steps(looked, value, whole=whole, share=share)


def _said(looked: Looked, name: str, *, value: float) -> Known:
    origin: Origin = "typed" if name in looked.typed else "assumed"
    return Known(value, "fraction", origin, None if origin == "typed" else PRACTICE)


def _load_fraction(looked: Looked, loads: list[Step]) -> Known:
    """At direct current windings are a range of their own, told with the ends of the band."""
    if looked.direct:
        return Known(0.0, "fraction", "assumed")
    return computed(loads[-1]) if loads else _said(looked, "load", value=looked.tolerances.load)


def _load_steps(looked: Looked, value: Step, *, share: Known) -> Iterator[Step]:
    """What taps nobody knows add to the tolerance of the loudspeakers."""
    if not looked.square or looked.direct:
        return
    inputs = {
        "load_share": share,
        "deviation_s": _solved(math.sqrt(looked.square), "s"),
        "seen_s": _solved(1 / value.result, "s"),
    }
    unknown = step("meter_unknown", meter.unknown_load_fraction, inputs=inputs)
    yield unknown
    both = {
        "load_fraction": _said(looked, "load", value=looked.tolerances.load),
        "unknown_fraction": computed(unknown),
    }
    yield step("meter_load", meter.load_tolerance, inputs=both)


def _end_steps(looked: Looked, value: Step, *, whole: Step, share: Known) -> Iterator[Step]:
    about = {"expected_ohm": computed(value), "tolerance_fraction": computed(whole)}
    if not looked.direct:
        yield step("meter_low", meter.band_low_ohm, inputs=about)
        yield step("meter_high", meter.band_high_ohm, inputs=about)
        return
    about |= {"usual_fraction": _assumed(priors.WINDING_USUAL), "follows_fraction": share}
    lowest, highest = _assumed(priors.WINDING_LOW), _assumed(priors.WINDING_HIGH)
    yield step("meter_low", meter.band_low_direct_ohm, inputs={**about, "lowest_fraction": lowest})
    yield step(
        "meter_high", meter.band_high_direct_ohm, inputs={**about, "highest_fraction": highest}
    )

"""A line of stems as an electrical circuit, in figures worked out here and not by the core.

Skin effect is summed from the Kelvin functions' own series; the core uses a continued
fraction of Bessel functions, so the two share no arithmetic.
"""

import math
from typing import NamedTuple

from tests.samples.lines import CABLES, Stem


class Part(NamedTuple):
    """One stem as a circuit: its line per metre, joint, load and the control's two ratios."""

    after: int
    length_m: float
    ohm_per_m: float
    henry_per_m: float
    farad_per_m: float
    joint_ohm: float
    load_s: float
    volts_ratio: float
    amps_ratio: float
    off: bool


def parts_of(stems: list[Stem], *, hz: float, bypassed: bool) -> list[Part]:
    """The circuit at `hz` (Hz); its controls bypassed, or as they stand."""
    parts = []
    for stem in stems:
        loop_ohm_per_km, inductance, capacitance = CABLES[stem.cable]
        ohm_per_m = loop_ohm_per_km / 1000
        if hz > 1000:
            ohm_per_m *= kelvin_factor(hz, ohm_per_m / 2)
        volts, amps = (1.0, 1.0)
        if stem.attenuator is not None and not bypassed:
            set_db, insertion_db, form = stem.attenuator
            volts = 10 ** ((set_db - insertion_db) / 20)
            # An autotransformer draws `volts` times the current below; a pad draws as much
            # as the load below would draw straight from the line.
            amps = volts if form == "autotransformer" else 1 / volts
        parts.append(
            Part(
                after=stem.after,
                length_m=stem.length_m,
                ohm_per_m=ohm_per_m,
                henry_per_m=inductance * 1e-6,
                farad_per_m=capacitance * 1e-12,
                joint_ohm=stem.joint_ohm,
                load_s=stem.tap[0] / stem.tap[1] ** 2 if stem.tap else 0.0,
                volts_ratio=volts,
                amps_ratio=amps,
                off=stem.off and not bypassed,
            )
        )
    return parts


def kelvin_factor(hz: float, ohm_per_m: float) -> float:
    """Alternating over direct resistance of a round wire, by the Kelvin functions.

    q/2 (ber bei' − bei ber') / (ber'² + bei'²) with q = radius √2 / skin depth: from memory
    of handbooks of alternating currents.
    """
    q = math.sqrt(4 * 2e-7 * math.pi * hz / ohm_per_m)
    ber = bei = ber_slope = bei_slope = 0.0
    for order in range(80):
        sign = -1.0 if (order // 2) % 2 else 1.0
        term = sign * math.exp(2 * order * math.log(q / 2) - 2 * math.lgamma(order + 1))
        slope = term * 2 * order / q
        if order % 2 == 0:
            ber, ber_slope = ber + term, ber_slope + slope
        else:
            bei, bei_slope = bei + term, bei_slope + slope
    return q / 2 * (ber * bei_slope - bei * ber_slope) / (ber_slope**2 + bei_slope**2)

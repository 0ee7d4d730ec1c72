"""One uniform section of line, exactly: finite for no length, no frequency and no end.

Source: the telegrapher's equations for a uniform line (arithmetic). A section is told as
three admittances and impedances in the shape of the letter pi, which is exact at one
frequency, not an approximation for short lines.
"""

import cmath
import math
from typing import NamedTuple

# Below this |gamma * l|² the series is exact to the last digit and needs no division.
SMALL = 1e-4
# Past this many nepers nothing arrives; the hyperbolic functions overflow near 710.
MOST_NEPERS = 300.0
# Past this the current runs in a skin so thin that the wire's surface may be taken as flat.
FLAT = 1e6


class Section(NamedTuple):
    """Siemens across the near end, ohms in series, siemens across the far end."""

    near_s: complex
    series_ohm: complex
    far_s: complex


NO_CABLE = Section(0j, 0j, 0j)


def exact_section(ohm_per_m: complex, s_per_m: complex, *, length_m: float) -> Section:
    """A section of `length_m` (m) with series `ohm_per_m` (ohm/m) and shunt `s_per_m` (S/m)."""
    square = ohm_per_m * s_per_m * length_m * length_m
    if abs(square) < SMALL:
        growth = 1 + square / 6 * (1 + square / 20 * (1 + square / 42))
        quarter = square / 4
        flattening = 1 - quarter / 3 * (1 - 2 * quarter / 5)
    else:
        root = cmath.sqrt(square)
        if root.real > MOST_NEPERS:
            root = complex(MOST_NEPERS, root.imag)
        growth = cmath.sinh(root) / root
        flattening = cmath.tanh(root / 2) / (root / 2)
    half_s = s_per_m * length_m / 2 * flattening
    return Section(half_s, ohm_per_m * length_m * growth, half_s)


def with_joint(section: Section, joint_ohm: float) -> Section:
    """The same section behind a joint of `joint_ohm` (ohm) at its near end, still a pi."""
    if joint_ohm == 0:
        return section
    near_s, series_ohm, far_s = section
    both_ohm = joint_ohm + series_ohm + joint_ohm * near_s * series_ohm
    return Section(near_s * series_ohm / both_ohm, both_ohm, far_s + near_s * joint_ohm / both_ohm)


def skin_factor(*, hz: float, ohm_per_m: float) -> float:
    """How many times its direct-current resistance a round wire has at `hz` (Hz).

    `ohm_per_m` (ohm/m, above zero) is the direct-current resistance of the one wire; the
    factor follows from it alone. It is the real part of (x/2)·J0(x)/J1(x), where x² is −2j
    times (radius/depth)², written as the continued fraction of that ratio of Bessel
    functions (arithmetic). A stranded conductor is taken as solid; what the two wires of
    the pair do to each other is left out.
    """
    squared = 2e-7 * math.pi * hz / ohm_per_m
    if squared > FLAT:
        return math.sqrt(squared / 2) + 0.25
    depth = 24 + int(2 * math.sqrt(squared))
    fraction = 1 + 0j
    for order in range(depth, 0, -1):
        fraction = 1 + 1j * squared / (order * (order + 1)) / fraction
    return fraction.real

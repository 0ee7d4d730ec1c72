"""Wire gauges where an area of copper is asked: "18 AWG" is read as mm², and printed again.

By the formula of ASTM B258, as `formulas/cable.py` has it; a law compares the two.
"""

import math
import re

# From 4/0 AWG, which the formula counts as -3, to what no line is pulled in.
THICKEST, THINNEST = -3, 40
GAUGE = re.compile(
    r"(?:awg\s*(\d{1,2}|[1-4]/0)|(\d{1,2}|[1-4]/0)\s*(?:awg|ga|gauge))", re.ASCII | re.IGNORECASE
)
# Bare, a whole number from here on could as well be a gauge: areas of lines are smaller.
GAUGES_FROM = 8
SAME_WITHIN = 1e-9


def gauge_area_mm2(awg: int) -> float:
    """Copper (mm²) in a conductor of gauge `awg`: a diameter of 0.127 mm is gauge 36."""
    return float(math.pi / 4 * (0.127 * 92 ** ((36 - awg) / 39)) ** 2)


def read_gauge(text: str) -> float | None:
    """The mm² of a gauge that is typed with its unit; None for anything else."""
    found = GAUGE.fullmatch(text)
    if found is None:
        return None
    number, nought, _ = (found[1] or found[2]).partition("/")
    awg = 1 - int(number) if nought else int(number)
    return gauge_area_mm2(awg) if awg <= THINNEST else None


def show_gauge(area_mm2: float) -> str | None:
    """The gauge that has this copper, as it was typed; None where no whole gauge has it."""
    if area_mm2 <= 0:
        return None
    awg = round(36 - 39 * math.log(math.sqrt(4 * area_mm2 / math.pi) / 0.127, 92))
    if not THICKEST <= awg <= THINNEST:
        return None
    if not math.isclose(gauge_area_mm2(awg), area_mm2, rel_tol=SAME_WITHIN):
        return None
    return f"{1 - awg}/0" if awg < 0 else str(awg)

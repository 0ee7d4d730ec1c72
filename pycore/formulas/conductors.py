"""Figures printed in standards for conductors: data, no functions."""

from typing import NamedTuple

from pycore.formulas.cable import TINNING, TINNING_THIN
from pycore.ground.sources import Source

# ASTM B496 (and B8, from memory): concentric stranding adds 2 % to the direct-current resistance.
LAY_FACTOR = 1.02
# 62 to 68 % of copper is reported of copper-clad aluminium: the lowest loses most.
CLAD_FRACTION = 0.62

IEC_CLASS_1_2 = Source("IEC 60228", "tables 1 and 2: most Ω/km at 20 °C, plain", "second hand")
IEC_CLASS_5 = Source("IEC 60228", "table 3: most Ω/km at 20 °C, class 5", "second hand")
IEC_TINNED_1_2 = Source("IEC 60228", "tables 1 and 2: most Ω/km at 20 °C, coated", "memory")


class Row(NamedTuple):
    """Most ohms per kilometre of one conductor at 20 °C."""

    plain_1_2: float
    tinned_1_2: float
    plain_5: float
    tinned_5: float


# IEC 60228:2004, by nominal mm². The coated figures of classes 1 and 2 are from memory.
IEC_60228_OHM_PER_KM: dict[float, Row] = {
    0.5: Row(36.0, 36.7, 39.0, 40.1),
    0.75: Row(24.5, 24.8, 26.0, 26.7),
    1.0: Row(18.1, 18.2, 19.5, 20.0),
    1.5: Row(12.1, 12.2, 13.3, 13.7),
    2.5: Row(7.41, 7.56, 7.98, 8.21),
    4.0: Row(4.61, 4.70, 4.95, 5.09),
    6.0: Row(3.08, 3.11, 3.30, 3.39),
    10.0: Row(1.83, 1.84, 1.91, 1.95),
}

# ASTM B33 table 2 over 0.15328 Ω·g/m²: thinnest wire of the row (inches), factor, source.
COPPER_OHM_GRAM = 0.15328
TINNED_ROWS: tuple[tuple[float, float, Source], ...] = (
    (0.103, 0.15776, TINNING),
    (0.0201, 0.15940, TINNING),
    (0.0111, 0.16279, TINNING),
    (0.0, 0.16466, TINNING_THIN),
)

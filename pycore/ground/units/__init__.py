"""Units: the one table, the one parser (`read`) and the one printer (`show`).

Inside, every number is SI and carries its unit as the end of its name. Feet, percent
signs and decimal commas exist only in this package.
"""

from pycore.ground.units.marks import same_voltage, true_voltage
from pycore.ground.units.read import read
from pycore.ground.units.runs import Run, read_run
from pycore.ground.units.show import as_typed, show, show_beside, show_length, show_most, show_typed
from pycore.ground.units.table import Manner, unit_of
from pycore.ground.units.taps import TapText, read_taps, show_taps

__all__ = [
    "Manner",
    "Run",
    "TapText",
    "as_typed",
    "read",
    "read_run",
    "read_taps",
    "same_voltage",
    "show",
    "show_beside",
    "show_length",
    "show_most",
    "show_taps",
    "show_typed",
    "true_voltage",
    "unit_of",
]

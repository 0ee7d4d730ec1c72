"""Clamp amperes and volts at one place on one tone: together they are ohms."""

from collections.abc import Sequence

from pycore.calc.reading import Meant
from pycore.formulas import meter


def with_amperes(meants: Sequence[Meant]) -> tuple[Meant, ...]:
    """The readings, and for each ampere reading with volts beside it the ohms they make.

    They are of one place, one day, and with the controls alike. The tolerances add.
    """
    volts = {
        _where(one): one for one in meants if one.taken.quantity == "volts" and one.sign == "number"
    }
    made = []
    for one in meants:
        beside = volts.get(_where(one))
        if one.taken.quantity != "amps" or one.sign != "number" or beside is None:
            made.append(one)
            continue
        if not one.value or not beside.value:
            continue
        ohm = meter.ohm_of_volts_and_amperes(at_v=beside.value, current_a=one.value)
        taken = one.taken._replace(quantity="z_1k_ohm", value=ohm, looking="out")
        fraction = one.meter_fraction + beside.meter_fraction
        made.append(Meant(taken, "number", ohm, fraction, 0.0, (*one.notes, "ohms_of_amperes")))
    return tuple(made)


def _where(one: Meant) -> tuple[str, str, str]:
    return one.taken.place, one.taken.controls, one.taken.at[:10]

"""What an instrument said, sorted before anything is divided: a number, a short, an open line."""

import math
from typing import Literal, NamedTuple

from pycore.calc import priors
from pycore.calc.probe import Looking
from pycore.calc.wiring import Controls
from pycore.formulas import meter
from pycore.jobs import Reading
from pycore.jobs.records import Due, Quantity

Sign = Literal["number", "short", "open", "nothing"]
OVER_RANGE = 1e9  # a reading that only means "more than I can show", of any unit
OPEN_FROM_OHM = OVER_RANGE
OHMS: tuple[Quantity, ...] = ("z_1k_ohm", "dc_ohm")


class Taken(NamedTuple):
    """A reading as it was taken. `value` may be anything an instrument can show; `due` is what
    the line had to read then, where that was kept."""

    id: str
    at: str
    place: str
    looking: Looking
    lifted: tuple[str, ...]
    quantity: Quantity
    value: float | str
    controls: Controls
    tolerance_pct: float
    temperature_c: float | None
    instrument: str
    baseline: bool
    due: Due | None = None

    @property
    def setting(self) -> tuple[object, ...]:
        """What has to be the same for two readings to be compared with each other."""
        lifted = tuple(sorted(self.lifted))
        return self.place, self.looking, lifted, self.quantity, self.controls


class Meant(NamedTuple):
    """A reading sorted. `value` without leads, only where `sign` is number; `notes`: codes.

    `meter_fraction`: limit of the meter's error either way. `loose`: what leads and last
    digit leave open, ohms.
    """

    taken: Taken
    sign: Sign
    value: float | None
    meter_fraction: float
    loose: float
    notes: tuple[str, ...]

    @property
    def whole_fraction(self) -> float:
        """The meter's limit with what leads and last digit leave open, as one fraction."""
        return self.meter_fraction + (self.loose / self.value if self.value else 0.0)


def taken_of(reading: Reading) -> Taken:
    """A kept reading."""
    where = reading.where
    return Taken(
        id=reading.id,
        at=reading.at,
        place=where.output or where.zone or where.point or "",
        looking=reading.looking,
        lifted=reading.lifted,
        quantity=reading.quantity,
        value=reading.value,
        controls=reading.controls,
        tolerance_pct=reading.tolerance_pct,
        temperature_c=reading.temperature_c,
        instrument=reading.instrument,
        baseline=reading.baseline,
        due=reading.due,
    )


def sort_reading(taken: Taken, *, leads_ohm: float | None) -> Meant:
    """Sort a reading. `leads_ohm` is what the leads measure by themselves, None when nulled."""
    notes: list[str] = []
    pct = taken.tolerance_pct
    if pct < priors.LEAST_PCT:
        pct = priors.LEAST_PCT
        notes.append("tolerance_least")
    loose = priors.METER_OHM if taken.quantity in OHMS else 0.0
    if pct >= priors.MOST_PCT:
        return Meant(taken, "nothing", None, pct / 100, loose, ("tolerance_all",))
    if isinstance(taken.value, str):
        return Meant(taken, "number", None, pct / 100, loose, ())
    sign, value, note = _sorted(taken, taken.value, leads_ohm=leads_ohm or 0.0)
    if note:
        notes.append(note)
    return Meant(taken, sign, value, pct / 100, loose, tuple(notes))


def _sorted(taken: Taken, read: float, *, leads_ohm: float) -> tuple[Sign, float | None, str]:
    """Its sign, its number where it is one, and why not where it is none."""
    if math.isnan(read):
        return "nothing", None, "reads_nothing"
    if taken.quantity == "foreign_v":  # its sign only says which way round the leads were
        return "number", min(abs(read), OVER_RANGE), ""
    if taken.quantity not in OHMS:
        return _sorted_other(taken, read)
    if read >= OPEN_FROM_OHM:
        return "open", None, "reads_open"
    if read < 0:
        return "short", None, "reads_negative"
    if read == 0:
        return "short", None, "reads_zero"
    left_ohm = meter.without_leads_ohm(read_ohm=read, leads_ohm=leads_ohm)
    if left_ohm <= 0:
        return "short", None, "reads_leads"
    return "number", left_ohm, ""


def _sorted_other(taken: Taken, read: float) -> tuple[Sign, float | None, str]:
    """Volts and amperes: none at all is a sign of its own; legs to earth may read anything."""
    if read < 0:
        return "nothing", None, "reads_negative"
    if taken.quantity == "earth_ohm":
        return "number", min(read, OPEN_FROM_OHM), ""
    if math.isinf(read):
        return "nothing", None, "reads_nothing"
    return ("number", read, "") if read > 0 else ("short", None, "reads_no_volts")

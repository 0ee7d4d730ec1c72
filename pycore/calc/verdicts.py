"""A reading in good order, out of it, or below what the amplifier can bear: codes, no words."""

import math
from typing import Literal, NamedTuple

from pycore.calc.earth import Leg, leg_of
from pycore.calc.expected import OPEN_OHM, Band
from pycore.calc.foreign import is_fed
from pycore.calc.reading import Meant
from pycore.jobs import Output

Judged = Literal["ok", "near", "over", "unknown", "note"]


class Verdict(NamedTuple):
    """A code for the words, and how bad it is."""

    code: str
    verdict: Judged


EARTH: dict[Leg, Verdict] = {
    "good": Verdict("earth_good", "ok"),
    "damp": Verdict("earth_damp", "near"),
    "bad": Verdict("earth_bad", "over"),
}
FOREIGN = {False: Verdict("foreign_none", "ok"), True: Verdict("foreign_live", "over")}


class Least(NamedTuple):
    """The least ohms an output may see: printed, or worked out from its watts; None: not known."""

    ohm: float | None
    printed: bool


def least_of(output: Output, line_v: float) -> Least:
    """The least load of an output at `line_v` (V)."""
    if output.min_load_ohm is not None:
        return Least(output.min_load_ohm, printed=True)
    if output.max_w:
        return Least(line_v**2 / output.max_w, printed=False)
    return Least(None, printed=False)


def judge(one: Meant, band: Band | None, *, least: Least, at_rack: bool, controls: bool) -> Verdict:
    """A reading against its band, and at the amplifier's end against its least load.

    `controls`: attenuators hang on the line and stand as they were set.
    """
    if one.sign == "nothing":
        return Verdict(one.notes[-1] if one.notes else "reads_nothing", "unknown")
    quantity = one.taken.quantity
    if quantity == "earth_ohm":
        return EARTH[leg_of(one.value or 0.0)]
    if quantity == "foreign_v":
        return FOREIGN[is_fed(one.value or 0.0)]
    if quantity == "plays":
        return Verdict("heard", "note")
    if quantity in ("volts", "amps"):
        return Verdict("noted", "note")
    if at_rack and quantity == "z_1k_ohm":
        heavy = too_heavy(one, least)
        if heavy is not None:
            return heavy
    return _against_band(one, band, controls=controls, direct=quantity == "dc_ohm")


def too_heavy(one: Meant, least: Least) -> Verdict | None:
    """Flat, whatever else: what the amplifier must not be connected to."""
    if one.sign == "short":
        return Verdict("do_not_connect_short", "over")
    if least.ohm is None or one.value is None:
        return None
    loose = one.whole_fraction
    if one.value * (1 + loose) < least.ohm:
        return Verdict("do_not_connect", "over")
    if one.value < least.ohm * (1 + loose):
        return Verdict("at_the_limit", "over")
    return None


def _against_band(one: Meant, band: Band | None, *, controls: bool, direct: bool) -> Verdict:
    if band is None:
        return Verdict("not_expected", "unknown")
    if one.sign == "short":
        return Verdict("reads_short", "over")
    value = math.inf if one.value is None else one.value
    if band.value is None or band.high is None:
        is_open = value >= (band.low or 0.0)
        return Verdict("open_as_expected", "ok") if is_open else Verdict("not_open", "over")
    if value >= OPEN_OHM:
        return Verdict("reads_open_line", "over")
    low = band.low or 0.0
    if low <= value <= band.high:
        if controls:
            return Verdict("agrees_as_set", "note")
        return Verdict("windings_only" if direct else "as_expected", "note" if direct else "ok")
    twice = (band.high / band.value) ** 2
    if band.value / twice <= value <= band.value * twice:
        return Verdict("look_closer", "near")
    return Verdict("not_as_expected", "over")

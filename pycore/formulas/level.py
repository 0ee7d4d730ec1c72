"""Decibels along a line, watts in its copper, and what a loss means said other ways."""

import math

from pycore.ground.sources import ADDITION, DECIBEL, OHMS_LAW, RATIO, Source
from pycore.ground.working import equation

DIVIDER = Source("Voltage divider", "section in front of what hangs beyond it", "arithmetic")
CHAIN = Source("Ratios one behind the other multiply", "so their decibels add", "arithmetic")
BALANCE = Source("Conservation of energy", "watts in are watts out and watts wasted", "arithmetic")


@equation("20 * log10(from_v / at_v)", unit="db", source=DECIBEL)
def loss_db(*, from_v: float, at_v: float) -> float:
    """How far (dB) `at_v` (V, above zero) lies below `from_v` (V, above zero)."""
    return 20 * math.log10(from_v / at_v)


@equation("20 * log10(at_v / from_v)", unit="db", source=DECIBEL)
def level_db(*, from_v: float, at_v: float) -> float:
    """The level (dB) of `at_v` (V, above zero) against `from_v` (V, above zero)."""
    return 20 * math.log10(at_v / from_v)


@equation(
    "10 * log10((1 + series_ohm * conductance_s - reactance_ohm * susceptance_s) ** 2"
    " + (series_ohm * susceptance_s + reactance_ohm * conductance_s) ** 2)",
    unit="db",
    source=DIVIDER,
)
def section_loss_db(
    *, series_ohm: float, reactance_ohm: float, conductance_s: float, susceptance_s: float
) -> float:
    """What one section loses (dB): its ohms in front of the siemens of all that hangs beyond."""
    across = 1 + series_ohm * conductance_s - reactance_ohm * susceptance_s
    aside = series_ohm * susceptance_s + reactance_ohm * conductance_s
    return 10 * math.log10(across**2 + aside**2)


@equation("sum(each_db)", unit="db", source=CHAIN)
def sum_of_losses_db(*, each_db: tuple[float, ...]) -> float:
    """Losses (dB) one behind the other add."""
    return math.fsum(each_db)


@equation("most_db - least_db", unit="db", source=DECIBEL)
def spread_db(*, most_db: float, least_db: float) -> float:
    """How far apart (dB) two levels are."""
    return most_db - least_db


@equation("load_w / line_v ** 2", unit="s", source=OHMS_LAW)
def conductance_of_watts_s(*, load_w: float, line_v: float) -> float:
    """Siemens of a load that draws `load_w` (W) at `line_v` (V)."""
    return load_w / line_v**2


@equation("at_v ** 2 * conductance_s", unit="w", source=OHMS_LAW)
def watts_at_volts_w(*, at_v: float, conductance_s: float) -> float:
    """Watts (W) that `conductance_s` (S) takes at `at_v` (V)."""
    return at_v**2 * conductance_s


@equation("at_v * sqrt(conductance_s ** 2 + susceptance_s ** 2)", unit="a", source=OHMS_LAW)
def current_of_volts_a(*, at_v: float, conductance_s: float, susceptance_s: float) -> float:
    """Amperes (A) that siemens (S) draw at `at_v` (V)."""
    return at_v * math.sqrt(conductance_s**2 + susceptance_s**2)


@equation("current_a * sqrt(series_ohm ** 2 + reactance_ohm ** 2)", unit="v", source=OHMS_LAW)
def volts_across_v(*, current_a: float, series_ohm: float, reactance_ohm: float) -> float:
    """Volts (V) that `current_a` (A) leaves across ohms and reactance (ohm) in a row."""
    return current_a * math.sqrt(series_ohm**2 + reactance_ohm**2)


@equation("current_a ** 2 * series_ohm", unit="w", source=OHMS_LAW)
def watts_in_copper_w(*, current_a: float, series_ohm: float) -> float:
    """Watts (W) that `current_a` (A) leaves in `series_ohm` (ohm)."""
    return current_a**2 * series_ohm


@equation("sum(each_s)", unit="s", source=ADDITION)
def sum_of_siemens_s(*, each_s: tuple[float, ...]) -> float:
    """Siemens (S) side by side add."""
    return math.fsum(each_s)


@equation("1 / sqrt(conductance_s ** 2 + susceptance_s ** 2)", unit="ohm", source=OHMS_LAW)
def magnitude_ohm(*, conductance_s: float, susceptance_s: float) -> float:
    """What a meter reads (ohm) on siemens that are not both zero."""
    return 1 / math.sqrt(conductance_s**2 + susceptance_s**2)


@equation(
    "open_v / sqrt((1 + source_ohm * conductance_s) ** 2 + (source_ohm * susceptance_s) ** 2)",
    unit="v",
    source=DIVIDER,
)
def terminal_v(
    *, open_v: float, source_ohm: float, conductance_s: float, susceptance_s: float
) -> float:
    """Volts at the terminals (V) of an amplifier of `source_ohm` (ohm) under its whole load."""
    across = 1 + source_ohm * conductance_s
    return open_v / math.sqrt(across**2 + (source_ohm * susceptance_s) ** 2)


@equation("sum(each_w)", unit="w", source=BALANCE)
def balance_w(*, each_w: tuple[float, ...]) -> float:
    """All watts (W) that leave a line: played, and wasted in copper and controls."""
    return math.fsum(each_w)


@equation("1 - 10 ** (-loss_db / 20)", unit="fraction", source=DECIBEL)
def volts_lost_fraction(*, loss_db: float) -> float:
    """The share of the volts that a loss (dB) takes."""
    return float(1 - 10 ** (-loss_db / 20))


@equation("1 - 10 ** (-loss_db / 10)", unit="fraction", source=DECIBEL)
def watts_lost_fraction(*, loss_db: float) -> float:
    """The share of a loudspeaker's watts that a loss (dB) takes."""
    return float(1 - 10 ** (-loss_db / 10))


@equation("10 ** (loss_db / 20) - 1", unit="fraction", source=RATIO)
def loop_of_load_fraction(*, loss_db: float) -> float:
    """Loop ohms over the load's ohms that make a loss (dB), the load being at the end."""
    return float(10 ** (loss_db / 20) - 1)


@equation("1 - 10 ** (-loss_db / 20)", unit="fraction", source=RATIO)
def loop_of_all_fraction(*, loss_db: float) -> float:
    """Loop ohms over loop and load ohms together that make a loss (dB)."""
    return float(1 - 10 ** (-loss_db / 20))

"""Watts, volts and ohms of a loudspeaker line. All voltages are rms."""

import math

from pycore.ground.sources import (
    ADDITION,
    COUNTING,
    DECIBEL,
    OHMS_LAW,
    PRACTICE,
    RATIO,
    TRANSFORMER,
)
from pycore.ground.working import equation


@equation("tap_w * (line_v / tap_at_v) ** 2", unit="w", source=OHMS_LAW)
def draw_of_tap_w(*, tap_w: float, line_v: float, tap_at_v: float) -> float:
    """Watts a tap draws (W) on a line of `line_v` (V) when marked `tap_w` (W) at `tap_at_v` (V)."""
    return tap_w * (line_v / tap_at_v) ** 2


@equation("line_v ** 2 / direct_ohm", unit="w", source=OHMS_LAW)
def draw_of_resistance_w(*, line_v: float, direct_ohm: float) -> float:
    """Watts (W) that `direct_ohm` (ohm) takes straight across `line_v` (V)."""
    return line_v**2 / direct_ohm


@equation("line_v ** 2 / load_w", unit="ohm", source=OHMS_LAW)
def impedance_of_watts_ohm(*, line_v: float, load_w: float) -> float:
    """Nominal impedance (ohm) of `load_w` (W, above zero) on a line of `line_v` (V)."""
    return line_v**2 / load_w


@equation("(line_v / tap_at_v) ** 2", unit="factor", source=OHMS_LAW)
def voltage_factor(*, line_v: float, tap_at_v: float) -> float:
    """How many times its marked watts a tap marked at `tap_at_v` (V) draws on `line_v` (V)."""
    return (line_v / tap_at_v) ** 2


@equation("tap_w * 10 ** (transformer_loss_db / 10)", unit="w", source=TRANSFORMER)
def drawn_of_delivered_w(*, tap_w: float, transformer_loss_db: float) -> float:
    """Watts drawn (W) to deliver `tap_w` (W) past a transformer that loses that many dB."""
    # a float power: an int base overflows in Python only far beyond the bounds of a job
    return float(tap_w * 10 ** (transformer_loss_db / 10))


@equation("sum(each_w)", unit="w", source=ADDITION)
def sum_of_draws_w(*, each_w: tuple[float, ...]) -> float:
    """The sum (W) of what hangs in parallel at one voltage, exactly rounded."""
    return math.fsum(each_w)


@equation("sum(each_count)", unit="count", source=COUNTING)
def sum_of_counts(*, each_count: tuple[float, ...]) -> float:
    """So many things together (a count)."""
    return math.fsum(each_count)


@equation("load_w / most_w", unit="fraction", source=RATIO)
def share_of_watts(*, load_w: float, most_w: float) -> float:
    """The share (fraction) of `most_w` (W, above zero) that `load_w` (W) takes."""
    return load_w / most_w


@equation("max(0, most_w - load_w)", unit="w", source=RATIO)
def left_of_watts_w(*, load_w: float, most_w: float) -> float:
    """What is left (W) of `most_w` (W) with `load_w` (W) on it; nothing where that is more."""
    return max(0.0, most_w - load_w)


@equation("sum(each_w)", unit="w", source=ADDITION)
def sum_of_left_w(*, each_w: tuple[float, ...]) -> float:
    """What several outputs can still take together (W), each by its own maximum."""
    return math.fsum(each_w)


@equation("min(shared_w, outputs_w)", unit="w", source=RATIO)
def left_of_pool_w(*, shared_w: float, outputs_w: float) -> float:
    """What can be added (W) where a pool leaves `shared_w` (W) and its outputs `outputs_w` (W)."""
    return min(shared_w, outputs_w)


@equation("min(own_w, shared_w)", unit="w", source=RATIO)
def left_of_both_w(*, own_w: float, shared_w: float) -> float:
    """What is left (W) where an output has `own_w` (W) left and its pool `shared_w` (W)."""
    return min(own_w, shared_w)


@equation("would_w / now_w", unit="factor", source=RATIO)
def ratio_of_watts(*, would_w: float, now_w: float) -> float:
    """How many times (factor) `now_w` (W, above zero) a load of `would_w` (W) is."""
    return would_w / now_w


@equation("rated_w * line_v / rated_at_v", unit="w", source=PRACTICE)
def rating_at_lower_voltage_w(*, rated_w: float, line_v: float, rated_at_v: float) -> float:
    """Watts (W) an attenuator rated at `rated_at_v` (V) may carry at a lower `line_v` (V).

    Its winding carries the same amperes whatever the volts, so watts fall with volts.
    """
    return rated_w * line_v / rated_at_v


@equation("10 ** (setting_db / 10)", unit="factor", source=TRANSFORMER)
def reflected_share(*, setting_db: float) -> float:
    """Share (factor) of its draw a line keeps below an autotransformer at `setting_db` (dB)."""
    return float(10 ** (setting_db / 10))


@equation("10 * log10(factor)", unit="db", source=DECIBEL)
def level_of_power_ratio_db(*, factor: float) -> float:
    """Level difference (dB) of two powers whose ratio is `factor` (above zero)."""
    return 10 * math.log10(factor)


@equation("load_w * share", unit="w", source=TRANSFORMER)
def felt_load_w(*, load_w: float, share: float) -> float:
    """What is left (W) of a load of `load_w` (W) when the line feels only `share` of it."""
    return load_w * share


@equation("measured_w * share", unit="w", source=PRACTICE)
def planned_load_w(*, measured_w: float, share: float) -> float:
    """What to plan for (W) where a part of a line was measured as `measured_w` (W)."""
    return measured_w * share


@equation("set_db - insertion_db", unit="db", source=DECIBEL)
def below_control_db(*, set_db: float, insertion_db: float) -> float:
    """Level (dB) below a control that stands at `set_db` (dB) and loses `insertion_db` (dB)."""
    return set_db - insertion_db


@equation("count * each_w", unit="w", source=ADDITION)
def load_of_like_w(*, count: float, each_w: float) -> float:
    """What `count` loudspeakers of `each_w` (W) ask for in parallel (W)."""
    return count * each_w


@equation("most_w * planned_fraction", unit="w", source=PRACTICE)
def planned_most_w(*, most_w: float, planned_fraction: float) -> float:
    """The most (W) that is planned for of `most_w` (W); the rest is kept in reserve."""
    return most_w * planned_fraction


@equation("min_load_ohm / planned_fraction", unit="ohm", source=PRACTICE)
def planned_least_ohm(*, min_load_ohm: float, planned_fraction: float) -> float:
    """The least load (ohm) that is planned for above a printed minimum (ohm)."""
    return min_load_ohm / planned_fraction


@equation("min_load_ohm * printed_share", unit="ohm", source=PRACTICE)
def printed_least_ohm(*, min_load_ohm: float, printed_share: float) -> float:
    """The least load (ohm) a printed minimum (ohm) stands for: what is printed is rounded."""
    return min_load_ohm * printed_share


@equation("load_w + count * each_w", unit="w", source=ADDITION)
def load_with_more_w(*, load_w: float, count: float, each_w: float) -> float:
    """A load (W) with `count` more loudspeakers of `each_w` (W) in parallel."""
    return load_w + count * each_w

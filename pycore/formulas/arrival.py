"""What is left of a line's volts at a point, and how much louder a change makes it."""

from pycore.ground.sources import DECIBEL, RATIO
from pycore.ground.working import equation


@equation("from_v * 10 ** (-loss_db / 20)", unit="v", source=DECIBEL)
def volts_after_loss_v(*, from_v: float, loss_db: float) -> float:
    """Volts (V) that are left of `from_v` (V) behind a loss of `loss_db` (dB)."""
    return float(from_v * 10 ** (-loss_db / 20))


@equation("from_v * share", unit="v", source=RATIO)
def volts_behind_control_v(*, from_v: float, share: float) -> float:
    """Volts (V) behind a control that lets through `share` (factor) of `from_v` (V)."""
    return from_v * share


@equation("power_db + sensitivity_db - cable_db", unit="db", source=DECIBEL)
def change_of_sound_db(*, power_db: float, sensitivity_db: float, cable_db: float) -> float:
    """How much louder (dB) by more watts, by more sound a watt, and by less cable loss."""
    return power_db + sensitivity_db - cable_db


@equation("tap_db + control_db + cable_db", unit="db", source=DECIBEL)
def quieter_db(*, tap_db: float, control_db: float, cable_db: float) -> float:
    """How much quieter (dB) by a smaller tap, by controls on the way, and by cable."""
    return tap_db + control_db + cable_db


@equation("kind_db - transformer_loss_db", unit="db", source=DECIBEL)
def sound_of_watt_db(*, kind_db: float, transformer_loss_db: float) -> float:
    """Decibels of a drawn watt (dB): a kind's sensitivity less what its transformer loses."""
    return kind_db - transformer_loss_db


@equation("would_db - now_db", unit="db", source=DECIBEL)
def difference_db(*, would_db: float, now_db: float) -> float:
    """How far a level (dB) would lie above another (dB)."""
    return would_db - now_db

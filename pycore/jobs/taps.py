"""Which loudspeakers can stand on a tap, going by what their kinds have and allow."""

from pycore.ground.units import same_voltage
from pycore.jobs.fitted import Loudspeaker
from pycore.jobs.kinds import Kinds, LoudspeakerKind


def tap_row_v(kinds: Kinds, fitted: Loudspeaker, *, tap_w: float, tap_at_v: float) -> float | None:
    """The voltage its selector marks for a tap (W) in the row of a line's voltage (V).

    None: its kind has no such tap there, or does not allow it. Where no kind is known, or none
    of its taps, nothing speaks against the tap, and the mark is the line's own voltage.
    """
    kind = kind_of(kinds, fitted)
    if kind is None or not kind.taps:
        return tap_at_v
    for tap in kind.taps:
        if tap.w == tap_w and tap.allowed is not False and same_voltage(tap.at_v, tap_at_v):
            return tap.at_v
    return None


def kind_of(kinds: Kinds, fitted: Loudspeaker) -> LoudspeakerKind | None:
    """The kind of a loudspeaker, where it is known."""
    return next((one for one in kinds.loudspeakers if one.id == fitted.kind), None)

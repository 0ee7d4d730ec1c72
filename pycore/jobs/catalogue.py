"""Kinds that come with the tool, usual taps, and the limits a new job starts with.

The kinds are generic and invented; a job copies a kind when it uses it, so a correction
here changes no job. Their names are in the words tables. Usual taps and line voltages are
common practice, no source. Default limits: 0.5 dB of cable loss and a fifth of the watts
kept in reserve are common practice; 30 °C is a warm ceiling void, common practice.
"""

from typing import NamedTuple

from pycore.jobs.job import Limits
from pycore.jobs.kinds import AttenuatorKind, LoudspeakerKind, Tap

DEFAULT_LIMITS = Limits(loss_db=0.5, load_fraction=0.8, conductor_c=30.0)

LINE_VOLTS: tuple[float, ...] = (25.0, 70.7, 100.0)

USUAL_TAPS_W: dict[float, tuple[float, ...]] = {
    25.0: (0.5, 1.0, 2.0, 4.0, 5.0, 8.0, 10.0),
    70.7: (1.25, 2.5, 5.0, 7.5, 10.0, 15.0, 30.0, 60.0),
    100.0: (1.5, 3.0, 6.0, 10.0, 15.0, 20.0, 30.0, 60.0),
}


# A hand meter is within so much (common practice, no source), where nobody says better.
METER_PCT = 5.0


class Built(NamedTuple):
    """A generic loudspeaker: its power and the taps of its 100 V row, from the top down."""

    id: str
    mount: str
    taps_w: tuple[float, ...]
    sensitivity_db: float
    coverage_deg: tuple[float, float]
    low_impedance_ohm: float | None = None


BUILT = (
    Built("ceiling_6w", "ceiling", (6.0, 3.0, 1.5), 90.0, (90.0, 90.0)),
    Built("ceiling_20w", "ceiling", (20.0, 10.0, 5.0, 2.5), 91.0, (90.0, 90.0), 8.0),
    Built("wall_10w", "wall", (10.0, 5.0, 2.5), 89.0, (120.0, 120.0)),
    Built("column_30w", "wall", (30.0, 15.0, 7.5), 93.0, (120.0, 40.0)),
    Built("horn_30w", "pole", (30.0, 15.0, 7.5, 3.75), 106.0, (60.0, 60.0), 8.0),
    Built("pendant_15w", "pendant", (15.0, 10.0, 7.5, 5.0), 90.0, (120.0, 120.0)),
)


def _kind(built: Built, name: str) -> LoudspeakerKind:
    """A selector with two rows of the same positions: at 70.7 V each draws half its 100 V watts."""
    row_100 = tuple(Tap(w=tap_w, at_v=100.0) for tap_w in built.taps_w)
    row_70 = tuple(Tap(w=tap_w / 2, at_v=70.7) for tap_w in built.taps_w)
    direct = built.low_impedance_ohm
    straight = (Tap(ohm=direct, at_v=70.7),) if direct is not None else ()
    horizontal_deg, vertical_deg = built.coverage_deg
    return LoudspeakerKind(
        id=built.id,
        name=name,
        mount=built.mount,
        rated_w=built.taps_w[0],
        taps=(*row_100, *row_70, *straight),
        tap_means="drawn",
        sensitivity_db=built.sensitivity_db,
        coverage_h_deg=horizontal_deg,
        coverage_v_deg=vertical_deg,
    )


def loudspeaker_kinds(names: dict[str, str]) -> tuple[LoudspeakerKind, ...]:
    """The generic loudspeakers, named from a words table."""
    return tuple(_kind(built, names[built.id]) for built in BUILT)


def attenuator_kinds(names: dict[str, str]) -> tuple[AttenuatorKind, ...]:
    """The generic wall controls, named from a words table."""
    return (
        _control("control_10w", names, rated_w=10.0, override=False),
        _control("control_35w", names, rated_w=35.0, override=True),
        _control("control_100w", names, rated_w=100.0, override=True),
    )


def _control(one: str, names: dict[str, str], *, rated_w: float, override: bool) -> AttenuatorKind:
    return AttenuatorKind(
        id=one,
        name=names[one],
        rated_w=rated_w,
        rated_at_v=100.0,
        insertion_db=0.5,
        form="autotransformer",
        override=override,
        override_sense="power_bypasses" if override else None,
    )

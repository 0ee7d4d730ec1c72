"""What hangs at a point draws from its line: watts, or the range they can lie in."""

from typing import NamedTuple

from pycore.formulas import power
from pycore.ground.units import same_voltage, true_voltage
from pycore.jobs import Existing, Fitted, Kinds, Loudspeaker, LoudspeakerKind

# Real lines read 0.9 to 1.3 of their nominal ohms (common practice, no source).
READS_LOW = 0.9
READS_HIGH = 1.3
# What transformers lose when nobody says: 0.5 to 1.5 dB (common practice, no source).
LOSS_LOW_DB = 0.5
LOSS_HIGH_DB = 1.5


class Draw(NamedTuple):
    """Watts drawn: `value` None when not one number; `high` None when there is no most."""

    value: float | None
    low: float
    high: float | None

    def plus(self, other: "Draw", times: float = 1) -> "Draw":
        """This and `times` the other, in parallel."""
        value, low, high = self
        more, more_low, more_high = other
        return Draw(
            None if value is None or more is None else value + more * times,
            low + more_low * times,
            None if high is None or more_high is None else high + more_high * times,
        )

    def between(self, least: float, most: float) -> "Draw":
        """Scaled by a factor that lies somewhere from `least` to `most`; nothing stays nothing."""
        if most == 0 or self.high == 0:
            return NOTHING
        value = self.value * most if self.value is not None and least == most else None
        high = self.high * most if self.high is not None else None
        return Draw(value, self.low * least, high)


NOTHING = Draw(0.0, 0.0, 0.0)
ANYTHING = Draw(None, 0.0, None)


def exactly(draw_w: float) -> Draw:
    """A draw that is known."""
    return Draw(draw_w, draw_w, draw_w)


class Lookup(NamedTuple):
    """The loudspeaker kinds of a job by their ids, and the draws worked out so far."""

    loudspeakers: dict[str, LoudspeakerKind]
    drawn: dict[tuple[object, ...], Draw]

    @classmethod
    def of(cls, kinds: Kinds) -> "Lookup":
        """Index the kinds once for many points."""
        return cls({kind.id: kind for kind in kinds.loudspeakers}, {})

    def kind(self, fitted: Loudspeaker) -> LoudspeakerKind | None:
        """The kind of a loudspeaker, None when nobody knows it."""
        return self.loudspeakers.get(fitted.kind) if fitted.kind else None


def draw_of(fitted: Fitted, lookup: Lookup, *, line_v: float) -> Draw:
    """Watts that one point draws at full line volts `line_v` (V)."""
    if fitted.is_ == "loudspeaker":
        return draw_when_connected(fitted, lookup, line_v=line_v) if fitted.connected else NOTHING
    if fitted.is_ == "existing":
        return _existing(fitted, line_v)
    return NOTHING


def draw_when_connected(fitted: Loudspeaker, lookup: Lookup, *, line_v: float) -> Draw:
    """Watts that a loudspeaker draws on a line of `line_v` (V), were it connected.

    Hundreds stand on a handful of taps: each is worked out once.
    """
    key = (fitted.kind, fitted.tap_w, fitted.tap_at_v, fitted.direct_ohm, line_v)
    if key not in lookup.drawn:
        lookup.drawn[key] = _loudspeaker(fitted, lookup.kind(fitted), line_v=line_v)
    return lookup.drawn[key]


def _existing(fitted: Existing, line_v: float) -> Draw:
    """By what it measures; by the watts on its label only where nobody has measured it."""
    if fitted.ohm is None:
        return ANYTHING if fitted.w is None else exactly(fitted.w)
    read_w = power.draw_of_resistance_w(line_v=line_v, direct_ohm=fitted.ohm)
    return Draw(read_w, read_w * READS_LOW, read_w * READS_HIGH)


def _loudspeaker(fitted: Loudspeaker, kind: LoudspeakerKind | None, *, line_v: float) -> Draw:
    if fitted.direct_ohm is not None:
        return exactly(power.draw_of_resistance_w(line_v=line_v, direct_ohm=fitted.direct_ohm))
    drawn = [
        power.draw_of_tap_w(tap_w=tap_w, line_v=line_v, tap_at_v=true_voltage(at_v))
        for tap_w, at_v in possible_taps(fitted, kind, line_v=line_v)
    ]
    if not drawn:
        return ANYTHING
    value = drawn[0] if min(drawn) == max(drawn) else None
    return _gross_up(Draw(value, min(drawn), max(drawn)), kind)


def possible_taps(
    fitted: Loudspeaker, kind: LoudspeakerKind | None, *, line_v: float
) -> list[tuple[float, float]]:
    """The taps (W, marked at V) the loudspeaker can stand on, from what is known of it.

    An unknown tap is one the kind offers; where the kind has a row for this line's volts,
    one of that row. Its low-impedance position is not counted. Empty: nothing is known.
    """
    if fitted.tap_w is not None and fitted.tap_at_v is not None:
        return [(fitted.tap_w, fitted.tap_at_v)]
    offered = [(tap.w, tap.at_v) for tap in (kind.taps if kind else ()) if tap.w is not None]
    if fitted.tap_w is not None:
        marks = {at_v for w, at_v in offered if w == fitted.tap_w} or {v for _, v in offered}
        return [(fitted.tap_w, at_v) for at_v in sorted(marks)]
    if fitted.tap_at_v is not None:
        return [(w, at_v) for w, at_v in offered if same_voltage(at_v, fitted.tap_at_v)]
    own_row = [(w, at_v) for w, at_v in offered if same_voltage(at_v, line_v)]
    return own_row or offered


def marked_at_v(
    fitted: Loudspeaker, kind: LoudspeakerKind | None, *, line_v: float
) -> float | None:
    """The volts (V) its row is marked for: as written, or the only one its kind offers."""
    if fitted.tap_at_v is not None:
        return true_voltage(fitted.tap_at_v)
    marks = {true_voltage(at_v) for _, at_v in possible_taps(fitted, kind, line_v=line_v)}
    return marks.pop() if len(marks) == 1 else None


def _gross_up(draw: Draw, kind: LoudspeakerKind | None) -> Draw:
    """A tap that states what is delivered draws more by the transformer's loss."""
    if kind is None or kind.tap_means != "delivered":
        return draw
    if kind.transformer_loss_db is None:
        least, most = LOSS_LOW_DB, LOSS_HIGH_DB
    else:
        least = most = kind.transformer_loss_db
    return draw.between(
        power.drawn_of_delivered_w(tap_w=1.0, transformer_loss_db=least),
        power.drawn_of_delivered_w(tap_w=1.0, transformer_loss_db=most),
    )

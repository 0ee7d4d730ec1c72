"""How the watts of one point came to be: its tap on this line, its selector, its ohms."""

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from pycore.calc.draws import (
    LOSS_HIGH_DB,
    LOSS_LOW_DB,
    READS_HIGH,
    READS_LOW,
    Draw,
    Lookup,
    possible_taps,
)
from pycore.formulas import power
from pycore.ground.units import true_voltage
from pycore.ground.working import Known, Origin, Step, computed, step
from pycore.jobs import Existing, Fitted, Loudspeaker

Tap = tuple[float, float]


class Told(NamedTuple):
    """What is fitted at a point and what it draws on a line of `line_v` (V); who said its tap."""

    fitted: Fitted
    draw: Draw
    line_v: float
    said: Origin = "typed"


def typed(value: float, unit: str, *, label: str = "") -> Known:
    """A number a person put into the job."""
    return Known(value=value, unit=unit, origin="typed", label=label)


def told_draws(points: Iterable[Told], lookup: Lookup) -> Iterator[Step]:
    """The steps of every draw, a like one told once."""
    met: set[object] = set()
    for one in points:
        for made in _steps(one, lookup):
            key = (made.code, *(known.value for known in made.inputs.values()))
            if key not in met:
                met.add(key)
                yield made


def _steps(one: Told, lookup: Lookup) -> Iterator[Step]:
    if one.fitted.is_ == "existing":
        yield from _existing_steps(one.fitted, one.line_v)
    elif one.fitted.is_ == "loudspeaker" and one.fitted.connected:
        yield from _loudspeaker_steps(one.fitted, one, lookup=lookup)


def _existing_steps(fitted: Existing, line_v: float) -> Iterator[Step]:
    """By its ohms, and how far real lines differ from theirs."""
    if fitted.ohm is None:
        return
    inputs = {
        "line_v": typed(line_v, "v"),
        "direct_ohm": typed(fitted.ohm, "ohm", label="measured"),
    }
    made = step("draw_existing", power.draw_of_resistance_w, inputs=inputs)
    yield made
    for code, times in (("existing_low", READS_LOW), ("existing_high", READS_HIGH)):
        planned = {"measured_w": computed(made), "share": Known(times, "factor", "assumed")}
        yield step(code, power.planned_load_w, inputs=planned)


def _loudspeaker_steps(fitted: Loudspeaker, one: Told, *, lookup: Lookup) -> Iterator[Step]:
    volts = typed(one.line_v, "v")
    if fitted.direct_ohm is not None:
        inputs = {"line_v": volts, "direct_ohm": typed(fitted.direct_ohm, "ohm")}
        yield step("draw_direct", power.draw_of_resistance_w, inputs=inputs)
        return
    kind = lookup.kind(fitted)
    tap_origin = one.said if fitted.tap_w is not None else "catalogue"
    row_origin = one.said if fitted.tap_at_v is not None else "catalogue"
    least, most = LOSS_LOW_DB, LOSS_HIGH_DB
    if kind is not None and kind.transformer_loss_db is not None:
        least = most = kind.transformer_loss_db
    taps = possible_taps(fitted, kind, line_v=one.line_v)
    for (tap_w, at_v), loss_db in zip(_ends(taps), (least, most), strict=False):
        tap = {
            "tap_w": Known(tap_w, "w", tap_origin),
            "line_v": volts,
            "tap_at_v": Known(at_v, "v", row_origin),
        }
        made = step("draw_tap", power.draw_of_tap_w, inputs=tap)
        yield made
        if kind is not None and kind.tap_means == "delivered":
            known = kind.transformer_loss_db is not None
            loss = Known(loss_db, "db", "catalogue" if known else "assumed")
            inputs = {"tap_w": computed(made), "transformer_loss_db": loss}
            yield step("draw_grossed_up", power.drawn_of_delivered_w, inputs=inputs)


def _ends(taps: list[Tap]) -> tuple[Tap, ...]:
    """The tap that draws least and the one that draws most, by what they draw on one line."""
    drawn = sorted(
        ((w, true_voltage(at_v)) for w, at_v in taps), key=lambda tap: tap[0] / tap[1] ** 2
    )
    return (drawn[0], drawn[-1]) if drawn else ()

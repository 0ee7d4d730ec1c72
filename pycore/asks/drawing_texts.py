"""The words and the ruler of a drawing."""

import math
from collections.abc import Mapping

from pycore.calc.sketch import TERMINALS_Y, Sketch
from pycore.formulas import level
from pycore.ground.units import Manner, show, show_length, show_typed
from pycore.ground.units.table import METRES_PER_FOOT
from pycore.ground.words import say
from pycore.jobs import Point, Zone

# A ruler's marks stand at least so many rows apart, at round numbers.
MARK_ROWS = 1.5
ROUND = (1.0, 2.0, 5.0, 10.0)


def ticks_of(sketch: Sketch, manner: Manner) -> list[tuple[float, str]]:
    """The marks of a ruler in the person's own unit; none where the drawing has no scale."""
    if sketch.metres_a_row is None:
        return []
    unit_m = METRES_PER_FOOT if manner.length == "ft" else 1.0
    step_m = _round_up(sketch.metres_a_row * MARK_ROWS / unit_m) * unit_m
    end_m = (sketch.rows - 1) * sketch.metres_a_row
    count = int(end_m / step_m + 1e-9)
    return [
        (
            TERMINALS_Y + number * step_m / sketch.metres_a_row,
            show_length(number * step_m, manner=manner),
        )
        for number in range(count + 1)
    ]


def _round_up(value: float) -> float:
    """The next 1, 2 or 5 times a power of ten."""
    ten = 10.0 ** math.floor(math.log10(value))
    return next(ten * one for one in ROUND if ten * one >= value * (1 - 1e-9))


def cable_changes(zone: Zone, point: Point) -> bool:
    """Whether a section is of another cable than the one before it, or the first of all."""
    if point.after is None:
        return True
    before = next((one.cable for one in zone.line if one.id == point.after), None)
    return point.cable != before


def caption(point: Point, *, names: Mapping[str, str], manner: Manner) -> str:
    """The home run with its length and cable."""
    texts = {"cable": names.get(point.cable or "", "")}
    code = "home_run"
    if point.length_m is None:
        code = "home_run_unknown"
    else:
        texts["length"] = show_length(point.length_m, manner=manner)
        code = "home_run" if texts["cable"] else "home_run_no_cable"
    return say("drawing", code, values=texts, language=manner.language)


def limit_words(limit_db: float, manner: Manner) -> str:
    """A loss limit as decibels, volts, watts and ohms, so that nobody takes one for another."""
    shares = {
        "volts": level.volts_lost_fraction(loss_db=limit_db),
        "watts": level.watts_lost_fraction(loss_db=limit_db),
        "ohms": level.loop_of_load_fraction(loss_db=limit_db),
    }
    texts = {name: show(share, "fraction", manner=manner) for name, share in shares.items()}
    texts["limit"] = show_typed(limit_db, "db", manner=manner)
    return say("drawing", "limit", values=texts, language=manner.language)

"""What the numbers at one point of a line lie between, where they are not one number each.

A load behind a section that is not known takes between nothing and all of what it takes with
no cable there; a tap that is not known, what its kind allows; a control of unknown form feels
between an autotransformer's share and a pad's.
"""

from typing import NamedTuple

from pycore.calc.solve import Line, Run, line_rows
from pycore.formulas import level

# what of a point is told, in the order a person asks for it
NUMBERS = ("volts_v", "watts_w", "loss_db", "level_db")
Row = dict[str, float | None]


class Ends(NamedTuple):
    """A number, or its least and most; None is not known. One number has no ends beside it."""

    value: float | None
    low: float | None = None
    high: float | None = None


Numbers = dict[str, Ends]


def ends_of(line: Line) -> list[Numbers]:
    """Volts, watts, cable loss and level at every point of a line, in its order, by their names."""
    values = _rows(line, line.value)
    if line.value is not None and line.low is line.value and line.high is line.value:
        return [{name: Ends(row[name]) for name in NUMBERS} for row in values]
    told = values if _reaches_all(line) else _rows(line, None)
    each = zip(told, _rows(line, line.low), _rows(line, line.high), strict=True)
    return [
        _between(line, node, value=value, light=light, heavy=heavy)
        for node, (value, light, heavy) in enumerate(each, start=1)
    ]


def _rows(line: Line, solved: Run | None) -> list[Row]:
    """The numbers at every point by one solution; all unknown without one."""
    if solved is None:
        return [dict.fromkeys(NUMBERS) for _ in line.laid.points]
    rows = line_rows(line, solved)
    return [{name: row[name] for name in NUMBERS} for row in rows]  # type: ignore[literal-required]


def _between(line: Line, node: int, *, value: Row, light: Row, heavy: Row) -> Numbers:
    """The ends by the lightest and the heaviest load a line can be."""
    ends = {
        "volts_v": Ends(value["volts_v"], heavy["volts_v"], light["volts_v"]),
        "loss_db": Ends(value["loss_db"], light["loss_db"], heavy["loss_db"]),
        "level_db": Ends(value["level_db"], heavy["level_db"], light["level_db"]),
    }
    _, low_v, high_v = ends["volts_v"]
    low_w = _watts(low_v, line.low, node=node)
    ends["watts_w"] = Ends(value["watts_w"], low_w, _watts(high_v, line.high, node=node))
    return ends


def _reaches_all(line: Line) -> bool:
    """Whether no section on the way to any load is unknown."""
    laid = line.laid
    return not any(
        far and draw.high != 0 for far, draw in zip(laid.beyond, laid.draws, strict=True)
    )


def _watts(at_v: float | None, load: Run | None, *, node: int) -> float | None:
    """Watts (W) that a load takes at these volts; None where either is not known."""
    if at_v is None or load is None:
        return None
    return level.watts_at_volts_w(at_v=at_v, conductance_s=load.network.load_s[node].real)

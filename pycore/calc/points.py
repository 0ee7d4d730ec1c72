"""What arrives at one point of a line, as findings: volts, watts, cable loss, level."""

from collections.abc import Iterator

from pycore.calc.finding import Finding
from pycore.calc.limits import STATES
from pycore.calc.solve import Lines, PointRow, rows_of
from pycore.ground.units import unit_of

# what of a row is told, in the order a person asks for it
NUMBERS = ("volts_v", "watts_w", "loss_db", "level_db")


def point_findings(lines: Lines, point: str) -> Iterator[Finding]:
    """The numbers of one point in both states; the value is None where it is not known."""
    rows = {row["state"]: row for row in rows_of(lines) if row["point"] == point}
    for state in STATES:
        row = rows.get(state)
        if row is None:
            continue
        for name in NUMBERS:
            yield _finding(row, name)


def _finding(row: PointRow, name: str) -> Finding:
    value: float | None = row[name]  # type: ignore[literal-required]
    return Finding(
        code="point_number" if value is not None else "point_number_unknown",
        what=f"point_{name}",
        where={"point": row["point"]},
        state=row["state"],
        unit=unit_of(name) or "count",
        verdict="note" if value is not None else "unknown",
        value=value,
        values={"zone": row["zone"]},
    )

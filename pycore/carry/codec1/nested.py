"""Tables in tables: all rows of all lists together, as one table, with how many are whose."""

from itertools import islice
from typing import Any

from pycore.carry.codec1.octets import Reader, Writer, damaged
from pycore.carry.codec1.table import Cells, Coder, Context, Row, Table
from pycore.carry.codec1.wholes import read_wholes, write_wholes


class One:
    """One thing in each row."""

    def __init__(self, table: Table) -> None:
        self.table = table

    def write(self, out: Writer, values: list[Any], *, cells: Cells) -> None:
        """Write them as one table."""
        context, at = cells
        self.table.write(out, Context(context.desk, values, at, context))

    def read(self, source: Reader, cells: Cells) -> list[Any]:
        """Read them. Raises what `Coder.read` does."""
        context, at = cells
        rows: list[Row] = [{} for _ in at]
        self.table.read(source, Context(context.desk, rows, at, context))
        return rows


class Many:
    """A list of things in each row."""

    def __init__(self, table: Table) -> None:
        self.one = One(table)

    def write(self, out: Writer, values: list[Any], *, cells: Cells) -> None:
        """Write how many, then all of them as one table."""
        write_wholes(out, [len(value) for value in values])
        rows = [row for value in values for row in value]
        if rows:
            self.one.write(out, rows, cells=_spread(cells, [len(value) for value in values]))

    def read(self, source: Reader, cells: Cells) -> list[Any]:
        """Read them. Raises what `Coder.read` does."""
        counts = _read_counts(source, cells)
        rows = iter(self.one.read(source, _spread(cells, counts)) if sum(counts) else ())
        return [list(islice(rows, count)) for count in counts]


class Several:
    """A list of single values in each row."""

    def __init__(self, coder: Coder) -> None:
        self.coder = coder

    def write(self, out: Writer, values: list[Any], *, cells: Cells) -> None:
        """Write how many, then all of them as one column."""
        write_wholes(out, [len(value) for value in values])
        every = [each for value in values for each in value]
        if every:
            spread = _spread(cells, [len(value) for value in values])
            self.coder.write(out, every, cells=spread)

    def read(self, source: Reader, cells: Cells) -> list[Any]:
        """Read them. Raises what `Coder.read` does."""
        counts = _read_counts(source, cells)
        every = iter(self.coder.read(source, _spread(cells, counts)) if sum(counts) else ())
        return [list(islice(every, count)) for count in counts]


def _read_counts(source: Reader, cells: Cells) -> list[int]:
    counts = read_wholes(source, len(cells.at))
    if min(counts, default=0) < 0:
        raise damaged()
    source.grow(sum(counts))
    return counts


def _spread(cells: Cells, counts: list[int]) -> Cells:
    """Every row as often as it has entries."""
    at = [place for place, count in zip(cells.at, counts, strict=True) for _ in range(count)]
    return Cells(cells.context, at)


def point_before(context: Context) -> list[Any]:
    """What a point usually hangs on: the one listed before it on the same line."""
    rows, parents = context.rows, context.parents
    return [
        rows[n - 1]["id"] if n and parents[n - 1] == parents[n] else None for n in range(len(rows))
    ]


class HangsOn:
    """The point another hangs on: how far before it in the list, or the terminals."""

    def write(self, out: Writer, values: list[Any], *, cells: Cells) -> None:
        """Write the distances; the terminals are not here, but as what is not known."""
        places = {row["id"]: n for n, row in enumerate(cells.context.rows)}
        write_wholes(out, [n - places[on] for n, on in zip(cells.at, values, strict=True)])

    def read(self, source: Reader, cells: Cells) -> list[Any]:
        """Read them. Raises what `Coder.read` does."""
        rows, on = cells.context.rows, []
        for n, distance in zip(cells.at, read_wholes(source, len(cells.at)), strict=True):
            if not 0 <= n - distance < len(rows):
                raise damaged()
            on.append(rows[n - distance]["id"])
        return on

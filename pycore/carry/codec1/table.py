"""A table of like things, field by field: what is usual is left away.

Every field knows what is usual in each row (nothing, a catalogue kind's own figure, the
point before). A field that is usual throughout takes no byte; one that is not takes a
mask of the rows that differ and a column of their values. Which fields are there is one
number, a bit a field, so fields can be added behind the last without changing old texts.
"""

from collections.abc import Callable, Sequence
from typing import Any, NamedTuple, Protocol

from pycore.carry.codec1.octets import Reader, Writer, damaged
from pycore.carry.codec1.texts import Series
from pycore.carry.codec1.wholes import pack_bits, unpack_bits
from pycore.ground.problems import NewerJob

Row = dict[str, Any]
ALL, SOME, NOT_ALL_KNOWN = 0, 1, 2


class Desk:
    """What is known so far of the job being written or read: its ids, and what has them."""

    def __init__(self) -> None:
        self.ids = Series()
        self.places: list[str] = []
        self.rows: dict[str, Row] = {}
        self.kinds: dict[str, list[str]] = {}

    def keep_place(self, row: Row) -> None:
        """Keep a place: an amplifier, output, zone, point or area.

        Raises BadText `link_damaged` for one without an id.
        """
        one = id_of(row)
        self.places.append(one)
        self.rows[one] = row


def id_of(row: Row) -> str:
    """The id of a row.

    Raises BadText `link_damaged`: a text in which it has none was not written here.
    """
    if "id" not in row:
        raise damaged()
    return str(row["id"])


class Context(NamedTuple):
    """A table at work: its rows, and for each the place of the row above that it is in."""

    desk: Desk
    rows: list[Row]
    parents: Sequence[int]
    above: "Context | None"

    def parent(self, at: int) -> Row:
        """The row above that a row is in."""
        return {} if self.above is None else self.above.rows[self.parents[at]]


class Cells(NamedTuple):
    """The rows of a table whose values in one field are written or read."""

    context: Context
    at: list[int]


class Coder(Protocol):
    """Writes the values of some rows, and reads as many again.

    Values of a job that keeps its rules can always be written: writing raises nothing.
    """

    def write(self, out: Writer, values: list[Any], *, cells: Cells) -> None:
        """Write them."""

    def read(self, source: Reader, cells: Cells) -> list[Any]:
        """Read one for each of the rows.

        Raises BadText `link_damaged` for bytes that were not written so, TooLarge
        `link_holds_too_much`, and NewerJob `link_newer` for a choice or field not known here.
        """


Usual = Callable[[Context], list[Any]]


def always(value: Any) -> Usual:
    """The same value is usual in every row."""
    return lambda context: [value] * len(context.rows)


class Field(NamedTuple):
    """A field: its name in a job's text, how it is coded, and what is usual."""

    name: str
    coder: Coder
    usual: Usual = always(None)
    then: Callable[[Context], None] | None = None


class Table:
    """Fields in the order in which they are written, at most added to."""

    def __init__(self, *fields: Field) -> None:
        self.fields = fields

    def write(self, out: Writer, context: Context) -> None:
        """Which fields are there, then each of them.

        Raises BadText `link_damaged` for a row of which the id is missing.
        """
        there = 0
        columns = Writer()
        for place, field in enumerate(self.fields):
            usual = field.usual(context)
            values = [row.get(field.name) for row in context.rows]
            at = [n for n, value in enumerate(values) if value != usual[n]]
            if at:
                there |= 1 << place
                _write_column(columns, field.coder, values=values, cells=Cells(context, at))
            if field.then is not None:
                field.then(context)
        out.number(there)
        out.octets(bytes(columns.done))

    def read(self, source: Reader, context: Context) -> None:
        """Fill the rows of the context.

        Raises NewerJob `link_newer` for a field behind the last one known here, and what the
        coders of its fields raise.
        """
        there = source.number()
        if there >> len(self.fields):
            raise NewerJob("link_newer")
        for place, field in enumerate(self.fields):
            values = field.usual(context)
            if there >> place & 1:
                _read_column(source, field.coder, context=context, values=values)
            for row, value in zip(context.rows, values, strict=True):
                if value is not None:
                    row[field.name] = value
            if field.then is not None:
                field.then(context)


def _write_column(out: Writer, coder: Coder, *, values: list[Any], cells: Cells) -> None:
    context, at = cells
    differing = [values[n] for n in at]
    known = [value is not None for value in differing]
    way = (SOME if len(at) < len(values) else ALL) | (ALL if all(known) else NOT_ALL_KNOWN)
    out.number(way)
    if way & SOME:
        wanted = set(at)
        out.octets(pack_bits([n in wanted for n in range(len(values))], 1))
    if way & NOT_ALL_KNOWN:
        out.octets(pack_bits(known, 1))
        at = [n for n, is_known in zip(at, known, strict=True) if is_known]
    if at:
        coder.write(out, [values[n] for n in at], cells=Cells(context, at))


def _read_column(source: Reader, coder: Coder, *, context: Context, values: list[Any]) -> None:
    """Put what differs from the usual into `values`."""
    way, count = source.number(), len(values)
    at = list(range(count))
    if way > SOME | NOT_ALL_KNOWN:
        raise damaged()
    if way & SOME:
        at = _marked(source, at)
    for n in at:
        values[n] = None
    if way & NOT_ALL_KNOWN:
        at = _marked(source, at)
    if at:
        for n, value in zip(at, coder.read(source, Cells(context, at)), strict=True):
            values[n] = value


def _marked(source: Reader, at: list[int]) -> list[int]:
    bits = unpack_bits(source.octets((len(at) + 7) // 8), len(at), bits=1)
    return [n for n, bit in zip(at, bits, strict=True) if bit]

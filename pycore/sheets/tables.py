"""A table as data: heads with units, rows of cells, notes. The page draws it, CSV writes it."""

from typing import NamedTuple


class Head(NamedTuple):
    """A column: its words, and the unit of its numbers, empty where it holds words. `banded`:
    its cells carry a lowest and a highest beside their number. `noted`: what stands `within`
    them is text of its own, such as when and by what a number was read, and they may be judged."""

    words: str
    unit: str = ""
    banded: bool = False
    noted: bool = False


class Cell(NamedTuple):
    """What is shown, `within` below it where there is a band, and the numbers behind both (in
    the unit of its head) for a spreadsheet; None where there is no number. `is_line`: empty,
    a line to write on. `mark`: a reading judged in a word or two, `judged`: with its band."""

    shown: str
    value: float | None = None
    within: str = ""
    low: float | None = None
    high: float | None = None
    is_line: bool = False
    mark: str = ""
    judged: str = ""


class Table(NamedTuple):
    """One table of a sheet. `heads` tell every column; a row has a cell for each."""

    title: str
    heads: tuple[Head, ...]
    rows: tuple[tuple[Cell, ...], ...]
    notes: tuple[str, ...] = ()


class Sheet(NamedTuple):
    """All of a sheet: what it is called, what comes first, its tables, and what is said below."""

    title: str
    warnings: tuple[str, ...]
    tables: tuple[Table, ...]
    notes: tuple[str, ...]

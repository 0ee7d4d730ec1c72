"""Tables as comma-separated values, safe to open in a spreadsheet."""

from collections.abc import Iterable
from typing import Final, NamedTuple

from pycore.sheets.tables import Cell, Head, Sheet

# A cell that starts so is taken for a formula by spreadsheets; a leading quote keeps it text.
FORMULA_STARTS: Final = ("=", "+", "-", "@", "\t", "\r")
LINE_END: Final = "\r\n"


class BandWords(NamedTuple):
    """What the columns beside a number are called, with a place for {what}: of the lowest and
    the highest, of when and by what it was read, how it was judged, and by which band."""

    low: str
    high: str
    noted: str
    mark: str
    due_low: str
    due_high: str


def write_csv(sheet: Sheet, *, words: BandWords, decimal: str) -> str:
    """A sheet as text after RFC 4180; with a decimal comma the cells part at semicolons.

    Each table starts with its title and its heads with units; an empty line parts tables.
    """
    between = ";" if decimal == "," else ","
    parts = [[[sheet.title], *([one] for one in sheet.warnings)]]
    for table in sheet.tables:
        lines = [[table.title], _flat(_heads(one, words) for one in table.heads)]
        for row in table.rows:
            pairs = zip(table.heads, row, strict=True)
            lines.append(_flat(_cells(head, cell, decimal=decimal) for head, cell in pairs))
        lines += [[note] for note in table.notes]
        parts.append(lines)
    parts.append([[note] for note in sheet.notes])
    blocks = (_lines(lines, between=between) for lines in parts if lines)
    return (LINE_END + LINE_END).join(blocks) + LINE_END


def _flat(cells: Iterable[list[str]]) -> list[str]:
    return [one for several in cells for one in several]


def _lines(lines: Iterable[list[str]], *, between: str) -> str:
    return LINE_END.join(between.join(quoted(cell) for cell in line) for line in lines)


def _heads(head: Head, words: BandWords) -> list[str]:
    """The names of the columns one head becomes."""
    names = [head.words]
    if head.banded:
        names += [words.low.format(what=head.words), words.high.format(what=head.words)]
    told = _with_unit(names, head)
    if not head.noted:
        return told
    mark, noted = words.mark.format(what=head.words), words.noted.format(what=head.words)
    ends = [words.due_low.format(what=head.words), words.due_high.format(what=head.words)]
    return [*told, mark, *(_with_unit(ends, head) if head.unit else ()), noted]


def _with_unit(names: list[str], head: Head) -> list[str]:
    return [f"{name} ({head.unit})" if head.unit else name for name in names]


def _cells(head: Head, cell: Cell, *, decimal: str) -> list[str]:
    """The cells one cell becomes: words stay words, and what is not known stays empty."""
    first = cell.shown if cell.value is None else _number(cell.value, decimal)
    if head.banded:
        return [first, _number(cell.low, decimal), _number(cell.high, decimal)]
    if not head.noted:
        return [first]
    ends = [_number(cell.low, decimal), _number(cell.high, decimal)] if head.unit else []
    return [first, cell.mark, *ends, cell.within]


def _number(value: float | None, decimal: str) -> str:
    return "" if value is None else f"{value:.6g}".replace(".", decimal)


def quoted(text: str) -> str:
    """One cell: never a formula, and quoted where a sign in it would end it."""
    safe = f"'{text}" if text.startswith(FORMULA_STARTS) else text
    if any(sign in safe for sign in ',;"\r\n'):
        return '"' + safe.replace('"', '""') + '"'
    return safe

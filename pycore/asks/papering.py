"""The ask `sheet`: one paper of a job as tables, and the same for a spreadsheet."""

from typing import Literal

from typing_extensions import TypedDict

from pycore.asks.names import names_of
from pycore.asks.tap_schedule import tap_schedule
from pycore.ground.units import Manner
from pycore.ground.words import say
from pycore.jobs import Closed, Job
from pycore.sheets.comma import BandWords, write_csv
from pycore.sheets.measuring import test_sheet
from pycore.sheets.tables import Cell, Sheet, Table


class SheetBody(Closed):
    """A job and which of its papers: `test` is what every zone should read, `taps` what hangs
    where, on which tap."""

    job: Job
    which: Literal["test", "taps"]


class HeadCell(TypedDict):
    """A column of a table: its words, and the unit of its numbers, empty for words."""

    words: str
    unit: str


class SheetCell(TypedDict):
    """A cell ready to print; `within` is its band, or when and by what it was read; empty where
    there is neither. `judged`: of a reading, its mark and what it should read. `line`: nothing
    is known, there is a line to write on."""

    shown: str
    judged: str
    within: str
    line: bool


class SheetTable(TypedDict):
    """One table of a paper."""

    title: str
    heads: list[HeadCell]
    rows: list[list[SheetCell]]
    notes: list[str]


class SheetAnswer(TypedDict):
    """A paper: its warnings come before everything. `csv` is all of it for a spreadsheet.

    `running`: what each of its pages says at its head, so that one that is alone is known.
    """

    title: str
    running: str
    warnings: list[str]
    tables: list[SheetTable]
    notes: list[str]
    csv: str


def sheet(body: SheetBody, manner: Manner) -> SheetAnswer:
    """The ask `sheet`."""
    names = names_of(body.job, language=manner.language)
    make = test_sheet if body.which == "test" else tap_schedule
    made = make(body.job, names=names, manner=manner)
    return _answer(made, manner)


def _answer(made: Sheet, manner: Manner) -> SheetAnswer:
    language = manner.language
    same = {"what": "{what}"}
    columns = [f"{one}_of" for one in BandWords._fields]
    words = BandWords(*(say("meter_sheet", one, values=same, language=language) for one in columns))
    return {
        "title": made.title,
        "running": _running(made.title, manner),
        "warnings": list(made.warnings),
        "tables": [_table(one) for one in made.tables],
        "notes": list(made.notes),
        "csv": write_csv(made, words=words, decimal=manner.decimal),
    }


def _running(title: str, manner: Manner) -> str:
    """The paper and its day, where that is known."""
    if not manner.today:
        return title
    values = {"title": title, "day": manner.today}
    return say("meter_sheet", "running", values=values, language=manner.language)


def _table(one: Table) -> SheetTable:
    return {
        "title": one.title,
        "heads": [{"words": head.words, "unit": head.unit} for head in one.heads],
        "rows": [[_cell(cell) for cell in row] for row in one.rows],
        "notes": list(one.notes),
    }


def _cell(cell: Cell) -> SheetCell:
    return {
        "shown": cell.shown,
        "judged": cell.judged,
        "within": cell.within,
        "line": cell.is_line,
    }

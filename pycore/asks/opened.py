"""What is behind an id of a finding: the finding itself, and how its number came to be.

Most findings are made for every job that is looked at. Some numbers are only made into
findings when one is opened: shares and what is left, single points, rows of a tally, and
what a change would do.
"""

from collections.abc import Iterator
from typing import NamedTuple

from pycore.calc.check import Checked
from pycore.calc.finding import Finding
from pycore.calc.line_story import working_in
from pycore.calc.parts_of_limit import part_findings, part_working
from pycore.calc.point_story import point_working
from pycore.calc.points import point_findings
from pycore.calc.rows import row_between, row_finding, row_working
from pycore.calc.solve import Lines
from pycore.calc.sound_story import change_finding, change_working
from pycore.calc.story import working_of
from pycore.calc.wrong_rows import count_finding, count_working
from pycore.ground.problems import BadCommand
from pycore.ground.working import Working


class Opened(NamedTuple):
    """A finding and its working."""

    finding: Finding
    story: Working


def open_finding(checked: Checked, wanted: str, *, before: Lines | None = None) -> Opened:
    """The finding of an id; `before`: the lines as they are, where `checked` only would be so.

    Raises `finding_gone` where the job has none such.
    """
    for one in checked.findings:
        if one.id == wanted:
            return Opened(one, _story(checked, one))
    for opened in _made_when_asked(checked, wanted, before=before):
        if opened.finding.id == wanted:
            return opened
    raise BadCommand("finding_gone", where={"field": "finding"})


def _story(checked: Checked, finding: Finding) -> Working:
    story = working_of(checked, finding)
    return story if story.steps else working_in(checked.lines, finding)


def _made_when_asked(checked: Checked, wanted: str, *, before: Lines | None) -> Iterator[Opened]:
    """The findings nobody makes before they are asked for, as far as the id can mean them."""
    what, _, rest = wanted.partition(":")
    if what.startswith("point_"):
        yield from _points(checked, rest)
    elif what == "sound_change_db" and before is not None:
        yield from _changes(checked, rest, before=before)
    elif what == "wrong_rows_count":
        yield Opened(count_finding(checked.loads), count_working(checked.loads))
    elif what == "row_load_w":
        yield from _rows(checked, rest)
    elif what.endswith(("_share", "_left_w")):
        yield from _parts(checked, wanted)


def _points(checked: Checked, rest: str) -> Iterator[Opened]:
    for one in point_findings(checked.lines, rest.rpartition(":")[0]):
        yield Opened(one, point_working(checked.lines, one))


def _changes(checked: Checked, point: str, *, before: Lines) -> Iterator[Opened]:
    changed = change_finding(before, checked.lines, point=point)
    if changed is not None:
        yield Opened(changed, change_working(before, checked.lines, point=point))


def _rows(checked: Checked, rest: str) -> Iterator[Opened]:
    first, _, last = rest.partition(":override:")
    row = row_between(checked.loads, first=first, last=last)
    made = row_finding(row) if row else None
    if row is not None and made is not None:
        yield Opened(made, row_working(checked.loads, row))


def _parts(checked: Checked, wanted: str) -> Iterator[Opened]:
    for one, limit in part_findings(checked):
        if one.id == wanted:
            yield Opened(one, part_working(checked, one, limit=limit))

"""Everything that can go wrong, as one family.

    Problem
    |- BadText        text that cannot be read as a request, a job or a number
    |- BrokenJob      a job that breaks a rule of its own: loops, orphans, doubled ids
    |- BadCommand     a command that does not fit the job it is given
    |- NewerJob       a job written by a later version
    |- TooLarge       more text, points or steps than one ask may carry

A problem carries a code and values, never a sentence: `words` renders it. `where` names
the place ({"field": ...} or {"point": id} and so on).
"""

from collections.abc import Mapping

Value = str | float | int
Where = Mapping[str, str]


class Problem(Exception):
    """What went wrong (`code`, `values`) and where; the words are made at the door."""

    def __init__(self, code: str, *, where: Where | None = None, **values: Value) -> None:
        super().__init__(code)
        self.code = code
        self.values: dict[str, Value] = values
        self.where: dict[str, str] = dict(where or {})


class BadText(Problem):
    """Text that cannot be read as what it should be."""


class BrokenJob(Problem):
    """A job that breaks one of its own rules."""


class BadCommand(Problem):
    """A command that does not fit the job it is given."""


class NewerJob(Problem):
    """A job or link written by a later version of Rungline."""


class TooLarge(Problem):
    """More than one ask may carry."""

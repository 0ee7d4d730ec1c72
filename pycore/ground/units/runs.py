"""Reading a run: so many of a kind, so far apart. "20 x 4 m", "20", "12 m", "6 at 15 ft"."""

import re
from typing import NamedTuple

from pycore.ground.problems import BadText
from pycore.ground.units.read import LONGEST_TEXT, SPACES, read
from pycore.ground.units.table import Manner

PARTS = re.compile(r"(\S.*?)\s*(?:[x×*@]|\bat\b|\bof\b)\s*(\S.*)", re.IGNORECASE)
ONLY_COUNT = re.compile(r"(\d{1,12}|\d{1,3}(?: \d{3})+)\s*[x×*]?", re.ASCII | re.IGNORECASE)
UNIT_WORD = re.compile(r"[^\d\s.,+-]")


class Run(NamedTuple):
    """How many, and the length (m) of the section to each; None is not known."""

    how_many: int
    length_m: float | None


def read_run(text: str, *, manner: Manner) -> Run | None:
    """The run in `text`; None for empty text.

    A number alone is a count; a number with a unit of length is one of them, that far away.
    "4 m x 20" is "20 x 4 m": the unit tells them apart.
    Raises BadText as `read` does, and `run_unread` where it is neither.
    """
    tidy = SPACES.sub(" ", text).strip()
    if not tidy:
        return None
    if len(tidy) > LONGEST_TEXT:
        raise BadText("run_unread", text=tidy[:LONGEST_TEXT] + "…")
    parts = PARTS.fullmatch(tidy)
    if parts is not None:
        count, length = (parts[2], parts[1]) if _said_last(parts) else (parts[1], parts[2])
        return Run(_count(count, manner=manner), read(length, "m", manner=manner))
    only = ONLY_COUNT.fullmatch(tidy)
    if only is not None:
        return Run(_count(only[1], manner=manner), None)
    try:
        return Run(1, read(tidy, "m", manner=manner))
    except BadText as problem:
        if problem.code == "number_ambiguous":
            raise
        raise BadText("run_unread", text=tidy) from None


def _said_last(parts: re.Match[str]) -> bool:
    """Whether the count comes last: "4 m x 20"."""
    return bool(UNIT_WORD.search(parts[1])) and ONLY_COUNT.fullmatch(parts[2]) is not None


def _count(text: str, *, manner: Manner) -> int:
    count = read(text, "count", manner=manner)
    if count is None or count < 1:
        raise BadText("run_unread", text=text)
    return int(count)

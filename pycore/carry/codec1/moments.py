"""A column of moments: "2026-11-25T10:31:00Z" and the like as a count of days or seconds."""

import re
from collections.abc import Sequence
from datetime import datetime, timedelta

from pycore.carry.codec1.octets import Reader, Writer, damaged
from pycore.carry.codec1.wholes import read_wholes, write_wholes

LITERAL = 0
START = datetime(2000, 1, 1)  # noqa: DTZ001 - a count, not a time of any zone
SECOND = timedelta(seconds=1)
MOST_STEPS = 10**15

# mark -> how it is written, its look, and the step it is counted in
WAYS: dict[int, tuple[re.Pattern[str], str, timedelta]] = {
    mark: (re.compile(pattern), look, step)
    for mark, (pattern, look, step) in enumerate(
        (
            (r"\d{4}-\d\d-\d\d", "{:%Y-%m-%d}", 86400 * SECOND),
            (r"\d{4}-\d\d-\d\dT\d\d:\d\d", "{:%Y-%m-%dT%H:%M}", 60 * SECOND),
            (r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d", "{:%Y-%m-%dT%H:%M:%S}", SECOND),
            (r"\d{4}-\d\d-\d\dT\d\d:\d\dZ", "{:%Y-%m-%dT%H:%MZ}", 60 * SECOND),
            (r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ", "{:%Y-%m-%dT%H:%M:%SZ}", SECOND),
        ),
        start=1,
    )
}
MILLISECONDS = 6
WITH_MILLISECONDS = re.compile(r"(\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d)\.(\d{3})Z", re.ASCII)


def write_moments(out: Writer, values: Sequence[str]) -> None:
    """The column: how each is written, the counts, then those written in no way known here."""
    counted = [_count(value) for value in values]
    write_wholes(out, [mark for mark, _ in counted])
    write_wholes(out, [steps for mark, steps in counted if mark != LITERAL])
    for value, (mark, _) in zip(values, counted, strict=True):
        if mark == LITERAL:
            out.text(value)


def _count(value: str) -> tuple[int, int]:
    """The mark and the count of a moment; only where the text comes back the same."""
    for mark in (*WAYS, MILLISECONDS):
        steps = _steps(value, mark)
        if steps is not None and _written(mark, steps) == value:
            return mark, steps
    return LITERAL, 0


def _steps(value: str, mark: int) -> int | None:
    try:
        if mark == MILLISECONDS:
            found = WITH_MILLISECONDS.fullmatch(value)
            if found is None:
                return None
            return (datetime.fromisoformat(found[1]) - START) // SECOND * 1000 + int(found[2])
        pattern, _, step = WAYS[mark]
        if pattern.fullmatch(value) is None:
            return None
        return (datetime.fromisoformat(value.removesuffix("Z")) - START) // step
    except ValueError:
        return None


def _written(mark: int, steps: int) -> str:
    """The text of a count. Raises OverflowError beyond the years 1 to 9999."""
    if mark == MILLISECONDS:
        seconds, thousandths = divmod(steps, 1000)
        return f"{_look(START + seconds * SECOND, '{:%Y-%m-%dT%H:%M:%S}')}.{thousandths:03}Z"
    _, look, step = WAYS[mark]
    return _look(START + steps * step, look)


def _look(moment: datetime, look: str) -> str:
    """A moment written out; some systems leave the zeros of an early year away."""
    return look.format(moment) if moment.year >= 1000 else ""


def read_moments(source: Reader, count: int) -> list[str]:
    """A column of `count` moments as `write_moments` wrote it.

    Raises BadText `link_damaged`, TooLarge `link_holds_too_much`.
    """
    marks = read_wholes(source, count)
    if any(mark not in WAYS and mark not in (LITERAL, MILLISECONDS) for mark in marks):
        raise damaged()
    steps = iter(read_wholes(source, sum(mark != LITERAL for mark in marks)))
    return [
        source.text() if mark == LITERAL else source.made(_read(mark, next(steps)))
        for mark in marks
    ]


def _read(mark: int, steps: int) -> str:
    if abs(steps) > MOST_STEPS:
        raise damaged()
    try:
        return _written(mark, steps)
    except OverflowError:
        raise damaged() from None

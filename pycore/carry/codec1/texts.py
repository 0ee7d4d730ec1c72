"""A column of texts that mostly end in a number: "Hall 1", "Hall 2", "k7f12".

Each text is a stem and a number behind it. A stem is written out once; from then on it is
a small number, and nothing at all where it is the one expected. Of a number only what
differs from "one more than the last with this stem" is written.
"""

import re
from collections.abc import Hashable, Iterator, Sequence
from typing import NamedTuple

from pycore.carry.codec1.octets import Reader, Writer, damaged
from pycore.carry.codec1.wholes import read_wholes, write_wholes

# A number has no leading zero; zeros before it belong to the stem.
NUMBERED = re.compile(r"(.*?)(0|[1-9][0-9]{0,8})", re.DOTALL)
LARGEST = 10**9
EXPECTED, NO_NUMBER = 0, 0


class Hint(NamedTuple):
    """The stem expected in a row, and the series whose numbers it goes on with."""

    series: Hashable
    stem: str


class Series:
    """Stems met so far, and the last number of each; one may serve several columns."""

    def __init__(self) -> None:
        self.stems: list[str] = []
        self.places: dict[str, int] = {}
        self.last: dict[Hashable, int] = {}
        self.latest = ""

    def expected(self, hint: Hint | None) -> str:
        """The stem expected next: the hinted one, else the latest."""
        return self.latest if hint is None else hint.stem

    def met(self, stem: str) -> None:
        """Keep a stem that was used."""
        self.latest = stem
        if stem not in self.places:
            self.places[stem] = len(self.stems)
            self.stems.append(stem)

    def number_after(self, stem: str, hint: Hint | None) -> int:
        """The number expected behind a stem."""
        return self.last.get(_key(stem, hint), 0) + 1

    def keep(self, stem: str, hint: Hint | None, *, number: int) -> None:
        """Keep a number that was used."""
        self.last[_key(stem, hint)] = number


def _key(stem: str, hint: Hint | None) -> Hashable:
    return (None if hint is None else hint.series, stem)


def write_texts(
    out: Writer, values: Sequence[str], *, series: Series, hints: Sequence[Hint | None]
) -> None:
    """The column: the new stems, then what differs from the expected stems and numbers."""
    stem_marks, number_marks, new = [], [], []
    for value, hint in zip(values, hints, strict=True):
        stem, number = _split(value)
        if stem == series.expected(hint):
            stem_marks.append(EXPECTED)
        else:
            stem_marks.append(1 + series.places.get(stem, len(series.stems)))
            if stem not in series.places:
                new.append(stem)
        series.met(stem)
        if number is None:
            number_marks.append(NO_NUMBER)
            continue
        number_marks.append(1 + _folded(number - series.number_after(stem, hint)))
        series.keep(stem, hint, number=number)
    out.number(len(new))
    write_wholes(out, [len(stem.encode()) for stem in new])
    out.octets("".join(new).encode())
    write_wholes(out, stem_marks)
    write_wholes(out, number_marks)


def _split(value: str) -> tuple[str, int | None]:
    found = NUMBERED.fullmatch(value)
    return (value, None) if found is None else (found[1], int(found[2]))


def _folded(number: int) -> int:
    return 2 * number if number >= 0 else -2 * number - 1


def _unfolded(number: int) -> int:
    return -(number + 1 >> 1) if number & 1 else number >> 1


def read_texts(source: Reader, *, series: Series, hints: Sequence[Hint | None]) -> list[str]:
    """A column of as many texts as there are hints, as `write_texts` wrote it.

    Raises BadText `link_damaged`, TooLarge `link_holds_too_much`.
    """
    new = iter(_read_new(source))
    stem_marks = read_wholes(source, len(hints))
    number_marks = read_wholes(source, len(hints))
    values = []
    for stem_mark, number_mark, hint in zip(stem_marks, number_marks, hints, strict=True):
        stem = (
            series.expected(hint) if stem_mark == EXPECTED else _marked(stem_mark, series, new=new)
        )
        series.met(stem)
        if number_mark == NO_NUMBER:
            values.append(source.made(stem))
            continue
        number = series.number_after(stem, hint) + _unfolded(number_mark - 1)
        if not 0 <= number < LARGEST:
            raise damaged()
        series.keep(stem, hint, number=number)
        values.append(source.made(f"{stem}{number}"))
    return values


def _read_new(source: Reader) -> list[str]:
    lengths = read_wholes(source, source.grow(source.number()))
    try:
        return [source.made(source.octets(max(0, length)).decode()) for length in lengths]
    except UnicodeDecodeError:
        raise damaged() from None


def _marked(mark: int, series: Series, *, new: Iterator[str]) -> str:
    """The stem of a mark: one met before, or the next of the new ones."""
    if 0 < mark <= len(series.stems):
        return series.stems[mark - 1]
    stem = next(new, None) if mark == 1 + len(series.stems) else None
    if stem is None:
        raise damaged()
    return stem

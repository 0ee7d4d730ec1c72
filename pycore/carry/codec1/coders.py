"""How the values of a field are written: numbers, choices, texts, ids, and who is meant."""

from collections.abc import Callable, Sequence
from typing import Any

from pycore.carry.codec1.moments import read_moments, write_moments
from pycore.carry.codec1.numbers import read_numbers, write_numbers
from pycore.carry.codec1.octets import Reader, Writer, damaged
from pycore.carry.codec1.table import Cells
from pycore.carry.codec1.texts import Hint, Series, read_texts, write_texts
from pycore.carry.codec1.wholes import read_wholes, write_wholes
from pycore.ground.problems import NewerJob

LITERAL = 0


class Wholes:
    """Whole numbers."""

    def write(self, out: Writer, values: list[Any], *, cells: Cells) -> None:  # noqa: ARG002
        """Write them."""
        write_wholes(out, values)

    def read(self, source: Reader, cells: Cells) -> list[Any]:
        """Read them. Raises what `Coder.read` does."""
        return read_wholes(source, len(cells.at))


class Numbers:
    """Decimal numbers."""

    def write(self, out: Writer, values: list[Any], *, cells: Cells) -> None:  # noqa: ARG002
        """Write them."""
        write_numbers(out, values)

    def read(self, source: Reader, cells: Cells) -> list[Any]:
        """Read them. Raises what `Coder.read` does."""
        return read_numbers(source, len(cells.at))


class Choices:
    """One of a few values, in a frozen order that is only ever added to."""

    def __init__(self, *choices: Any) -> None:
        self.choices = choices

    def write(self, out: Writer, values: list[Any], *, cells: Cells) -> None:  # noqa: ARG002
        """Write their places in the order."""
        write_wholes(out, [self.choices.index(value) for value in values])

    def read(self, source: Reader, cells: Cells) -> list[Any]:
        """Read them. Raises BadText `link_damaged`; NewerJob `link_newer` for a later choice."""
        places = read_wholes(source, len(cells.at))
        if any(place < 0 for place in places):
            raise damaged()
        if any(place >= len(self.choices) for place in places):
            raise NewerJob("link_newer")
        return [self.choices[place] for place in places]


class Texts:
    """Names and labels; `hints` says which stem is expected in each row."""

    def __init__(self, hints: Callable[[Cells], Sequence[Hint | None]] | None = None) -> None:
        self.hints = hints or (lambda cells: [None] * len(cells.at))

    def write(self, out: Writer, values: list[Any], *, cells: Cells) -> None:
        """Write them."""
        write_texts(out, values, series=Series(), hints=self.hints(cells))

    def read(self, source: Reader, cells: Cells) -> list[Any]:
        """Read them. Raises what `Coder.read` does."""
        return read_texts(source, series=Series(), hints=self.hints(cells))


class Notes:
    """Long texts, each as it is."""

    def write(self, out: Writer, values: list[Any], *, cells: Cells) -> None:  # noqa: ARG002
        """Write them."""
        for value in values:
            out.text(value)

    def read(self, source: Reader, cells: Cells) -> list[Any]:
        """Read them. Raises what `Coder.read` does."""
        return [source.text() for _ in cells.at]


class Moments:
    """Moments."""

    def write(self, out: Writer, values: list[Any], *, cells: Cells) -> None:  # noqa: ARG002
        """Write them."""
        write_moments(out, values)

    def read(self, source: Reader, cells: Cells) -> list[Any]:
        """Read them. Raises what `Coder.read` does."""
        return read_moments(source, len(cells.at))


class Ids:
    """Ids, which run on through the whole job."""

    def write(self, out: Writer, values: list[Any], *, cells: Cells) -> None:
        """Write them."""
        write_texts(out, values, series=cells.context.desk.ids, hints=[None] * len(values))

    def read(self, source: Reader, cells: Cells) -> list[Any]:
        """Read them. Raises what `Coder.read` does."""
        return read_texts(source, series=cells.context.desk.ids, hints=[None] * len(cells.at))


class Meant:
    """Who is meant: the place of a known id in its list, or an id nobody here has."""

    def __init__(self, known: Callable[[Cells], list[str]]) -> None:
        self.known = known

    def write(self, out: Writer, values: list[Any], *, cells: Cells) -> None:
        """Write the places from 1 up, then the ids that have none."""
        known = {one: place for place, one in reversed(list(enumerate(self.known(cells), 1)))}
        write_wholes(out, [known.get(value, LITERAL) for value in values])
        alien = [value for value in values if value not in known]
        if alien:
            write_texts(out, alien, series=cells.context.desk.ids, hints=[None] * len(alien))

    def read(self, source: Reader, cells: Cells) -> list[Any]:
        """Read them. Raises what `Coder.read` does."""
        known, places = self.known(cells), read_wholes(source, len(cells.at))
        if any(not 0 <= place <= len(known) for place in places):
            raise damaged()
        alien: list[str] = []
        if LITERAL in places:
            hints = [None] * places.count(LITERAL)
            alien = read_texts(source, series=cells.context.desk.ids, hints=hints)
        rest = iter(alien)
        return [next(rest) if place == LITERAL else known[place - 1] for place in places]


def known_places(cells: Cells) -> list[str]:
    """All places of the job met so far."""
    return cells.context.desk.places


def known_kinds(*families: str) -> Callable[[Cells], list[str]]:
    """The kinds of some families in the job."""

    def known(cells: Cells) -> list[str]:
        kinds = cells.context.desk.kinds
        return [one for family in families for one in kinds.get(family, ())]

    return known


class Either:
    """Numbers or one of a few words: which of them, then the numbers, then the words."""

    def __init__(self, *words: str) -> None:
        self.words = Choices(*words)

    def write(self, out: Writer, values: list[Any], *, cells: Cells) -> None:
        """Write them."""
        write_wholes(out, [int(isinstance(value, str)) for value in values])
        numbers = [value for value in values if not isinstance(value, str)]
        words = [value for value in values if isinstance(value, str)]
        if numbers:
            write_numbers(out, numbers)
        self.words.write(out, words, cells=cells)

    def read(self, source: Reader, cells: Cells) -> list[Any]:
        """Read them. Raises what `Coder.read` does."""
        marks = [mark == 1 for mark in read_wholes(source, len(cells.at))]
        numbers = iter(read_numbers(source, marks.count(False)) if False in marks else ())
        of_words = [at for at, is_word in zip(cells.at, marks, strict=True) if is_word]
        words = iter(self.words.read(source, Cells(cells.context, of_words)))
        return [next(words) if is_word else next(numbers) for is_word in marks]

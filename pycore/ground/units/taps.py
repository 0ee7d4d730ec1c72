"""The taps of one row of a selector as one text, read and printed: "10 / 5 / 2.5 W / 8 Ω"."""

import re
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from pycore.ground.problems import BadText
from pycore.ground.units.read import OHM_SIGN, OMEGA, SPACES, read
from pycore.ground.units.show import show_typed
from pycore.ground.units.table import CAPITALS, TYPED, WRITTEN, Manner

LONGEST_ROW = 200
MOST_TAPS = 24
BETWEEN = re.compile(r"\s*[/;|\n]\s*|,\s+")
# A number and the unit behind it, where several stand with nothing but blanks between them.
ONE = re.compile(r"\S*\d\S*(?:\s+[^\W\d]+)?")
TOUCHING = re.compile(r"\d,\d")
OHM_WORDS = (TYPED["ohm"].keys() | {word.lower() for word in CAPITALS["ohm"]}) - {"", "k", "m"}


class TapText(NamedTuple):
    """One position: watts, or the ohms of the low-impedance position."""

    w: float | None
    ohm: float | None


def read_taps(text: str, *, manner: Manner) -> list[TapText]:
    """The taps in `text`, as they stand on the selector; none for empty text.

    They are parted by strokes, blanks, semicolons, or commas with a blank behind. One comma with
    none could part two taps or be a decimal sign: `taps_unclear` asks which.
    Raises BadText as `read` does, and `tap_zero`, `taps_too_many`, `taps_unclear`.
    """
    tidy = text.replace(OHM_SIGN, OMEGA).strip()
    pieces = [piece for part in BETWEEN.split(tidy[:LONGEST_ROW]) for piece in _parted(part)]
    if len(pieces) > MOST_TAPS or len(tidy) > LONGEST_ROW:
        raise BadText("taps_too_many", most=MOST_TAPS)
    if len(pieces) == 1 and manner.decimal == "." and TOUCHING.search(pieces[0]):
        parts = pieces[0].split(",")
        if len(parts) == 2 and "." not in pieces[0]:
            one, several = ".".join(parts), " / ".join(parts)
            raise BadText("taps_unclear", text=pieces[0], one=one, several=several)
        pieces = parts
    taps = [_tap(piece, manner=manner) for piece in pieces]
    return list(dict.fromkeys(taps))


def _parted(part: str) -> Iterator[str]:
    """What stands in a part with only blanks between: "10 W 5 W" is two."""
    tidy = SPACES.sub(" ", part).strip()
    found = ONE.findall(tidy)
    if tidy and " ".join(found) != tidy:
        yield tidy  # something in it is no number: the reader says so of the whole
    else:
        yield from found


def _tap(text: str, *, manner: Manner) -> TapText:
    word = re.sub(r"[\d.,\s]", "", text).lower()
    unit = "ohm" if word in OHM_WORDS else "w"
    number = read(text, unit, manner=manner)
    if not number or number < 0:
        raise BadText("tap_zero", text=text)
    return TapText(None, number) if unit == "ohm" else TapText(number, None)


def show_taps(taps: Sequence[TapText], *, manner: Manner) -> str:
    """The same taps as one text that `read_taps` reads back."""
    watts = [show_typed(tap.w, "w", manner=manner) for tap in taps if tap.w is not None]
    ohms = [show_typed(tap.ohm, "ohm", manner=manner) for tap in taps if tap.ohm is not None]
    bare = [text.removesuffix(WRITTEN["w"]) for text in watts[:-1]]
    return " / ".join([*bare, *watts[-1:], *ohms])

"""A QR code as a matrix of modules, for the page to draw.

A code above version 25 is too fine for a phone's camera at arm's length (common practice,
no source), so none is made: the file is offered instead. A link is put in as digits, which
takes a quarter less room; whoever reads the code gets a link that opens the same.
"""

import re
from typing import Any, NamedTuple

from pycore.carry.envelope import as_digits

LARGEST_VERSION = 25
# ISO/IEC 18004, version 25 at level L: bytes and digits it holds at most (from memory).
MOST_BYTES = 1273
MOST_DIGITS = 3057
MOST_CHARACTERS = 10_000  # more is not looked at
LINK_BEHIND = re.compile(r"(.*#)?([1-9][0-9]{0,5}\.[A-Za-z0-9_-]+)", re.ASCII | re.DOTALL)


class Code(NamedTuple):
    """A QR code: its version, modules a side, a row of 0 and 1 for each, and what it says."""

    version: int
    size: int
    rows: tuple[str, ...]
    text: str


def code_of(text: str) -> Code | None:
    """The code of a text; None for no text, and when it would be
    larger than version 25. The quiet zone of
    four modules is not part of it."""
    if not 0 < len(text) <= MOST_CHARACTERS:
        return None
    start, digits = _parts(text)
    if len(start.encode()) > MOST_BYTES or len(digits) > MOST_DIGITS:
        return None
    import segno
    from segno.consts import MODE_BYTE, MODE_NUMERIC
    from segno.encoder import DataOverflowError

    parts: Any = [
        (part, mode) for part, mode in ((start, MODE_BYTE), (digits, MODE_NUMERIC)) if part
    ]
    try:
        made = segno.make(parts, error="l", micro=False)
    except DataOverflowError:
        return None
    version = int(made.version)
    if version > LARGEST_VERSION:
        return None
    rows = tuple("".join(str(module) for module in row) for row in made.matrix)
    return Code(version, len(rows), rows, start + digits)


def _parts(text: str) -> tuple[str, str]:
    """What goes in as bytes, and what behind it as digits."""
    found = LINK_BEHIND.fullmatch(text)
    link = as_digits(found[2]) if found else None
    if found is None or link is None:
        return text, ""
    codec, digits = link.split(".")
    return f"{found[1] or ''}{codec}.", digits

"""The cover of a link: which codec wrote it, whether it is whole, and finding it in a text.

    1.<base64url>     the usual way
    1n.<digits>       the same bytes as digits, for a QR code

The bytes: how many follow (two bytes) and a check on that number (one), so that a link cut
short can say so; then a checksum (CRC-32, four bytes) and what the codec wrote.
"""

import re
from base64 import b64decode, urlsafe_b64encode
from binascii import crc32
from collections.abc import Callable
from typing import NamedTuple

from pycore.carry.digits import digits_for, from_digits, to_digits
from pycore.ground.problems import BadText, TooLarge

HEAD = 7
MOST_BYTES = 0xFFFF
# Far more than a link may have, for one that comes in a long message.
MOST_CHARACTERS = 200_000
LETTERS, DIGITS = "", "n"

START = r"([1-9][0-9]{0,5})(n?)\.(?=[A-Za-z0-9_-]{%d})"
LEAST_ALONE = 10
# What mail and messengers put in and around: breaks, signs nobody sees, quote marks.
UNSEEN = r"\s\u00ad\u200b-\u200f\u2060\u2066-\u2069\ufeff"
QUOTED = re.compile(r"\n[> ]+")
# The likeliest place of a link in a text comes first: behind #, then at a start of its own.
PLACES = (
    re.compile(r"#" + START % 1),
    re.compile(rf"\A[{UNSEEN}]*" + START % LEAST_ALONE),
    re.compile(rf"(?<=[{UNSEEN}\"'<(\[])" + START % LEAST_ALONE),
)
RUN = {
    LETTERS: re.compile(f"[A-Za-z0-9_{UNSEEN}-]*"),
    DIGITS: re.compile(f"[0-9{UNSEEN}]*"),
}
ALIEN = re.compile(f"[{UNSEEN}]+")


class Found(NamedTuple):
    """A link found in a text: its codec's number, its way, and the characters behind."""

    codec: int
    way: str
    characters: str


def wrap(codec: int, some: bytes) -> str:
    """The link of what a codec wrote. Raises TooLarge `link_too_much` beyond 65,535 bytes.

    It never ends in a sign that messengers leave out of a link or take for markup; what
    stands behind the length it says is not read.
    """
    text = urlsafe_b64encode(_covered(codec, some)).decode().rstrip("=")
    return f"{codec}.{text}{'0' if text[-1] in '-_' else ''}"


def as_digits(link: str) -> str | None:
    """The same link in digits; None for what is no whole link."""
    found = re.fullmatch(r"([1-9][0-9]{0,5})\.([A-Za-z0-9_-]+)", link, re.ASCII)
    if found is None:
        return None
    codec = int(found[1])
    try:
        some = unwrap(Found(codec, LETTERS, found[2]))
    except BadText:
        return None
    return f"{codec}{DIGITS}.{to_digits(_covered(codec, some))}"


def find(text: str) -> Found:
    """The link in a text: alone, in an address, in a message.

    Raises TooLarge `link_text_too_long`, BadText `not_a_link`.
    """
    if len(text) > MOST_CHARACTERS:
        raise TooLarge("link_text_too_long", characters=len(text), most=MOST_CHARACTERS)
    text = QUOTED.sub("\n", text.replace("%23", "#"))
    for place in PLACES:
        start = place.search(text)
        if start is not None:
            run = RUN[start[2]].match(text, start.end())
            characters = ALIEN.sub("", run[0] if run else "")
            return Found(int(start[1]), start[2], characters)
    raise BadText("not_a_link")


def unwrap(found: Found) -> bytes:
    """What the codec wrote. Raises BadText `link_cut` or `link_damaged`."""
    count_for, read = WAYS[found.way]
    if len(found.characters) < count_for(HEAD):
        raise BadText("link_cut", percent=0)
    head = read(found.characters[: count_for(HEAD)])
    if head is None:
        raise BadText("link_damaged")
    length = int.from_bytes(head[:2], "big")
    if _check(head[:2]) != head[2]:
        raise BadText("link_damaged")
    wanted = count_for(HEAD + length)
    if len(found.characters) < wanted:
        raise BadText("link_cut", percent=100 * len(found.characters) // wanted)
    whole = read(found.characters[:wanted])
    if whole is None or _covered(found.codec, whole[HEAD:]) != whole:
        raise BadText("link_damaged")
    return whole[HEAD:]


def _covered(codec: int, some: bytes) -> bytes:
    if len(some) > MOST_BYTES:
        raise TooLarge("link_too_much")
    length = len(some).to_bytes(2, "big")
    checksum = crc32(f"{codec}.".encode() + some).to_bytes(4, "big")
    return length + bytes([_check(length)]) + checksum + some


def _check(length: bytes) -> int:
    return crc32(length) & 0xFF


def _from_letters(text: str) -> bytes | None:
    """The bytes of base64url without padding; None where no bytes are written so."""
    if len(text) % 4 == 1:
        return None
    return b64decode(text + "=" * (-len(text) % 4), b"-_", validate=True)


def _letters_for(count: int) -> int:
    return (count * 4 + 2) // 3


WAYS: dict[str, tuple[Callable[[int], int], Callable[[str], bytes | None]]] = {
    LETTERS: (_letters_for, _from_letters),
    DIGITS: (digits_for, from_digits),
}

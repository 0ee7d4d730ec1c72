"""Bytes out and in: whole numbers of any size in as few bytes as they need.

The reader trusts nothing: it never reads past the end, and it counts the rows and the
characters it has made, so that few bytes cannot ask for much work.
"""

from pycore.ground.problems import BadText, TooLarge

# Beyond any job that goes into a link, and little enough to be made in a moment.
MOST_ROWS = 6_000
MOST_CHARACTERS = 1_000_000
LONGEST_NUMBER = 10  # bytes: 70 bits


class Writer:
    """Bytes being put together."""

    def __init__(self) -> None:
        self.done = bytearray()

    def number(self, value: int) -> None:
        """A number from 0 up, seven bits a byte, low bits first."""
        while value > 0x7F:
            self.done.append(value & 0x7F | 0x80)
            value >>= 7
        self.done.append(value)

    def signed(self, value: int) -> None:
        """A number of either sign, small ones short: 0, -1, 1, -2 …"""
        self.number(2 * value if value >= 0 else -2 * value - 1)

    def octets(self, some: bytes) -> None:
        """Bytes as they are."""
        self.done += some

    def text(self, value: str) -> None:
        """A text: its length in bytes and its UTF-8."""
        some = value.encode()
        self.number(len(some))
        self.done += some


class Reader:
    """Bytes being taken apart. Every fault is BadText `link_damaged` or TooLarge."""

    def __init__(self, some: bytes) -> None:
        self.some = some
        self.at = 0
        self.rows = 0
        self.characters = 0

    def number(self) -> int:
        """A number as `Writer.number` wrote it. Raises BadText `link_damaged`."""
        value = 0
        for place in range(LONGEST_NUMBER):
            one = self.octets(1)[0]
            value |= (one & 0x7F) << 7 * place
            if one < 0x80:
                return value
        raise damaged()

    def signed(self) -> int:
        """A number as `Writer.signed` wrote it. Raises BadText `link_damaged`."""
        value = self.number()
        return -(value + 1 >> 1) if value & 1 else value >> 1

    def octets(self, count: int) -> bytes:
        """So many bytes. Raises BadText `link_damaged` where there are fewer."""
        until = self.at + count
        if until > len(self.some):
            raise damaged()
        found = self.some[self.at : until]
        self.at = until
        return found

    def text(self) -> str:
        """A text as `Writer.text` wrote it.

        Raises BadText `link_damaged`, TooLarge `link_holds_too_much`.
        """
        try:
            return self.made(self.octets(self.number()).decode())
        except UnicodeDecodeError:
            raise damaged() from None

    def made(self, text: str) -> str:
        """The same text, its characters counted. Raises TooLarge `link_holds_too_much`."""
        self.characters += len(text)
        if self.characters > MOST_CHARACTERS:
            raise TooLarge("link_holds_too_much")
        return text

    def grow(self, rows: int) -> int:
        """The same number of rows, counted. Raises TooLarge `link_holds_too_much`."""
        self.rows += rows
        if self.rows > MOST_ROWS:
            raise TooLarge("link_holds_too_much")
        return rows

    def end(self) -> None:
        """Refuse anything that comes behind. Raises BadText `link_damaged`."""
        if self.at != len(self.some):
            raise damaged()


def damaged() -> BadText:
    """The problem of bytes that no job was written as; whoever asks for it raises it."""
    return BadText("link_damaged")

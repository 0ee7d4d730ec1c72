"""Bytes as decimal digits, which a QR code takes in far less room than letters.

Seven bytes are 17 digits; what is left at the end takes as few as it needs. A QR code
has 3 1/3 bits for a digit and 8 for a letter (ISO/IEC 18004, numeric and byte mode; from
memory), so the same bytes take a quarter less room than in base64.
"""

BLOCK = 7
# so many bytes -> so many digits: the fewest that hold every value
DIGITS = (0, 3, 5, 8, 10, 13, 15, 17)


def to_digits(some: bytes) -> str:
    """The bytes as digits."""
    blocks = [some[at : at + BLOCK] for at in range(0, len(some), BLOCK)]
    return "".join(f"{int.from_bytes(one, 'big'):0{DIGITS[len(one)]}}" for one in blocks)


def from_digits(text: str) -> bytes | None:
    """The bytes again; None where no bytes are written so.

    Only digits may be in the text: ValueError for anything else.
    """
    done = bytearray()
    width = DIGITS[BLOCK]
    for at in range(0, len(text), width):
        block = text[at : at + width]
        if len(block) not in DIGITS:
            return None
        count = DIGITS.index(len(block))
        number = int(block)
        if number >> 8 * count:
            return None
        done += number.to_bytes(count, "big")
    return bytes(done)


def digits_for(count: int) -> int:
    """How many digits so many bytes take."""
    whole, rest = divmod(count, BLOCK)
    return whole * DIGITS[BLOCK] + DIGITS[rest]

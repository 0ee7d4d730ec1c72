"""A column of whole numbers, in whichever of a few ways takes the fewest bytes.

0  all alike: the number
1  a least number, and what each is more than it
2  a first number, and the steps from each to the next as a column of their own
3, 4, 5  a least number, and what each is more than it in 1, 2 or 4 bits
6  each as it is
7  a few different numbers, and for each its place among them, as one of the ways above
"""

from collections.abc import Sequence
from itertools import accumulate, pairwise

from pycore.carry.codec1.octets import Reader, Writer, damaged

ALIKE, ABOVE, STEPS, PLAIN, FEW = 0, 1, 2, 6, 7
MOST_FEW = 16
PACKED = {3: 1, 4: 2, 5: 4}  # way -> bits a number


def write_wholes(out: Writer, values: Sequence[int]) -> None:
    """The column in its shortest way; nothing for an empty one."""
    if values:
        out.octets(_shortest(values, outer=True))


def _shortest(values: Sequence[int], *, outer: bool) -> bytes:
    least, span = min(values), max(values) - min(values)
    if span == 0:
        return _written(ALIKE, least)
    tried = [_above(values, least), _plain(values)]
    for way, bits in PACKED.items():
        if span < 1 << bits:
            tried.append(_packed(values, least, way=way))
            break
    if outer:
        steps = [after - before for before, after in pairwise(values)]
        tried.append(_written(STEPS, values[0]) + _shortest(steps, outer=False))
        tried.extend(_few(values))
    return min(tried, key=len)


def _few(values: Sequence[int]) -> list[bytes]:
    """The way of few different numbers, where they are few."""
    different = list(dict.fromkeys(values))
    if len(different) > MOST_FEW:
        return []
    out = Writer()
    out.number(FEW)
    out.number(len(different))
    for value in different:
        out.signed(value)
    places = {value: place for place, value in enumerate(different)}
    return [bytes(out.done) + _shortest([places[value] for value in values], outer=False)]


def _written(way: int, first: int) -> bytes:
    out = Writer()
    out.number(way)
    out.signed(first)
    return bytes(out.done)


def _above(values: Sequence[int], least: int) -> bytes:
    out = Writer()
    for value in values:
        out.number(value - least)
    return _written(ABOVE, least) + out.done


def _plain(values: Sequence[int]) -> bytes:
    out = Writer()
    out.number(PLAIN)
    for value in values:
        out.signed(value)
    return bytes(out.done)


def _packed(values: Sequence[int], least: int, *, way: int) -> bytes:
    return _written(way, least) + pack_bits([value - least for value in values], PACKED[way])


def pack_bits(values: Sequence[int], bits: int) -> bytes:
    """Small numbers side by side in bytes, the first in the lowest bits."""
    a_byte = 8 // bits
    return bytes(
        sum(value << bits * place for place, value in enumerate(values[start : start + a_byte]))
        for start in range(0, len(values), a_byte)
    )


def unpack_bits(some: bytes, count: int, *, bits: int) -> list[int]:
    """The first `count` numbers that `pack_bits` put there."""
    a_byte, mask = 8 // bits, (1 << bits) - 1
    return [some[n // a_byte] >> n % a_byte * bits & mask for n in range(count)]


def read_wholes(source: Reader, count: int, *, outer: bool = True) -> list[int]:
    """A column of `count` numbers as `write_wholes` wrote it. Raises BadText `link_damaged`."""
    if count == 0:
        return []
    way = source.number()
    if way == PLAIN:
        return [source.signed() for _ in range(count)]
    if way == FEW and outer:
        return _read_few(source, count)
    first = source.signed()
    if way == ALIKE:
        return [first] * count
    if way == ABOVE:
        return [first + source.number() for _ in range(count)]
    if way in PACKED:
        bits = PACKED[way]
        packed = source.octets((count * bits + 7) // 8)
        return [first + value for value in unpack_bits(packed, count, bits=bits)]
    if way == STEPS and outer:
        return list(accumulate(read_wholes(source, count - 1, outer=False), initial=first))
    raise damaged()


def _read_few(source: Reader, count: int) -> list[int]:
    different = [source.signed() for _ in range(min(source.number(), MOST_FEW))]
    places = read_wholes(source, count, outer=False)
    if not all(0 <= place < len(different) for place in places):
        raise damaged()
    return [different[place] for place in places]

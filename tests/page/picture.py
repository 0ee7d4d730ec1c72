"""Reads QR codes from screenshots, with a reader that shares no line with the one that writes."""

import zlib
from struct import unpack

import zxingcpp
from playwright.sync_api import Locator

# ISO/IEC 15948, PNG: 8 bits a channel, colour types 2 (RGB) and 6 (RGBA); from memory.
CHANNELS = {2: 3, 6: 4}


def read_code(place: Locator) -> list[str]:
    """The texts of the codes in a screenshot of a place on the page."""
    width, height, grey = read_png(place.screenshot())
    picture = memoryview(grey).cast("B", (height, width))
    return [found.text for found in zxingcpp.read_barcodes(picture)]


def read_png(some: bytes) -> tuple[int, int, bytes]:
    """Width, height and the green channel of a picture, which is grey enough for ink on white."""
    place, packed, width, height, channels = 8, b"", 0, 0, 0
    while place < len(some):
        length, kind = unpack(">I4s", some[place : place + 8])
        body = some[place + 8 : place + 8 + length]
        if kind == b"IHDR":
            width, height, depth, colour = unpack(">IIBB", body[:10])
            assert depth == 8
            channels = CHANNELS[colour]
        packed += body if kind == b"IDAT" else b""
        place += length + 12
    return width, height, _unfilter(zlib.decompress(packed), width=width, channels=channels)


def _unfilter(some: bytes, *, width: int, channels: int) -> bytes:
    """Undo the filters row by row and keep one channel."""
    stride = width * channels
    before = bytearray(stride)
    grey = bytearray()
    for start in range(0, len(some), stride + 1):
        row = bytearray(some[start + 1 : start + 1 + stride])
        _undo(some[start], row, before, channels=channels)
        grey += row[1::channels]
        before = row
    return bytes(grey)


def _undo(way: int, row: bytearray, above: bytearray, *, channels: int) -> None:
    if way == 0:
        return
    for place, value in enumerate(row):
        left = row[place - channels] if place >= channels else 0
        corner = above[place - channels] if place >= channels else 0
        row[place] = (value + _guess(way, left, above[place], corner)) & 255


def _guess(way: int, left: int, up: int, corner: int) -> int:
    if way == 4:
        near = left + up - corner
        return min((left, up, corner), key=lambda each: abs(near - each))
    return {1: left, 2: up, 3: (left + up) // 2}[way]

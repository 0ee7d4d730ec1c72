"""A whole job to bytes and back: the tables, squeezed with a dictionary that is frozen too."""

import zlib
from typing import Any

from pycore.carry.codec1.dictionary import DICTIONARY
from pycore.carry.codec1.octets import Reader, Writer, damaged
from pycore.carry.codec1.shape import FAMILIES, JOB
from pycore.carry.codec1.stock import STOCK
from pycore.carry.codec1.table import Context, Desk, Row
from pycore.ground.problems import TooLarge

FORMAT = "rungline-job"
# What a job may come to when it is unsqueezed: hundreds of times a usual one.
MOST_UNSQUEEZED = 256 * 1024


def pack(job: Row, made_by: str) -> bytes:
    """A job (as in its text, what is not known left out) and the version that wrote it.

    Raises TooLarge `link_too_much`.
    """
    out = Writer()
    out.text(made_by)
    JOB.write(out, Context(Desk(), [_with_stock(job)], [0], None))
    if len(out.done) > MOST_UNSQUEEZED:
        raise TooLarge("link_too_much")
    squeezer = zlib.compressobj(9, zlib.DEFLATED, -15, 9, zdict=DICTIONARY)
    return squeezer.compress(bytes(out.done)) + squeezer.flush()


def unpack(some: bytes) -> tuple[Row, str]:
    """The job and the version that wrote it.

    Raises BadText `link_damaged`, NewerJob `link_newer` (fields or choices not known here),
    TooLarge `link_holds_too_much`.
    """
    source = Reader(_unsqueezed(some))
    made_by = source.text()
    job: Row = {}
    JOB.read(source, Context(Desk(), [job], [0], None))
    source.end()
    return {"format": FORMAT, **_without_stock(job)}, made_by


def _unsqueezed(some: bytes) -> bytes:
    """The bytes, of which no more are made than a job may have."""
    loosener = zlib.decompressobj(-15, zdict=DICTIONARY)
    try:
        loose = loosener.decompress(some, MOST_UNSQUEEZED + 1)
    except zlib.error:
        raise damaged() from None
    if len(loose) > MOST_UNSQUEEZED:
        raise TooLarge("link_holds_too_much")
    if not loosener.eof or loosener.unused_data:
        raise damaged()
    return loose


def _with_stock(job: Row) -> Row:
    """The same job, each kind marked with the place of its namesake in the frozen catalogue."""
    kinds: Row = {}
    for family in FAMILIES:
        places = {kind["id"]: place for place, kind in enumerate(STOCK[family], 1)}
        kinds[family] = [
            {**kind, "stock": places.get(kind["id"], 0)} for kind in job["kinds"][family]
        ]
    return {**job, "kinds": kinds}


def _without_stock(job: Row) -> Row:
    families: list[Any] = list(job.get("kinds", {}).values())
    for kind in (kind for family in families for kind in family):
        kind.pop("stock", None)
    return job

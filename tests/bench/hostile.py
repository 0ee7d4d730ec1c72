"""Hostile links by the thousand: what each kind of attack sends, and what came of it.

The same links each time: they come from a seed. Valid covers (length, checksum) are made
around rotten contents, because anybody can make those.
"""

import random
import string
import time
import tracemalloc
import zlib
from base64 import urlsafe_b64encode
from collections import Counter
from collections.abc import Callable, Sequence
from functools import cache
from typing import Any, NamedTuple

from pycore.carry.codec1 import pack
from pycore.carry.codec1.dictionary import DICTIONARY
from pycore.carry.codec1.octets import Writer
from pycore.carry.envelope import as_digits, find, unwrap, wrap
from pycore.carry.link import read_link, write_link
from pycore.ground.problems import Problem
from tests.samples.travellers import make_traveller

LETTERS = string.ascii_letters + string.digits + "-_"
NASTY = "\x00\u202e\u2066\ud800\ufeff\u200b\U0001f4a3<script>'\"`${}__proto__%00#1.n.\r\n\t "
A_KILO, A_MEGA = 1000, 1_000_000
Attack = Callable[[random.Random, Sequence[str]], str]


class Tried(NamedTuple):
    """What came of a run: how many ended how, the slowest, and the most memory one took."""

    ends: Counter[str]
    attacks: Counter[str]
    slowest_ms: float
    slowest_attack: str
    most_bytes: int
    most_attack: str


def squeeze(some: bytes) -> bytes:
    """Squeeze bytes as the codec does."""
    squeezer = zlib.compressobj(9, zlib.DEFLATED, -15, 9, zdict=DICTIONARY)
    return squeezer.compress(some) + squeezer.flush()


def loosen(link: str) -> bytes:
    """What a link's codec wrote, unsqueezed."""
    return zlib.decompressobj(-15, zdict=DICTIONARY).decompress(unwrap(find(link)))


def any_text(chance: random.Random, _links: Sequence[str]) -> str:
    """Any signs at all."""
    signs = chance.choice((string.printable, LETTERS, NASTY, LETTERS + NASTY))
    return "".join(chance.choices(signs, k=chance.randrange(400)))


def any_payload(chance: random.Random, _links: Sequence[str]) -> str:
    """A link's look with anything behind."""
    number = chance.choice((1, 1, 1, 2, 7, 999999, 10**12))
    way = chance.choice(("", "n"))
    return f"#{number}{way}." + "".join(chance.choices(LETTERS, k=chance.randrange(600)))


def changed_signs(chance: random.Random, links: Sequence[str]) -> str:
    """A true link with a few signs changed."""
    signs = list(chance.choice(links))
    for _ in range(chance.randint(1, 4)):
        signs[chance.randrange(len(signs))] = chance.choice(LETTERS + NASTY)
    return "".join(signs)


def rotten_jobs(chance: random.Random, links: Sequence[str]) -> str:
    """A job beyond its bounds or against its rules, written as the codec writes one."""
    job = read_link(chance.choice(links)).job.model_dump(mode="json", exclude_none=True)
    for _ in range(chance.randint(1, 3)):
        spoil(job, chance)
    try:
        return wrap(1, pack(job, chance.choice(("0.1.0", NASTY.replace("\ud800", "")))))
    except (Problem, ValueError, KeyError, TypeError, AttributeError):
        return any_payload(chance, links)  # so rotten that no codec writes it


def spoil(job: Any, chance: random.Random) -> None:
    """Go down to some value of a job and make it a bad one."""
    at = job
    while True:
        keys = list(at) if isinstance(at, dict) else list(range(len(at)))
        if not keys:
            return
        key = chance.choice(keys)
        inner = at[key]
        if isinstance(inner, list) and inner and chance.random() < 0.2:
            at[key] = inner * chance.choice((2, 40))
            return
        if not isinstance(inner, dict | list):
            at[key] = spoiled(inner, chance)
            return
        at = inner


def spoiled(value: Any, chance: random.Random) -> Any:
    """A bad value of the same sort."""
    if isinstance(value, str):
        return chance.choice(
            ("", "k7f1", "k7f9", "x" * 5000, NASTY.replace("\ud800", ""), "é" * 40)
        )
    return chance.choice((-1.0, 1e300, 5e-324, -0.0, 1e9, 123456.789, 10**15, True))


def cut(chance: random.Random, links: Sequence[str]) -> str:
    """A true link cut short, in digits or letters."""
    link = chance.choice(links)
    text = chance.choice((link, as_digits(link) or link))
    return text[: chance.randrange(len(text))]


def rotten_bytes(chance: random.Random, _links: Sequence[str]) -> str:
    """A good cover around any bytes."""
    return wrap(1, chance.randbytes(chance.randrange(300)))


def rotten_columns(chance: random.Random, _links: Sequence[str]) -> str:
    """A good cover around well squeezed nonsense: many small numbers, as columns have."""
    some = bytes(chance.choices(range(chance.choice((4, 16, 256))), k=chance.randrange(400)))
    return wrap(1, squeeze(some))


def changed_columns(chance: random.Random, links: Sequence[str]) -> str:
    """A true job with a few of its bytes changed, added or taken away inside a good cover."""
    some = bytearray(loosen(chance.choice(links)))
    for _ in range(chance.randint(1, 5)):
        at = chance.randrange(len(some))
        act = chance.randrange(3)
        if act == 0:
            some[at] = chance.randrange(256)
        elif act == 1:
            some[at:at] = chance.randbytes(chance.randint(1, 9))
        else:
            del some[at : at + chance.randint(1, 9)]
    return wrap(1, squeeze(bytes(some)))


def bomb(chance: random.Random, links: Sequence[str]) -> str:
    """A few bytes that would be many, alone or behind a true job."""
    size = chance.choice((A_MEGA // 4, A_MEGA, 8 * A_MEGA))
    start = loosen(chance.choice(links)) if chance.random() < 0.5 else b""
    return wrap(1, squeeze_bomb(start, size))


@cache
def squeeze_bomb(start: bytes, size: int) -> bytes:
    """Squeeze so many empty bytes behind a start, once for each."""
    return squeeze(start + bytes(size))


def huge_counts(chance: random.Random, links: Sequence[str]) -> str:
    """A true job up to some byte, then a number far too large."""
    some = loosen(chance.choice(links))
    out = Writer()
    out.number(chance.choice((2**14, 2**20, 2**31, 2**63, 2**69)))
    at = chance.randrange(len(some))
    return wrap(1, squeeze(some[:at] + bytes(out.done) + some[at + 1 :]))


def endless_numbers(chance: random.Random, links: Sequence[str]) -> str:
    """A true job up to some byte, then bytes that never end a number or a text."""
    some = loosen(chance.choice(links))
    at = chance.randrange(len(some))
    tail = chance.choice((b"\xff", b"\x80", b"\x06\x01", b"\x00\x02", b"\x07\x10\x01"))
    return wrap(1, squeeze(some[:at] + tail * chance.choice((10, A_KILO, 40 * A_KILO))))


def long_text(chance: random.Random, links: Sequence[str]) -> str:
    """A link in the middle of far too much, or far too much of a link."""
    filler = chance.choice(("1.", "#1.", "a", " ", "\n> ", "%23", "#1n.0", "\u200b"))
    some = filler * (chance.choice((A_KILO, 150 * A_KILO, A_MEGA)) // len(filler))
    return some + chance.choice(links) if chance.random() < 0.5 else chance.choice(links) + some


def squeezed_otherwise(chance: random.Random, links: Sequence[str]) -> str:
    """A true job squeezed without the dictionary, with a head, cut, or with more behind."""
    some = loosen(chance.choice(links))
    tries = (zlib.compress(some), squeeze(some)[:-1], squeeze(some) + b"\x00", squeeze(some) * 2)
    return wrap(1, chance.choice(tries))


def other_codings(chance: random.Random, links: Sequence[str]) -> str:
    """JSON, nested deep or doubled, and data addresses where the payload should be."""
    deep = "[" * chance.choice((10, A_KILO, 20 * A_KILO))
    doubled = '{"format":"rungline-job","version":1,"version":2,"__proto__":{"id":1}}'
    some = chance.choice((deep, doubled, "javascript:alert(1)", chance.choice(links) * 2))
    return "#1." + urlsafe_b64encode(some.encode()).decode() if chance.random() < 0.5 else some


ATTACKS: tuple[Attack, ...] = (
    any_text, any_payload, changed_signs, cut, rotten_bytes, rotten_columns, changed_columns,
    changed_columns, rotten_jobs, rotten_jobs, bomb, huge_counts, endless_numbers, long_text,
    squeezed_otherwise, other_codings,
)  # fmt: skip


def make_links() -> list[str]:
    """True links of several sizes to start from."""
    jobs = [make_traveller(n, free_labels=n == 20, ticked=n == 9) for n in (1, 9, 20, 60, 300)]
    return [write_link(job, "0.1.0") for job in jobs]


def try_links(count: int, *, seed: int, memory_every: int) -> Tried:
    """Try so many hostile links; every so many of them once more for its memory.

    Anything but a job or a problem is raised: nothing else may come out.
    """
    chance, links = random.Random(seed), make_links()
    ends, attacks = Counter[str](), Counter[str]()
    slowest, most = (0.0, ""), (0, "")
    for number in range(count):
        attack = ATTACKS[number % len(ATTACKS)]
        text = attack(chance, links)
        # of the processor alone: what else the machine does must not count as a hang
        started = time.process_time()
        end = read_and_tell(text)
        took = (time.process_time() - started) * 1000
        slowest = max(slowest, (took, attack.__name__))
        ends[end] += 1
        attacks[f"{attack.__name__}: {end}"] += 1
        if number % memory_every == 0:
            most = max(most, (measure_memory(text), attack.__name__))
    return Tried(ends, attacks, *slowest, *most)


def read_and_tell(text: str) -> str:
    """The code of the problem, or "a job"."""
    try:
        read_link(text)
    except Problem as problem:
        return problem.code
    return "a job"


def measure_memory(text: str) -> int:
    """The most bytes that reading a text took at once."""
    tracemalloc.start()
    try:
        read_and_tell(text)
        return tracemalloc.get_traced_memory()[1]
    finally:
        tracemalloc.stop()

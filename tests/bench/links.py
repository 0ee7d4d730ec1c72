"""How long links are, what 100,000 hostile ones do, and how quick a large job is."""

import statistics
import time
import zlib
from base64 import urlsafe_b64encode
from collections.abc import Callable, Iterator

from pycore.carry.envelope import as_digits
from pycore.carry.link import read_link, write_link
from pycore.carry.qr import code_of
from pycore.jobs import Job
from tests.bench.figures import Figure
from tests.bench.hostile import try_links
from tests.samples.travellers import make_traveller

HOSTILE = 100_000
MEMORY_EVERY = 7
SEED = 5
ADDRESS = "https://rungline.example/app/#"
ROUNDS = 15


def measure() -> Iterator[Figure]:
    """Lengths, times, and the hostile links."""
    for name, free_labels, ticked in (
        ("zone labels", False, False),
        ("free labels", True, False),
        ("zone labels, all ticked", False, True),
    ):
        for count in (20, 60, 300):
            job = make_traveller(count, free_labels=free_labels, ticked=ticked)
            yield from measure_length(job, f"{count} loudspeakers, {name}", count)
    yield from measure_times(make_traveller(300, free_labels=False, ticked=False))
    yield from measure_hostile(HOSTILE)


def measure_length(job: Job, name: str, count: int) -> Iterator[Figure]:
    """Characters of a link beside plain JSON, deflate and base64; and the QR code it takes."""
    link = write_link(job, "0.1.0")
    text = job.model_dump_json(exclude_none=True).encode()
    plain = len(urlsafe_b64encode(zlib.compress(text, 9)))
    code = code_of(ADDRESS + link)
    yield Figure(f"{name}: link", len(link), "characters")
    yield Figure(f"{name}: link, each", len(link) / count, "characters")
    yield Figure(f"{name}: JSON, deflate, base64, each", plain / count, "characters")
    yield Figure(f"{name}: digits in a code", len(as_digits(link) or ""), "digits")
    yield Figure(f"{name}: version of the code (0: too large)", code.version if code else 0, "")


def measure_times(job: Job) -> Iterator[Figure]:
    """Writing and reading the link of a large job."""
    link = write_link(job, "0.1.0")
    yield Figure("300 loudspeakers: write the link", time_call(lambda: write_link(job, "0")), "ms")
    yield Figure("300 loudspeakers: read the link", time_call(lambda: read_link(link)), "ms")


def time_call(call: Callable[[], object]) -> float:
    """The median of several runs, in milliseconds."""
    taken = []
    for _ in range(ROUNDS):
        started = time.perf_counter()
        call()
        taken.append((time.perf_counter() - started) * 1000)
    return statistics.median(taken)


def measure_hostile(count: int) -> Iterator[Figure]:
    """Hostile links: the slowest, the most memory, and how they ended."""
    tried = try_links(count, seed=SEED, memory_every=MEMORY_EVERY)
    yield Figure("hostile links tried", count, "links")
    yield Figure(
        f"hostile links: slowest, processor time ({tried.slowest_attack})", tried.slowest_ms, "ms"
    )
    yield Figure(f"hostile links: most memory ({tried.most_attack})", tried.most_bytes / 1e6, "MB")
    for end, times in tried.ends.most_common():
        yield Figure(f"hostile links: {end}", times, "links")

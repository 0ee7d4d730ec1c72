"""How long a line takes: solved, and looked at whole; ngspice on the same network beside it."""

import random
import shutil
import time
from collections.abc import Callable, Iterator

from pycore.calc.lay import Asked, network_of
from pycore.calc.line import findings_of
from pycore.calc.network import solve
from pycore.calc.solve import HZ, rows_of, solve_lines
from tests.bench.figures import Figure
from tests.outside.circuit import parts_of
from tests.outside.ngspice import ask_ngspice
from tests.samples.lines import Stem, make_job

SIZES = (20, 200, 2000)
REPEATS = 7
HAS_NGSPICE = shutil.which("ngspice") is not None


def measure() -> Iterator[Figure]:
    """Time each size; the time per loudspeaker must stay as it is."""
    if HAS_NGSPICE:
        yield Figure("ngspice, starting and ending alone", _ngspice_ms([]), "ms")
    for count in SIZES:
        yield from _measure_size(count)


def _measure_size(count: int) -> Iterator[Figure]:
    stems = branching(count)
    job = make_job(stems)
    laid = solve_lines(job).solved["z", "override"].laid
    network = network_of(laid, Asked(HZ, "override"))
    name = f"{count:,} loudspeakers"
    once_ms = _fastest_ms(lambda: solve(network))
    yield Figure(f"{name}, one solve", once_ms, "ms")
    yield Figure(f"{name}, one solve, each", once_ms / count * 1000, "µs")

    def whole() -> None:
        lines = solve_lines(job)
        findings_of(lines)
        rows_of(lines)

    whole_ms = _fastest_ms(whole)
    yield Figure(f"{name}, both states, three frequencies, findings, rows", whole_ms, "ms")
    yield Figure(f"{name}, the same, each", whole_ms / count * 1000, "µs")
    if HAS_NGSPICE:
        yield Figure(f"{name}, ngspice once, with its start", _ngspice_ms(stems), "ms")


def branching(count: int) -> list[Stem]:
    """A line of loudspeakers that branches now and then, with a control every fifty."""
    chance = random.Random(count)
    stems: list[Stem] = []
    for number in range(count):
        after = number - 1 if chance.random() < 0.9 else chance.randrange(-1, max(number, 1))
        control = (-6.0, 0.5, "autotransformer") if number % 50 == 25 else None
        tap = None if control else (5.0 * 20 / count, 70.7)
        length_m = chance.choice((2.0, 5.0, 8.0, 12.5)) * 20 / count
        stems.append(Stem(min(after, number - 1), length_m, 1, 0.0, tap, control))
    return stems


def _fastest_ms(work: Callable[[], object]) -> float:
    """The fastest of a few runs: what the work takes when nothing else runs."""
    times = []
    for _ in range(REPEATS):
        started = time.perf_counter()
        work()
        times.append(time.perf_counter() - started)
    return min(times) * 1000


def _ngspice_ms(stems: list[Stem]) -> float:
    """One frequency by ngspice, the program started anew."""
    parts = parts_of(stems, hz=HZ, bypassed=True)
    started = time.perf_counter()
    ask_ngspice(parts, hz=HZ, terminals_v=70.7)
    return (time.perf_counter() - started) * 1000

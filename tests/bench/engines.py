"""How long each engine here takes to its first tally: the runtime as its makers publish it, as we
build it, and woken from the copy that the device keeps. All three in turn, five times each.
"""

import contextlib
import statistics
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path

from playwright.sync_api import Playwright, sync_playwright

from tests.bench.boot import lay_out
from tests.bench.figures import Figure
from tests.bench.slow import list_renderers, slow_down
from tests.page.engines.chromium import Chromium
from tests.page.engines.device import SHELF, UNTIL_KEPT
from tests.page.engines.driver import Absent, Driver
from tests.page.engines.firefox import Firefox
from tests.page.engines.webkit import WebKit
from web.tools.places import CACHE
from web.tools.say import tell
from web.tools.server import FolderServer

ROUNDS = 5
SLOWER = 4
MOST_TRIES = 4
WAYS = {"stock": "stock", "compiled": "again", "woken": "ours"}
# The person's own count of good starts is not waited for here.
TRUST = 'await write("notes", "notes", { starts: 5 });'


def measure() -> Iterator[Figure]:
    """Measure in every engine that is installed."""
    folder = lay_out(CACHE / "bench" / "engines")
    server = FolderServer(folder, host="127.0.0.1", port=0)
    with sync_playwright() as playwright, server.serve_in_background() as address:
        page = f"{address}boot_page.html"
        for name, make in list_makers(playwright).items():
            with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as place:
                try:
                    driver = make(Path(place))
                except Absent as absent:
                    tell(f"  {name} is not measured: {absent}")
                    continue
                driver.start()
                with contextlib.closing(Stopping(driver)):
                    yield from measure_engine(driver, page)


def list_makers(playwright: Playwright) -> dict[str, Callable[[Path], Driver]]:
    """Name the engines and how to get a driver of each."""
    return {
        "chromium": lambda place: Chromium(place, playwright),
        "firefox": Firefox,
        "webkit": WebKit,
    }


class Stopping:
    """Ends a browser however its measurement ends."""

    def __init__(self, driver: Driver) -> None:
        self._driver = driver

    def close(self) -> None:
        """End it."""
        self._driver.stop()


def measure_engine(driver: Driver, page: str) -> Iterator[Figure]:
    """Measure one engine; Chromium also on a processor slowed down."""
    keep_copy(driver, page)
    yield from measure_ways(driver, page, name=driver.name)
    if isinstance(driver, Chromium):
        with slow_down(list_renderers(driver.browser), times=SLOWER):
            yield from measure_ways(driver, page, name=f"chromium, {SLOWER} times slower")


def measure_ways(driver: Driver, page: str, *, name: str) -> Iterator[Figure]:
    """Start in turn; give the medians and what they are of each other."""
    runs: dict[str, list[float]] = {way: [] for way in WAYS}
    for _ in range(ROUNDS):
        for way, times in runs.items():
            times.append(start_once(driver, page, way))
    middle = {way: statistics.median(times) for way, times in runs.items()}
    for way, milliseconds in middle.items():
        yield Figure(f"{name}: first tally, {way}", milliseconds, "ms")
    for way, whole in (("compiled", "stock"), ("woken", "stock"), ("woken", "compiled")):
        yield Figure(f"{name}: {way} / {whole}", middle[way] / middle[whole], "ratio")


def start_once(driver: Driver, page: str, way: str) -> float:
    """Start one engine; demand that it started in the way that is to be measured."""
    # Of the same host, so that a browser keeps the process that may be slowed down.
    driver.go(page.replace("boot_page.html", "licences.txt"))
    driver.go(f"{page}?{WAYS[way]}")
    times = driver.evaluate("globalThis.booted")
    if "failed" in times or not times["right"]:
        raise RuntimeError(str(times))
    if (times["way"] == "copy") != (way == "woken"):
        raise RuntimeError(f"meant to be {way}, but started as {times['way']}")
    return float(times["answered"])


def keep_copy(driver: Driver, page: str) -> None:
    """Start until the engine is woken from a copy."""
    for _ in range(MOST_TRIES):
        driver.go(f"{page}?ours")
        way = driver.evaluate("globalThis.booted.then(({ way }) => way)")
        if way == "copy":
            return
        if way == "making":
            driver.evaluate(UNTIL_KEPT)
        else:
            driver.evaluate(SHELF.replace("ACT", TRUST))
    raise RuntimeError(f"no copy came about in {driver.name}")

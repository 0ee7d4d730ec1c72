"""A later visit with the server dead, in every engine here: until something is painted, until the
saved job is painted, and until Python answers, in milliseconds since the visit began.
"""

import contextlib
import json
import shutil
import statistics
import tempfile
from collections.abc import Iterator
from pathlib import Path

from playwright.sync_api import sync_playwright

from tests.bench.engines import MOST_TRIES, TRUST, Stopping, list_makers
from tests.bench.figures import Figure
from tests.bench.jobs import write_job
from tests.page.engines.app import PRESS, READY
from tests.page.engines.device import SHELF, UNTIL_KEPT
from tests.page.engines.driver import Absent, Driver, wait_until
from tests.page.engines.stand import Stand
from web.tools.places import DIST, WEB
from web.tools.precache import fill_worker
from web.tools.say import tell

COUNT = 100
ROUNDS = 5
SCRIPT = Path(__file__).with_name("visit_page.js")
JOB = f"#/job/bench{COUNT}"
TAKES = ("first paint", "saved job painted", "engine ready")
OPEN_FILE = """(() => {
    const files = new DataTransfer();
    files.items.add(new File([TEXT], "job.json", { type: "application/json" }));
    const input = document.querySelector("input[type=file]");
    input.files = files.files;
    input.dispatchEvent(new Event("input", { bubbles: true }));
})()"""


def measure() -> Iterator[Figure]:
    """Measure in every engine that is installed."""
    with (
        tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as place,
        sync_playwright() as play,
    ):
        stand = Stand(lay_out(Path(place) / "served"))
        with stand.serve_in_background():
            for name, make in list_makers(play).items():
                try:
                    driver = make(Path(place) / name)
                except Absent as absent:
                    tell(f"  {name} is not measured: {absent}")
                    continue
                driver.start()
                with contextlib.closing(Stopping(driver)):
                    yield from measure_engine(driver, stand)


def lay_out(folder: Path) -> Path:
    """Lay out the built app with a first script that notes what happens when."""
    app = folder / "a"
    shutil.copytree(DIST, app, ignore=shutil.ignore_patterns("*.br", "*.gz"))
    shutil.copyfile(SCRIPT, app / SCRIPT.name)
    page = app / "index.html"
    first = '<script type="module" src="engine.js">'
    noting = f'<script src="{SCRIPT.name}"></script>{first}'
    page.write_text(page.read_text(encoding="utf-8").replace(first, noting), encoding="utf-8")
    shutil.copyfile(WEB / "sw.js", app / "sw.js")
    fill_worker(app)
    return folder


def measure_engine(driver: Driver, stand: Stand) -> Iterator[Figure]:
    """Keep a job and the app, end the server, and come back five times."""
    stand.revive()
    keep_job(driver, stand)
    stand.die_after(0)
    wake_from_copy(driver, stand)
    visits = [come_back(driver, stand) for _ in range(ROUNDS)]
    for name in TAKES:
        middle = statistics.median(float(visit[name]) for visit in visits)  # type: ignore[arg-type]
        yield Figure(f"{driver.name}: visit offline, {COUNT} loudspeakers: {name}", middle, "ms")


def keep_job(driver: Driver, stand: Stand) -> None:
    """Take a job in from a file, and wait until everything is kept."""
    driver.go(f"{stand.address_of('a')}#/jobs")
    wait_for(driver, "document.querySelector('input[type=file]')")
    driver.evaluate(f"void {OPEN_FILE.replace('TEXT', json.dumps(write_job(COUNT)))}")
    wait_for(driver, "document.querySelector('#app').textContent.includes('Keep it')")
    driver.evaluate(f"void ({PRESS.replace('WORDS', 'Keep it')})")
    wait_for(driver, "document.querySelector('main.sheet-job')")
    driver.evaluate("void (location.hash = '#/about')")
    wait_for(driver, f"document.querySelector('.offline')?.textContent === '{READY}'")


def wake_from_copy(driver: Driver, stand: Stand) -> None:
    """Come back until the engine is woken from a copy."""
    for _ in range(MOST_TRIES):
        way = come_back(driver, stand)["way"]
        if way == "copy":
            return
        driver.evaluate(UNTIL_KEPT if way == "making" else SHELF.replace("ACT", TRUST))
    raise RuntimeError(f"no copy came about in {driver.name}")


def wait_for(driver: Driver, expression: str) -> None:
    """Wait until the page says so."""
    wait_until(lambda: driver.evaluate(f"Boolean({expression})"), what=expression)


def come_back(driver: Driver, stand: Stand) -> dict[str, object]:
    """Open the job again; give the milliseconds since the visit began."""
    driver.go("about:blank")
    driver.go(stand.address_of("a") + JOB)
    return dict(driver.evaluate("globalThis.visit"))

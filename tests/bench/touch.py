"""From a touch on a tap to the painted answer, in the built page, at several sizes of job."""

import tempfile
from collections.abc import Iterator
from pathlib import Path

from playwright.sync_api import BrowserContext, Page, expect

from tests.bench.browser import open_browser
from tests.bench.figures import Figure, summarize
from tests.bench.jobs import write_job
from tests.bench.slow import list_renderers, slow_down
from web.tools.places import DIST
from web.tools.server import FolderServer

COUNTS = (30, 100, 300)
TOUCHES, WARMING = 40, 3
SLOWER = 4
PHONE = {"width": 360, "height": 740}
LONG_MILLISECONDS = 120_000
SCRIPT = Path(__file__).with_name("touch_page.js")


def measure() -> Iterator[Figure]:
    """Touch taps in turn, on a quiet processor and on one slowed down."""
    server = FolderServer(DIST, host="127.0.0.1", port=0)
    with open_browser() as browser, server.serve_in_background() as address:
        for count in COUNTS:
            context = browser.new_context(viewport=PHONE, has_touch=True)  # type: ignore[arg-type]
            page = open_job(context, address, count)
            name = f"touch to painted answer, {count} loudspeakers"
            yield from summarize(name, touch_taps(page))
            with slow_down(list_renderers(browser), times=SLOWER):
                slow = touch_taps(page)
            yield from summarize(f"{name}, processor {SLOWER} times slower", slow)
            context.close()


def open_job(context: BrowserContext, address: str, count: int) -> Page:
    """Open a job from a file, as a person would, and pick its last loudspeaker."""
    page = make_page(context)
    page.goto(f"{address}#/jobs")
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "job.json"
        path.write_text(write_job(count))
        page.locator("input[type=file]").set_input_files(path)
        page.get_by_role("button", name="Keep it", exact=True).click()
        expect(page.locator("main.sheet-job")).to_be_visible()
    pick_last(page, address, count)
    return page


def come_back(context: BrowserContext, address: str, count: int) -> Page:
    """Load the page anew at a job that is kept, and pick its last loudspeaker."""
    page = make_page(context)
    pick_last(page, address, count)
    return page


def make_page(context: BrowserContext) -> Page:
    """Make a page that is waited for as long as it takes."""
    page = context.new_page()
    page.set_default_timeout(LONG_MILLISECONDS)
    expect.set_options(timeout=LONG_MILLISECONDS)
    return page


def pick_last(page: Page, address: str, count: int) -> None:
    """Go to the first zone of the job and pick its last loudspeaker."""
    page.goto(f"{address}#/job/bench{count}/zone/z0")
    page.locator(".point-pick").last.click()
    expect(page.locator("[data-act='point.tap']").first).to_be_visible()
    page.evaluate(SCRIPT.read_text())


def touch_taps(page: Page) -> list[float]:
    """Touch a tap that is not set, again and again; give the milliseconds to each answer."""
    times = [float(page.evaluate("() => globalThis.touchTap()")) for _ in range(WARMING + TOUCHES)]
    return times[WARMING:]

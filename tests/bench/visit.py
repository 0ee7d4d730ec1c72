"""A second visit without a server: until the saved job is painted, and until Python answers."""

import statistics
from collections.abc import Iterator
from pathlib import Path

from playwright.sync_api import BrowserContext

from tests.bench.browser import open_browser
from tests.bench.figures import Figure
from tests.bench.touch import open_job
from web.tools.places import DIST
from web.tools.server import FolderServer

COUNT = 100
ROUNDS = 5
SCRIPT = Path(__file__).with_name("visit_page.js")
SEALED = """async () => {
  for (;;) {
    for (const name of await caches.keys()) {
      if (await (await caches.open(name)).match(new URL("__sealed", location.href))) return true;
    }
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
}"""


def measure() -> Iterator[Figure]:
    """Keep a job and the app, end the server, and come back five times."""
    server = FolderServer(DIST, host="127.0.0.1", port=0)
    with open_browser() as browser:
        context = browser.new_context()
        with server.serve_in_background() as address:
            page = open_job(context, address, COUNT)
            page.evaluate(SEALED)
            page.close()
        visits = [come_back(context, address) for _ in range(ROUNDS)]
    for name in ("first paint", "saved job painted", "engine ready"):
        middle = statistics.median(visit[name] for visit in visits)
        yield Figure(f"second visit offline, {COUNT} loudspeakers: {name}", middle, "ms")


def come_back(context: BrowserContext, address: str) -> dict[str, float]:
    """Open the job again; give the milliseconds since the visit began."""
    page = context.new_page()
    page.add_init_script(path=SCRIPT)
    page.goto(f"{address}#/job/bench{COUNT}")
    times = page.evaluate("() => globalThis.visit")
    page.close()
    return {str(name): float(value) for name, value in times.items()}

"""All findings of the whole demo job, from the page to the engine in the browser and back."""

from collections.abc import Iterator

from tests.bench.browser import open_browser
from tests.bench.figures import Figure, summarize
from tests.bench.slow import list_renderers, slow_down
from web.tools.places import DIST
from web.tools.server import FolderServer

ASKED, WARMING = 40, 3
SLOWER = 4
ASK = """async (times) => {
  const { door } = await import("./engine.js");
  const text = await (await fetch("./demo.json")).text();
  const { job } = await door.ask("open_saved", { text });
  const took = [];
  for (let time = 0; time < times; time += 1) {
    const started = performance.now();
    const { findings } = await door.ask("findings", { job });
    took.push(performance.now() - started);
    if (!findings.length) throw new Error("no findings");
  }
  return took;
}"""


def measure() -> Iterator[Figure]:
    """Ask again and again, on a quiet processor and on one slowed down."""
    server = FolderServer(DIST, host="127.0.0.1", port=0)
    with open_browser() as browser, server.serve_in_background() as address:
        page = browser.new_page()
        page.goto(address)
        name = "findings of the demo, asked in the browser"
        yield from summarize(name, page.evaluate(ASK, ASKED + WARMING)[WARMING:])
        with slow_down(list_renderers(browser), times=SLOWER):
            slow = page.evaluate(ASK, ASKED + WARMING)[WARMING:]
        yield from summarize(f"{name}, processor {SLOWER} times slower", slow)

"""What the tab holds after the engine has started and after 200 edits, in Chromium.

Before each look what nobody holds any more is thrown away, in the page and in the engine's room:
otherwise one would see when the browser last tidied up.
"""

import json
from collections.abc import Callable, Iterator
from pathlib import Path

from playwright.sync_api import Browser, BrowserContext, CDPSession, Page

from tests.bench.browser import open_browser
from tests.bench.figures import Figure
from tests.bench.slow import list_renderers
from tests.bench.touch import PHONE, come_back, open_job
from web.tools.places import DIST
from web.tools.server import FolderServer

COUNT = 100
EDITS = 200
QUIET_MILLISECONDS = 8000
ANSWER_WITHIN_MILLISECONDS = 30_000
TIDYING_ROUNDS = 3


def measure() -> Iterator[Figure]:
    """Start plainly and look; come back, woken from the copy, look, edit, and look again."""
    server = FolderServer(DIST, host="127.0.0.1", port=0)
    with open_browser() as browser, server.serve_in_background() as address:
        context = browser.new_context(viewport=PHONE, has_touch=True)  # type: ignore[arg-type]
        page = open_job(context, address, COUNT)
        yield from look(browser, page, name="first visit")
        page.close()
        page = come_back(context, address, COUNT)
        yield from look(browser, page, name="second visit")
        for _ in range(EDITS):
            page.evaluate("() => globalThis.touchTap()")
        yield from look(browser, page, name=f"second visit, after {EDITS} edits")
        context.close()


def look(browser: Browser, page: Page, *, name: str) -> Iterator[Figure]:
    """Wait until all is quiet, tidy up, and give what the page, the engine and the process hold.

    Python's own memory counts in the whole tab only.
    """
    page.wait_for_timeout(QUIET_MILLISECONDS)
    room = EngineRoom(page.context, page)
    for _ in range(TIDYING_ROUNDS):
        room.send("HeapProfiler.collectGarbage")
        room.page.send("HeapProfiler.collectGarbage")
    heap, engine = room.page.send("Runtime.getHeapUsage"), room.send("Runtime.getHeapUsage")
    held = max(read_private_kilobytes(process) for process in list_renderers(browser))
    said = f"memory, {COUNT} loudspeakers, {name}"
    yield Figure(f"{said}: the whole tab", held / 1000, "MB")
    yield Figure(f"{said}: objects of the page", heap["usedSize"] / 1e6, "MB")
    yield Figure(f"{said}: objects of the engine's room", engine["usedSize"] / 1e6, "MB")
    yield Figure(f"{said}: buffers of the engine's room", engine["backingStorageSize"] / 1e6, "MB")
    room.page.detach()


class EngineRoom:
    """The worker of a page, asked through the page's own line to the browser."""

    def __init__(self, context: BrowserContext, page: Page) -> None:
        self.page: CDPSession = context.new_cdp_session(page)
        self._page = page
        self._counter = 0
        self._heard: dict[int, dict[str, float]] = {}
        self._session = ""
        self.page.on("Target.attachedToTarget", self._meet)
        self.page.on("Target.receivedMessageFromTarget", self._hear)
        self.page.send(
            "Target.setAutoAttach",
            {"autoAttach": True, "waitForDebuggerOnStart": False, "flatten": False},
        )
        self._wait_until(lambda: bool(self._session))

    def send(self, method: str) -> dict[str, float]:
        """Ask the worker, and wait for its answer."""
        self._counter += 1
        number = self._counter
        message = json.dumps({"id": number, "method": method})
        self.page.send(
            "Target.sendMessageToTarget", {"sessionId": self._session, "message": message}
        )
        self._wait_until(lambda: number in self._heard)
        return self._heard.pop(number)

    def _meet(self, said: dict[str, object]) -> None:
        target = said["targetInfo"]
        if isinstance(target, dict) and target["type"] == "worker":
            self._session = str(said["sessionId"])

    def _hear(self, said: dict[str, str]) -> None:
        message = json.loads(said["message"])
        if "id" in message:
            self._heard[message["id"]] = message["result"]

    def _wait_until(self, is_so: Callable[[], bool]) -> None:
        for _ in range(ANSWER_WITHIN_MILLISECONDS // 20):
            if is_so():
                return
            self._page.wait_for_timeout(20)
        raise RuntimeError("the engine's room did not answer")


def read_private_kilobytes(process: int) -> int:
    """Add up the private pages of a process."""
    lines = Path(f"/proc/{process}/smaps_rollup").read_text().splitlines()[1:]
    fields = {line.split(":")[0]: int(line.split()[1]) for line in lines if line.endswith("kB")}
    return fields["Private_Clean"] + fields["Private_Dirty"]

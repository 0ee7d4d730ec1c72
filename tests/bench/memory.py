"""What the tab holds after the engine has started and after 200 edits, in Chromium."""

from collections.abc import Iterator
from pathlib import Path

from tests.bench.browser import open_browser
from tests.bench.figures import Figure
from tests.bench.slow import list_renderers
from tests.bench.touch import PHONE, open_job
from web.tools.places import DIST
from web.tools.server import FolderServer

COUNT = 100
EDITS = 200
QUIET_MILLISECONDS = 8000


def measure() -> Iterator[Figure]:
    """Open a job, wait until all is quiet, edit, and wait again; then the same, woken."""
    server = FolderServer(DIST, host="127.0.0.1", port=0)
    with open_browser() as browser, server.serve_in_background() as address:
        context = browser.new_context(viewport=PHONE, has_touch=True)  # type: ignore[arg-type]
        for visit in ("first visit", "second visit"):
            page = open_job(context, address, COUNT)
            page.wait_for_timeout(QUIET_MILLISECONDS)
            before = read_megabytes(list_renderers(browser))
            for _ in range(EDITS):
                page.evaluate("() => globalThis.touchTap()")
            page.wait_for_timeout(QUIET_MILLISECONDS)
            after = read_megabytes(list_renderers(browser))
            page.close()
            yield Figure(f"memory of the tab, {visit}, {COUNT} loudspeakers", before, "MB")
            yield Figure(f"memory of the tab, {visit}, after {EDITS} edits", after, "MB")
        context.close()


def read_megabytes(processes: list[int]) -> float:
    """Add up what the largest of these processes holds for itself."""
    return max(read_private_kilobytes(process) for process in processes) / 1000


def read_private_kilobytes(process: int) -> int:
    """Add up the private pages of a process."""
    lines = Path(f"/proc/{process}/smaps_rollup").read_text().splitlines()[1:]
    fields = {line.split(":")[0]: int(line.split()[1]) for line in lines if line.endswith("kB")}
    return fields["Private_Clean"] + fields["Private_Dirty"]

"""What all tests share. Imports little: it is also read inside the runtime of the browser."""

import os
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest

if TYPE_CHECKING:
    from playwright.sync_api import Browser, Playwright

    from web.tools.server import FolderServer

ROOT = Path(__file__).resolve().parents[1]
# How many examples each law is tried on: few in a quick look, many when everything is tested.
EXAMPLES = {"check": 12, "few": 40, "full": 100, "deep": 1000, "inside": 15}
# A lane that takes a long file last keeps the other waiting, so these are taken first.
LONGEST_FIRST = ("engines", "page", "outside")
# A page of a test lives for seconds: what the browser compiles a second time to run faster is never
# paid back. Engines under test and measurements compile as people's browsers do.
FOR_SHORT_LIVES = "--js-flags=--liftoff-only"


def pytest_configure() -> None:
    """Make laws repeatable: the same examples each time, and no clock in a verdict."""
    hypothesis = pytest.importorskip("hypothesis")
    for name, count in EXAMPLES.items():
        hypothesis.settings.register_profile(
            name,
            max_examples=count,
            deadline=None,
            derandomize=True,
            database=None,
            suppress_health_check=[hypothesis.HealthCheck.too_slow],
        )
    hypothesis.settings.load_profile(os.environ.get("RUNGLINE_EXAMPLES", "few"))


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Put the folders whose files take longest first; a file's tests stay as they are."""

    def rank(item: pytest.Item) -> int:
        folder = item.path.parent.name
        return LONGEST_FIRST.index(folder) if folder in LONGEST_FIRST else len(LONGEST_FIRST)

    items.sort(key=rank)


@pytest.fixture(scope="session")
def dist() -> Path:
    """The built app."""
    folder = ROOT / "dist"
    if not (folder / "sw.js").is_file():
        pytest.fail("dist/ is not built: run `python3 build.py make` or `python3 build.py test`")
    return folder


@pytest.fixture(scope="session")
def served(dist: Path) -> "Iterator[FolderServer]":
    """The built app on a free port of this machine, with the headers a host should set."""
    from web.tools.server import FolderServer

    server = FolderServer(dist, host="127.0.0.1", port=0)
    with server.serve_in_background():
        yield server


@pytest.fixture(scope="session")
def playwright() -> "Iterator[Playwright]":
    """Playwright itself: there can be only one in a run."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as one:
        yield one


@pytest.fixture(scope="session")
def own_chromium() -> dict[str, Any]:
    """How this machine's own Chromium is launched."""
    from web.tools.ready_machine import BROWSER_ARGUMENTS, find_chromium

    path = find_chromium()
    if path is None:
        pytest.fail("there is no Chromium here: run `python3 build.py test`, which gets one")
    return {"executable_path": path, "args": [*BROWSER_ARGUMENTS, FOR_SHORT_LIVES]}


@pytest.fixture(scope="session")
def chromium(playwright: "Playwright", own_chromium: dict[str, Any]) -> "Iterator[Browser]":
    """This machine's own Chromium, driven through Playwright."""
    browser = playwright.chromium.launch(**own_chromium)
    yield browser
    browser.close()

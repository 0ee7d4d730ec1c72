"""Each engine once for a whole run; each test an address of its own, and so a fresh storage."""

import os
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Playwright

from tests.page.engines.app import App
from tests.page.engines.chromium import Chromium
from tests.page.engines.driver import Absent, Driver
from tests.page.engines.firefox import Firefox
from tests.page.engines.stand import Stand
from tests.page.engines.webkit import WebKit

ENGINES = ("chromium", "firefox", "webkit")
ALWAYS_IN_CI = "chromium"


@pytest.fixture(scope="session", params=ENGINES)
def engine(
    request: pytest.FixtureRequest,
    tmp_path_factory: pytest.TempPathFactory,
    playwright: Playwright,
) -> Iterator[Driver]:
    """A started browser of each engine that is installed here."""
    folder = tmp_path_factory.mktemp(request.param)
    makers: dict[str, Callable[[Path], Driver]] = {
        "chromium": lambda place: Chromium(place, playwright),
        "firefox": Firefox,
        "webkit": WebKit,
    }
    try:
        driver = makers[request.param](folder)
    except Absent as absent:
        if request.param == ALWAYS_IN_CI and os.environ.get("CI") == "true":
            pytest.fail(str(absent))
        pytest.skip(f"NOT TESTED IN THIS ENGINE: {absent}")
    driver.start()
    yield driver
    driver.stop()


@pytest.fixture
def stand(tmp_path: Path) -> Iterator[Stand]:
    """A server on a port of its own."""
    place = tmp_path / "served"
    place.mkdir()
    server = Stand(place)
    with server.serve_in_background():
        yield server


@pytest.fixture
def app(engine: Driver, stand: Stand, dist: Path) -> Iterator[App]:
    """The built app, not yet visited."""
    yield App(engine, stand, dist)
    stand.revive()
    engine.go("about:blank")

"""The app without signal: the server is ended, not merely switched off in the browser."""

import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import NewContext
from tests.page.hands import (
    choose_supply,
    count_row,
    expect_kept,
    open_demo,
    open_screen,
    open_zone,
    pick_point,
    point,
)
from web.tools.server import FolderServer

IS_SEALED = """async () => {
    for (const name of await caches.keys()) {
        const cache = await caches.open(name);
        if (await cache.match(new URL("__sealed", location.href.split("#")[0]))) return true;
    }
    return false;
}"""


@pytest.fixture
def ending_server(dist: Path) -> Iterator[FolderServer]:
    """A server of this test alone, on a port of its own, below a path as on a project page."""
    server = FolderServer(dist, host="127.0.0.1", port=0, prefix="/tools/rungline/")
    threading.Thread(target=server.serve_forever, daemon=True).start()
    yield server
    end(server)


def end(server: FolderServer) -> None:
    """End a server: nothing listens on its port any more."""
    server.shutdown()
    server.server_close()


def wait_until_ready(page: Page) -> None:
    """Wait until the page says that it works without signal."""
    open_screen(page, "About")
    expect(page.locator(".offline")).to_have_text("Ready without signal.", timeout=60_000)


def test_ready_without_signal_is_said_only_when_everything_is_kept(
    new_context: NewContext, ending_server: FolderServer
) -> None:
    page = new_context(service_workers="allow").new_page()
    page.goto(ending_server.address)
    wait_until_ready(page)
    assert page.evaluate(IS_SEALED)


def test_after_the_server_is_gone_it_still_tallies_edits_and_keeps(
    new_context: NewContext, ending_server: FolderServer
) -> None:
    page = new_context(service_workers="allow").new_page()
    page.goto(ending_server.address)
    open_demo(page)
    expect_kept(page)
    wait_until_ready(page)
    end(ending_server)
    page.reload()
    open_screen(page, "Tally")
    choose_supply(page, volts="70.7 V", watts="120")
    count_row(page, "6", "5 W")
    expect(page.locator(".sum-big")).to_have_text("30 W")
    open_screen(page, "Job")
    open_zone(page, "Palm House")
    pick_point(page, "Palm House 3")
    page.locator(".chip").filter(has_text="7.5 W").tap()
    expect(point(page, "Palm House 3")).to_contain_text("7.5 W at 100 V")
    expect_kept(page)
    page.reload()
    expect(point(page, "Palm House 3")).to_contain_text("7.5 W at 100 V")


def test_a_folder_of_licences_is_read_without_signal(
    new_context: NewContext, ending_server: FolderServer
) -> None:
    page = new_context(service_workers="allow").new_page()
    page.goto(ending_server.address)
    wait_until_ready(page)
    end(ending_server)
    page.reload()
    page.get_by_role("link", name="Licences of what is inside").tap()
    expect(page.locator("body")).to_contain_text("lit-html")

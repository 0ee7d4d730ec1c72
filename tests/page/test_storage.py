"""The browser is asked to keep what is stored: once, with the first job, and its answer is told."""

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.page.hands import choose_supply, count_row, expect_kept, open_demo, open_screen, touch
from tests.page.visitors import rename
from web.tools.server import FolderServer

# A browser that says yes or no, and counts in this tab how often it was asked.
ASKED = """(() => {
    const count = () => Number(sessionStorage.getItem("asked") ?? 0);
    const says = () => Boolean(localStorage.getItem("says yes"));
    const storage = StorageManager.prototype;
    storage.persist = async () => {
        sessionStorage.setItem("asked", count() + 1);
        if (says()) localStorage.setItem("promised", "yes");
        return says();
    };
    storage.persisted = async () => Boolean(localStorage.getItem("promised"));
    globalThis.countAsked = count;
})()"""
MAY_BE_CLEARED = "The browser may clear your jobs when the device runs full."
PROMISED = "The browser has promised to keep your jobs until you delete them."


@pytest.fixture
def asked(phone: BrowserContext, served: FolderServer) -> Page:
    """The app on a phone whose browser counts how often it is asked, and says no at first."""
    page = phone.new_page()
    page.add_init_script(ASKED)
    page.goto(served.address)
    return page


def count_asked(page: Page) -> int:
    """Count how often the browser was asked to keep what is stored."""
    return int(page.evaluate("countAsked()"))


def test_the_browser_is_asked_with_the_first_job_and_never_again(asked: Page) -> None:
    choose_supply(asked, volts="70.7 V", watts="120")
    count_row(asked, "6", "5 W")
    expect(asked.locator(".sum-big")).to_have_text("30 W")
    open_screen(asked, "About")
    assert count_asked(asked) == 0
    open_demo(asked)
    expect_kept(asked)
    asked.wait_for_function("countAsked() === 1")
    rename(asked, "Another name")
    asked.reload()
    expect_kept(asked)
    open_screen(asked, "Jobs")
    touch(asked, "New job")
    expect_kept(asked)
    rename(asked, "A second job")
    assert count_asked(asked) == 1


def test_that_jobs_may_be_cleared_is_said_until_the_browser_promises_to_keep_them(
    asked: Page,
) -> None:
    open_demo(asked)
    expect_kept(asked)
    open_screen(asked, "About")
    card = asked.get_by_role("region", name="On this device")
    expect(card).to_contain_text(MAY_BE_CLEARED)
    asked.evaluate("localStorage.setItem('says yes', 'yes')")
    touch(asked, "Ask the browser to keep them")
    expect(card).to_contain_text(PROMISED)
    expect(card).not_to_contain_text(MAY_BE_CLEARED)
    asked.reload()
    expect(card).to_contain_text(PROMISED)

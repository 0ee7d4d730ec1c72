"""Two tabs and one job: one writes, the other reads and follows."""

from playwright.sync_api import BrowserContext, Page, expect

from tests.page.hands import expect_kept, open_demo, touch


def rename(page: Page, name: str) -> None:
    """Give the open job another name."""
    touch(page, "Name and place")
    page.get_by_label("Name of the job").fill(name)
    touch(page, "Save")


def test_a_second_tab_reads_only_and_follows(fresh: Page, phone: BrowserContext) -> None:
    page = fresh
    open_demo(page)
    expect_kept(page)
    second = phone.new_page()
    second.goto(page.url)
    expect(second.locator(".top-state")).to_have_text("Read only")
    rename(page, "From the first tab")
    expect_kept(page)
    expect(second.get_by_role("heading", level=1)).to_have_text("From the first tab")
    rename(second, "From the second tab")
    expect(second.locator(".notice.bad")).to_be_visible()
    expect(page.get_by_role("heading", level=1)).to_have_text("From the first tab")


def test_the_pen_goes_to_the_tab_that_asks_for_it(fresh: Page, phone: BrowserContext) -> None:
    page = fresh
    open_demo(page)
    expect_kept(page)
    second = phone.new_page()
    second.goto(page.url)
    touch(second, "Change it here")
    expect_kept(second)
    expect(page.locator(".top-state")).to_have_text("Read only")
    rename(second, "From the second tab")
    expect(second.get_by_role("heading", level=1)).to_have_text("From the second tab")
    expect(page.get_by_role("heading", level=1)).to_have_text("From the second tab")


def test_a_closed_tab_leaves_the_pen_to_the_other(fresh: Page, phone: BrowserContext) -> None:
    page = fresh
    open_demo(page)
    expect_kept(page)
    second = phone.new_page()
    second.goto(page.url)
    expect(second.locator(".top-state")).to_have_text("Read only")
    page.close()
    expect_kept(second)

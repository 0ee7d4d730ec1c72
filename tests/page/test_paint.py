"""What is kept is painted at once, and stays where it is when the engine arrives."""

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.page.hands import HeldEngine, expect_kept, open_demo, open_zone

# Adds up how far things moved without a touch; a shift within half a second of one is not counted.
WATCH = """(() => {
    globalThis.shifts = [];
    new PerformanceObserver((seen) => {
        for (const { value, hadRecentInput, sources } of seen.getEntries()) {
            if (!hadRecentInput) shifts.push([value, ...sources.map(({ node }) =>
                `${node?.nodeName} ${node?.className}`)]);
        }
    }).observe({ type: "layout-shift", buffered: true });
})()"""
SETTLED = (
    """() => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve, 500)))"""
)


def open_where(page: Page, view: str) -> None:
    """Stay at the job, or go into its first zone."""
    if view == "zone":
        open_zone(page, "Palm House")


@pytest.mark.parametrize("view", ["job", "zone"])
def test_nothing_jumps_when_the_engine_arrives(
    fresh: Page, phone: BrowserContext, view: str
) -> None:
    open_demo(fresh)
    expect_kept(fresh)
    open_where(fresh, view)
    address = fresh.url
    fresh.close()
    page = phone.new_page()
    page.add_init_script(WATCH)
    held = HeldEngine(page)
    page.goto(address)
    expect(page.locator(".bench button").first).to_be_visible()
    page.evaluate(SETTLED)
    before = page.evaluate("shifts.length")
    held.let_go()
    expect_kept(page)
    expect(page.locator(".top-progress")).to_have_count(0)
    page.evaluate(SETTLED)
    assert page.evaluate("shifts")[before:] == []

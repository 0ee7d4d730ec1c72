"""The last states of a job are kept and can be gone back to; undo outlives a restart."""

from playwright.sync_api import Page, expect

from tests.page.hands import (
    expect_kept,
    open_demo,
    open_screen,
    open_zone,
    pick_point,
    touch,
    type_reading,
)
from tests.page.lines import look_at, nave, open_line
from tests.page.test_share import kept_job
from tests.page.visitors import make_visitor, open_way, rename, take_in
from web.tools.server import FolderServer

COUNT = """(id) => new Promise((resolve) => {
    const opening = indexedDB.open("rungline");
    opening.onsuccess = () => {
        const range = IDBKeyRange.bound([id], [id, []]);
        const asking = opening.result.transaction("states").objectStore("states").getAllKeys(range);
        asking.onsuccess = () => { opening.result.close(); resolve(asking.result); };
    };
})"""


def test_one_goes_back_to_an_earlier_state_and_on_again(page: Page, served: FolderServer) -> None:
    take_in(page, make_visitor("h1a", "Chapel"), address=served.address)
    rename(page, "Chapel, second")
    rename(page, "Chapel, third")
    open_way(page, "History")
    lines = page.locator(".state-line")
    expect(lines).to_have_count(3)
    expect(lines.first).to_contain_text("as it is now")
    expect(lines.first.get_by_role("button")).to_have_count(0)
    expect(lines.last).to_contain_text("Taken in from elsewhere")
    lines.last.get_by_role("button", name="Go back").tap()
    expect(page.get_by_role("heading", level=1)).to_have_text("Chapel")
    expect_kept(page)
    touch(page, "Undo")
    expect(page.get_by_role("heading", level=1)).to_have_text("Chapel, third")
    expect_kept(page)
    open_way(page, "History")
    expect(lines).to_have_count(5)
    expect(lines.nth(2)).to_contain_text("The same as now")
    expect(lines.nth(2).get_by_role("button")).to_have_count(0)
    lines.nth(3).get_by_role("button", name="Go back").tap()
    expect(page.get_by_role("heading", level=1)).to_have_text("Chapel, second")
    expect_kept(page)
    assert kept_job(page, "h1a").name == "Chapel, second"


def test_only_the_last_fifty_states_are_kept(page: Page, served: FolderServer) -> None:
    take_in(page, make_visitor("h2a", "Abbey", rev=3), address=served.address)
    for number in range(52):
        rename(page, f"Abbey {number}")
    keys = page.evaluate(COUNT, "h2a")
    assert len(keys) == 50
    assert [rev for _, rev, _ in keys] == list(range(6, 56))
    touch(page, "Undo")
    expect(page.get_by_role("heading", level=1)).to_have_text("Abbey 50")


def test_undo_and_history_outlive_a_restart(fresh: Page) -> None:
    page = fresh
    open_demo(page)
    expect_kept(page)
    rename(page, "Second name")
    page.reload()
    expect(page.get_by_role("heading", level=1)).to_have_text("Second name")
    expect(page.get_by_role("button", name="Undo")).to_be_enabled()
    touch(page, "Undo")
    expect(page.get_by_role("heading", level=1)).to_have_text("Ilverne Glasshouses")
    expect_kept(page)
    open_way(page, "History")
    expect(page.locator(".state-line")).to_have_count(3)
    expect(page.locator(".state-line").first).to_contain_text("Undo")


def test_a_line_of_the_history_says_which_loudspeaker_and_from_what_to_what(page: Page) -> None:
    open_demo(page)
    open_zone(page, "Palm House")
    pick_point(page, "Palm House 3")
    page.locator(".tap-row").filter(has=page.get_by_text("10 W", exact=True)).tap()
    expect_kept(page)
    page.get_by_role("link", name="Back to Ilverne Glasshouses").tap()
    open_way(page, "History")
    told = page.locator(".state-line").first
    expect(told.locator(".history-change").first).to_contain_text("Palm House 3: Tap, 5 W")
    expect(told.locator(".history-change").first).to_contain_text("→ 10 W")


def test_a_line_of_the_history_says_what_was_read_and_how_much(page: Page) -> None:
    open_line(page, nave())
    look_at(page, "Meter")
    page.get_by_label("What is read", exact=True).select_option("z_1k_ohm")
    type_reading(page, "104")
    expect(page.locator(".reading-shown")).to_have_text("104 Ω")
    expect_kept(page)
    open_screen(page, "Job")
    open_way(page, "History")
    told = page.locator(".state-line").first.locator(".history-change").first
    expect(told).to_contain_text("New reading")
    expect(told).to_contain_text("Ω at 1 kHz")
    expect(told).to_contain_text("104 Ω")
    expect(told).to_contain_text("Nave")

"""What was typed into a form and not sent is there again, whatever took its place."""

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.page.hands import (
    HeldEngine,
    expect_kept,
    open_demo,
    open_screen,
    open_zone,
    paper,
    pick_point,
    touch,
)
from tests.page.lines import nave, open_line
from tests.page.visitors import fragment_of, make_visitor
from web.tools.server import FolderServer

NAME, TYPED = "Name of the job", "Half a name"
DROP = """(text) => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([text], "job.json", { type: "application/json" }));
    const how = { dataTransfer, bubbles: true, cancelable: true };
    document.body.dispatchEvent(new DragEvent("drop", how));
}"""
COUNT_KEPT = """() => new Promise((resolve) => {
    const opening = indexedDB.open("rungline");
    opening.onsuccess = () => {
        const keys = opening.result.transaction("desk").objectStore("desk").getAllKeys();
        keys.onsuccess = () => {
            opening.result.close();
            resolve(keys.result.filter((key) => key.startsWith("draft ")).length);
        };
    };
})"""


@pytest.fixture
def typing(fresh: Page) -> Page:
    """The demo, with half a name typed into its form."""
    open_demo(fresh)
    expect_kept(fresh)
    type_name(fresh)
    return fresh


def type_name(page: Page) -> None:
    """Type into the form of the job's name, without sending it."""
    touch(page, "Name and place")
    page.get_by_label(NAME).fill(TYPED)


def expect_typed(page: Page) -> None:
    """The form is open with what was typed."""
    expect(page.get_by_label(NAME)).to_have_value(TYPED)
    expect(page.locator(".notices")).not_to_contain_text("not sent yet")


def wait_until_kept(page: Page, forms: int) -> None:
    """Wait until the device has so many half-filled forms."""
    page.wait_for_function(f"async () => (await ({COUNT_KEPT})()) === {forms}")


def send(page: Page) -> None:
    """Send the name; nothing of the form is left."""
    touch(page, "Save")
    expect(page.get_by_role("heading", level=1)).to_have_text(TYPED)
    expect_kept(page)
    wait_until_kept(page, 0)
    page.reload()
    expect_kept(page)
    expect(page.get_by_label(NAME)).to_have_count(0)
    expect(page.locator(".notices")).not_to_contain_text("not sent yet")


def test_a_link_that_arrives_does_not_cost_it(typing: Page, served: FolderServer) -> None:
    typing.goto(f"{served.address}#{fragment_of(make_visitor('h1a', 'Lock house'))}")
    expect(typing.locator(".open-preview h2")).to_have_text("Lock house")
    expect(typing.locator(".notices")).to_contain_text("“Name and place” is not sent yet (Ilverne")
    touch(typing, "Keep it")
    expect(typing.get_by_role("heading", level=1)).to_have_text("Lock house")
    touch(typing, "Go on with it")
    expect_typed(typing)
    send(typing)


def test_a_file_that_is_dropped_does_not_cost_it(typing: Page) -> None:
    typing.evaluate(
        DROP, paper("job.json", make_visitor("h2a", "Mole").model_dump_json())["buffer"].decode()
    )
    expect(typing.locator(".open-preview h2")).to_have_text("Mole")
    touch(typing, "Do not keep it")
    typing.go_back()
    expect_typed(typing)
    send(typing)


def test_back_and_forth_in_the_browser_brings_it_back(typing: Page) -> None:
    typing.go_back()
    expect(typing.get_by_label(NAME)).to_have_count(0)
    typing.go_forward()
    expect_typed(typing)
    open_screen(typing, "Tally")
    expect(typing.locator(".keys")).to_be_visible()
    open_screen(typing, "Job")
    expect_typed(typing)


def test_a_page_loaded_anew_has_it_again(typing: Page) -> None:
    wait_until_kept(typing, 1)
    typing.reload()
    expect_typed(typing)
    send(typing)


def test_one_that_is_closed_is_gone(typing: Page) -> None:
    touch(typing, "Close without saving")
    wait_until_kept(typing, 0)
    open_screen(typing, "Tally")
    open_screen(typing, "Job")
    expect(typing.locator(".verdict-big")).to_be_visible()
    expect(typing.get_by_label(NAME)).to_have_count(0)
    touch(typing, "Name and place")
    expect(typing.get_by_label(NAME)).to_have_value("Ilverne Glasshouses")


def test_one_that_is_thrown_away_is_gone(typing: Page) -> None:
    open_screen(typing, "Tally")
    touch(typing, "Throw it away")
    wait_until_kept(typing, 0)
    open_screen(typing, "Job")
    expect(typing.locator(".verdict-big")).to_be_visible()
    expect(typing.get_by_label(NAME)).to_have_count(0)


def test_a_thing_picked_meanwhile_does_not_cost_it(page: Page) -> None:
    open_line(page, nave())
    touch(page, "Loudspeakers")
    page.get_by_label("How many").fill("20 x 4 m")
    pick_point(page, "Nave 3")
    expect(page.locator(".tap-row").first).to_be_visible()
    touch(page, "Go on with it")
    expect(page.get_by_label("How many")).to_have_value("20 x 4 m")
    pick_point(page, "Nave 4")
    touch(page, "Close")
    touch(page, "Loudspeakers")
    expect(page.get_by_label("How many")).to_have_value("20 x 4 m")
    touch(page, "Close without saving")


def test_a_form_opened_out_of_another_comes_back_with_it(fresh: Page) -> None:
    open_line(fresh, nave())
    touch(fresh, "Loudspeakers")
    fresh.get_by_label("How many").fill("3 x 5 m")
    touch(fresh, "Own loudspeaker")
    fresh.get_by_label("Name", exact=True).fill("Cone")
    wait_until_kept(fresh, 1)
    fresh.reload()
    expect(fresh.get_by_label("Name", exact=True)).to_have_value("Cone")
    touch(fresh, "Close without saving")
    expect(fresh.get_by_label("How many")).to_have_value("3 x 5 m")
    touch(fresh, "Close without saving")
    wait_until_kept(fresh, 0)


def test_when_another_tab_takes_the_pen_it_waits_for_the_pen(
    typing: Page, phone: BrowserContext
) -> None:
    second = phone.new_page()
    second.goto(typing.url)
    touch(second, "Change it here")
    expect_kept(second)
    expect(typing.locator(".top-state")).to_have_text("Read only")
    touch(typing, "Save")
    expect(typing.locator(".notice.bad")).to_be_visible()
    expect_typed(typing)
    second.close()
    expect_kept(typing)
    send(typing)


def test_an_engine_that_starts_again_does_not_cost_it(typing: Page) -> None:
    typing.workers[0].evaluate("() => { globalThis.postMessage({ broken: 'gone' }); }")
    expect_typed(typing)
    send(typing)


def test_what_is_refused_after_one_went_on_can_be_put_right(
    phone: BrowserContext, served: FolderServer
) -> None:
    page = phone.new_page()
    page.goto(served.address)
    open_demo(page)
    expect_kept(page)
    held = HeldEngine(page)
    page.reload()
    open_zone(page, "Palm House")
    touch(page, "Loudspeakers")
    page.get_by_label("How many").fill("3 x plenty")
    touch(page, "Add")
    expect(page.locator(".notices")).to_contain_text("loudspeakers", ignore_case=True)
    open_screen(page, "Tally")
    held.let_go()
    open_screen(page, "Job")
    open_zone(page, "Palm House")
    expect(page.get_by_label("How many")).to_have_value("3 x plenty")
    page.get_by_label("How many").fill("3 x 4 m")
    touch(page, "Add")
    expect(page.locator(".form")).to_have_count(0)
    expect_kept(page)
    wait_until_kept(page, 0)


def test_what_was_typed_about_a_job_goes_with_the_job(typing: Page) -> None:
    wait_until_kept(typing, 1)
    open_screen(typing, "Jobs")
    expect(typing.locator(".notices")).to_contain_text("not sent yet")
    typing.locator(".job-line").first.get_by_role("button").first.tap()
    touch(typing, "Delete")
    typing.locator("dialog").get_by_role("button", name="Delete").tap()
    expect(typing.locator(".job-line")).to_have_count(0)
    expect(typing.locator(".notices")).not_to_contain_text("not sent yet")
    wait_until_kept(typing, 0)

"""An answer that arrives in the moment of a touch moves nothing away from under it."""

from collections.abc import Callable

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.page.hands import (
    begin_with_about_ten,
    choose_supply,
    count_row,
    open_demo,
    open_screen,
    pick_point,
    touch,
)
from tests.page.held_answers import (
    displaced_by_answers,
    hold_answers,
    let_answers_come,
    open_gated,
)
from tests.page.lines import look_at, nave, open_line
from tests.page.stops import zone
from tests.page.thumb import top_of
from web.tools.server import FolderServer

Way = Callable[[Page], None]

SEEN_PIXELS = 1

# Notes down, whenever something is painted, what the address and the title say.
WATCH_TITLE = """() => {
    globalThis.titles = [];
    new MutationObserver(() => titles.push(
        [location.hash, document.querySelector("h1").textContent.trim()].join(" "),
    )).observe(document.body, { childList: true, subtree: true, characterData: true });
}"""

WATCH_FOOT = """globalThis.ways = [];
new MutationObserver(() => {
    const now = document.querySelectorAll(".foot-way").length;
    if (now) ways.push(now);
}).observe(document, { childList: true, subtree: true });"""


@pytest.fixture
def gated(phone: BrowserContext, served: FolderServer) -> Page:
    """The app, with a gate in its engine's way that is still open."""
    return open_gated(phone, served.address)


def about_ten_heard(page: Page) -> None:
    """Its tiles."""
    begin_with_about_ten(page)
    expect(page.locator(".tile")).to_have_count(10)


def line_heard(page: Page) -> None:
    """The tiles of a line of a job."""
    open_line(page, nave())
    look_at(page, "Meter")
    page.get_by_label("What is read", exact=True).select_option("plays")
    expect(page.locator(".tile")).to_have_count(8)


def test_the_places_of_a_code_and_a_link_are_kept_while_they_are_made(gated: Page) -> None:
    open_demo(gated)
    hold_answers(gated)
    gated.get_by_role("link", name="Share", exact=True).first.tap()
    save = gated.get_by_role("button", name="Save all jobs as one file")
    expect(save).to_be_attached()
    before = top_of(save)
    assert displaced_by_answers(gated, until=".code-dark") == []
    assert abs(top_of(save) - before) < SEEN_PIXELS


def test_a_working_opens_in_one_go(gated: Page) -> None:
    choose_supply(gated, volts="70.7 V", watts="120")
    count_row(gated, "6", "30 W")
    expect(gated.locator(".sum-headline")).to_have_text("Too much")
    hold_answers(gated)
    gated.locator(".sum-big button").tap()
    cross = gated.locator(".working .square")
    before = top_of(cross)
    assert displaced_by_answers(gated, until=".working-result") == []
    assert abs(top_of(cross) - before) < SEEN_PIXELS


@pytest.mark.parametrize("way", [about_ten_heard, line_heard])
def test_one_tile_after_the_other_is_touched_while_answers_come(gated: Page, way: Way) -> None:
    way(gated)
    hold_answers(gated)
    for number in (1, 3, 4):
        gated.locator(".tile").nth(number).tap()
    assert displaced_by_answers(gated, until=".suspect") == []
    expect(gated.locator(".heard-reason")).to_be_visible()


def test_what_a_count_comes_to_can_be_read_to_its_end_by_keys(gated: Page) -> None:
    about_ten_heard(gated)
    gated.locator(".tile").nth(3).tap()
    expect(gated.locator(".heard-reason")).to_be_visible()
    short = gated.locator(".heard-short")
    assert short.evaluate("(it) => it.scrollHeight > it.clientHeight")
    short.focus()
    gated.keyboard.press("End")
    gated.wait_for_function("() => document.querySelector('.heard-short').scrollTop > 0")


def test_a_note_of_what_was_done_moves_no_row(gated: Page) -> None:
    open_line(gated, nave())
    pick_point(gated, "Nave 6")
    hold_answers(gated)
    touch(gated, "Remove")
    row = gated.locator(".point-pick").filter(has_text="Nave 5")
    assert gated.locator(".sheet").evaluate("(it) => it.scrollTop") > 0
    before = top_of(row)
    let_answers_come(gated)
    expect(gated.locator(".notice")).to_be_visible()
    # a sheet is scrolled by whole dots of the screen
    assert abs(top_of(row) - before) < SEEN_PIXELS


def test_another_job_opens_in_one_go(gated: Page) -> None:
    open_line(gated, nave())
    open_screen(gated, "Jobs")
    gated.evaluate(WATCH_TITLE)
    touch(gated, "Open the demo")
    expect(gated.get_by_role("heading", level=1)).to_have_text("Ilverne Glasshouses")
    titles = set(gated.evaluate("titles"))
    assert "#/job/dem1 Ilverne Glasshouses" in titles
    assert not [title for title in titles if "St Orsel" in title]


def test_the_way_to_the_job_stands_at_the_foot_from_the_first(gated: Page) -> None:
    open_demo(gated)
    open_screen(gated, "Tally")
    gated.add_init_script(WATCH_FOOT)
    gated.reload()
    expect(gated.locator(".keys")).to_be_visible()
    gated.wait_for_function("() => gate.heard")
    assert set(gated.evaluate("ways")) == {5}


def at_home(page: Page) -> None:
    """A tally with a row."""
    choose_supply(page, volts="70.7 V", watts="120")
    count_row(page, "6", "10 W")
    expect(page.locator(".sum-big button")).to_be_visible()


def on_the_way_out(page: Page) -> None:
    """The job as it is shared."""
    open_demo(page)
    page.get_by_role("link", name="Share", exact=True).first.tap()
    expect(page.locator(".code-dark")).to_be_attached()


@pytest.mark.parametrize("way", [at_home, open_demo, zone, on_the_way_out, line_heard])
def test_nothing_moves_when_the_engine_arrives(
    phone: BrowserContext, served: FolderServer, way: Way
) -> None:
    earlier = open_gated(phone, served.address)
    way(earlier)
    expect(earlier.locator(".top-state")).not_to_have_text("Keeping")
    address = earlier.url
    earlier.close()
    page = open_gated(phone, address, shut=True)
    expect(page.locator(".top-progress")).to_be_attached()
    expect(page.locator("main.sheet *").first).to_be_visible()
    ready = "body:not(:has(.top-progress, .empty))"
    assert displaced_by_answers(page, until=ready) == []

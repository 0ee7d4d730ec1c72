"""What the page does while the engine starts, breaks, hangs or cannot start at all."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import BrowserContext, Page, Route, expect

from tests.page.hands import (
    ENGINE_FILE,
    Gate,
    HeldEngine,
    choose_supply,
    count_row,
    expect_kept,
    open_demo,
    open_screen,
    touch,
)
from web.tools.places import WEB
from web.tools.server import FolderServer

LONGER_THAN_ANY_ANSWER_MILLISECONDS = 25_000
BREAK_WHILE_BUSY = """() => setTimeout(() => {
    const end = Date.now() + 700;
    while (Date.now() < end);
    throw new Error("broken for a test");
})"""
LONGER_THAN_ANY_SILENCE_MILLISECONDS = 65_000
# The page's own door, before an engine that says only what it is told to.
WAKE_BY_HAND = """async (kept) => {
  const { openDoor } = await import("/door.js");
  globalThis.starts = 0;
  const start = () => {
    const engine = { postMessage() {}, terminate() {} };
    globalThis.starts += 1;
    globalThis.hear = (data) => engine.onmessage({ data });
    return engine;
  };
  openDoor({ start, onStage() {}, manner: () => ({}), isKept: () => kept });
}"""
HANG = "() => setTimeout(() => { for (;;); })"


def restart_with_held_engine(page: Page, phone: BrowserContext) -> tuple[Page, HeldEngine]:
    """Open the same address again in a page whose engine does not start."""
    address = page.url
    page.close()
    again = phone.new_page()
    held = HeldEngine(again)
    again.goto(address)
    return again, held


def test_a_kept_job_is_painted_before_the_engine_is_ready(
    fresh: Page, phone: BrowserContext
) -> None:
    page = fresh
    open_demo(page)
    expect_kept(page)
    again, held = restart_with_held_engine(page, phone)
    expect(again.get_by_role("heading", level=1)).to_have_text("Ilverne Glasshouses")
    expect(again.locator(".verdict-head.v-over")).to_be_visible()
    expect(again.locator(".finding-group").first).to_be_visible()
    assert again.locator(".top-progress").is_visible()
    held.let_go()


def test_changes_made_before_the_engine_is_ready_wait_and_land_in_order(
    fresh: Page, phone: BrowserContext
) -> None:
    page = fresh
    open_demo(page)
    expect_kept(page)
    again, held = restart_with_held_engine(page, phone)
    for name in ("First name", "Second name"):
        touch(again, "Name and place")
        again.get_by_label("Name of the job").fill(name)
        touch(again, "Save")
        touch(again, "Close without saving")
    expect(again.locator(".notice li")).to_have_count(2)
    expect(again.locator(".top-state")).to_have_text("Waiting")
    expect(again.get_by_role("heading", level=1)).to_have_text("Ilverne Glasshouses")
    held.let_go()
    expect(again.get_by_role("heading", level=1)).to_have_text("Second name")
    expect(again.locator(".notice li")).to_have_count(0)
    touch(again, "Undo")
    expect(again.get_by_role("heading", level=1)).to_have_text("First name")


def test_changes_that_wait_survive_a_killed_page(fresh: Page, phone: BrowserContext) -> None:
    page = fresh
    open_demo(page)
    expect_kept(page)
    address = page.url
    again, _held = restart_with_held_engine(page, phone)
    touch(again, "Name and place")
    again.get_by_label("Name of the job").fill("Written in the dark")
    touch(again, "Save")
    expect(again.locator(".notice li")).to_have_count(1)
    again.close()
    third = phone.new_page()
    third.goto(address)
    expect(third.get_by_role("heading", level=1)).to_have_text("Written in the dark")


def test_an_engine_that_breaks_in_the_middle_of_an_ask_is_started_again(fresh: Page) -> None:
    page = fresh
    open_demo(page)
    expect_kept(page)
    page.workers[-1].evaluate(BREAK_WHILE_BUSY)
    touch(page, "Name and place")
    page.get_by_label("Name of the job").fill("Asked twice")
    touch(page, "Save")
    expect(page.get_by_role("heading", level=1)).to_have_text("Asked twice")
    expect_kept(page)


def test_an_engine_that_hangs_is_ended_and_its_question_asked_again(
    new_phone: BrowserContext, served: FolderServer
) -> None:
    page = new_phone.new_page()
    page.clock.install()
    page.goto(served.address)
    choose_supply(page, volts="70.7 V", watts="120")
    count_row(page, "6", "5 W")
    expect(page.locator(".sum-big")).to_have_text("30 W")
    page.workers[-1].evaluate(HANG)
    count_row(page, "2", "10 W")
    expect(page.locator(".tally-row")).to_have_count(2)
    page.clock.fast_forward(LONGER_THAN_ANY_ANSWER_MILLISECONDS)
    expect(page.locator(".sum-big")).to_have_text("50 W")


@pytest.fixture
def by_hand(new_phone: BrowserContext) -> Iterator[Page]:
    """A page beside the page's own files, with a clock that is moved by hand."""
    server = FolderServer(WEB, host="127.0.0.1", port=0)
    with server.serve_in_background() as address:
        page = new_phone.new_page()
        page.clock.install()
        page.goto(address + "changes.json")
        yield page


def test_an_engine_that_hangs_while_it_wakes_is_ended_once_its_files_are_there(
    by_hand: Page,
) -> None:
    page = by_hand
    page.evaluate(WAKE_BY_HAND, False)
    page.evaluate("hear({ loading: true }); hear({ stage: 'wake' })")
    page.clock.fast_forward(LONGER_THAN_ANY_ANSWER_MILLISECONDS)
    assert page.evaluate("starts") == 1
    page.evaluate("hear({ loading: false })")
    page.clock.fast_forward(LONGER_THAN_ANY_ANSWER_MILLISECONDS)
    assert page.evaluate("starts") == 2
    page.evaluate("hear({ stage: 'start' })")
    page.clock.fast_forward(LONGER_THAN_ANY_ANSWER_MILLISECONDS)
    assert page.evaluate("starts") == 2


@pytest.mark.parametrize("kept", [True, False])
def test_a_start_without_a_word_is_ended_once_and_only_where_its_files_lie_here(
    by_hand: Page, kept: bool
) -> None:
    page = by_hand
    page.evaluate(WAKE_BY_HAND, kept)
    page.clock.fast_forward(LONGER_THAN_ANY_ANSWER_MILLISECONDS)
    page.evaluate("hear({ loading: true })")
    page.clock.fast_forward(LONGER_THAN_ANY_ANSWER_MILLISECONDS * 2)
    assert page.evaluate("starts") == 1
    page.clock.fast_forward(LONGER_THAN_ANY_SILENCE_MILLISECONDS)
    assert page.evaluate("starts") == (2 if kept else 1)
    page.clock.fast_forward(LONGER_THAN_ANY_SILENCE_MILLISECONDS)
    assert page.evaluate("starts") == (2 if kept else 1)


def test_an_engine_that_is_there_may_be_silent(by_hand: Page) -> None:
    page = by_hand
    page.evaluate(WAKE_BY_HAND, True)
    page.evaluate("hear({ ready: true })")
    page.clock.fast_forward(LONGER_THAN_ANY_SILENCE_MILLISECONDS)
    assert page.evaluate("starts") == 1


def test_an_interpreter_that_traps_while_it_starts_is_started_once_more(
    new_phone: BrowserContext, served: FolderServer
) -> None:
    page = new_phone.new_page()
    trap = 'postMessage({ failed: "RuntimeError: unreachable" });'

    def answer_with_trap(route: Route) -> None:
        gate.open()
        route.fulfill(body=trap, content_type="text/javascript")

    gate = Gate(page, "**/worker.js", meet=answer_with_trap)
    page.goto(served.address)
    choose_supply(page, volts="70.7 V", watts="120")
    count_row(page, "6", "5 W")
    expect(page.locator(".sum-big")).to_have_text("30 W")
    expect(page.locator(".notice.bad")).to_have_count(0)


def test_a_failed_start_says_why_and_keeps_jobs_readable_and_saved_to_files(
    fresh: Page, phone: BrowserContext
) -> None:
    page = fresh
    open_demo(page)
    expect_kept(page)
    address = page.url
    page.close()
    again = phone.new_page()
    gate = Gate(again, ENGINE_FILE, meet=lambda route: route.abort())
    again.goto(address)
    expect(again.locator(".notice.bad")).to_contain_text("The engine did not start")
    expect(again.locator(".verdict-head.v-over")).to_be_visible()
    again.get_by_role("link", name="Share", exact=True).tap()
    with again.expect_download() as waiting:
        touch(again, "Save the file")
    assert waiting.value.suggested_filename.endswith(".json")
    gate.open()
    touch(again, "Try again")
    expect(again.locator(".notice.bad")).to_have_count(0)


def test_the_first_visit_can_be_used_before_the_engine_has_ever_started(
    new_phone: BrowserContext, served: FolderServer
) -> None:
    page = new_phone.new_page()
    held = HeldEngine(page)
    page.goto(served.address)
    choose_supply(page, volts="100 V", watts="120")
    for count, tap in (("6", "6 W"), ("4", "10 W")):
        count_row(page, count, tap)
    expect(page.locator(".tally-row")).to_have_count(2)
    expect(page.locator(".sum-words")).to_contain_text("as soon as the engine has started")
    held.let_go()
    expect(page.locator(".sum-big")).to_have_text("76 W")
    expect(page.locator(".sum-headline")).to_have_text("The watts fit")


def test_a_tally_is_painted_as_it_was_left_before_the_engine_is_ready(
    fresh: Page, phone: BrowserContext
) -> None:
    page = fresh
    choose_supply(page, volts="70.7 V", watts="120")
    count_row(page, "6", "5 W")
    expect(page.locator(".sum-headline")).to_have_text("The watts fit")
    open_screen(page, "Tally")
    again, held = restart_with_held_engine(page, phone)
    expect(again.locator(".sum-big")).to_have_text("30 W")
    expect(again.locator(".tally-row")).to_have_count(1)
    count_row(again, "4", "7.5 W")
    expect(again.locator(".tally-row")).to_have_count(2)
    held.let_go()
    expect(again.locator(".sum-big")).to_have_text("60 W")

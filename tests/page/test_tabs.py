"""Two tabs and one job: one writes, the other reads and follows."""

from playwright.sync_api import BrowserContext, Page, expect

from tests.page.hands import expect_kept, open_demo, touch
from web.tools.server import FolderServer


def rename(page: Page, name: str) -> None:
    """Give the open job another name."""
    touch(page, "Name and place")
    page.get_by_label("Name of the job").fill(name)
    touch(page, "Save")


def open_in_two_tabs(page: Page, phone: BrowserContext) -> tuple[Page, Page]:
    """The demo in a tab that has the pen, and in one that only reads."""
    open_demo(page)
    expect_kept(page)
    second = phone.new_page()
    second.goto(page.url)
    expect(second.locator(".top-state")).to_have_text("Read only")
    return page, second


def test_a_second_tab_reads_only_and_follows(fresh: Page, phone: BrowserContext) -> None:
    page, second = open_in_two_tabs(fresh, phone)
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
    page, second = open_in_two_tabs(fresh, phone)
    page.close()
    expect_kept(second)


def test_the_pen_is_given_only_after_everything_is_kept(fresh: Page, phone: BrowserContext) -> None:
    page, second = open_in_two_tabs(fresh, phone)
    rename(page, "Just typed")
    touch(second, "Change it here")
    expect_kept(second)
    expect(second.get_by_role("heading", level=1)).to_have_text("Just typed")
    rename(second, "And on")
    expect_kept(second)
    expect(page.get_by_role("heading", level=1)).to_have_text("And on")


# A tab that sleeps hears nothing.
HEARS_NOTHING = """() => {
    Object.defineProperty(BroadcastChannel.prototype, "onmessage", { set() {}, get: () => null });
}"""


def test_a_tab_that_does_not_answer_loses_the_pen(
    phone: BrowserContext, served: FolderServer
) -> None:
    sleeper = phone.new_page()
    sleeper.add_init_script(f"({HEARS_NOTHING})()")
    sleeper.goto(served.address)
    open_demo(sleeper)
    expect_kept(sleeper)
    second = phone.new_page()
    second.goto(sleeper.url)
    expect(second.locator(".top-state")).to_have_text("Read only")
    touch(second, "Change it here")
    expect_kept(second)
    rename(second, "Taken over")
    expect_kept(second)
    expect(sleeper.locator(".top-state")).to_have_text("Read only")
    rename(sleeper, "Too late")
    expect(sleeper.locator(".notice.bad")).to_be_visible()
    expect(second.get_by_role("heading", level=1)).to_have_text("Taken over")


# Whoever wants to read jobs waits until this is let go.
HOLD_JOBS = """() => new Promise((resolve) => {
    globalThis.holding = true;
    const opening = indexedDB.open("rungline");
    opening.onsuccess = () => {
        const jobs = opening.result.transaction("jobs", "readwrite").objectStore("jobs");
        const go = () => { resolve(); if (holding) jobs.getKey("none").onsuccess = go; };
        go();
    };
})"""
PENS = "filter(({ name }) => name.startsWith('rungline:'))"
STEAL = f"""() => navigator.locks.query().then(({{ held }}) => void navigator.locks.request(
    held.{PENS}[0].name, {{ steal: true }}, () => new Promise(() => {{}})))"""
WAITING = f"""(count) => navigator.locks.query().then(({{ pending }}) =>
    pending.{PENS}.length === count)"""


def test_a_pen_that_is_taken_away_before_the_job_is_read_is_not_taken_for_one_s_own(
    fresh: Page, phone: BrowserContext, served: FolderServer
) -> None:
    page, second = open_in_two_tabs(fresh, phone)
    rival = phone.new_page()
    rival.goto(f"{served.address}changes.json")
    rival.evaluate(HOLD_JOBS)
    page.close()
    rival.wait_for_function(WAITING, arg=0)
    rival.evaluate(STEAL)
    rival.wait_for_function(WAITING, arg=1)
    rival.evaluate("void (globalThis.holding = false)")
    rename(second, "Without the pen")
    expect(second.locator(".notice.bad")).to_be_visible()
    expect(second.locator(".top-state")).to_have_text("Read only")
    expect(second.get_by_role("heading", level=1)).to_have_text("Ilverne Glasshouses")


NEWER = """(name) => new Promise((resolve) => {
    const opening = indexedDB.open("rungline");
    opening.onsuccess = () => {
        const writing = opening.result.transaction("jobs", "readwrite");
        const jobs = writing.objectStore("jobs");
        jobs.get("dem1").onsuccess = ({ target: { result } }) => {
            const job = { ...result.job, name, rev: result.job.rev + 1 };
            jobs.put({ ...result, job });
        };
        writing.oncomplete = () => { opening.result.close(); resolve(); };
    };
})"""


def test_a_write_over_a_newer_state_is_refused_and_shown(fresh: Page) -> None:
    page = fresh
    open_demo(page)
    expect_kept(page)
    page.evaluate(NEWER, "Written behind its back")
    rename(page, "Over it")
    expect(page.locator(".notice.bad")).to_contain_text("changed elsewhere meanwhile")
    expect(page.get_by_role("heading", level=1)).to_have_text("Written behind its back")
    page.reload()
    expect(page.get_by_role("heading", level=1)).to_have_text("Written behind its back")


# As a page that is being left, or one whose storage is switched off, is told.
GETS_NO_LOCK = """(() => {
    globalThis.wanted = 0;
    LockManager.prototype.request = async () => {
        wanted += 1;
        throw new DOMException("not fully active", "InvalidStateError");
    };
})()"""


def test_a_page_that_gets_no_lock_does_not_ask_for_ever(
    phone: BrowserContext, served: FolderServer
) -> None:
    page = phone.new_page()
    page.add_init_script(GETS_NO_LOCK)
    page.goto(served.address)
    open_demo(page)
    expect(page.locator(".top-state")).to_have_text("Read only")
    assert page.evaluate("wanted") == 1


CROSS = "(way) => void dispatchEvent(new PageTransitionEvent(way, { persisted: true }))"


def test_a_page_that_is_left_lays_the_pen_down_and_asks_again_when_shown_again(
    fresh: Page, phone: BrowserContext
) -> None:
    page = fresh
    open_demo(page)
    expect_kept(page)
    page.evaluate(CROSS, "pagehide")
    second = phone.new_page()
    second.goto(page.url)
    rename(second, "From the second tab")  # only what has the pen does this
    expect(second.get_by_role("heading", level=1)).to_have_text("From the second tab")
    page.evaluate(CROSS, "pageshow")
    expect(page.locator(".top-state")).to_have_text("Read only")
    second.close()
    expect_kept(page)


def test_what_was_typed_in_a_tab_that_only_reads_is_sent_once_the_pen_is_here(
    fresh: Page, phone: BrowserContext
) -> None:
    page, second = open_in_two_tabs(fresh, phone)
    rename(second, "Typed while reading only")
    send = second.get_by_role("button", name="Save", exact=True)
    expect(send).to_be_enabled()
    expect(second.locator(".notice.bad")).to_be_visible()
    touch(second, "Change it here")
    expect_kept(second)
    expect(second.locator(".notice.bad")).to_have_count(0)
    expect(second.get_by_label("Name of the job")).to_have_value("Typed while reading only")
    send.tap()
    expect(second.get_by_role("heading", level=1)).to_have_text("Typed while reading only")
    expect_kept(second)
    expect(page.get_by_role("heading", level=1)).to_have_text("Typed while reading only")


def test_a_job_deleted_in_another_tab_is_open_nowhere_any_more(
    fresh: Page, phone: BrowserContext, served: FolderServer
) -> None:
    page, second = open_in_two_tabs(fresh, phone)
    second.goto(f"{served.address}#/jobs")
    second.locator(".job-line .square").tap()
    touch(second, "Delete")
    touch(second, "Delete it")
    expect(page.get_by_text("This job is not on this device.")).to_be_visible()


GONE = """(id) => new Promise((resolve) => {
    const opening = indexedDB.open("rungline");
    opening.onsuccess = () => {
        const writing = opening.result.transaction("jobs", "readwrite");
        writing.objectStore("jobs").delete(id);
        writing.oncomplete = () => { opening.result.close(); resolve(); };
    };
})"""


def test_a_change_to_a_job_that_is_gone_ends_and_says_so(fresh: Page) -> None:
    page = fresh
    open_demo(page)
    expect_kept(page)
    page.evaluate(GONE, "dem1")
    rename(page, "Of what is gone")
    expect(page.get_by_text("This job is not on this device.")).to_be_visible()
    open_demo(page)
    rename(page, "After that")
    expect(page.get_by_role("heading", level=1)).to_have_text("After that")
    expect_kept(page)

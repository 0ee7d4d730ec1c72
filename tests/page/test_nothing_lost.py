"""Nothing that was shown as kept is lost: to a kill, a dead engine, a full device, two tabs."""

import random
from pathlib import Path

from playwright.sync_api import BrowserContext, Page, Playwright, expect

from tests.page.hands import expect_kept, open_demo, open_zone, touch
from tests.page.losing import JOB, Survivor, listen, read_names, work
from tests.page.visitors import rename
from web.tools.server import FolderServer

# `build.py bench lost` runs the very same rounds fifty times.
ROUNDS = 3


def test_edits_shown_as_kept_outlive_a_killed_browser(
    playwright: Playwright, served: FolderServer, tmp_path: Path
) -> None:
    chance = random.Random(1)
    survivor = Survivor(tmp_path, playwright, served.address)
    survivor.begin()
    rounds = [survivor.live_and_die(chance) for _ in range(ROUNDS)]
    assert [each.lost for each in rounds] == [[]] * ROUNDS
    assert all(each.opens for each in rounds)
    assert sum(each.shown for each in rounds) > ROUNDS


def test_edits_outlive_an_engine_that_dies_among_them(fresh: Page) -> None:
    page = fresh
    open_demo(page)
    expect_kept(page)
    shown = listen(page)
    for start in (0, 10, 20):
        assert work(page, start=start, most=6) == "done"
        page.workers[0].evaluate("() => { globalThis.postMessage({ broken: 'gone' }); }")
        assert work(page, start=start + 6, most=2) == "done"
    expect(page.get_by_role("heading", level=1)).to_have_text("N27")
    expect_kept(page)
    there = read_names(page)
    assert there["name"] == "N27"
    assert {*shown, "N27"} <= {*there["names"]}
    assert [name for name in there["names"] if name.startswith("N")] == [
        f"N{start + number}" for start in (0, 10, 20) for number in range(8)
    ]


# Takes all the room there is, in a base of its own, down to the last kilobyte.
FILL = """async () => {
    const opened = await new Promise((resolve, reject) => {
        const opening = indexedDB.open("filler");
        opening.onupgradeneeded = () =>
            opening.result.createObjectStore("some", { autoIncrement: true });
        opening.onsuccess = () => resolve(opening.result);
        opening.onerror = () => reject(opening.error);
    });
    const put = (bytes) => new Promise((resolve) => {
        const writing = opened.transaction("some", "readwrite");
        writing.objectStore("some").put(crypto.getRandomValues(new Uint8Array(bytes)));
        writing.oncomplete = () => resolve("");
        writing.onabort = () => resolve(writing.error?.name ?? "aborted");
    });
    let said = "";
    for (let bytes = 65_536; bytes >= 1024; bytes /= 2) {
        do said = await put(bytes); while (!said);
    }
    opened.close();
    return said;
}"""
ROOM_BYTES = 3_000_000


def tell_room(page: Page, served: FolderServer, **room: int) -> None:
    """Tell the browser how much this app may keep; nothing: as much as there is.

    It asks itself anew only about once in half a minute, so it is told before the first write.
    """
    tools = page.context.new_cdp_session(page)
    origin = "/".join(served.address.split("/", 3)[:3])
    tools.send("Storage.overrideQuotaForOrigin", {"origin": origin, **room})


def test_a_full_device_is_said_and_what_was_not_kept_is_kept_as_soon_as_there_is_room(
    new_phone: BrowserContext, served: FolderServer
) -> None:
    page = new_phone.new_page()
    tell_room(page, served, quotaSize=ROOM_BYTES)
    page.goto(served.address)
    open_demo(page)
    rename(page, "While there was room")
    assert page.evaluate(FILL) == "QuotaExceededError"
    touch(page, "Name and place")
    page.get_by_label("Name of the job").fill("When it was full")
    touch(page, "Save")
    expect(page.locator(".top-state")).to_have_text("Not kept")
    expect(page.locator(".notice.bad")).to_contain_text("The device did not take the change")
    assert read_names(page)["name"] == "While there was room"
    touch(page, "Try to keep it again")
    expect(page.locator(".top-state")).to_have_text("Not kept")
    tell_room(page, served)
    touch(page, "Try to keep it again")
    expect_kept(page)
    expect(page.get_by_role("heading", level=1)).to_have_text("When it was full")
    assert read_names(page)["name"] == "When it was full"
    rename(page, "And on")
    page.reload()
    expect(page.get_by_role("heading", level=1)).to_have_text("And on")


def test_two_tabs_that_fight_for_a_job_lose_nothing(fresh: Page, phone: BrowserContext) -> None:
    first = fresh
    open_demo(first)
    expect_kept(first)
    second = phone.new_page()
    second.goto(first.url)
    expect(second.locator(".top-state")).to_have_text("Read only")
    shown = listen(first), listen(second)
    tabs = (first, second)
    for turn in range(6):
        here = tabs[turn % 2]
        if turn:
            touch(here, "Change it here")
            expect_kept(here)
        assert work(here, start=turn * 10, most=4, hand="AB"[turn % 2]) == "done"
    expect_kept(second)
    there = read_names(second)
    assert there["name"] == "B53"
    wanted = [f"{'AB'[turn % 2]}{turn * 10 + number}" for turn in range(6) for number in range(4)]
    assert [name for name in there["names"] if name[0] in "AB"] == wanted
    assert {*shown[0], *shown[1]} <= {*there["names"]}
    assert JOB in first.url


# The device takes no record behind which nothing waits: that an act is over cannot be written.
TAKES_NO_END = """() => {
    const put = IDBObjectStore.prototype.put;
    globalThis.takeAgain = () => { IDBObjectStore.prototype.put = put; };
    IDBObjectStore.prototype.put = function (value, ...more) {
        if (value?.waiting?.length === 0) throw new DOMException("no room", "QuotaExceededError");
        return put.call(this, value, ...more);
    };
}"""


def test_a_device_that_takes_no_end_of_a_refused_change_holds_up_no_later_one(fresh: Page) -> None:
    page = fresh
    open_demo(page)
    expect_kept(page)
    open_zone(page, "Palm House")
    page.evaluate(TAKES_NO_END)
    touch(page, "Loudspeakers")
    page.get_by_label("How many").fill("3 x plenty")
    touch(page, "Add")
    expect(page.locator(".notice.bad")).to_contain_text("The device did not take the change")
    page.evaluate("takeAgain()")
    touch(page, "Try to keep it again")
    expect_kept(page)
    page.get_by_label("How many").fill("3 x 4 m")
    touch(page, "Add")
    expect(page.locator(".form")).to_have_count(0)
    expect_kept(page)

"""Edits without end, and a browser that is killed among them: what was kept must be there.

The page is worked by a script in it, as fast as it takes the work. Each edit gives the job the
next number as its name; whenever the page shows "Kept", the name it shows goes into the log.
"""

import contextlib
import random
import time
from pathlib import Path
from typing import Any, NamedTuple

from playwright.sync_api import Error, Page, Playwright, expect

from tests.page.engines.chromium import Chromium
from tests.page.hands import PATIENCE_MILLISECONDS, expect_kept

JOB = "dem1"
WORK = """async ({ from, most, pause, hand }) => {
    const find = (selector) => document.querySelector(selector);
    const button = (words) =>
        [...document.querySelectorAll("button")].find((each) => each.innerText.trim() === words);
    const wait = (time) => new Promise((resolve) => setTimeout(resolve, time));
    const until = async (look) => {
        for (let tries = 0; !look() && tries < 2000; tries += 1) await wait(5);
        return look();
    };
    const tell = () => {
        const kept = find(".top-state").innerText === "Kept";
        if (kept) console.log(`kept ${find("#title").innerText}`);
    };
    new MutationObserver(tell).observe(find(".top"), {
        subtree: true, childList: true, characterData: true,
    });
    for (let number = from; number < from + most; number += 1) {
        const open = await until(() => button("Name and place"));
        if (!open) return "stuck";
        open.click();
        const field = await until(() => find("#field-name"));
        if (!field) continue;
        field.value = `${hand}${number}`;
        field.dispatchEvent(new Event("input", { bubbles: true }));
        await wait(0);
        find("form.form button[type=submit]")?.click();
        await wait(Math.random() * pause);
        await until(() => !find("form.form"));
    }
    return "done";
}"""
NAMES = """(id) => new Promise((resolve, reject) => {
    const opening = indexedDB.open("rungline");
    opening.onerror = () => reject(opening.error);
    opening.onsuccess = () => {
        const reading = opening.result.transaction(["jobs", "states"]);
        const job = reading.objectStore("jobs").get(id);
        const range = IDBKeyRange.bound([id], [id, []]);
        const states = reading.objectStore("states").getAll(range);
        reading.oncomplete = () => {
            opening.result.close();
            const { job: { name, rev } } = job.result;
            resolve({ name, rev, names: states.result.map((each) => each.job.name) });
        };
    };
})"""


class Round(NamedTuple):
    """One kill: how many edits were shown as kept, and which of them are not there afterwards."""

    shown: int
    lost: list[str]
    opens: bool


def listen(page: Page) -> list[str]:
    """The names shown as kept from now on, in order."""
    shown: list[str] = []

    def hear(message: Any) -> None:
        word, _, name = message.text.partition(" ")
        if word == "kept" and name not in shown:
            shown.append(name)

    page.on("console", hear)
    return shown


def work(
    page: Page, *, start: int, most: int, hand: str = "N", pause_milliseconds: int = 40
) -> str:
    """Let the page be worked; ends early when the page goes."""
    order = {"from": start, "most": most, "pause": pause_milliseconds, "hand": hand}
    said: str = page.evaluate(WORK, order)
    return said


def read_names(page: Page) -> dict[str, Any]:
    """The name the job has on the device, and those of its last states."""
    read: dict[str, Any] = page.evaluate(NAMES, JOB)
    return read


class Survivor:
    """A browser on one profile, killed again and again."""

    def __init__(self, folder: Path, playwright: Playwright, address: str) -> None:
        self._browser, self._address = Chromium(folder, playwright), address
        self._edits = 0

    def begin(self) -> None:
        """Keep the demo, once."""
        self._browser.start()
        page = self._browser.page
        page.set_default_timeout(PATIENCE_MILLISECONDS)
        page.goto(f"{self._address}#/jobs")
        page.get_by_role("button", name="Open the demo").click()
        expect_kept(page)
        self._browser.stop()

    def live_and_die(self, chance: random.Random) -> Round:
        """Edit, be killed at a random moment, come back and look."""
        page = self._open()
        shown = listen(page)
        start = self._edits
        page.evaluate(f"(order) => {{ void ({WORK})(order); }}", self._order(start))
        end = time.monotonic() + chance.uniform(0.2, 3.0)
        while time.monotonic() < end:
            page.wait_for_timeout(20)
        self._browser.kill()
        page = self._open()
        opens = page.locator(".verdict-big").is_visible()
        there = read_names(page)
        self._edits += 400
        lost = [name for name in shown[-40:] if name not in there["names"]]
        with contextlib.suppress(Error):
            self._browser.stop()
        return Round(len(shown), lost, opens and there["name"] in there["names"])

    def _order(self, start: int) -> dict[str, Any]:
        return {"from": start, "most": 400, "pause": 40, "hand": "N"}

    def _open(self) -> Page:
        self._browser.start()
        page = self._browser.page
        page.set_default_timeout(PATIENCE_MILLISECONDS)
        page.goto(f"{self._address}#/job/{JOB}")
        expect(page.locator(".verdict-big")).to_be_visible()
        expect(page.locator(".top-progress")).to_have_count(0)
        return page

"""The answers of a page's engine, kept from arriving until they are let through, one by one."""

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from playwright.sync_api import BrowserContext, Page

# Stands where the page makes its worker: what comes from it waits while the gate is shut.
GATE = """(() => {
    const gate = { shut: SHUT, heard: false, waiting: [] };
    globalThis.gate = gate;
    globalThis.Worker = class extends Worker {
        set onmessage(heed) {
            super.onmessage = heed && ((event) => {
                if (gate.shut) gate.waiting.push(() => heed(event));
                else heed(event);
                gate.heard = true;
            });
        }
        get onmessage() {
            return super.onmessage;
        }
    };
})();"""

OPEN = """() => {
    gate.shut = false;
    for (const pass of gate.waiting.splice(0)) pass();
}"""

PAINTED = "() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))"

# What stands under a thumb: what a touch on the middle of a control would meet.
LOOK = """() => {
    const CONTROLS = "[data-act]:not(form), [data-input], [type=submit], a[href], summary, label";
    const hit = ([x, y]) => document.elementFromPoint(x, y)?.closest(CONTROLS) ?? null;
    const middle = (control) => {
        const { x, y, width, height } = control.getBoundingClientRect();
        return [x + width / 2, y + height / 2];
    };
    const name = (control) =>
        (control.getAttribute("aria-label") ?? control.textContent).trim().replace(/\\s+/g, " ");
    const stood = [...document.querySelectorAll(CONTROLS)]
        .map((control) => ({ control, at: middle(control), name: name(control) }))
        .filter(({ control, at }) => hit(at) === control);
    globalThis.stood = stood.length;
    globalThis.displaced = () => stood.filter(({ control, at }) => hit(at) !== control)
        .map(({ name }) => name);
}"""

# In front of the page's own ear: what comes meanwhile is told in its order afterwards.
HOLD = """() => {
    const ears = Object.getOwnPropertyDescriptor(Worker.prototype, "onmessage");
    const held = [];
    const gates = globalThis.gates ??= new Map();
    for (const worker of globalThis.engines) {
        const ear = ears.get.call(worker);
        gates.set(worker, ear);
        ears.set.call(worker, (event) => held.push([worker, event]));
    }
    globalThis.letGo = () => {
        for (const [worker, ear] of gates) ears.set.call(worker, ear);
        gates.clear();
        for (const [worker, event] of held.splice(0)) ears.get.call(worker)?.call(worker, event);
    };
}"""
# A worker is known once the page has asked it something.
KNOW = """(() => {
    const post = Worker.prototype.postMessage;
    globalThis.engines = new Set();
    Worker.prototype.postMessage = function (...words) {
        globalThis.engines.add(this);
        return post.apply(this, words);
    };
})()"""


def open_gated(phone: BrowserContext, address: str, *, shut: bool = False) -> Page:
    """Open the app with a gate in its engine's way."""
    page = phone.new_page()
    page.add_init_script(GATE.replace("SHUT", "true" if shut else "false"))
    page.goto(address)
    return page


def hold_answers(page: Page) -> None:
    """Let no answer arrive from now on."""
    page.evaluate("gate.shut = true")


def let_answers_come(page: Page) -> None:
    """Let everything arrive, what waits and what comes."""
    page.evaluate(OPEN)


def displaced_by_answers(page: Page, *, until: str) -> list[str]:
    """Let the answers through one by one, up to the one that paints `until`.

    Returns what stood under a thumb before one of them, and not after it.
    """
    displaced: list[str] = []
    is_over = "(found) => !gate.waiting.length && Boolean(document.querySelector(found))"
    while not page.evaluate(is_over, until):
        displaced += _displaced_by_one(page, until)
    return displaced


def _displaced_by_one(page: Page, until: str) -> Any:
    come = "(found) => gate.waiting.length || document.querySelector(found)"
    page.wait_for_function(come, arg=until)
    page.evaluate(PAINTED)
    page.evaluate(LOOK)
    assert page.evaluate("globalThis.stood") > 0
    page.evaluate("gate.waiting.shift()?.()")
    page.wait_for_function(come, arg=until)
    page.evaluate(PAINTED)
    return page.evaluate("globalThis.displaced()")


def know_engines(page: Page) -> None:
    """Before the page is opened, or in one whose engine is asked something afterwards."""
    page.evaluate(KNOW)


@contextmanager
def held_back(page: Page) -> Iterator[None]:
    """Let no answer through; all that came meanwhile come at the end."""
    page.evaluate(HOLD)
    yield
    page.evaluate("letGo()")

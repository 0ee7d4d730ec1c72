"""The core's answers, held back until the test has looked at the page that waits for them."""

from collections.abc import Iterator
from contextlib import contextmanager

from playwright.sync_api import Page

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


def know_engines(page: Page) -> None:
    """Before the page is opened, or in one whose engine is asked something afterwards."""
    page.evaluate(KNOW)


@contextmanager
def held_back(page: Page) -> Iterator[None]:
    """Let no answer through; all that came meanwhile come at the end."""
    page.evaluate(HOLD)
    yield
    page.evaluate("letGo()")

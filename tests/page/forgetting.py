"""A phone that has started the engine before forgets everything else."""

from playwright.sync_api import BrowserContext, Page

from tests.page.engines.device import FRESH_NOTES, HAS_COPY, SHELF, UNTIL_KEPT
from web.tools.server import FolderServer

# A page of the same origin on which nothing of the app runs.
STILL = "changes.json"
ENGINE = "rungline-engine"
FORGET = """async (engine) => {
    const remove = (name) => new Promise((done, fail) => {
        const removing = indexedDB.deleteDatabase(name);
        removing.onsuccess = done;
        removing.onerror = () => fail(removing.error);
    });
    localStorage.clear();
    const bases = (await indexedDB.databases()).map(({ name }) => name);
    await Promise.all(bases.filter((name) => !name.startsWith(engine)).map(remove));
    await Promise.all((await caches.keys()).map((name) => caches.delete(name)));
}"""


def forget_all_but_the_engine(phone: BrowserContext, served: FolderServer) -> None:
    """Leave a copy of the engine on the phone, as good as new, and nothing else."""
    page = phone.new_page()
    page.goto(served.address + STILL)
    has_shelf = ENGINE in _names(page)
    if has_shelf:
        # What a test did to an engine while it started is not held against the next copy.
        _on_shelf(page, FRESH_NOTES)
    if not has_shelf or not _on_shelf(page, HAS_COPY):
        page.goto(served.address)
        page.evaluate(UNTIL_KEPT)
        page.goto(served.address + STILL)
    page.evaluate(FORGET, ENGINE)
    page.close()


def _names(page: Page) -> str:
    bases = page.evaluate("indexedDB.databases().then((all) => all.map(({ name }) => name))")
    return " ".join(bases)


def _on_shelf(page: Page, act: str) -> object:
    return page.evaluate(SHELF.replace("ACT", act))

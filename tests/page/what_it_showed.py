"""What a page showed when its test failed: one that fails once in a while has no second look."""

from collections.abc import Callable, Iterator

import pytest
from playwright.sync_api import BrowserContext, Error, Page

from tests.page.engines.app import App
from tests.page.engines.driver import Gone

MOST_SIGNS = 3000
SHOWN = """(() => [
  `${location.href} ${document.activeElement?.outerHTML.slice(0, 120)}`,
  ...[...document.querySelectorAll(".top, .sheet, .bench, dialog")].map((part) =>
    `--- ${part.className}, scrolled by ${part.scrollTop}\\n${part.innerText}`),
].join("\\n"))()"""


def tell_what_pages_show(item: pytest.Function, report: pytest.TestReport) -> None:
    """Put beside a failure what the pages of its test showed by then."""
    given = item.funcargs.values()
    for number, ask in enumerate(ask for each in given for ask in _pages_of(each)):
        report.sections.append((f"what page {number} showed", _what_it_shows(ask)))


def _pages_of(given: object) -> Iterator[Callable[[str], object]]:
    """How the pages are asked that a test was given, those included which it opened itself."""
    if isinstance(given, Page):
        yield from (each.evaluate for each in given.context.pages)
    elif isinstance(given, BrowserContext):
        yield from (each.evaluate for each in given.pages)
    elif isinstance(given, App):
        yield given.engine.evaluate
    elif isinstance(given, tuple):
        yield from (ask for each in given for ask in _pages_of(each))


def _what_it_shows(ask: Callable[[str], object]) -> str:
    try:
        return str(ask(SHOWN))[:MOST_SIGNS]
    except (Error, Gone) as error:
        return f"it could not be asked: {error}"

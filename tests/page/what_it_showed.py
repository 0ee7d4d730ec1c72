"""What a page showed when its test failed: one that fails once in a while has no second look."""

import pytest
from playwright.sync_api import BrowserContext, Error, Page

MOST_SIGNS = 3000
SHOWN = """() => [
  `${location.hash} ${document.activeElement?.outerHTML.slice(0, 120)}`,
  ...[...document.querySelectorAll(".top, .sheet, .bench, dialog")].map((part) =>
    `--- ${part.className}, scrolled by ${part.scrollTop}\\n${part.innerText}`),
].join("\\n")"""


def tell_what_pages_show(item: pytest.Function, report: pytest.TestReport) -> None:
    """Put beside a failure what the pages of its test showed by then."""
    for page in dict.fromkeys(page for each in item.funcargs.values() for page in _pages_of(each)):
        report.sections.append((f"what {page.url} showed", _what_it_shows(page)))


def _pages_of(given: object) -> list[Page]:
    """The pages of the phone that a test was given, those included which it opened itself."""
    if isinstance(given, Page):
        return given.context.pages
    return given.pages if isinstance(given, BrowserContext) else []


def _what_it_shows(page: Page) -> str:
    try:
        return str(page.evaluate(SHOWN))[:MOST_SIGNS]
    except Error as error:
        return f"it could not be asked: {error.message}"

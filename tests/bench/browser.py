"""The browser for measurements."""

from collections.abc import Iterator
from contextlib import contextmanager

from playwright.sync_api import Browser, sync_playwright

from web.tools.ready_machine import BROWSER_ARGUMENTS, find_chromium


@contextmanager
def open_browser() -> Iterator[Browser]:
    """Start this machine's Chromium."""
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(
            executable_path=find_chromium(), args=list(BROWSER_ARGUMENTS)
        )
        try:
            yield browser
        finally:
            browser.close()

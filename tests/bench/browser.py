"""A browser and a server for measurements."""

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Browser, sync_playwright

from web.tools.ready_machine import BROWSER_ARGUMENTS, find_chromium
from web.tools.server import FolderServer


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


@contextmanager
def serve(folder: Path) -> Iterator[str]:
    """Serve a folder on a free port; give its address."""
    with FolderServer(folder, host="127.0.0.1", port=0) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        try:
            yield server.address
        finally:
            server.shutdown()

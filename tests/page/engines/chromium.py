"""Chromium, driven through Playwright on a profile that stays."""

import contextlib
import os
import signal
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, Error, Playwright

from tests.page.engines.driver import Absent, Gone
from web.tools.ready_machine import BROWSER_ARGUMENTS, find_chromium


class Chromium:
    """One Chromium, headless."""

    name = "chromium"

    def __init__(self, folder: Path, playwright: Playwright) -> None:
        path = find_chromium()
        if path is None:
            raise Absent("Chromium is not here: run `python3 build.py test`, which gets one")
        self._path, self._folder, self._playwright = path, folder, playwright

    def start(self) -> None:
        """Start it on its profile and take its first tab."""
        self._context = self._playwright.chromium.launch_persistent_context(
            self._folder / "profile",
            executable_path=self._path,
            args=list(BROWSER_ARGUMENTS),
        )
        self.page = self._context.pages[0]
        self._pages = [self.page]

    @property
    def browser(self) -> Browser:
        """The whole browser, for what is asked about its processes."""
        browser = self._context.browser
        if browser is None:
            raise Absent("this browser does not tell about its processes")
        return browser

    def stop(self) -> None:
        """Close it in good order."""
        self._context.close()

    def kill(self) -> None:
        """End it at once: the process that holds this profile, and with it all its children."""
        lock = self._folder / "profile" / "SingletonLock"
        process = int(str(lock.readlink()).rpartition("-")[2])
        os.kill(process, signal.SIGKILL)
        with contextlib.suppress(Error):
            self._context.close()

    def go(self, address: str) -> None:
        """Show an address."""
        try:
            self.page.goto(address)
        except Error as error:
            raise Gone(str(error)) from error

    def show(self, tab: int) -> None:
        """Speak to this tab from now on; the next one after the last is opened."""
        if tab == len(self._pages):
            self._pages.append(self._context.new_page())
        self.page = self._pages[tab]

    def evaluate(self, expression: str) -> Any:
        """Give the value of an expression in the page."""
        try:
            return self.page.evaluate(f"async () => (await ({expression})) ?? null")
        except Error as error:
            raise Gone(str(error)) from error

    def print(self) -> bytes:
        """Give the page as it comes out on paper, as a PDF."""
        return self.page.pdf()

    def send(self, method: str, **parameters: Any) -> Any:
        """Speak to its developer interface, for what only this engine can be told."""
        return self._context.new_cdp_session(self.page).send(method, parameters)

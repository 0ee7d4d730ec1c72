"""What every engine can be asked to do, so that one scenario runs on all of them."""

import time
from collections.abc import Callable
from typing import Any, Protocol

LONGEST_WAIT_SECONDS = 120.0
LOOK_AGAIN_AFTER_SECONDS = 0.05


class Driver(Protocol):
    """One browser with a profile of its own, and the tab it shows."""

    name: str

    def start(self) -> None:
        """Start the browser on its profile; what it stored before is there again."""

    def stop(self) -> None:
        """End the browser; its profile stays."""

    def go(self, address: str) -> None:
        """Show an address and wait until its document is loaded."""

    def show(self, tab: int) -> None:
        """Speak to this tab from now on; the next one after the last is opened."""

    def evaluate(self, expression: str) -> Any:
        """Give the value of an expression in the page, waited for, as plain data."""

    def print(self) -> bytes | None:
        """Give the page as it comes out on paper, as a PDF; None where the driver cannot."""

    def kill(self) -> None:
        """End the browser as a flat battery would, without a word."""


class Absent(Exception):
    """This engine is not installed here; the text says what would install it."""


def wait_until(ask: Callable[[], Any], *, what: str) -> Any:
    """Ask until the answer is true; a page in mid-navigation is asked again."""
    end = time.monotonic() + LONGEST_WAIT_SECONDS
    last: object = None
    while time.monotonic() < end:
        try:
            last = ask()
            if last:
                return last
        except Gone as gone:
            last = gone
        time.sleep(LOOK_AGAIN_AFTER_SECONDS)
    raise AssertionError(f"waited {LONGEST_WAIT_SECONDS:.0f} s in vain: {what}; last: {last!r}")


class Gone(Exception):
    """The page that was asked went away before it answered, or its script failed."""

"""A hand looks before it touches what has just opened; the hands of tests have to be told."""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any
from unittest.mock import patch

from playwright.sync_api import Error, Locator

# The page takes no touch on what opened under the finger less than half a second ago.
LOOKING_MILLISECONDS = 550

# Nothing else in the page stops what a click does, so one that was stopped was held up.
WATCH = """() => {
  if (window.heldUp === undefined) {
    window.addEventListener("click", (event) => setTimeout(() => {
      window.heldUp = event.detail > 0 && event.defaultPrevented;
    }), true);
  }
  window.heldUp = null;
}"""
HELD_UP = """async () => {
  for (let turn = 0; window.heldUp === null && turn < 50; turn += 1) {
    await new Promise((done) => setTimeout(done, 10));
  }
  return window.heldUp === true;
}"""


def _is_held_up(place: Locator) -> bool:
    try:
        return bool(place.page.evaluate(HELD_UP))
    except Error:
        return False  # The touch led to another page: it was heard.


def _patient(touch: Callable[..., None]) -> Callable[..., None]:
    """The same touch; where the page held it up as one of a double tap, it is done once more."""

    def touch_patiently(place: Locator, **how: Any) -> None:
        # Whether it was heard is waited for each time, or the next touch would take it as its own.
        for _ in range(2):
            place.page.evaluate(WATCH)
            touch(place, **how)
            if not _is_held_up(place):
                return
            place.page.wait_for_timeout(LOOKING_MILLISECONDS)

    return touch_patiently


@contextmanager
def patience() -> Iterator[None]:
    """Let every touch of a test be that of a person who saw what there is to touch."""
    with (
        patch.object(Locator, "tap", _patient(Locator.tap)),
        patch.object(Locator, "click", _patient(Locator.click)),
    ):
        yield

"""The ways to the screens of one line."""

from collections.abc import Callable

from playwright.sync_api import Page, expect

from tests.page.hands import pick_point, touch
from tests.page.lines import look_at, nave, open_line

Way = Callable[[Page], None]


def view(name: str) -> Way:
    """A line of a branch and a control, looked at in one way."""

    def go(page: Page) -> None:
        open_line(page, nave())
        look_at(page, name)
        expect(page.locator(".views [aria-current]")).to_have_text(name)

    return go


def if_answered(page: Page) -> None:
    """What another cable would change, with the key that does it."""
    view("What if")(page)
    touch(page, "Another cable")
    page.locator("#if-cable").select_option(label="16 AWG")
    expect(page.locator(".compared table")).to_be_visible()


def removed(page: Page) -> None:
    """A line after a control went, with what hung behind it, and the way to put it back."""
    view("List")(page)
    pick_point(page, "Nave control")
    touch(page, "Remove")
    touch(page, "Cut off all behind it")
    expect(page.locator(".notice")).to_be_visible()

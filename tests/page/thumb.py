"""A thumb that counts: every touch on the glass, the keys of the keypad included."""

from playwright.sync_api import Locator, Page


def top_of(place: Locator) -> float:
    """Where it begins, from the top of the screen."""
    box = place.bounding_box()
    assert box is not None
    return box["y"]


class Thumb:
    """Touches buttons and types into fields; `touches` is how often the glass was touched."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.touches = 0

    def touch(self, name: str) -> None:
        """Touch the button of this name."""
        self.tap(self.page.get_by_role("button", name=name, exact=True))

    def tap(self, place: Locator) -> None:
        """Touch a place."""
        place.tap()
        self.touches += 1

    def type(self, label: str, text: str) -> None:
        """Touch a field and type on its keypad; the × stands beside the field."""
        self.tap(self.page.get_by_label(label))
        for key in text:
            if key == "×":
                self.touch("Times")
            else:
                self.page.keyboard.type(key)
                self.touches += 1

    def choose(self, label: str, choice: str) -> None:
        """Choose from a list: one touch opens it, one takes a line of it."""
        self.page.get_by_label(label, exact=True).select_option(label=choice)
        self.touches += 2

"""Somebody who has only a keyboard: goes by Tab, and sees at each stop where the focus is."""

import itertools

from playwright.sync_api import Locator, Page, expect

MOST_STOPS = 90
# Headings take the focus to be read aloud; one of several shows it on its whole label.
SEEN = """() => {
    const now = document.activeElement;
    if (!now || now === document.body) return "lost";
    if (now.matches("h1, h2, main")) return "";
    const shown = [now, now.nextElementSibling, now.closest("label, .bench-button")];
    const drawn = shown.some((one) => one && getComputedStyle(one).outlineStyle !== "none");
    return drawn ? "" : `unseen on ${now.outerHTML.slice(0, 90)}`;
}"""
NAMES = """() => {
    const said = (one) => (one.getAttribute("aria-label") ??
        [...(one.labels ?? [])].map((label) => label.textContent).join(" ")) || one.textContent;
    const names = [...document.querySelectorAll("button, a[href], input, select, summary")]
        .filter((one) => one.checkVisibility())
        .map((one) => [said(one).trim().replace(/\\s+/g, " "), one.localName]);
    const nameless = names.filter(([name]) => !name);
    const twice = names.map(([name, is]) => `${is} ${name}`)
        .filter((each, place, all) => all.indexOf(each) !== place);
    return [...nameless.map(([, is]) => `a ${is} without a name`), ...twice];
}"""
LEVELS = """() => [...document.querySelectorAll("h1, h2, h3, h4")]
    .filter((one) => one.checkVisibility())
    .map((one) => Number(one.localName[1]))"""


class Keys:
    """Goes on by Tab alone; what is typed goes where the focus is."""

    def __init__(self, page: Page) -> None:
        self.page = page

    def press(self, *keys: str) -> None:
        """Press keys one after the other; the focus is seen after each."""
        for key in keys:
            self.page.keyboard.press(key)
            self.expect_seen()

    def expect_seen(self) -> None:
        """The focus is somewhere, and can be seen there."""
        seen = self.page.evaluate(SEEN)
        assert seen == "", seen

    def go(self, role: str, name: str, *, back: bool = False) -> Locator:
        """By Tab to the control of this name."""
        return self.reach(
            self.page.get_by_role(role, name=name, exact=True).first,  # type: ignore[arg-type]
            back=back,
        )

    def reach(self, target: Locator, *, back: bool = False) -> Locator:
        """By Tab to a control."""
        expect(target).to_be_visible()
        for _ in range(MOST_STOPS):
            if target.evaluate("(one) => one === document.activeElement"):
                return target
            key = "Shift+Tab" if back else "Tab"
            self.page.keyboard.press(key)
            if self.page.evaluate("document.activeElement === document.body"):
                # behind the last control lies the browser's own frame
                self.page.keyboard.press(key)
            self.expect_seen()
        raise AssertionError(f"no way by Tab to {target}")

    def use(self, role: str, name: str) -> None:
        """By Tab to a control, and Enter."""
        self.go(role, name)
        self.page.keyboard.press("Enter")

    def type(self, name: str, text: str) -> None:
        """By Tab to a field, and type."""
        self.go("textbox", name)
        self.page.keyboard.press("Control+A")
        self.page.keyboard.type(text)


def expect_plain_to_hear(page: Page) -> None:
    """Every control has a name of its own, and no heading skips a level."""
    names = page.evaluate(NAMES)
    assert names == [], names
    levels: list[int] = page.evaluate(LEVELS)
    skipped = [pair for pair in itertools.pairwise([0, *levels]) if pair[1] > pair[0] + 1]
    assert skipped == [], levels

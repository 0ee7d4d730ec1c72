"""What a hand does on the page, by the names a person sees."""

from collections.abc import Callable
from pathlib import Path

from playwright.sync_api import FilePayload, Page, Route, expect

# Long, because two lanes of browsers on two processors starve each other now and then.
PATIENCE_MILLISECONDS = 60_000
ENGINE_FILE = "**/py/pyodide.asm.wasm"

expect.set_options(timeout=PATIENCE_MILLISECONDS)


def touch(page: Page, name: str) -> None:
    """Touch the button of this name."""
    page.get_by_role("button", name=name, exact=True).tap()


def choose_supply(page: Page, *, volts: str, watts: str) -> None:
    """Choose the line voltage and type the amplifier's watts."""
    page.get_by_label(volts, exact=True).tap()
    page.get_by_label("Amplifier", exact=True).fill(watts)


FOUR_ROWS = (("6", "5 W"), ("4", "7.5 W"), ("2", "2.5 W"), ("1", "10 W"))


def count_row(page: Page, count: str, tap: str) -> int:
    """Count loudspeakers on a tap with the pad; return how many touches it took."""
    for digit in count:
        touch(page, digit)
    touch(page, tap)
    return len(count) + 1


def give_output(page: Page, name: str, watts: str) -> None:
    """In a tally with several outputs: choose one for the next row and type its maximum."""
    pick_output(page, name)
    page.get_by_label(f"Output {name}", exact=True).fill(watts)


def pick_output(page: Page, name: str) -> None:
    """In a tally with several outputs: choose the one the next row is on."""
    page.locator(".output-chips .chip").filter(has=page.locator(f"b:text-is('{name}')")).tap()


SIGNS = {".": "Decimal sign", "k": "k: thousand", "M": "M: million"}


def type_reading(page: Page, signs: str) -> None:
    """Type what the instrument shows, by thumb, and have it judged."""
    for sign in signs:
        touch(page, SIGNS.get(sign, sign))
    touch(page, "Judge it")


def open_screen(page: Page, name: str) -> None:
    """Go to a screen by the ways at the bottom."""
    page.get_by_role("navigation").get_by_role("link", name=name, exact=True).tap()


def open_trouble(page: Page) -> None:
    """Go to where a search begins, with nothing left of an earlier one."""
    open_screen(page, "Trouble")
    expect(page.locator("main.sheet-wrong")).to_be_visible()
    if page.get_by_role("button", name="Start over").count():
        touch(page, "Start over")
    expect(page.get_by_label("Loudspeakers, about")).to_be_visible()


def hear_as(page: Page, how: str) -> None:
    """Choose how those play that are touched next: the page remembers the last choice."""
    page.locator(".brush-way").filter(has_text=how).tap()


def begin_with_about_ten(page: Page) -> None:
    """Begin a search on about ten loudspeakers, 5 W on 70.7 V, of which nothing more is known."""
    open_trouble(page)
    page.get_by_label("Loudspeakers, about").fill("10")
    page.get_by_label("On a tap of").fill("5")
    page.get_by_label("70.7 V", exact=True).tap()
    touch(page, "Begin")


def give_file(page: Page, file: Path | FilePayload) -> None:
    """Open a file from the screen of jobs.

    The first screen has such a button too: it may be on the page until the next one is painted.
    """
    open_screen(page, "Jobs")
    page.locator("main.sheet-jobs ~ .bench input[type=file]").set_input_files(file)


def paper(name: str, text: str) -> FilePayload:
    """A file that is given without being on a disk."""
    return {"name": name, "mimeType": "application/json", "buffer": text.encode()}


def open_demo(page: Page) -> None:
    """Open the demo job."""
    open_screen(page, "Jobs")
    touch(page, "Open the demo")
    expect(page.get_by_role("heading", level=1)).to_have_text("Ilverne Glasshouses")


def open_zone(page: Page, name: str) -> None:
    """From a job, open one of its zones."""
    page.get_by_role("link", name=name).tap()
    expect(page.get_by_role("heading", level=1)).to_have_text(name)


def pick_point(page: Page, label: str) -> None:
    """Pick a point of the line by its label."""
    point(page, label).tap()


def point(page: Page, label: str):  # type: ignore[no-untyped-def]
    """The row of a point, by its label."""
    return page.locator(".point-pick").filter(has_text=label).first


def expect_kept(page: Page) -> None:
    """Wait until the page says that what was done is kept."""
    expect(page.locator(".top-state")).to_have_text("Kept")


class Gate:
    """Stands in the way of what a page asks for at one address, until it is opened.

    It is opened, never taken away: a browser that is told to stop intercepting forgets what is
    under way at that moment, of any address, and the page never comes to its end.
    """

    def __init__(self, page: Page, address: str, *, meet: Callable[[Route], None]) -> None:
        self._meet = meet
        self._is_open = False
        page.route(address, self._answer)

    def open(self) -> None:
        """Let everything through from now on."""
        self._is_open = True

    def _answer(self, route: Route) -> None:
        if self._is_open:
            route.continue_()
        else:
            self._meet(route)


class HeldEngine:
    """The engine of a page, kept from starting until it is let go."""

    def __init__(self, page: Page) -> None:
        self.asked: list[Route] = []
        self._gate = Gate(page, ENGINE_FILE, meet=self.asked.append)

    def let_go(self) -> None:
        """Let the engine start."""
        self._gate.open()
        for route in self.asked:
            route.continue_()

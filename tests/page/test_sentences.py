"""Every number on a screen of a line opens, or stands in a place where there is nothing to open."""

import pytest
from playwright.sync_api import Page, expect

from tests.page.hands import open_demo, open_zone, pick_point, touch
from tests.page.lines import look_at

# Where a number does not open by itself, and why not.
CLOSED = {
    "as a person typed or counted it": (
        ".point-line, .point-detail span:first-child, .terminals, .drawn-pick .quiet,"
        " .drawn-caption, .drawn-line, .pick .quiet, .zone-figures .quiet, .zone-words,"
        " .line-worst .quiet,"
        " .load-figures > .quiet, .chip, .proposals > .quiet, .cable > .quiet,"
        " .verdict-head > .quiet, .amplifier-head .quiet, .load-of"
    ),
    "part of a name": (
        "h1, h2, h3, b, dt, .pick, .finding-what, .finding-way, .drawn-head, .terminals, th"
    ),
    "how many, and they stand there": "summary > .quiet",
    "the scale of a picture": ".ruler-words",
    "opens at its point, where it is said again": ".point-detail span:last-child",
    "found by trying other cables": ".proposals:last-child > p, .proposal .quiet",
    "one limit in other measures": ".line-limit",
}
NUMBERS = """(closed) => {
    const found = [];
    const texts = document.createTreeWalker(document.querySelector("main"), NodeFilter.SHOW_TEXT);
    for (let text = texts.nextNode(); text; text = texts.nextNode()) {
        const words = text.textContent.trim();
        const around = text.parentElement;
        const opens = around.closest("[data-act='working.open']");
        if (/\\d/.test(words) && !opens && around.checkVisibility() && !around.closest(closed)) {
            found.push(`${around.className.baseVal ?? around.className}: ${words}`);
        }
    }
    return found;
}"""


def numbers_that_do_not_open(page: Page) -> list[str]:
    """The numbers on the screen that neither open nor stand where nothing is to be opened."""
    found: list[str] = page.evaluate(NUMBERS, ", ".join(CLOSED.values()))
    return found


def test_no_number_of_a_job_or_a_line_is_shut_without_a_reason(page: Page) -> None:
    open_demo(page)
    page.locator("details.finding-group").evaluate_all(
        "(all) => all.forEach((it) => (it.open = true))"
    )
    assert numbers_that_do_not_open(page) == []
    open_zone(page, "Palm House")
    assert numbers_that_do_not_open(page) == []
    for view, seen in (("Drawing", ".legend"), ("Cable", ".proposal")):
        look_at(page, view)
        expect(page.locator(seen).first).to_be_visible()
        assert numbers_that_do_not_open(page) == []


@pytest.mark.parametrize(
    ("view", "sentence"),
    [
        ("List", ".verdict-reason"),
        ("Drawing", ".line-head .sentence"),
        ("Drawing", ".sentence:has(.legend)"),
        ("Drawing", ".line-figure .sentence"),
        ("Cable", ".cable-now .sentence"),
        ("Cable", ".proposal .sentence"),
    ],
)
def test_a_sentence_opens_the_working_of_what_it_speaks_of(
    page: Page, view: str, sentence: str
) -> None:
    open_demo(page)
    open_zone(page, "Palm House")
    look_at(page, view)
    place = page.locator(sentence).first
    box = place.bounding_box()
    assert box is not None
    assert box["height"] >= 48
    place.tap()
    expect(page.locator(".working-result")).not_to_be_empty()
    expect(page.locator(".step").first).to_be_visible()
    touch(page, "Close the working")


def test_why_a_job_and_a_point_have_their_verdict_opens(page: Page) -> None:
    open_demo(page)
    page.locator("button.verdict-reason").tap()
    expect(page.get_by_role("heading", name="Palm House 7: voltage row")).to_be_visible()
    touch(page, "Close the working")
    open_zone(page, "Palm House")
    pick_point(page, "Palm House 7")
    page.locator(".bench-reason .sentence").tap()
    expect(page.get_by_role("heading", name="Palm House 7: voltage row")).to_be_visible()
    touch(page, "Close the working")
    expect(page.locator(".tap-row").first).to_be_visible()

"""The tally keeps room for its rows, on any phone and beside a form; and what its pad says."""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.page.hands import (
    FOUR_ROWS,
    choose_supply,
    count_row,
    give_output,
    open_demo,
    open_screen,
    touch,
)

COUNT_WHOLE_ROWS = """() => {
    const box = (part) => document.querySelector(part).getBoundingClientRect();
    const [top, bottom] = [box(".sum").bottom, box(".bench").top];
    const rows = [...document.querySelectorAll(".tally-row")];
    const boxes = rows.map((row) => row.getBoundingClientRect());
    return boxes.filter((row) => row.top >= top - 1 && row.bottom <= bottom + 1).length;
}"""
SCROLL_TO_ROWS = """() => {
    const box = (part) => document.querySelector(part).getBoundingClientRect();
    document.querySelector("main").scrollBy(0, box(".tally-rows").top - box(".sum").bottom);
    // once more, when the figures have stopped at the top
    document.querySelector("main").scrollBy(0, box(".tally-rows").top - box(".sum").bottom);
}"""


@pytest.mark.parametrize(
    ("width", "height", "at_once", "scrolled"),
    [(360, 740, 2, 4), (320, 568, 0, 3), (412, 915, 4, 4)],
)
def test_rows_have_room_beside_the_figures_on_any_phone(
    page: Page, width: int, height: int, at_once: int, scrolled: int
) -> None:
    choose_supply(page, volts="70.7 V", watts="120")
    for count, tap in FOUR_ROWS:
        count_row(page, count, tap)
    expect(page.locator(".sum-big")).to_have_text("75 W")
    while page.get_by_role("button", name="Close this note").count():
        touch(page, "Close this note")
    page.set_viewport_size({"width": width, "height": height})
    try:
        assert page.evaluate(COUNT_WHOLE_ROWS) >= at_once
        page.evaluate(SCROLL_TO_ROWS)
        assert page.evaluate(COUNT_WHOLE_ROWS) >= scrolled
    finally:
        page.set_viewport_size({"width": 360, "height": 740})


@pytest.mark.parametrize(
    ("width", "height", "at_once", "scrolled"),
    [(360, 740, 1, 4), (320, 568, 0, 2), (412, 915, 4, 4)],
)
def test_rows_have_room_with_several_outputs_too(
    page: Page, width: int, height: int, at_once: int, scrolled: int
) -> None:
    choose_supply(page, volts="70.7 V", watts="240")
    touch(page, "Several outputs")
    for name in ("B", "A"):
        give_output(page, name, "60")
    for count, tap in FOUR_ROWS:
        count_row(page, count, tap)
    expect(page.locator(".sum-big")).to_have_text("75 W")
    while page.get_by_role("button", name="Close this note").count():
        touch(page, "Close this note")
    page.set_viewport_size({"width": width, "height": height})
    try:
        page.evaluate("document.querySelector('main').scrollTo(0, 0)")
        assert page.evaluate(COUNT_WHOLE_ROWS) >= at_once
        page.evaluate(SCROLL_TO_ROWS)
        assert page.evaluate(COUNT_WHOLE_ROWS) >= scrolled
        touched = page.locator(".bench :is(button, input)").all()
        sizes = [one.bounding_box() for one in touched]
        assert all(size and min(size["width"], size["height"]) >= 48 for size in sizes)
    finally:
        page.set_viewport_size({"width": 360, "height": 740})


def test_a_form_that_waits_leaves_the_tally_its_rows(page: Page) -> None:
    open_demo(page)
    touch(page, "Name and place")
    page.get_by_label("Name of the job").fill("Half a name")
    open_screen(page, "Tally")
    choose_supply(page, volts="70.7 V", watts="120")
    for count, tap in FOUR_ROWS:
        count_row(page, count, tap)
    expect(page.locator(".sum-big")).to_have_text("75 W")
    expect(page.locator(".notice")).to_contain_text("is not sent yet")
    assert page.evaluate(COUNT_WHOLE_ROWS) >= 1
    page.evaluate(SCROLL_TO_ROWS)
    assert page.evaluate(COUNT_WHOLE_ROWS) >= 4
    touch(page, "Throw it away")


def test_that_the_reserve_is_gone_is_read_in_the_line_above_the_taps(page: Page) -> None:
    choose_supply(page, volts="70.7 V", watts="120")
    count_row(page, "13", "7.5 W")
    # 97.5 W are more than eight tenths of 120 W; three more at 7.5 W are exactly 120 W
    line = page.locator(".fits-line")
    expect(line).to_have_text("no reserve: 3 at 7.5 W")
    assert line.evaluate("(one) => one.scrollWidth <= one.clientWidth")


def test_a_tap_of_ones_own_shows_its_unit_while_it_is_typed(page: Page) -> None:
    page.get_by_label("70.7 V", exact=True).tap()
    touch(page, "1")
    touch(page, "2")
    page.locator("[data-act='tally.other']").tap()
    touch(page, "6")
    expect(page.locator(".entry-count")).to_have_text(re.compile(r"^12 × 6\sW$"))
    touch(page, "Add this tap")
    expect(page.locator(".tally-row")).to_contain_text(re.compile(r"12 × 6\sW"))

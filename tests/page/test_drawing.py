"""The line drawn to the metre: what is marked on it, what a touch tells, on glass and on paper."""

import itertools
from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.drawn import as_read
from tests.page.axe import expect_nothing_found
from tests.page.conftest import PHONE, NewContext
from tests.page.hands import open_demo, open_screen, open_zone, touch
from tests.page.lines import look_at, nave, open_line, speaker
from tests.page.test_narrow import LEAST_TARGET_PIXELS, TORN
from web.tools.server import FolderServer

PLACES = """() => {
    const middle = (each) => {
        const { y, height } = each.getBoundingClientRect();
        return y + height / 2;
    };
    const names = [...document.querySelectorAll(".drawn button.drawn-pick b")];
    const hung = [...document.querySelectorAll(".wire-part g:has(> .hung, > .hung-box)")];
    const places = hung.map((each) => middle(each.querySelector(".hung, .hung-box")));
    const start = middle(document.querySelector(".wire-start"));
    return [start, Object.fromEntries(names.map((name, at) => [name.innerText, places[at]]))];
}"""
ROWS = """() => [...document.querySelectorAll(".drawn")].map((each) => {
    const { y, height } = each.getBoundingClientRect();
    return [y, height];
})"""


# All that a row says lies within it.
WHOLE = """() => [...document.querySelectorAll(".drawn")].every((each) => {
    const { top, bottom, left, right } = each.getBoundingClientRect();
    return [...each.querySelectorAll(".drawn-words *, .figure")].every((one) => {
        const box = one.getBoundingClientRect();
        return box.top >= top - 1 && box.bottom <= bottom + 1 && box.left >= left - 1 &&
            box.right <= right + 1 && one.scrollWidth <= one.clientWidth + 1;
    });
})"""


@pytest.fixture
def drawn(page: Page) -> Iterator[Page]:
    """The nave, drawn."""
    open_line(page, nave())
    look_at(page, "Drawing")
    expect(page.locator(".drawing")).to_be_visible()
    yield page
    page.emulate_media(media="screen")


def row(page: Page, title: str):  # type: ignore[no-untyped-def]
    """The row of a point beside the drawing."""
    return page.locator(".drawn").filter(has_text=title).first


def test_the_worst_the_far_end_and_the_home_run_are_named(drawn: Page) -> None:
    expect(row(drawn, "Nave 6")).to_contain_text("worst")
    expect(row(drawn, "Nave 6")).to_contain_text("far end")
    expect(row(drawn, "Home run")).to_contain_text("60 m, 0.75 mm²")
    expect(drawn.locator(".hung-worst")).to_have_count(1)
    expect(drawn.locator(".wire")).to_have_count(len(nave()["zones"][0]["line"]))


def test_every_place_is_drawn_to_the_metre(drawn: Page) -> None:
    start, places = drawn.evaluate(PLACES)
    step = (places["Nave 2"] - places["Nave 1"]) / 12
    assert step > 0
    # metres from the terminals, by the lengths of the sections
    far_m = {"Nave 1": 60, "Nave 2": 72, "Nave 4": 96, "Chapel 1": 80, "Nave 5": 111, "Nave 6": 123}
    for name, metres in far_m.items():
        assert abs(places[name] - start - metres * step) < 1, name


def test_rows_are_all_of_one_height_without_gaps(drawn: Page) -> None:
    rows = drawn.evaluate(ROWS)
    (tall,) = {round(height) for _, height in rows}
    assert tall >= LEAST_TARGET_PIXELS
    steps = [round(b[0] - a[0]) for a, b in itertools.pairwise(rows)]
    assert set(steps) == {tall}


def test_rows_that_say_little_are_no_taller_than_a_thumb_needs(drawn: Page) -> None:
    drawn.set_viewport_size({"width": 412, "height": 740})
    drawn.wait_for_function(f"({ROWS})().every(([, tall]) => Math.round(tall) === 48)")
    drawn.set_viewport_size(PHONE["viewport"])


def test_a_ruler_counts_the_metres(drawn: Page) -> None:
    words = drawn.locator(".ruler-words").all_text_contents()
    assert as_read(words)[:3] == ["0 m", "20 m", "40 m"]


def test_a_loudspeaker_tells_its_volts_watts_loss_and_level_in_both_states(
    drawn: Page,
) -> None:
    row(drawn, "Nave 5").locator(".drawn-pick").tap()
    numbers = drawn.locator(".numbers")
    expect(numbers).to_contain_text("In a page")
    expect(numbers).to_contain_text("As it is set")
    expect(numbers.locator("button")).to_have_count(8)
    numbers.get_by_role("button", name="Volts").last.tap()
    expect(drawn.locator("#working-title")).to_have_text("Nave 5: volts")
    expect(drawn.locator(".working")).to_contain_text("What the controls on the way take")
    touch(drawn, "Close the working")
    expect(numbers).to_be_visible()


def test_as_it_is_set_shows_what_the_control_takes(drawn: Page) -> None:
    expect(row(drawn, "Nave 5").locator(".figure")).not_to_contain_text("−")
    touch(drawn, "As it is set")
    expect(row(drawn, "Nave 5").locator(".figure")).to_contain_text("−6")
    expect(row(drawn, "Chapel 1").locator(".figure")).not_to_contain_text("−6")


def test_a_section_without_a_length_is_dashed_and_asks(page: Page) -> None:
    open_line(page, nave(gap=True))
    look_at(page, "Drawing")
    expect(page.locator(".wire.guessed")).to_have_count(1)
    expect(page.locator(".wire-asks")).to_have_text("?")
    expect(page.locator(".drawing")).to_contain_text("not to scale")
    expect(page.locator(".ruler")).to_have_count(0)
    expect(row(page, "Chapel 2").locator(".figure")).to_have_text("?")


def test_the_figures_of_the_line_open_and_the_limit_is_said_in_four_ways(
    drawn: Page,
) -> None:
    figures = drawn.locator(".line-figures")
    for name in ("Should read at 1 kHz", "Loss at 10 kHz", "Spread", "Costliest section"):
        expect(figures).to_contain_text(name)
    expect(figures).to_contain_text("0.5 dB is 5.59 % of the volts or 10.9 % of the watts")
    drawn.locator(".line-worst button").tap()
    expect(drawn.locator(".working")).to_contain_text("All sections on the way")


def test_it_runs_downward_and_never_sideways(drawn: Page) -> None:
    wide = drawn.evaluate("document.querySelector('main').scrollWidth")
    assert wide <= PHONE["viewport"]["width"]
    tall = drawn.evaluate("document.querySelector('.drawing').scrollHeight")
    assert tall > 480


def test_on_a_wide_screen_it_stands_beside_the_list(
    new_context: NewContext, served: FolderServer
) -> None:
    context = new_context(viewport={"width": 1280, "height": 800}, is_mobile=False)
    page = context.new_page()
    page.goto(served.address)
    open_line(page, nave())
    expect(page.locator(".drawing")).to_be_visible()
    listed, beside = (page.locator(each).bounding_box() for each in (".line", ".drawing"))
    assert listed is not None
    assert beside is not None
    assert beside["x"] >= listed["x"] + listed["width"] - 1
    page.locator(".drawn-pick").nth(2).click()
    expect(page.locator(".point.picked")).to_have_count(1)
    expect(page.locator(".tap-row").first).to_be_visible()


def crooked() -> dict[str, Any]:
    """The nave with long names, three cables in it and two branches more."""
    job = nave()
    job["kinds"]["cables"].append({**job["kinds"]["cables"][0], "id": "d", "name": "1.5 mm² fine"})
    line = job["zones"][0]["line"]
    line[2]["cable"] = line[5]["cable"] = "d"
    line[2]["fitted"]["label"] = "North aisle above the second window"
    line += [speaker("Porch", "Nave1", 9.0), speaker("Tower", "Nave3", 30.0, tap_w=7.5)]
    return job


@pytest.mark.parametrize(("width", "letters"), [(360, "100%"), (320, "100%"), (320, "200%")])
def test_every_word_of_a_row_can_be_read(page: Page, width: int, letters: str) -> None:
    """None is cut, none torn, none runs into the next row; the rows stay all alike."""
    open_line(page, crooked())
    look_at(page, "Drawing")
    page.set_viewport_size({"width": width, "height": 740})
    page.evaluate("size => { document.documentElement.style.fontSize = size }", letters)
    expect(row(page, "North aisle above the second window")).to_be_visible()
    try:
        page.wait_for_function(WHOLE)
        assert page.evaluate(TORN, ".drawn") == []
        assert len({round(height) for _, height in page.evaluate(ROWS)}) == 1
    finally:
        page.evaluate("document.documentElement.style.fontSize = ''")
        page.set_viewport_size(PHONE["viewport"])


def test_on_paper_it_is_whole_and_without_controls(drawn: Page) -> None:
    drawn.emulate_media(media="print")
    expect(drawn.locator(".wire-part").first).to_be_visible()
    expect(drawn.locator(".views")).to_be_hidden()
    expect(drawn.locator(".segments")).to_be_hidden()
    expect(drawn.locator(".bench")).to_be_hidden()


def test_no_way_of_looking_at_a_line_breaks_a_rule_that_axe_knows(page: Page) -> None:
    open_demo(page)
    open_zone(page, "Fern Gallery")
    for view, part in (("Drawing", ".drawing"), ("Cable", ".cable"), ("What if", ".what-if")):
        look_at(page, view)
        expect(page.locator(part)).to_be_visible()
        expect_nothing_found(page)
    touch(page, "More at the end")
    page.get_by_label("How many, how far apart").fill("4 x 6 m")
    touch(page, "10 W")
    expect(page.locator(".compared table")).to_be_visible()
    expect_nothing_found(page)
    look_at(page, "Drawing")
    page.locator(".drawn-pick").filter(has_text="Fern Gallery 3").tap()
    expect(page.locator(".numbers")).to_be_visible()
    expect(page.locator(".tap-row .effect").first).to_be_visible()
    expect_nothing_found(page)
    touch(page, "Swap")
    expect(page.locator(".tap-row").first).to_be_visible()
    expect_nothing_found(page)
    open_screen(page, "Job")

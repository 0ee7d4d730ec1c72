"""What comes up while one types at the meter moves nothing that is under the thumb."""

import pytest
from playwright.sync_api import Page, expect

from tests.page.hands import begin_with_about_ten, open_trouble, touch, type_reading
from tests.page.thumb import top_of

# Notes down where the pad's field lay whenever the sign stood in it.
WATCH = """() => {
    globalThis.worked = [];
    new MutationObserver(() => {
        if (document.querySelector(".meter-shown > .meter-judging"))
            globalThis.worked.push(document.querySelector("#meter-shows").getBoundingClientRect().y);
    }).observe(document.body, { childList: true, subtree: true });
}"""


@pytest.fixture
def counted(page: Page) -> Page:
    """About ten loudspeakers, nothing read yet."""
    begin_with_about_ten(page)
    expect(page.locator("#meter-complaint")).to_be_visible()
    return page


def test_while_a_reading_is_judged_that_is_said_where_it_was_typed(counted: Page) -> None:
    counted.get_by_label("What is read", exact=True).select_option("z_1k_ohm")
    before = top_of(counted.locator("#meter-shows"))
    counted.evaluate(WATCH)
    type_reading(counted, "230")
    expect(counted.locator(".suspect").first).to_be_visible()
    expect(counted.locator(".meter-judging")).to_have_count(0)
    worked = counted.evaluate("globalThis.worked")
    assert worked
    assert set(worked) == {before}


def test_a_reading_that_cannot_be_read_leaves_no_sign_of_work_behind(counted: Page) -> None:
    counted.get_by_label("What is read", exact=True).select_option("z_1k_ohm")
    counted.locator("#meter-shows").fill("a lot")
    touch(counted, "Judge it")
    expect(counted.locator(".notice")).to_contain_text("a lot")
    counted.locator("#meter-shows").fill("")
    expect(counted.locator(".meter-judging")).to_have_count(0)


def test_what_a_complaint_usually_is_stands_below_the_tiles(counted: Page) -> None:
    counted.get_by_label("What is read", exact=True).select_option("plays")
    tile = counted.locator(".tile").first
    complaint = counted.locator("#meter-complaint")
    before = top_of(tile) - top_of(complaint)  # from each other: a touch may scroll
    complaint.select_option("hum_with_rain")
    expect(counted.get_by_role("heading", name="Usually")).to_be_visible()
    assert top_of(tile) - top_of(complaint) == before
    tile.tap()
    expect(counted.locator("details").filter(has_text="Usually")).to_have_count(1)
    assert top_of(tile) - top_of(complaint) == before


@pytest.mark.parametrize(
    ("way", "send", "field", "why"),
    [
        ("", "Begin", "#wrong-count", "#why-wrong"),
        ("How far is it", "How far", "#far-near_ohm", "#why-far"),
    ],
)
def test_what_a_form_complains_of_leaves_its_fields_where_they_are(
    page: Page, way: str, send: str, field: str, why: str
) -> None:
    open_trouble(page)
    if way:
        page.get_by_role("link", name=way, exact=True).tap()
    before = top_of(page.locator(field))
    touch(page, send)
    expect(page.locator(why)).to_be_visible()
    assert top_of(page.locator(field)) == before

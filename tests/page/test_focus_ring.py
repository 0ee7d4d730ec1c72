"""The ring of the focus is for those who go by keys; whoever touches sees where the finger is."""

from playwright.sync_api import Page, expect

from tests.page.hands import open_demo, open_zone, touch

RING = "() => getComputedStyle(document.activeElement).outlineStyle"
WHO = "() => document.activeElement.textContent.trim()"


def test_a_form_closed_by_touch_leaves_no_ring_on_a_button(page: Page) -> None:
    open_demo(page)
    open_zone(page, "Orchid House")
    touch(page, "Loudspeakers")
    page.get_by_label("Tap, watts").tap()
    page.keyboard.type("5")
    touch(page, "Close without saving")
    expect(page.locator("form.form")).to_have_count(0)
    assert page.evaluate(WHO) == "Loudspeakers"
    assert page.evaluate(RING) == "none"


def test_a_form_closed_by_a_key_shows_where_the_focus_is(page: Page) -> None:
    open_demo(page)
    open_zone(page, "Orchid House")
    touch(page, "Loudspeakers")
    page.get_by_label("Tap, watts").tap()
    page.keyboard.press("Escape")
    expect(page.locator("form.form")).to_have_count(0)
    assert page.evaluate(WHO) == "Loudspeakers"
    assert page.evaluate(RING) == "solid"
    page.keyboard.press("Tab")
    assert page.evaluate(RING) == "solid"


def test_the_drawing_begins_at_its_head_wherever_the_list_was_left(page: Page) -> None:
    open_demo(page)
    open_zone(page, "Orchid House")
    sheet = page.locator("main.sheet")
    expect(page.locator(".point-pick").first).to_be_visible()
    sheet.evaluate("(it) => it.scrollTo(0, it.scrollHeight)")
    assert sheet.evaluate("(it) => it.scrollTop") > 0
    # as a link below the fold does, which a hand reaches without moving the sheet
    page.evaluate("location.hash += '/drawing'")
    expect(page.locator("section.drawing")).to_be_visible()
    assert sheet.evaluate("(it) => it.scrollTop") == 0

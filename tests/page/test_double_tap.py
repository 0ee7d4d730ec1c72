"""What opens under a finger is not touched by the second tap of a double tap."""

from playwright.sync_api import Locator, Page, expect

from tests.page.hands import open_demo, open_zone, touch

BETWEEN_TAPS_MILLISECONDS = 150


def tap_twice(place: Locator) -> None:
    """Touch one place of the glass two times in a row, whatever stands there by then."""
    box = place.bounding_box()
    assert box
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    place.page.touchscreen.tap(x, y)
    place.page.wait_for_timeout(BETWEEN_TAPS_MILLISECONDS)
    place.page.touchscreen.tap(x, y)


def test_a_double_tap_on_a_control_does_not_turn_it_off(page: Page) -> None:
    open_demo(page)
    open_zone(page, "Orchid House")
    row = page.locator(".point-pick").first
    expect(row).to_contain_text("set to")
    box = row.bounding_box()
    tap_twice(row)
    turn_off = page.get_by_role("button", name="Turn off")
    expect(turn_off).to_be_visible()
    under = turn_off.bounding_box()
    assert box
    assert under
    assert under["x"] < box["x"] + box["width"] / 2 < under["x"] + under["width"]
    assert under["y"] < box["y"] + box["height"] / 2 < under["y"] + under["height"]
    page.wait_for_timeout(600)
    expect(turn_off).to_be_visible()
    expect(row).to_contain_text("set to")


def test_a_double_tap_on_zone_removes_no_zone(page: Page) -> None:
    open_demo(page)
    open_zone(page, "Orchid House")
    tap_twice(page.get_by_role("button", name="Zone", exact=True))
    remove = page.get_by_role("button", name="Remove zone")
    expect(remove).to_be_visible()
    page.wait_for_timeout(600)
    expect(page.get_by_role("heading", level=1)).to_have_text("Orchid House")
    expect(remove).to_be_visible()


def test_a_double_tap_on_a_row_turns_no_tap(page: Page) -> None:
    open_demo(page)
    open_zone(page, "Orchid House")
    rows = page.locator(".point-pick")
    expect(rows.first).to_be_visible()
    before = rows.all_inner_texts()
    for at in range(min(len(before), 6)):
        row = rows.nth(at)
        row.scroll_into_view_if_needed()
        tap_twice(row)
        page.wait_for_timeout(600)
        page.keyboard.press("Escape")
        expect(rows).to_have_text(before, use_inner_text=True)


def test_the_same_control_is_heard_however_fast_it_is_touched(page: Page) -> None:
    for digit in ("1", "1", "2", "1"):
        box = page.get_by_role("button", name=digit, exact=True).bounding_box()
        assert box
        page.touchscreen.tap(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    expect(page.locator(".entry")).to_contain_text("1121")


def test_keys_are_never_held_up(page: Page) -> None:
    open_demo(page)
    open_zone(page, "Orchid House")
    page.get_by_role("button", name="Zone", exact=True).focus()
    page.keyboard.press("Enter")
    page.get_by_role("button", name="Remove zone").focus()
    page.keyboard.press("Enter")
    expect(page.locator("main.sheet-job")).to_be_visible()
    touch(page, "Undo")
    expect(page.get_by_role("link", name="Orchid House")).to_be_visible()


TWICE = """() => {
  const remove = document.querySelector(".bench [data-act='point.remove']");
  remove.click();
  remove.click();
}"""


def test_what_is_being_removed_is_not_removed_again(page: Page) -> None:
    open_demo(page)
    open_zone(page, "Orchid House")
    rows = page.locator(".point-pick")
    expect(rows.first).to_be_visible()
    before = rows.count()
    rows.last.tap()
    expect(page.locator(".bench [data-act='point.remove']")).to_be_visible()
    page.evaluate(TWICE)  # before the engine can have answered
    expect(rows).to_have_count(before - 1)
    expect(page.locator(".top-state")).to_have_text("Kept")
    expect(page.locator(".notice.bad")).to_have_count(0)
    touch(page, "Undo")
    expect(rows).to_have_count(before)

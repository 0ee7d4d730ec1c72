"""Another kind in a loudspeaker's place: what is offered first, and what it would do."""

from playwright.sync_api import Page, expect

from tests.page.hands import pick_point, point, touch
from tests.page.lines import nave, open_line


def test_another_kind_is_fitted_with_its_difference_told(page: Page) -> None:
    open_line(page, nave())
    pick_point(page, "Nave 3")
    touch(page, "Swap")
    horn = page.locator(".tap-row").filter(has_text="horn 30 W")
    expect(horn).to_contain_text("15 W at 100 V")
    expect(horn).to_contain_text("output")
    horn.tap()
    expect(page.locator(".point.picked")).to_contain_text("horn 30 W")
    touch(page, "Swap")
    # from the horn's 106 dB to the column's 93 dB, both on 15 W
    expect(page.locator(".tap-row").filter(has_text="column")).to_contain_text("dB")
    touch(page, "Close")
    touch(page, "Undo")
    expect(point(page, "Nave 3")).not_to_contain_text("horn")


def test_what_hangs_next_to_it_is_offered_first_and_the_marks_are_explained(page: Page) -> None:
    job = nave()
    taps = [{"w": w, "at_v": 100.0} for w in (6.0, 15.0)]
    names = ("far", "near")
    job["kinds"]["loudspeakers"] = [{"id": each, "name": each, "taps": taps} for each in names]
    for number, kind in ((0, "far"), (3, "near")):
        job["zones"][0]["line"][number]["fitted"]["kind"] = kind
    open_line(page, job)
    pick_point(page, "Nave 3")
    touch(page, "Swap")
    offered = page.locator(".bench .tap-row")
    expect(offered.first).to_contain_text("near")
    expect(offered.first).to_contain_text("15 W at 100 V · same as neighbours")
    expect(offered.nth(1)).to_contain_text("far")
    expect(page.get_by_text("same as neighbours")).to_have_count(1)
    expect(page.locator(".bench")).to_contain_text("Each mark is the worst it would do")

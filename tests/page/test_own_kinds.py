"""Kinds of one's own: made, chosen where a kind is chosen, changed with all that use them."""

import re

from playwright.sync_api import Locator, Page, expect

from tests.page.hands import open_demo, open_screen, pick_point, point, touch
from tests.page.lines import look_at, nave, open_line


def open_kinds(page: Page) -> None:
    """From a line, to the kinds of its job."""
    open_screen(page, "Job")
    page.get_by_role("link", name="Kinds", exact=True).tap()
    expect(page.get_by_role("heading", level=1)).to_have_text("Kinds")


def kind(page: Page, name: str) -> Locator:
    """The line of a kind in the list."""
    return page.locator(".kind-line").filter(has_text=name)


def touch_stroke(page: Page, label: str) -> None:
    """Touch the key for the stroke beside a field: number pads have none."""
    page.locator(".field").filter(has=page.get_by_label(label)).get_by_role(
        "button", name="Put in a stroke"
    ).tap()


def test_a_loudspeaker_is_made_and_a_mistake_is_said_beside_its_field(page: Page) -> None:
    open_line(page, nave())
    open_kinds(page)
    touch(page, "Own loudspeaker")
    labels = page.locator(".form > .fields > .field > label")
    assert [" ".join(each.split()) for each in labels.all_inner_texts()] == [
        "Name", "Taps at 100 V", "Taps at 70.7 V", "Rated power, watts",
        "Sensitivity, dB at 1 W and 1 m", "Coverage across, degrees",
    ]  # fmt: skip
    page.get_by_label("Name", exact=True).fill("Port horn 60")
    page.get_by_label("Taps at 100 V").fill("60")
    touch_stroke(page, "Taps at 100 V")
    page.get_by_label("Taps at 100 V").press_sequentially("15,30")
    page.get_by_label("Rated power, watts").fill("lots")
    touch(page, "Add")
    problem = page.locator(".has-problem")
    expect(problem).to_have_count(1)
    expect(problem).to_contain_text("“lots” cannot be read as a number")
    expect(kind(page, "Port horn 60")).to_have_count(0)
    page.get_by_label("Rated power, watts").fill("60 W")
    page.get_by_label("Taps at 70.7 V").fill("15,30")
    touch(page, "Add")
    expect(problem).to_contain_text("Is “15,30” one tap, 15.30, or two, 15 / 30?")
    page.get_by_label("Taps at 70.7 V").fill("30 / 7,5 W / 8 ohm")
    touch(page, "Add")
    expect(kind(page, "Port horn 60")).to_contain_text("60 / 15.3 W at 100 V")
    expect(kind(page, "Port horn 60")).to_contain_text("30 / 7.5 W / 8 Ω at 70.7 V")


def test_a_nameless_kind_is_refused(page: Page) -> None:
    open_line(page, nave())
    open_kinds(page)
    touch(page, "Own attenuator")
    touch(page, "Add")
    expect(page.locator(".has-problem")).to_contain_text("It needs a name.")


def test_a_form_goes_on_where_it_was_with_the_new_kind_chosen(page: Page) -> None:
    open_line(page, nave())
    touch(page, "Loudspeakers")
    page.get_by_label("How many").fill("2 x 4 m")
    touch(page, "Own loudspeaker")
    page.get_by_label("Name", exact=True).fill("Given up")
    touch(page, "Close without saving")
    expect(page.get_by_label("How many")).to_have_value("2 x 4 m")
    touch(page, "Own loudspeaker")
    page.get_by_label("Name", exact=True).fill("Choir box")
    page.get_by_label("Taps at 100 V").fill("12 / 6")
    touch(page, "Add")
    chosen = page.get_by_label("Kind", exact=True)
    expect(chosen.locator("option:checked")).to_have_text("Choir box")
    expect(chosen).to_be_focused()
    expect(page.get_by_label("How many")).to_have_value("2 x 4 m")
    page.get_by_label("Tap, watts").fill("12")
    touch(page, "Add")
    expect(page.locator(".point")).to_have_count(11)
    pick_point(page, "Nave 8")
    expect(page.locator(".tap-row")).to_have_count(2)
    expect(page.locator(".tap-row").filter(has_text="12 W")).to_have_count(1)


def test_at_the_ladder_another_kind_is_made_and_fitted(page: Page) -> None:
    open_line(page, nave())
    pick_point(page, "Nave 3")
    touch(page, "Swap")
    touch(page, "Own loudspeaker")
    page.get_by_label("Name", exact=True).fill("Crypt horn")
    page.get_by_label("Taps at 100 V").fill("20 / 10")
    touch(page, "Add")
    row = page.locator(".tap-row").filter(has_text="Crypt horn")
    row.tap()
    expect(page.locator(".point.picked")).to_contain_text("Crypt horn")
    touch(page, "Undo")
    expect(point(page, "Nave 3")).not_to_contain_text("Crypt horn")


def test_whatever_is_of_a_kind_follows_when_the_kind_is_changed(page: Page) -> None:
    open_line(page, nave())
    pick_point(page, "Chapel 2")
    touch(page, "Change")
    touch(page, "Own loudspeaker")
    page.get_by_label("Name", exact=True).fill("Side box")
    page.get_by_label("Taps at 100 V").fill("10 / 6")
    touch(page, "Add")
    touch(page, "Save")
    expect(point(page, "Chapel 2")).to_contain_text("Side box")
    open_kinds(page)
    kind(page, "Side box").get_by_role("button").tap()
    expect(page.get_by_role("button", name="Take out")).to_be_disabled()
    touch(page, "Change")
    expect(page.get_by_label("Taps at 100 V")).to_have_value("10 / 6 W")
    page.get_by_text("Rarely needed", exact=True).tap()
    page.get_by_label("The watts on its selector are").select_option(
        label="delivered to the loudspeaker"
    )
    page.get_by_label("Transformer loss, dB").fill("1,0 dB")
    touch(page, "Save")
    expect(kind(page, "Side box")).to_contain_text("its watts are delivered")
    open_screen(page, "Job")
    # 6 of 15 W and 2 of 6 W were 102 W; of the last, 6 W · 10^(1 dB / 10) is 7.55 W
    expect(page.locator(".zone-way").filter(has_text="Nave")).to_contain_text("103.6 W")


def test_a_kind_that_nothing_uses_is_taken_out_and_comes_back(page: Page) -> None:
    open_line(page, nave())
    open_kinds(page)
    page.locator("summary").first.tap()
    kind(page, "horn 30 W").get_by_role("button").tap()
    touch(page, "Another like it")
    expect(page.get_by_label("Name", exact=True)).to_have_value("horn 30 W, 60°, mine")
    expect(page.get_by_label("Sensitivity, dB at 1 W and 1 m")).to_have_value("106 dB")
    touch(page, "Add")
    mine = kind(page, "horn 30 W, 60°, mine")
    expect(mine).to_contain_text("not used in this job")
    mine.get_by_role("button").tap()
    touch(page, "Take out")
    expect(mine).to_have_count(0)
    touch(page, "Undo")
    expect(mine).to_have_count(1)


def test_a_cable_is_made_by_what_it_measures_and_pulled(page: Page) -> None:
    open_line(page, nave())
    look_at(page, "Cable")
    touch(page, "Own cable")
    page.get_by_label("Name", exact=True).fill("old red pair")
    page.get_by_label("Its size is known by").select_option(label="measured loop resistance")
    touch(page, "Add")
    expect(page.locator(".has-problem")).to_contain_text("Type this")
    page.get_by_label("Loop resistance").fill("1,2 ohm / 50 m")
    touch(page, "Add")
    touch(page, "of this job")
    expect(page.locator(".cable")).to_contain_text("old red pair")
    open_kinds(page)
    expect(kind(page, "old red pair")).to_contain_text("copper that measures 24 Ω/km")


def test_an_attenuator_is_made_where_one_is_put_in(page: Page) -> None:
    open_line(page, nave())
    touch(page, "Attenuator")
    touch(page, "Own attenuator")
    page.get_by_label("Name", exact=True).fill("Vestry knob")
    page.get_by_label("Rated watts").fill("50")
    page.get_by_label("Rated at volts").fill("100 V")
    page.get_by_label("Overridden by a page").select_option(label="no")
    touch(page, "Add")
    expect(page.get_by_label("Kind", exact=True).locator("option:checked")).to_have_text(
        "Vestry knob"
    )
    touch(page, "Add")
    expect(point(page, "Nave A1")).to_contain_text("Vestry knob")


def test_the_demo_lists_what_it_uses(page: Page) -> None:
    open_demo(page)
    page.get_by_role("link", name="Kinds", exact=True).tap()
    expect(kind(page, "ceiling 6 W").first).to_contain_text("used 6 times")
    for family in ("Loudspeakers", "Cables", "Attenuators"):
        expect(page.get_by_role("heading", name=family, exact=True)).to_be_visible()


def test_no_name_of_a_kind_ends_a_line_between_a_number_and_its_unit(page: Page) -> None:
    open_demo(page)
    page.get_by_role("link", name="Kinds", exact=True).tap()
    names = page.locator(".kind-line b")
    expect(names.filter(has_text="ceiling 6").first).to_be_visible()
    told = [name for name in names.all_text_contents() if re.search(r"\d\s(W|V|mm²|dB)\b", name)]
    assert len(told) > 3
    assert [name for name in told if re.search(r"\d (W|V|mm²|dB)\b", name)] == []
    names.filter(has_text="ceiling 6").first.tap()
    assert "ceiling 6\u00a0W" in (page.locator(".bench-head h2").text_content() or "")


def test_a_copy_that_differs_from_what_comes_with_the_tool_can_follow_it_again(page: Page) -> None:
    open_demo(page)
    page.get_by_role("link", name="Kinds", exact=True).tap()
    mine = page.locator(".kind-line").filter(has_text="used 6 times").first
    mine.get_by_role("button").tap()
    expect(page.get_by_role("button", name="Change", exact=True)).to_be_visible()
    expect(page.get_by_role("button", name="As it comes with the tool")).to_have_count(0)
    touch(page, "Change")
    page.get_by_label("Taps at 100 V").fill("12 / 6 / 3")
    touch(page, "Save")
    expect(mine).to_contain_text("12 / 6 / 3 W at 100 V")
    expect(page.locator(".kinds-note").first).to_contain_text("6 / 3 / 1.5 W at 100 V")
    touch(page, "As it comes with the tool")
    expect(mine).to_contain_text("6 / 3 / 1.5 W at 100 V")
    expect(mine).not_to_contain_text("12 / 6 / 3 W")
    expect(page.get_by_role("button", name="As it comes with the tool")).to_have_count(0)
    touch(page, "Close")
    touch(page, "Undo")
    expect(mine).to_contain_text("12 / 6 / 3 W at 100 V")

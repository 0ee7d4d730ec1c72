"""Putting in, changing and moving single points of a line by their forms."""

import re

from playwright.sync_api import Page, expect

from tests.page.hands import expect_kept, pick_point, point, touch
from tests.page.lines import nave, open_line


def test_an_attenuator_of_a_kind_from_the_catalogue_is_hung(page: Page) -> None:
    open_line(page, nave())
    touch(page, "Attenuator")
    page.get_by_label("Kind", exact=True).select_option(
        label="wall control 100 W at 100 V, overridden by a page"
    )
    touch(page, "Add")
    expect(page.locator(".point")).to_have_count(10)
    expect(point(page, "Nave A1")).to_contain_text("wall control 100 W")


def test_an_attenuator_is_said_to_be_of_a_kind_from_the_catalogue(page: Page) -> None:
    open_line(page, nave())
    pick_point(page, "Nave control")
    touch(page, "Change")
    page.get_by_label("Kind", exact=True).select_option(label="wall control 10 W at 100 V")
    touch(page, "Save")
    expect(point(page, "Nave control")).to_contain_text("wall control 10 W")


def test_a_point_where_the_line_divides_is_moved_and_a_junction_stays(page: Page) -> None:
    open_line(page, nave())
    pick_point(page, "Nave 2")  # the chapel branches off here
    touch(page, "Move")
    page.get_by_label("Hangs behind").select_option(label="Nave: Nave 6")
    page.get_by_label("How it joins").select_option(label="as a branch")
    page.get_by_label("Length of the run to it").fill("20 ft")
    page.get_by_role("form").get_by_role("button", name="Move", exact=True).tap()
    expect(page.locator(".point")).to_have_count(10)
    rows = [" ".join(row.split()) for row in page.locator(".point-pick").all_inner_texts()]
    # a junction of the same name keeps the place and the twelve metres; the loudspeaker is last
    [stays, moved] = [row for row in rows if "Nave 2" in row]
    for row, texts in ((stays, ("unction", "12 m")), (moved, ("15 W at 100 V", "6.1 m"))):
        assert all(text in row for text in texts), row
    touch(page, "Undo")
    expect(page.locator(".point")).to_have_count(9)
    expect_kept(page)


def test_a_point_is_moved_into_the_run_behind_a_junction(page: Page) -> None:
    open_line(page, nave())
    touch(page, "Junction")
    page.get_by_label("Label").fill("Box")
    page.get_by_label("Hangs behind").select_option(label="Nave: Nave 1")
    touch(page, "Add")
    expect(page.locator(".point")).to_have_count(10)
    pick_point(page, "Chapel 2")
    touch(page, "Move")
    page.get_by_label("Hangs behind").select_option(label="Nave: Box")
    page.get_by_role("form").get_by_role("button", name="Move", exact=True).tap()
    expect(page.locator(".point-pick").nth(2)).to_contain_text("Chapel 2")
    expect(page.locator(".point-pick").nth(3)).to_contain_text("Nave 2")


def test_what_is_typed_takes_the_place_of_what_stood_in_a_number_field(page: Page) -> None:
    open_line(page, nave())
    pick_point(page, "Nave control")
    page.locator(".bench").get_by_role("button", name="Set in dB", exact=True).tap()
    field = page.get_by_label("Setting, dB")
    expect(field).to_have_value("−6 dB")
    field.tap()
    page.keyboard.type("-9")
    expect(field).to_have_value("-9")
    # a second touch sets the caret, and nothing is taken away
    field.tap()
    page.keyboard.type("1")
    expect(field).to_have_value(re.compile(r"^(?=.*-)(?=.*9)(?=.*1)...$"))


def test_two_numbers_in_one_field_are_called_that(page: Page) -> None:
    open_line(page, nave())
    pick_point(page, "Nave control")
    page.locator(".bench").get_by_role("button", name="Set in dB", exact=True).tap()
    page.get_by_label("Setting, dB").fill("0 dB-6")
    touch(page, "Save")
    expect(page.locator(".field-problem")).to_contain_text("“0 dB-6” holds two numbers")
    expect(page.locator(".field-problem")).to_contain_text("type one number")


def test_a_control_left_empty_shows_what_its_kind_says(page: Page) -> None:
    open_line(page, nave())
    touch(page, "Attenuator")
    rated, built = page.get_by_label("Rated watts"), page.get_by_label("Built as")
    below = page.locator(".field").filter(has=rated).locator(".field-hint")
    expect(below).to_have_count(0)
    kind = page.get_by_label("Kind", exact=True)
    kind.select_option(label="wall control 35 W at 100 V, overridden by a page")
    expect(below).to_have_text("Empty: 35 W, by its kind.")
    expect(rated).to_have_value("")
    expect(rated).to_have_accessible_description("Empty: 35 W, by its kind.")
    expect(built.locator("option:checked")).to_have_text("autotransformer (by its kind)")
    rated.fill("40")
    expect(below).to_have_count(0)
    rated.fill("")
    kind.select_option(label="not known")
    expect(below).to_have_count(0)
    expect(built.locator("option:checked")).to_have_text("not known")
    touch(page, "Close without saving")


def test_a_loudspeaker_is_asked_for_as_it_is_read_at_the_box_and_the_rest_is_folded(
    page: Page,
) -> None:
    open_line(page, nave())
    touch(page, "Loudspeakers")
    labels = page.locator(".form > .fields > .field > label")
    assert labels.all_inner_texts()[:4] == [
        "How many, how far apart", "Kind", "Tap, watts", "Voltage row of the tap, volts",
    ]  # fmt: skip
    joint = page.get_by_label("Joint, ohms")
    expect(joint).to_be_hidden()
    page.get_by_text("Rarely needed", exact=True).tap()
    joint.fill("lots")
    page.get_by_label("How many").fill("1")
    touch(page, "Add")
    expect(page.locator(".has-problem")).to_contain_text("“lots” cannot be read as a number")
    expect(joint).to_be_visible()
    touch(page, "Close without saving")

"""Runs typed in one go, the choice of a cable, and what if."""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.page.hands import choose_supply, count_row, expect_kept, touch
from tests.page.lines import look_at, nave, open_line
from tests.page.test_line import open_new_job
from tests.page.thumb import Thumb

MOST_TOUCHES = 15
DETAIL = re.compile(r"4\sm · 1\.5\smm²")


def test_a_line_of_twenty_is_hung_with_a_few_touches(page: Page) -> None:
    open_new_job(page)
    thumb = Thumb(page)
    thumb.touch("Loudspeakers")
    thumb.type("How many", "20×4")
    thumb.type("Tap, watts", "5")
    thumb.type("Length of the run to the first", "30")
    thumb.choose("Cable", "1.5 mm²")
    thumb.touch("Add")
    points = page.locator(".point")
    expect(points).to_have_count(20)
    expect(points.nth(0)).to_contain_text("30 m · 1.5 mm²")
    expect(points.nth(1)).to_contain_text(DETAIL)
    expect(points.nth(19)).to_contain_text("Foyer 20")
    expect(page.locator(".zone-figures")).to_contain_text("100 W")
    expect_kept(page)
    assert thumb.touches <= MOST_TOUCHES


@pytest.mark.parametrize(
    ("text", "length"), [("3 x 12 m", "12 m"), ("3 × 40 ft", "12.2 m"), ("3 at 2,5", "2.5 m")]
)
def test_a_run_is_read_as_people_type_it(page: Page, text: str, length: str) -> None:
    open_new_job(page)
    touch(page, "Loudspeakers")
    page.get_by_label("How many").fill(text)
    page.get_by_label("Tap, watts").fill("5")
    touch(page, "Add")
    expect(page.locator(".point")).to_have_count(3)
    expect(page.locator(".point").last).to_contain_text(length)


def test_a_run_is_undone_as_one(page: Page) -> None:
    open_new_job(page)
    touch(page, "Loudspeakers")
    page.get_by_label("How many").fill("12 x 3 m")
    touch(page, "Add")
    expect(page.locator(".point")).to_have_count(12)
    touch(page, "Undo")
    expect(page.locator(".point")).to_have_count(0)


@pytest.fixture
def cabled(page: Page) -> Page:
    """The nave with a cable too thin for its limit, at the choice of another."""
    open_line(page, nave(limit_db=0.25))
    look_at(page, "Cable")
    expect(page.locator(".cable-now")).to_contain_text("0.25 dB are allowed")
    return page


def test_the_thinnest_that_passes_is_put_in_by_one_touch_and_taken_out_by_undo(
    cabled: Page,
) -> None:
    expect(cabled.locator(".cable-now.v-over, .cable-now.v-near")).to_have_count(1)
    whole = cabled.locator(".proposal").first
    expect(whole).to_contain_text("is the thinnest that passes")
    expect(whole).to_contain_text("it would lose")
    touch(cabled, "Use it: The whole line")
    expect(cabled.locator(".cable-now.v-ok")).to_have_count(1)
    expect(whole).to_contain_text("It is there already.")
    touch(cabled, "Undo")
    expect(cabled.locator(".cable-now.v-ok")).to_have_count(0)


def test_one_section_is_stepped_up_alone(cabled: Page) -> None:
    before = cabled.locator(".cable-now").inner_text()
    cabled.get_by_role("button", name=re.compile("Use it: Nave")).first.tap()
    expect(cabled.locator(".cable-now")).not_to_have_text(before)
    look_at(cabled, "List")
    others = cabled.locator(".point").filter(has_text="0.75 mm²")
    expect(others).to_have_count(len(nave()["zones"][0]["line"]) - 1)


def test_the_stock_is_chosen_and_remembered(cabled: Page) -> None:
    touch(cabled, "in AWG")
    expect(cabled.locator(".cable")).to_contain_text("22 AWG")
    touch(cabled, "of this job")
    expect(cabled.locator(".cable")).to_contain_text("At hand: 0.75 mm².")
    expect(cabled.locator(".proposal").first).to_contain_text("None of these cables")
    look_at(cabled, "List")
    look_at(cabled, "Cable")
    expect(cabled.get_by_role("button", name="of this job")).to_have_attribute(
        "aria-pressed", "true"
    )
    touch(cabled, "in mm²")
    expect(cabled.locator(".cable")).to_contain_text("6 mm²")


def test_how_far_it_may_run_is_told(cabled: Page) -> None:
    expect(cabled.locator(".cable")).to_contain_text("it runs 123 m now")


def test_what_if_shows_before_and_after_side_by_side(page: Page) -> None:
    open_line(page, nave())
    look_at(page, "What if")
    touch(page, "Another voltage")
    touch(page, "70.7 V")
    compared = page.locator(".compared")
    expect(compared).to_contain_text("driven at 70.7 V")
    expect(compared).to_contain_text("must be redone")
    load = compared.locator("tr").filter(has_text="load").first
    # six of 15 W and two of 6 W, marked for 100 V; 0.49985 of that at 70.7 V
    expect(load).to_contain_text("102 W")
    expect(load).to_contain_text("51 W")
    touch(page, "All on one tap")
    touch(page, "6 W")
    expect(compared).to_contain_text("Every loudspeaker of Nave on 6 W")
    expect(compared.locator("tr").filter(has_text="load").first).to_contain_text("48 W")


def test_more_at_the_end_may_be_typed_badly_and_is_answered_there(page: Page) -> None:
    open_line(page, nave())
    look_at(page, "What if")
    touch(page, "More at the end")
    page.get_by_label("How many, how far apart").fill("lots")
    touch(page, "15 W")
    expect(page.locator(".field-problem")).to_contain_text("“lots”")
    page.get_by_label("How many, how far apart").fill("4 x 6 m")
    expect(page.locator(".compared")).to_contain_text("4 more at the end of Nave")
    expect(page.locator(".field-problem")).to_have_count(0)


def keep_a_tally(page: Page) -> None:
    """Thirteen, twelve at 7.5 W and one at 15 W, counted and kept, and its line opened."""
    choose_supply(page, volts="70.7 V", watts="120")
    count_row(page, "12", "7.5 W")
    count_row(page, "1", "15 W")
    touch(page, "Keep as a job")
    page.locator(".zone-way").first.tap()
    expect(page.locator(".point")).to_have_count(13)


def test_a_kept_tally_says_its_lengths_are_not_known_and_asks_for_them_at_once(
    page: Page,
) -> None:
    keep_a_tally(page)
    expect(page.locator(".point").first).to_contain_text("length not known")
    look_at(page, "Cable")
    expect(page.locator(".cable")).to_contain_text("The length of a section is not known")
    touch(page, "Lengths")
    touch(page, "Save")
    expect(page.locator(".has-problem")).to_contain_text("Type the home run")
    page.get_by_label("Home run").fill("80")
    page.get_by_label("From each one to the next").fill("0")
    touch(page, "Save")
    # 105 W at 70.7 V are 47.6 ohm. 80 m there and back at 30 °C, by the ohms of IEC 60228, class 5
    # (from memory): 1 mm² 3.24 ohm, 0.57 dB; 1.5 mm² 2.21 ohm, 0.39 dB of the 0.5 dB allowed.
    expect(page.locator(".proposal").first).to_contain_text("1.5 mm²")
    look_at(page, "List")
    expect(page.locator(".point").first).to_contain_text("80 m")
    expect(page.get_by_role("button", name="Type the lengths of its cable")).to_have_count(0)
    touch(page, "Undo")
    expect(page.locator(".point").first).to_contain_text("length not known")


def test_a_length_that_is_known_is_not_typed_over_unless_one_says_so(page: Page) -> None:
    keep_a_tally(page)
    touch(page, "Type the lengths of its cable")
    page.get_by_label("Home run").fill("30 m")
    touch(page, "Save")
    first, second = page.locator(".point").nth(0), page.locator(".point").nth(1)
    expect(first).to_contain_text("30 m")
    expect(second).to_contain_text("length not known")
    look_at(page, "Cable")
    touch(page, "Lengths")
    page.get_by_label("Home run").fill("40 m")
    page.get_by_label("From each one to the next").fill("5 m")
    touch(page, "Save")
    look_at(page, "List")
    expect(second).to_contain_text("5 m")
    expect(first).to_contain_text("30 m")
    look_at(page, "Cable")
    touch(page, "Lengths")
    page.get_by_label("Home run").fill("40 m")
    page.get_by_label("Which sections").select_option(label="all, those with a length too")
    touch(page, "Save")
    look_at(page, "List")
    expect(first).to_contain_text("40 m")
    expect(second).to_contain_text("5 m")

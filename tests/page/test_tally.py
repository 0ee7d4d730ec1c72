"""The tally, by thumb on a phone of 360 px and by keyboard."""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.page.hands import (
    FOUR_ROWS,
    choose_supply,
    count_row,
    expect_kept,
    give_output,
    open_screen,
    pick_output,
    touch,
)

MOST_TOUCHES_A_ROW = 5
PAD = [".keys", ".taps", ".foot", ".sum-big", ".sum .bar"]


def test_mixed_taps_are_tallied_with_at_most_five_touches_a_row(page: Page) -> None:
    choose_supply(page, volts="70.7 V", watts="120")
    for count, tap in (("6", "5 W"), ("4", "7.5 W"), ("12", "2.5 W")):
        assert count_row(page, count, tap) <= MOST_TOUCHES_A_ROW
    expect(page.locator(".sum-big")).to_have_text("90 W")
    expect(page.locator(".tally-row")).to_have_count(3)
    expect(page.locator(".sum-small")).to_contain_text("75 %")
    expect(page.locator(".sum-small")).to_contain_text("30 W")


def test_nothing_moves_when_the_sum_grows_by_a_figure(page: Page) -> None:
    choose_supply(page, volts="70.7 V", watts="2000")
    rows = page.locator(".tally-rows")
    tops = []
    for count, tap, total in (
        ("6", "5 W", "30 W"),
        ("9", "30 W", "300 W"),
        ("30", "30 W", "1200 W"),
    ):
        count_row(page, count, tap)
        expect(page.locator(".sum-big")).to_have_text(total)
        box = rows.bounding_box()
        assert box is not None
        tops.append(box["y"])
    assert len(set(tops)) == 1


def test_a_tally_in_order_says_the_watts_fit_and_then_what_was_not_checked(page: Page) -> None:
    choose_supply(page, volts="100 V", watts="60")
    count_row(page, "4", "6 W")
    words = page.locator(".sum-words")
    expect(words).to_contain_text("The watts fit")
    expect(words).to_contain_text("Not checked: cable")
    text = words.inner_text()
    assert text.index("The watts fit") < text.index("Not checked")


def test_too_much_is_said_by_word_and_shape(page: Page) -> None:
    choose_supply(page, volts="70.7 V", watts="20")
    count_row(page, "6", "5 W")
    expect(page.locator(".sum-headline")).to_have_text("Too much")
    expect(page.locator(".sum-headline .shape")).to_be_visible()


def test_a_tap_touched_alone_counts_one_more(page: Page) -> None:
    choose_supply(page, volts="70.7 V", watts="120")
    for _ in range(3):
        touch(page, "10 W")
    expect(page.locator(".tally-row-words")).to_have_text("3 × 10 W")
    expect(page.locator(".sum-big")).to_have_text("30 W")


def test_an_unusual_tap_is_typed_on_the_same_pad(page: Page) -> None:
    choose_supply(page, volts="70.7 V", watts="120")
    for key in ("8", "other", "3", "Decimal sign", "7"):
        touch(page, key)
    touch(page, "Add this tap")
    expect(page.locator(".sum-big")).to_have_text("29.6 W")


def test_a_row_can_be_typed_as_a_line_of_text(page: Page) -> None:
    choose_supply(page, volts="70.7 V", watts="120")
    line = page.get_by_label("Or type a row")
    line.fill("six of five")
    line.press("Enter")
    expect(page.locator(".typed-row .field-problem")).to_be_visible()
    line.fill("6 x 5")
    line.press("Enter")
    expect(page.locator(".sum-big")).to_have_text("30 W")
    expect(page.locator(".typed-row .field-problem")).to_have_count(0)


def test_a_row_is_made_larger_smaller_and_removed(page: Page) -> None:
    choose_supply(page, volts="70.7 V", watts="120")
    count_row(page, "2", "5 W")
    touch(page, "One more: 2 × 5 W")
    expect(page.locator(".sum-big")).to_have_text("15 W")
    touch(page, "One fewer: 3 × 5 W")
    expect(page.locator(".sum-big")).to_have_text("10 W")
    touch(page, "Remove 2 × 5 W")
    expect(page.locator(".tally-row")).to_have_count(0)


def test_a_comma_is_read_and_nonsense_is_answered_beside_the_field(page: Page) -> None:
    watts = page.get_by_label("Amplifier", exact=True)
    page.get_by_label("70.7 V", exact=True).tap()
    count_row(page, "2", "5 W")
    watts.fill("37,5")
    expect(page.locator(".sum-small")).to_contain_text("27.5 W")
    watts.fill("plenty")
    expect(page.locator(".watts .field-problem")).to_be_visible()
    expect(page.locator(".sum-big")).to_have_text("10 W")
    assert watts.get_attribute("aria-invalid") == "true"


def test_several_outputs_have_maxima_of_their_own(page: Page) -> None:
    choose_supply(page, volts="70.7 V", watts="120")
    touch(page, "Several outputs")
    give_output(page, "B", "100")
    give_output(page, "A", "20")
    count_row(page, "6", "5 W")
    expect(page.locator(".sum-headline")).to_have_text("Too much")
    touch(page, "Remove 6 × 5 W")
    pick_output(page, "B")
    count_row(page, "6", "5 W")
    expect(page.locator(".sum-headline")).to_have_text("The watts fit")


def test_the_pad_and_the_figures_stay_where_they_are_while_rows_come(page: Page) -> None:
    choose_supply(page, volts="70.7 V", watts="120")
    expect(page.locator(".chip").first).to_be_visible()
    before = [page.locator(part).bounding_box() for part in PAD]
    touch(page, "6")
    during = [page.locator(part).bounding_box() for part in PAD]
    touch(page, "5 W")
    expect(page.locator(".sum-headline")).to_have_text("The watts fit")
    after = [page.locator(part).bounding_box() for part in PAD]
    for boxes in (during, after):
        for one, other in zip(before, boxes, strict=True):
            assert one
            assert other
            assert (one["y"], one["height"]) == (other["y"], other["height"])


def test_what_fits_stands_in_one_line_that_opens_all_of_it(page: Page) -> None:
    choose_supply(page, volts="70.7 V", watts="120")
    for count, tap in FOUR_ROWS:
        count_row(page, count, tap)
    line = page.locator(".fits")
    expect(line).to_contain_text("fits 4 more at 5 W, 2 more at 7.5 W")
    box = line.bounding_box()
    assert box is not None
    assert box["height"] == 48
    line.tap()
    fits = page.locator(".all-fits .sentence")
    expect(fits).to_have_text(
        ["4 more at 5 W", "2 more at 7.5 W", "8 more at 2.5 W", "2 more at 10 W"]
    )
    assert all(one.evaluate("(it) => it.offsetHeight") >= 48 for one in fits.all())
    touch(page, "Close")
    expect(page.locator(".keys")).to_be_visible()


def test_a_tally_started_over_can_be_put_back(page: Page) -> None:
    choose_supply(page, volts="70.7 V", watts="120")
    count_row(page, "6", "5 W")
    touch(page, "Start over")
    expect(page.locator(".tally-row")).to_have_count(0)
    touch(page, "Put it back")
    expect(page.locator(".tally-row-words")).to_have_text("6 × 5 W")


def test_the_sum_opens_its_working(page: Page) -> None:
    choose_supply(page, volts="70.7 V", watts="120")
    count_row(page, "6", "5 W")
    page.locator(".sum-big").get_by_role("button", name="30 W").tap()
    working = page.locator(".working")
    expect(working.locator(".working-result")).to_have_text("30 W")
    expect(working.locator(".step-formula").first).not_to_be_empty()
    expect(working.locator(".step-source").first).not_to_be_empty()
    touch(page, "Close the working")
    expect(page.locator(".keys")).to_be_visible()


def test_a_tally_is_kept_as_a_job_and_survives_a_reload(page: Page) -> None:
    choose_supply(page, volts="70.7 V", watts="120")
    count_row(page, "6", "5 W")
    expect(page.locator(".sum-headline")).to_have_text("The watts fit")
    touch(page, "Keep as a job")
    expect(page.locator(".verdict-big")).to_have_text("The watts fit")
    expect_kept(page)
    page.reload()
    expect(page.locator(".verdict-big")).to_have_text("The watts fit")
    expect(page.locator(".zone-way")).to_contain_text("6 loudspeakers")


def test_a_tally_with_something_unread_in_it_is_not_kept_without_it(page: Page) -> None:
    choose_supply(page, volts="70.7 V", watts="plenty")
    count_row(page, "6", "5 W")
    expect(page.locator(".watts .field-problem")).to_be_visible()
    touch(page, "Keep as a job")
    expect(page.locator(".notice.bad")).to_contain_text("could not be read")
    expect(page.locator(".keys")).to_be_visible()
    page.get_by_label("Amplifier", exact=True).fill("120")
    expect(page.locator(".sum-headline")).to_have_text("The watts fit")
    touch(page, "Keep as a job")
    expect(page.locator(".verdict-big")).to_have_text("The watts fit")


@pytest.mark.parametrize("digits", ["0", "00", "007"])
def test_a_count_never_begins_with_nought(page: Page, digits: str) -> None:
    page.get_by_label("70.7 V", exact=True).tap()
    for digit in digits:
        touch(page, digit)
    shown = digits.lstrip("0")
    count = page.locator(".entry-count")
    expect(count).to_have_count(1 if shown else 0)
    if shown:
        expect(count).to_have_text(f"{shown} ×")


def test_a_note_stays_with_its_screen_and_covers_nothing(page: Page) -> None:
    choose_supply(page, volts="70.7 V", watts="120")
    count_row(page, "6", "5 W")
    touch(page, "Start over")
    note = page.locator(".notice")
    expect(note).to_have_count(1)
    box, sheet = note.bounding_box(), page.locator("main.sheet").bounding_box()
    assert box is not None
    assert sheet is not None
    assert box["y"] + box["height"] <= sheet["y"]
    open_screen(page, "Jobs")
    expect(page.locator("main.sheet-jobs")).to_be_visible()
    expect(note).to_have_count(0)
    open_screen(page, "Tally")
    expect(note).to_have_count(1)
    touch(page, "Put it back")
    expect(page.locator(".tally-row")).to_have_count(1)


def test_what_is_left_is_what_the_outputs_can_still_take(page: Page) -> None:
    choose_supply(page, volts="70.7 V", watts="240")
    touch(page, "Several outputs")
    for name in ("B", "A"):
        give_output(page, name, "60")
    count_row(page, "4", "10 W")
    left = page.locator(".sum-small > div").last
    expect(left.locator("dt")).to_have_text("left on outputs")
    expect(left.locator("dd")).to_have_text("80 W")
    left.get_by_role("button").tap()
    expect(page.locator(".working-result")).to_have_text("80 W")
    expect(page.locator(".bench-working")).to_contain_text("the smaller of (200 W, 80 W)")


def test_a_new_entry_lets_the_emptied_tally_go(page: Page) -> None:
    choose_supply(page, volts="100 V", watts="120")
    count_row(page, "6", "6 W")
    touch(page, "Start over")
    expect(page.locator(".notice")).to_contain_text("The tally is empty")
    count_row(page, "2", "6 W")
    expect(page.locator(".tally-row")).to_have_count(1)
    expect(page.locator(".notice")).to_have_count(0)


def test_a_working_closes_when_the_tally_it_tells_of_is_another(page: Page) -> None:
    choose_supply(page, volts="100 V", watts="120")
    count_row(page, "6", "6 W")
    page.locator(".sum-big button").tap()
    expect(page.locator(".working-result")).to_contain_text("36 W")
    page.get_by_role("button", name="One more").tap()
    expect(page.locator(".sum-big")).to_have_text("42 W")
    expect(page.locator(".working")).to_have_count(0)


def test_each_output_shows_its_maximum_where_it_is_chosen(page: Page) -> None:
    choose_supply(page, volts="70.7 V", watts="240")
    touch(page, "Several outputs")
    give_output(page, "B", "1,500")
    chips = page.locator(".output-chips .chip")
    expect(chips.last).to_have_text("B 1,500 W")
    expect(page.locator(".output-pick .field-problem")).to_be_visible()
    pick_output(page, "A")
    expect(page.get_by_label("Output A", exact=True)).to_have_value("")
    expect(page.locator(".output-pick .field-problem")).to_have_count(0)
    expect(chips.last).to_have_class(re.compile("has-problem"))
    give_output(page, "B", "60")
    expect(chips.last).not_to_have_class(re.compile("has-problem"))

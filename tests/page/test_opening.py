"""Every number opens: touched, it shows its formula, what was put in, and where that came from."""

from playwright.sync_api import Locator, Page, expect

from tests.page.hands import choose_supply, count_row, open_demo, pick_point, point, touch
from tests.page.lines import look_at, nave, open_line


def expect_working(page: Page, result: str, last: str) -> None:
    """The working that is open gives this result, and its last step reads so."""
    expect(page.locator(".working-result")).to_have_text(result)
    expect(page.locator(".step-put-in").last).to_have_text(last)
    touch(page, "Close the working")


def press(figure: Locator) -> None:
    """Open a figure by the keyboard, wherever it stands."""
    figure.press("Enter")


def test_the_rows_and_figures_of_a_tally_open(page: Page) -> None:
    choose_supply(page, volts="70.7 V", watts="120")
    count_row(page, "6", "5 W")
    page.locator(".tally-row-sum").get_by_role("button").tap()
    expect_working(page, "30 W", "6 × 5 W = 30 W")
    page.locator(".sum-small").get_by_role("button", name="25 %").tap()
    expect_working(page, "25 %", "30 W / 120 W = 25 %")
    page.locator(".sum-small").get_by_role("button", name="90 W").tap()
    expect_working(page, "90 W", "the larger of (0, 120 W − 30 W) = 90 W")
    page.locator(".fits").tap()
    page.locator(".all-fits").get_by_role("button", name="13 more at 5 W").tap()
    expect(page.locator(".working-result")).to_have_text("13 with reserve, 18 to the rating")
    expect(page.locator(".steps")).to_contain_text("Amplifier: load, with 14 more: past")
    expect(page.locator(".assumptions")).to_contain_text("asked again")
    touch(page, "Close the working")
    expect(page.locator(".all-fits")).to_be_visible()
    touch(page, "Close")
    page.locator(".sum-verdict").tap()
    expect(page.locator(".working-result")).to_have_text("30 W")
    touch(page, "Close the working")


def test_a_zone_of_a_job_opens_by_its_row_and_its_load_by_its_figure(page: Page) -> None:
    open_demo(page)
    row = page.locator(".zone-way").filter(has_text="Palm House")
    press(row.get_by_role("button", name="Show the working"))
    expect(page.get_by_role("heading", name="Palm House: load")).to_be_visible()
    touch(page, "Close the working")
    row.tap()
    expect(page.get_by_role("heading", level=1)).to_have_text("Palm House")
    page.locator(".zone-figures").get_by_role("button").tap()
    expect(page.get_by_role("heading", name="Palm House: load")).to_be_visible()


def test_what_a_tap_would_do_opens_number_by_number_before_it_is_taken(page: Page) -> None:
    open_line(page, nave())
    pick_point(page, "Nave 5")
    touch(page, "30 W: its numbers, one by one")
    would = page.locator(".would")
    # 10·log10(30 / 15) is 3.01 dB; 15 W of Nave 6 and 30 W of this one on a control of 40 W
    would.get_by_role("button", name="this one: +2.94 dB").tap()
    expect(page.locator(".steps")).to_contain_text("30 W / 15 W = ×2")
    expect_working(page, "+2.94 dB", "3.01 dB + 0 dB − 0.075 dB = 2.94 dB")
    would.get_by_role("button", name="control: 113 %").tap()
    expect_working(page, "113 %", "45 W / 40 W = 113 %")
    expect(point(page, "Nave 5")).to_contain_text("15 W at 100 V")
    touch(page, "Take 30 W")
    expect(point(page, "Nave 5")).to_contain_text("30 W at 100 V")


def test_what_another_loudspeaker_would_do_opens_too(page: Page) -> None:
    open_line(page, nave())
    pick_point(page, "Nave 3")
    touch(page, "Swap")
    touch(page, "horn 30 W, 60°: its numbers, one by one")
    page.locator(".would").get_by_role("button", name="output").tap()
    expect(page.get_by_role("heading", name="Vestry rack: share of its watts")).to_be_visible()
    page.keyboard.press("Escape")
    expect(page.get_by_role("heading", name="With horn 30 W, 60°")).to_be_focused()
    page.keyboard.press("Escape")
    expect(page.get_by_role("heading", name="Instead of Nave 3")).to_be_visible()


def test_both_sides_of_what_if_open_and_wrong_rows_are_counted(page: Page) -> None:
    open_line(page, nave())
    look_at(page, "What if")
    touch(page, "Another voltage")
    touch(page, "70.7 V")
    marks = page.get_by_role("row").filter(has_text="Taps marked for another voltage")
    # eight loudspeakers on 100 V taps
    expect(marks.get_by_role("cell").nth(1)).to_contain_text("8")
    load = page.get_by_role("row").filter(has_text="Vestry rack: load")
    load.get_by_role("button").first.tap()
    expect_working(page, "102 W", "6 × 15 W + 2 × 6 W = 102 W")
    load.get_by_role("button").last.tap()
    # half of it: (70.7 / 100)² is 0.49985
    expect_working(page, "51 W", "6 × 7.5 W + 2 × 3 W = 51 W")


def test_the_loss_of_a_proposed_cable_opens(page: Page) -> None:
    open_line(page, nave(limit_db=0.2))
    look_at(page, "Cable")
    touch(page, "in mm²")
    page.locator(".proposal-loss").first.get_by_role("button").tap()
    expect(page.get_by_role("heading", name="Nave: cable loss")).to_be_visible()
    expect(page.locator(".step-put-in").last).to_contain_text("log10")

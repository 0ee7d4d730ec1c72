"""Every number opens: touched, it shows its formula, what was put in, and where that came from."""

from playwright.sync_api import Locator, Page, expect

from tests.page.hands import choose_supply, count_row, open_demo, touch


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
    page.locator(".fits").get_by_role("button").tap()
    expect(page.locator(".working-result")).to_have_text("13 with reserve, 18 to the rating")
    expect(page.locator(".steps")).to_contain_text("Amplifier: load, with 14 more: past")
    expect(page.locator(".assumptions")).to_contain_text("asked again")


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

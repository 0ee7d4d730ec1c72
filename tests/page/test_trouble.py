"""Something is wrong with a line: earlier visits, metres, the first test, and on paper."""

import re
from pathlib import Path
from typing import Any

from playwright.sync_api import Page, expect

from tests.page.axe import expect_nothing_found
from tests.page.hands import expect_kept, open_screen, open_trouble, touch, type_reading
from tests.page.lines import look_at, nave, open_line

PAGE_RULES = """() => [...document.styleSheets].flatMap((sheet) => [...sheet.cssRules])
    .map((rule) => rule.cssText).filter((text) => text.startsWith("@page"))"""


def reading(name: str, value: float | str, **more: Any) -> dict[str, Any]:
    """A reading of the nave's home run, kept on an earlier visit."""
    return {
        "id": name, "at": "2026-05-20", "where": {"zone": "z"}, "looking": "out",
        "quantity": "z_1k_ohm", "value": value, "controls": "override", "tolerance_pct": 5.0,
        "instrument": "Bench meter", "baseline": False, **more,
    }  # fmt: skip


def test_earlier_visits_are_told_in_plain_words_and_a_baseline_judges_sharply(page: Page) -> None:
    job = nave()
    job["readings"] = [
        reading("r1", 103.0),
        reading("r2", 109.0, at="2026-08-01"),
        reading("r3", "weak", quantity="plays", where={"point": "Nave5"}, at="2026-08-01"),
    ]
    open_line(page, job)
    look_at(page, "Meter")
    visits = page.locator(".visit")
    expect(visits).to_have_count(2)
    newest, oldest = visits.first, visits.last
    newest.locator("summary").tap()
    expect(newest).to_contain_text("impedance meter, 1 kHz")
    expect(newest).to_contain_text("with Bench meter")
    expect(newest).to_contain_text("109 Ω")
    expect(newest).to_contain_text("weak")
    expect(newest).to_contain_text("As expected")
    oldest.locator("summary").tap()
    oldest.get_by_role("button", name="Make this visit the baseline").tap()
    expect(page.locator(".meter")).to_contain_text("judged within 2 %")
    expect(newest).to_contain_text("not what it should read")
    expect_nothing_found(page)


def test_a_short_is_drawn_on_the_line_with_its_error_and_its_working(page: Page) -> None:
    open_line(page, nave())
    look_at(page, "Meter")
    page.get_by_role("link", name="How far is it", exact=True).tap()
    page.get_by_label("At the amplifier").fill("2,6")
    touch(page, "How far")
    expect(page.locator(".meter-big")).to_have_text("48.1 m")
    expect(page.locator(".meter")).to_contain_text("43 m to 53.3 m")
    expect(page.locator(".strip-cross")).to_be_visible()
    expect(page.locator(".strip-range")).to_be_visible()
    page.locator(".meter-big button").tap()
    expect(page.locator(".working")).to_contain_text("To the short")
    page.get_by_role("button", name="Close").tap()
    page.get_by_label("At the amplifier").fill("500")
    touch(page, "How far")
    expect(page.locator("#why-far")).to_contain_text("No short on this line")
    expect_nothing_found(page)


def test_a_bare_pair_without_any_job_is_measured_too(page: Page) -> None:
    open_trouble(page)
    page.get_by_role("link", name="How far is it", exact=True).tap()
    page.get_by_label("A break", exact=True).tap()
    # 25 m of 63 pF/m at 1 kHz: 101 kohm, by hand
    page.get_by_label("At the amplifier").fill("101.05k")
    page.get_by_label("Cable", exact=True).select_option(label="1.5 mm²")
    touch(page, "How far")
    expect(page.locator(".meter-big")).to_have_text("25 m")
    expect_nothing_found(page)


def begin_test(page: Page) -> None:
    """Begin the first test of a nave, up to its leg to earth, which is bad."""
    open_line(page, nave())
    open_screen(page, "Job")
    page.get_by_role("link", name="First test", exact=True).tap()
    page.get_by_label("Meter", exact=True).fill("Bench 3")
    page.get_by_label("Its tolerance").fill("2")
    touch(page, "Begin")
    touch(page, "Test Nave")
    expect(page.locator(".meter")).to_contain_text("Lock the amplifier off")
    touch(page, "Done")
    type_reading(page, "48")
    expect(page.locator(".meter")).to_contain_text("Stop: 48 V on a line that should be dead")
    expect(page.get_by_role("button", name="Next step")).to_have_count(0)
    touch(page, "Leave out")
    expect(page.get_by_role("alert")).to_contain_text("Stop: the line is not dead")
    expect(page.get_by_role("button", name="Done")).to_have_count(0)
    touch(page, "Measure the volts again")
    type_reading(page, "0.2")
    expect(page.locator(".reading-shown")).to_have_text("0.2 V")
    touch(page, "Next step")
    touch(page, "Done")
    expect(page.locator(".meter")).to_contain_text("Never leg to leg")
    type_reading(page, "5k")
    expect(page.locator(".meter")).to_contain_text("a leg touches earth")
    expect(page.locator(".meter")).to_contain_text("with Bench 3")
    expect_kept(page)


def test_a_first_test_goes_step_by_step_survives_a_reload_and_says_what_is_missing(
    page: Page,
) -> None:
    begin_test(page)
    page.reload()
    expect(page.locator(".reading-shown")).to_have_text("5000 Ω")
    expect_nothing_found(page)
    touch(page, "Next step")
    for _ in range(3):
        touch(page, "Leave out")
    expect(page.locator(".meter")).to_contain_text("Not as expected: leave it off")
    touch(page, "To the summary")
    expect(page.locator(".meter")).to_contain_text("Not everything was recorded")
    page.get_by_text("Step by step", exact=True).tap()
    expect(page.locator(".test-rows")).to_contain_text("left out")
    expect(page.locator(".test-rows")).to_contain_text("5000 Ω")
    expect(page.locator(".test-zone")).to_contain_text("No baseline yet. Not in order: Nave")
    expect_nothing_found(page)


def test_the_test_sheet_is_a_table_on_screen_in_print_and_for_a_spreadsheet(page: Page) -> None:
    job = nave()
    job["amplifiers"][0]["outputs"][0]["min_load_ohm"] = 150.0
    open_line(page, job)
    open_screen(page, "Job")
    page.get_by_role("link", name="Test sheet", exact=True).tap()
    expect(page.locator(".paper-warning").first).to_contain_text("Do not connect")
    expect(page.locator(".paper")).to_contain_text("Back, without what lies beyond")
    expect_nothing_found(page)
    page.emulate_media(media="print")
    expect(page.locator(".bench")).to_be_hidden()
    expect(page.locator(".paper thead").first).to_be_visible()
    page.emulate_media(media="screen")
    with page.expect_download() as download:
        touch(page, "As CSV")
    assert Path(download.value.suggested_filename).suffix == ".csv"
    text = Path(str(download.value.path())).read_text(encoding="utf-8")
    assert "Nave control" in text
    assert "Do not connect" in text.splitlines()[1]


def test_each_printed_page_of_the_sheet_says_whose_it_is_and_the_cautions_come_first(
    page: Page,
) -> None:
    open_line(page, nave())
    open_screen(page, "Job")
    page.get_by_role("link", name="Test sheet", exact=True).tap()
    parts = page.locator(".paper > section")
    expect(parts.first).to_contain_text("Lock the amplifier off")
    expect(page.locator(".paper-running").first).to_be_hidden()
    page.emulate_media(media="print")
    heads = page.locator(".paper thead")
    expect(heads.nth(1)).to_contain_text("Nave: before anything else")
    for told in heads.all_inner_texts():
        assert re.search(r"Test sheet: .+, \d{4}-\d{2}-\d{2}", told), told
    expect(page.locator(".paper h2").first).to_be_hidden()
    rules = page.evaluate(PAGE_RULES)
    assert any("counter(page)" in rule and "counter(pages)" in rule for rule in rules)
    page.emulate_media(media="screen")


def test_the_tap_schedule_is_a_paper_of_its_own_and_a_spreadsheet(page: Page) -> None:
    open_line(page, nave())
    open_screen(page, "Job")
    page.get_by_role("link", name="Tap schedule", exact=True).tap()
    expect(page.locator(".paper-title")).to_contain_text("Tap schedule")
    expect(page.locator(".paper")).to_contain_text("This is what was entered")
    expect(page.locator(".paper tbody tr").filter(has_text="Nave control").first).to_be_visible()
    expect_nothing_found(page)
    with page.expect_download() as download:
        touch(page, "As CSV")
    assert download.value.suggested_filename == "tap-schedule.csv"
    page.go_back()
    page.get_by_role("link", name="Test sheet", exact=True).tap()
    expect(page.locator(".paper-title")).to_contain_text("Test sheet")


def test_a_zone_whose_steps_are_done_and_in_order_can_be_made_its_baseline(page: Page) -> None:
    begin_test(page)
    touch(page, "All zones")
    expect(page.locator(".test-zone")).to_contain_text("No baseline yet. Not in order: Nave")
    expect(page.get_by_role("button", name="its baseline")).to_have_count(0)
    touch(page, "Test Nave")
    touch(page, "Back")
    touch(page, "Measure again")
    type_reading(page, "5M")
    touch(page, "Next step")
    type_reading(page, "7")
    touch(page, "Next step")
    for _ in range(2):
        type_reading(page, "103")
        touch(page, "Next step")
    touch(page, "Make the readings of Nave its baseline")
    expect(page.get_by_role("button", name="take that back")).to_be_visible()
    expect_nothing_found(page)

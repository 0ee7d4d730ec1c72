"""What the meter said must not be connected is told on every screen of the job."""

from typing import Any

from playwright.sync_api import Page, expect

from tests.page.axe import expect_nothing_found
from tests.page.hands import open_screen, touch, type_reading
from tests.page.lines import look_at, nave, open_line

SAYS = "The meter says: do not connect"


def test_a_short_read_at_the_meter_leads_the_zone_and_the_job_until_it_is_mended(
    page: Page,
) -> None:
    open_line(page, nave())
    look_at(page, "Meter")
    type_reading(page, "103")
    expect(page.locator(".meter-verdict")).to_contain_text("As expected")
    type_reading(page, "5.3")
    verdict = page.locator(".meter-verdict")
    expect(verdict).to_contain_text("Do not connect")
    expect(verdict).to_contain_text("read 103 Ω then, 5.3 Ω now")
    expect(page.locator(".suspect").first).to_contain_text("short")
    expect(page.locator(".reading").first).to_contain_text("Set aside: read 103 Ω then")
    look_at(page, "List")
    expect(page.locator(".zone-head")).to_contain_text(SAYS)
    expect_nothing_found(page)
    page.get_by_role("link", name="To the readings").first.tap()
    expect(page.locator(".reading")).to_have_count(2)
    look_at(page, "Meter")
    type_reading(page, "103")
    expect(page.locator(".meter-verdict")).to_contain_text("As expected")
    look_at(page, "List")
    expect(page.locator(".zone-head")).not_to_contain_text(SAYS)


def test_an_old_reading_that_says_so_can_be_taken_back_from_the_job(page: Page) -> None:
    job: dict[str, Any] = nave()
    job["readings"] = [{
        "id": "r1", "at": "2026-05-20", "where": {"zone": "z"}, "looking": "out",
        "quantity": "z_1k_ohm", "value": 5.3, "controls": "override", "tolerance_pct": 5.0,
        "instrument": "Bench meter", "baseline": False,
    }]  # fmt: skip
    open_line(page, job)
    expect(page.locator(".zone-head")).to_contain_text(SAYS)
    page.get_by_role("link", name="To the readings").first.tap()
    visit = page.locator(".visit")
    visit.locator("summary").tap()
    touch(page, "Take this reading back")
    look_at(page, "List")
    expect(page.locator(".zone-head")).not_to_contain_text(SAYS)


def test_the_job_and_the_list_of_jobs_say_it_too(page: Page) -> None:
    open_line(page, nave())
    look_at(page, "Meter")
    type_reading(page, "5.3")
    expect(page.locator(".meter-verdict")).to_contain_text("Do not connect")
    page.get_by_role("link", name="Back").tap()
    expect(page.locator(".verdict-head")).to_contain_text(SAYS)
    page.get_by_role("link", name="Back").tap()
    expect(page.locator(".job-line").first).to_contain_text(SAYS)


def test_how_far_says_what_to_read_of_a_break_and_forgets_what_was_read_of_a_short(
    page: Page,
) -> None:
    open_screen(page, "Trouble")
    page.get_by_role("link", name="How far is it").tap()
    page.get_by_label("Cable", exact=True).select_option(index=6)
    page.get_by_label("At the amplifier").fill("2.2")
    page.get_by_role("radio", name="A break").tap()
    expect(page.get_by_label("At the amplifier")).to_have_value("")
    expect(page.locator(".meter")).to_contain_text("an impedance meter shows of it at 1 kHz")
    page.get_by_label("At the amplifier").fill("9")
    touch(page, "How far")
    expect(page.locator("#why-far")).to_contain_text("no line is so long")

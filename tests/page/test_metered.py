"""What the meter said must not be connected is told on every screen of the job."""

import json
from typing import Any

from playwright.sync_api import Page, expect

from pycore.jobs import Job
from tests.page.axe import expect_nothing_found
from tests.page.hands import open_screen, touch, type_reading
from tests.page.lines import look_at, nave, open_line
from tests.page.visitors import open_link
from web.tools.server import FolderServer

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


LIVE = "The meter says: the line is not dead"


def test_a_line_that_was_found_live_says_what_to_do_and_leads_the_zone_and_the_job(
    page: Page,
) -> None:
    open_line(page, nave())
    look_at(page, "Meter")
    page.get_by_label("What is read", exact=True).select_option("foreign_v")
    type_reading(page, "48")
    verdict = page.locator(".meter-verdict")
    expect(verdict).to_contain_text("Stop: the line is not dead")
    expect(verdict).to_contain_text("Touch nothing on it. Find where it comes from")
    look_at(page, "List")
    expect(page.locator(".zone-head")).to_contain_text("is not dead")
    expect(page.locator(".zone-head")).to_contain_text("Touch nothing on it")
    expect_nothing_found(page)
    page.get_by_role("link", name="Back").tap()
    expect(page.locator(".verdict-head")).to_contain_text(LIVE)
    page.get_by_role("link", name="To the readings").first.tap()
    expect(verdict).to_contain_text("Stop: the line is not dead")
    page.get_by_label("What is read", exact=True).select_option("foreign_v")
    type_reading(page, "0.1")
    expect(verdict).not_to_contain_text("Stop")
    page.get_by_label("What is read", exact=True).select_option("z_1k_ohm")
    look_at(page, "List")
    expect(page.locator(".zone-head")).not_to_contain_text("is not dead")


def test_what_must_not_be_connected_stands_first_in_the_preview_of_a_link(
    page: Page, served: FolderServer
) -> None:
    job: dict[str, Any] = nave()
    job["readings"] = [{
        "id": "r1", "at": "2026-05-20", "where": {"zone": "z"}, "looking": "out",
        "quantity": "z_1k_ohm", "value": 5.3, "controls": "override", "tolerance_pct": 5.0,
        "instrument": "Bench meter", "baseline": False,
    }]  # fmt: skip
    open_link(page, Job.model_validate_json(json.dumps(job)), address=served.address)
    told = page.locator(".open-preview > p")
    expect(told.nth(1)).to_have_text(SAYS)
    expect(told.nth(2)).to_contain_text("Nave reads 5.3 Ω")
    expect_nothing_found(page)


def test_bypassed_is_offered_only_where_a_control_of_the_line_can_be_bypassed(page: Page) -> None:
    stances = page.get_by_label("Controls", exact=True).locator("option")
    job: dict[str, Any] = nave()
    open_line(page, job)
    look_at(page, "Meter")
    expect(page.locator(".meter-big")).to_be_visible()
    expect(stances).to_have_text(["at 0 dB", "as they stand", "bypassed"])
    again = nave()
    control = next(one for one in again["zones"][0]["line"] if one["id"] == "v")
    control["fitted"]["override"] = False
    open_line(page, again)
    look_at(page, "Meter")
    expect(page.locator(".meter-big")).to_be_visible()
    expect(stances).to_have_text(["at 0 dB", "as they stand"])


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

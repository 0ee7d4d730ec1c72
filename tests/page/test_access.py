"""No screen breaks a rule that axe knows, by day and by night."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.page.axe import expect_nothing_found
from tests.page.conftest import PHONE
from tests.page.hands import (
    PATIENCE_MILLISECONDS,
    choose_supply,
    count_row,
    expect_kept,
    open_demo,
    open_screen,
    open_zone,
    pick_point,
    touch,
)
from tests.page.visitors import changed, make_visitor, open_link, open_way, rename
from web.tools.server import FolderServer


@pytest.fixture(scope="module")
def seen(chromium: Browser, served: FolderServer) -> Iterator[Page]:
    """One page, walked through all screens."""
    context = chromium.new_context(**PHONE, service_workers="block")
    context.set_default_timeout(PATIENCE_MILLISECONDS)
    page = context.new_page()
    page.goto(served.address)
    choose_supply(page, volts="70.7 V", watts="120")
    yield page
    context.close()


def test_the_tally_and_its_working(seen: Page) -> None:
    expect_nothing_found(seen)
    count_row(seen, "6", "30 W")
    expect(seen.locator(".sum-headline")).to_have_text("Too much")
    expect_nothing_found(seen)
    touch(seen, "4")
    expect_nothing_found(seen)
    seen.locator(".sum-big button").tap()
    expect(seen.locator(".working-result")).to_be_visible()
    expect_nothing_found(seen)


def test_jobs_and_the_question_before_deleting(seen: Page) -> None:
    open_screen(seen, "Jobs")
    expect_nothing_found(seen)
    open_demo(seen)
    open_screen(seen, "Jobs")
    touch(seen, "More for Ilverne Glasshouses")
    expect_nothing_found(seen)
    touch(seen, "Delete")
    expect_nothing_found(seen)
    touch(seen, "Keep it")


def test_a_job_its_limits_and_forms(seen: Page) -> None:
    open_screen(seen, "Job")
    expect_nothing_found(seen)
    folded = seen.locator(".finding-group:not([open]) summary")
    while folded.count():
        folded.first.tap()
    expect_nothing_found(seen)
    for form in ("Add amplifier", "Add zone", "Name and place"):
        touch(seen, form)
        expect_nothing_found(seen)
        touch(seen, "Close without saving")
    seen.locator(".output .pick").first.tap()
    expect_nothing_found(seen)
    touch(seen, "Close")
    seen.get_by_role("link", name="Limits").tap()
    expect(seen.get_by_role("heading", level=1)).to_have_text("Limits")
    expect_nothing_found(seen)


def test_the_kinds_and_their_forms(seen: Page) -> None:
    open_screen(seen, "Job")
    seen.get_by_role("link", name="Kinds", exact=True).tap()
    expect(seen.get_by_role("heading", level=1)).to_have_text("Kinds")
    seen.locator("summary").first.tap()
    expect_nothing_found(seen)
    for form in ("Own loudspeaker", "Own cable", "Own attenuator"):
        touch(seen, form)
        touch(seen, "Add")
        expect(seen.locator(".field-problem")).to_be_visible()
        expect_nothing_found(seen)
        touch(seen, "Close without saving")
    seen.locator(".kind-line .pick").first.tap()
    expect_nothing_found(seen)
    touch(seen, "Close")


def test_a_zone_its_points_and_forms(seen: Page) -> None:
    open_screen(seen, "Job")
    open_zone(seen, "Palm House")
    expect_nothing_found(seen)
    pick_point(seen, "Palm House 7")
    expect_nothing_found(seen)
    touch(seen, "Change")
    expect_nothing_found(seen)
    touch(seen, "Close without saving")
    touch(seen, "Remove")
    expect_nothing_found(seen)
    touch(seen, "Close")
    touch(seen, "Loudspeakers")
    seen.get_by_label("Tap, watts").fill("nonsense")
    touch(seen, "Add")
    expect(seen.locator(".field-problem")).to_be_visible()
    expect_nothing_found(seen)


def test_about(seen: Page) -> None:
    open_screen(seen, "About")
    expect_nothing_found(seen)


def test_the_screens_by_which_a_job_travels(seen: Page, served: FolderServer) -> None:
    job = make_visitor("ax1", "Lock house")
    open_link(seen, job, address=served.address)
    expect_nothing_found(seen)
    touch(seen, "Keep it")
    expect(seen.get_by_role("heading", level=1)).to_have_text("Lock house")
    expect_kept(seen)
    rename(seen, "Lock house, mine")
    for screen in ("Share", "History"):
        open_way(seen, screen)
        expect(seen.locator(".code, .state-line").first).to_be_visible()
        expect_nothing_found(seen)
        seen.go_back()
    open_link(seen, changed(job, name="Lock house, theirs", place="North"), address=served.address)
    expect_nothing_found(seen)
    touch(seen, "Compare, take some")
    expect(seen.locator(".change").first).to_be_visible()
    expect_nothing_found(seen)
    seen.goto(f"{served.address}#1.cut")
    expect(seen.locator(".open-problem")).to_be_visible()
    expect_nothing_found(seen)

"""The list of jobs: new, rename, copy, delete, to a file and back; and names that mean harm."""

import json
from pathlib import Path

from playwright.sync_api import BrowserContext, Page, expect

from tests.page.hands import (
    HeldEngine,
    choose_supply,
    count_row,
    expect_kept,
    give_file,
    open_demo,
    open_screen,
    touch,
)
from web.tools.server import FolderServer

HARM = '<img src=x onerror="document.title=1">{{7*7}}${7*7}<b>"\'&amp;'


def rename(page: Page, name: str) -> None:
    """Give the open job another name."""
    touch(page, "Name and place")
    page.get_by_label("Name of the job").fill(name)
    touch(page, "Save")
    expect(page.get_by_role("heading", level=1)).to_have_text(name)
    expect_kept(page)


def pick(page: Page, name: str) -> None:
    """Pick a job of the list, to see what can be done with it."""
    touch(page, f"More for {name}")


def test_two_jobs_are_named_copied_and_deleted(fresh: Page) -> None:
    page = fresh
    open_screen(page, "Jobs")
    touch(page, "New job")
    rename(page, "North wing")
    open_screen(page, "Jobs")
    touch(page, "New job")
    rename(page, "South wing")
    open_screen(page, "Jobs")
    pick(page, "North wing")
    touch(page, "Copy")
    expect(page.get_by_role("heading", level=1)).to_have_text("North wing (copy)")
    open_screen(page, "Jobs")
    expect(page.locator(".job-line")).to_have_count(3)
    pick(page, "South wing")
    touch(page, "Delete")
    touch(page, "Keep it")
    expect(page.locator(".job-line")).to_have_count(3)
    touch(page, "Delete")
    touch(page, "Delete it")
    expect(page.locator(".job-line")).to_have_count(2)
    expect(page.locator(".cards")).not_to_contain_text("South wing")
    page.reload()
    expect(page.locator(".job-line")).to_have_count(2)


def test_a_copy_lives_apart_from_the_job_it_came_from(fresh: Page) -> None:
    page = fresh
    open_demo(page)
    first = page.url
    open_screen(page, "Jobs")
    pick(page, "Ilverne Glasshouses")
    touch(page, "Copy")
    expect(page.get_by_role("heading", level=1)).to_have_text("Ilverne Glasshouses (copy)")
    assert page.url != first
    rename(page, "Another")
    page.goto(first)
    expect(page.get_by_role("heading", level=1)).to_have_text("Ilverne Glasshouses")


def test_a_job_goes_to_a_file_and_comes_back_as_it_was(fresh: Page, tmp_path: Path) -> None:
    page = fresh
    open_demo(page)
    page.get_by_role("link", name="Share", exact=True).tap()
    with page.expect_download() as waiting:
        touch(page, "Save the file")
    file = tmp_path / "job.json"
    waiting.value.save_as(file)
    saved = json.loads(file.read_text(encoding="utf-8"))
    assert saved["format"] == "rungline-job"
    open_screen(page, "Jobs")
    pick(page, "Ilverne Glasshouses")
    touch(page, "Delete")
    touch(page, "Delete it")
    expect(page.locator(".job-line")).to_have_count(0)
    give_file(page, file)
    touch(page, "Keep it")
    expect(page.get_by_role("heading", level=1)).to_have_text("Ilverne Glasshouses")
    assert f"#/job/{saved['id']}" in page.url


def test_a_job_that_is_here_already_is_never_overwritten_by_a_file(
    fresh: Page, tmp_path: Path
) -> None:
    page = fresh
    open_demo(page)
    page.get_by_role("link", name="Share", exact=True).tap()
    with page.expect_download() as waiting:
        touch(page, "Save the file")
    file = tmp_path / "job.json"
    waiting.value.save_as(file)
    page.get_by_role("link", name="Back to Ilverne Glasshouses").tap()
    rename(page, "Changed since")
    give_file(page, file)
    touch(page, "Keep as a new job")
    expect(page.get_by_role("heading", level=1)).to_contain_text("(from elsewhere)")
    open_screen(page, "Jobs")
    expect(page.locator(".job-line")).to_have_count(2)
    expect(page.locator(".cards")).to_contain_text("Changed since")


def test_a_file_that_is_no_job_is_refused_in_plain_words(fresh: Page, tmp_path: Path) -> None:
    page = fresh
    file = tmp_path / "letter.json"
    file.write_text('{"format": "letter"}', encoding="utf-8")
    give_file(page, file)
    expect(page.locator(".open-problem")).to_be_visible()
    open_screen(page, "Jobs")
    expect(page.locator(".job-line")).to_have_count(0)


def test_harmful_names_are_shown_as_the_text_they_are(fresh: Page) -> None:
    page = fresh
    open_screen(page, "Jobs")
    touch(page, "New job")
    rename(page, HARM)
    open_screen(page, "Jobs")
    expect(page.locator(".job-line b")).to_have_text(HARM)
    pick(page, HARM)
    touch(page, "Delete")
    expect(page.get_by_role("dialog")).to_contain_text(HARM)
    assert page.locator("img").count() == 0
    assert page.evaluate("document.title") == "Jobs · Rungline"


def test_what_is_asked_before_the_engine_is_there_waits_in_sight_and_is_done_once(
    phone: BrowserContext, served: FolderServer
) -> None:
    page = phone.new_page()
    held = HeldEngine(page)
    page.goto(served.address)
    choose_supply(page, volts="70.7 V", watts="120")
    count_row(page, "6", "5 W")
    for _ in range(3):
        touch(page, "Keep as a job")
    waits = page.locator(".notices")
    expect(waits).to_contain_text("Done as soon as the engine is ready:")
    expect(waits.get_by_text("Keep as a job")).to_have_count(1)
    held.let_go()
    expect(page.locator(".verdict-big")).to_have_text("The watts fit")
    expect(waits).not_to_contain_text("Done as soon as")
    open_screen(page, "Jobs")
    expect(page.locator(".job-line")).to_have_count(1)


def test_a_finding_leads_to_what_it_is_about_and_its_remedy_stands_there(page: Page) -> None:
    open_demo(page)
    finding = page.locator(".finding").filter(has_text="Palm House 7")
    finding.get_by_role("button", name="Go to Palm House 7").tap()
    expect(page.get_by_role("heading", level=1)).to_have_text("Palm House")
    expect(page.locator(".bench-title h2")).to_have_text("Palm House 7")
    expect(page.locator(".bench-remedy")).to_contain_text("turn the selector to the row")
    expect(page.locator(".point.picked")).to_be_in_viewport()


def test_a_finding_about_an_output_or_a_zone_leads_there(page: Page) -> None:
    open_demo(page)
    loads = page.locator(".finding-group").filter(has_text="Load of an output").first
    loads.locator("summary").tap()
    way = loads.locator(".finding-way").first
    title = way.inner_text().strip()
    way.tap()
    expect(page.locator(".output.picked")).to_be_in_viewport()
    expect(page.locator(".bench-head h2")).to_contain_text(title.split(" · ")[-1])
    zones = page.locator(".finding-group").filter(has_text="Impedance of a zone").first
    zones.locator("summary").tap()
    way = zones.locator(".finding-way").first
    title = way.inner_text().strip()
    way.tap()
    expect(page.get_by_role("heading", level=1)).to_have_text(title)


def add_amplifier(page: Page, *, watts: str) -> None:
    """Add one, leaving its name as it is offered."""
    touch(page, "Add amplifier")
    page.get_by_label("Line voltage").select_option(label="70.7 V")
    page.get_by_label("Watts of the output").fill(watts)
    touch(page, "Add")


def test_amplifiers_and_outputs_are_told_apart_without_a_name_typed(page: Page) -> None:
    open_screen(page, "Jobs")
    touch(page, "New job")
    add_amplifier(page, watts="120")
    add_amplifier(page, watts="250")
    expect(page.locator(".amplifier-head b")).to_have_text(["Amplifier", "Amplifier 2"])
    touch(page, "Add zone")
    told = page.get_by_label("Driven by", exact=True).locator("option").all_inner_texts()
    plain = [" ".join(text.split()) for text in told]
    assert plain[1:] == ["Amplifier · A, 70.7 V · 120 W", "Amplifier 2 · A, 70.7 V · 250 W"]
    page.keyboard.press("Escape")
    page.locator(".amplifier-head .pick").nth(1).tap()
    touch(page, "Add output")
    expect(page.get_by_label("Name", exact=True)).to_have_value("B")


def test_once_all_outputs_share_watts_nothing_more_is_offered_to_share(page: Page) -> None:
    open_screen(page, "Jobs")
    touch(page, "New job")
    add_amplifier(page, watts="120")
    page.locator(".amplifier-head .pick").tap()
    touch(page, "Add output")
    touch(page, "Add")
    touch(page, "Outputs share watts")
    page.get_by_label("Watts they share").fill("150")
    touch(page, "Save")
    expect(page.get_by_role("button", name="Outputs share watts")).to_have_count(0)
    expect(page.get_by_role("button", name="They share nothing")).to_have_count(0)
    expect(page.locator(".bench")).to_contain_text("share")

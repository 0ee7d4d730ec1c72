"""Privacy, installing, keyboard, large text: what holds on every screen."""

import re
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import BrowserType, Page, expect

from tests.page.conftest import NewContext
from tests.page.hands import choose_supply, count_row, open_demo, open_screen, open_zone, pick_point
from tests.page.lines import look_at
from web.tools.ready_machine import BROWSER_ARGUMENTS, find_chromium
from web.tools.server import FolderServer

LEAST_TARGET_PIXELS = 48
TARGETS = """() => [...document.querySelectorAll("button, select, input, .foot-way, .top-back")]
    .filter((each) => each.checkVisibility() && !each.closest(".unseen"))
    .map((each) => {
        const { width, height } = each.getBoundingClientRect();
        return [each.outerHTML.slice(0, 90), width, height];
    })"""
OVERHANG = """() => {
    const { scrollWidth, clientWidth } = document.querySelector("main");
    return scrollWidth - clientWidth;
}"""


def test_nothing_is_asked_of_any_other_host(new_context: NewContext, served: FolderServer) -> None:
    context = new_context()
    asked: list[str] = []
    context.on("request", lambda request: asked.append(request.url))
    page = context.new_page()
    complaints: list[str] = []
    page.on("console", lambda message: complaints.append(message.text))
    page.goto(served.address)
    choose_supply(page, volts="70.7 V", watts="120")
    count_row(page, "6", "5 W")
    expect(page.locator(".sum-big")).to_have_text("30 W")
    open_demo(page)
    open_screen(page, "About")
    expect(page.get_by_role("heading", level=1)).to_have_text("About")
    assert len(asked) > 20
    assert [url for url in asked if not url.startswith((served.address, "data:", "blob:"))] == []
    assert [text for text in complaints if "Content Security Policy" in text] == []


def test_it_can_be_installed(served: FolderServer, tmp_path: Path, chromium: Any) -> None:
    kind: BrowserType = chromium.browser_type
    context = kind.launch_persistent_context(
        tmp_path, executable_path=find_chromium(), args=list(BROWSER_ARGUMENTS)
    )
    try:
        page = context.new_page()
        page.goto(served.address)
        tools = context.new_cdp_session(page)
        assert tools.send("Page.getInstallabilityErrors")["installabilityErrors"] == []
        manifest = tools.send("Page.getAppManifest")
        assert manifest["errors"] == []
        assert '"short_name": "Rungline"' in manifest["data"]
    finally:
        context.close()


def test_a_tally_needs_nothing_but_a_keyboard(page: Page) -> None:
    expect(page.get_by_label("70.7 V", exact=True)).to_be_visible()
    page.get_by_label("25 V", exact=True).focus()
    page.keyboard.press("ArrowRight")
    page.keyboard.press("Tab")
    page.keyboard.type("120")
    page.get_by_label("Or type a row").focus()
    page.keyboard.type("6 x 5")
    page.keyboard.press("Enter")
    expect(page.locator(".sum-big")).to_have_text("30 W")
    page.locator(".sum-big button").focus()
    page.keyboard.press("Enter")
    expect(page.locator("#working-title")).to_be_focused()
    page.keyboard.press("Escape")
    expect(page.locator(".working")).to_have_count(0)
    expect(page.locator(".sum-big button")).to_be_focused()


def test_a_new_screen_takes_the_focus_and_names_the_page(page: Page) -> None:
    open_screen(page, "About")
    expect(page.get_by_role("heading", level=1)).to_be_focused()
    expect(page).to_have_title("About · Rungline")


@pytest.mark.parametrize("screen", ["tally", "jobs", "job", "zone", "point", "form"])
def test_every_target_is_large_enough_for_a_glove(page: Page, screen: str) -> None:
    if screen == "tally":
        choose_supply(page, volts="70.7 V", watts="120")
        count_row(page, "6", "5 W")
        expect(page.locator(".sum-headline")).to_have_text("The watts fit")
    else:
        open_demo(page)
    if screen == "jobs":
        open_screen(page, "Jobs")
        expect(page.locator(".job-line").first).to_be_visible()
    if screen in ("zone", "point", "form"):
        open_zone(page, "Palm House")
    if screen in ("point", "form"):
        pick_point(page, "Palm House 3")
    if screen == "form":
        page.get_by_role("button", name="Change", exact=True).tap()
        expect(page.locator(".form")).to_be_visible()
    small = [
        target for target in page.evaluate(TARGETS) if min(target[1:]) < LEAST_TARGET_PIXELS - 0.5
    ]
    # A number within a sentence-like line opens by its text; the row it stands in gives it room.
    assert [target for target in small if "figure" not in target[0]] == []


@pytest.mark.parametrize("how", ["text of 200 %", "320 px"])
def test_nothing_runs_out_of_a_narrow_or_enlarged_screen(
    new_context: NewContext, served: FolderServer, how: str
) -> None:
    width = 320 if how == "320 px" else 360
    context = new_context(viewport={"width": width, "height": 740})
    page = context.new_page()
    page.goto(served.address)
    if how != "320 px":
        page.evaluate("document.documentElement.style.fontSize = '200%'")
    open_demo(page)
    for screen in ("Tally", "Jobs", "Job", "About"):
        open_screen(page, screen)
        expect(page.locator("main")).to_be_visible()
        wide = page.evaluate("document.scrollingElement.scrollWidth")
        inner = page.evaluate(OVERHANG)
        assert wide <= width, screen
        assert inner <= 1, screen


def test_print_is_ink_on_white_without_controls(page: Page) -> None:
    open_demo(page)
    page.emulate_media(media="print", color_scheme="dark")
    colour = page.evaluate("getComputedStyle(document.body).backgroundColor")
    assert colour == "rgb(255, 255, 255)"
    expect(page.locator(".foot")).to_be_hidden()
    expect(page.locator(".bench")).to_be_hidden()
    expect(page.locator(".verdict-big")).to_be_visible()


# a number that opens its working is a button too, and is printed as the number it is
CONTROLS = ".plain-button, .chief-button, .bench-button, .square, .views, .segments, .top-back"


@pytest.mark.parametrize("view", ["List", "Drawing", "Cable", "Meter"])
def test_the_paper_of_a_line_names_its_job_and_carries_no_controls(page: Page, view: str) -> None:
    open_demo(page)
    open_zone(page, "Palm House")
    look_at(page, view)
    page.emulate_media(media="print", color_scheme="dark")
    expect(page.locator(".top-of")).to_have_text("Ilverne Glasshouses")
    expect(page.locator(".top-of")).to_be_visible()
    for control in page.locator(CONTROLS).all():
        expect(control).to_be_hidden()
    page.emulate_media(media="screen", color_scheme="light")
    expect(page.locator(".top-of")).to_be_hidden()


def test_lengths_are_shown_in_feet_when_the_person_wants_feet(fresh: Page) -> None:
    open_demo(fresh)
    open_screen(fresh, "About")
    fresh.get_by_label("Lengths in").select_option("ft")
    fresh.get_by_label("Decimal sign").select_option(",")
    open_screen(fresh, "Job")
    open_zone(fresh, "Palm House")
    expect(fresh.locator(".point").first).to_contain_text(re.compile(r"\d+(,\d+)?\sft"))

"""The meter by keyboard alone: trouble, first test, readings, distances; nothing said twice."""

import pytest
from playwright.sync_api import Page, expect

from tests.page.hands import open_trouble
from tests.page.keys import Keys, expect_plain_to_hear
from tests.page.lines import look_at, nave, open_line

LIVE = "[role=status], [role=alert]"


def expect_said_once(page: Page, words: str) -> None:
    """Exactly one place that is read aloud by itself says this."""
    expect(page.locator(LIVE).filter(has_text=words)).to_have_count(1)


@pytest.fixture
def keys(page: Page) -> Keys:
    """A keyboard on the warm page."""
    return Keys(page)


def choose_volts(keys: Keys, volts: str) -> None:
    """The second of the line voltages, which a line that was started over may have left."""
    keys.press("Tab")
    choice = keys.page.get_by_label(volts, exact=True)
    if not choice.is_checked():
        keys.press("ArrowRight")
    expect(choice).to_be_checked()


def test_trouble_from_a_bare_count_to_one_group(keys: Keys) -> None:
    page = keys.page
    open_trouble(page)
    page.keyboard.press("Tab")
    keys.use("button", "Begin")
    expect(page.get_by_role("alert")).to_contain_text("how many loudspeakers")
    expect(page.get_by_label("Loudspeakers, about")).to_be_focused()
    keys.type("Loudspeakers, about", "10")
    keys.type("On a tap of", "5")
    choose_volts(keys, "70.7 V")
    keys.press("Tab", "Enter")
    expect(page.get_by_role("heading", level=1)).to_be_focused()
    for number in (7, 8, 9, 10):
        tile = page.locator(".tile").nth(number - 1)
        keys.reach(tile)
        keys.press("Space")
        expect(tile).to_contain_text("silent")
        expect(tile).to_be_focused()
    keys.go("radio", "silent")
    keys.press("ArrowLeft")
    expect(page.get_by_role("radio", name="weak")).to_be_checked()
    keys.use("button", "All others play well")
    words = "broken between Loudspeaker 6 and Loudspeaker 7"
    expect(page.locator(".suspect").first).to_contain_text(words)
    expect_said_once(page, words)
    keys.expect_seen()
    expect_plain_to_hear(page)
    keys.use("button", "Start over")
    expect(page.get_by_label("Loudspeakers, about")).to_be_visible()
    keys.expect_seen()


@pytest.fixture
def first_test(keys: Keys) -> Keys:
    """At the first step of a zone's first test."""
    open_line(keys.page, nave())
    keys.page.keyboard.press("Tab")
    keys.page.goto(f"{keys.page.url.split('/zone')[0]}/test")
    keys.use("button", "Begin")
    keys.use("button", "Test Nave")
    return keys


def read_on(keys: Keys, *readings: str) -> None:
    """From step to step, a reading typed at each."""
    for reading in readings:
        keys.use("button", "Next step")
        keys.type("What the meter shows", reading)
        keys.page.keyboard.press("Enter")
        expect(keys.page.locator(".reading-shown")).to_contain_text(reading)
        keys.expect_seen()


def test_a_first_test_of_one_zone(first_test: Keys) -> None:
    keys, page = first_test, first_test.page
    title = page.locator("#test-title")
    expect(title).to_have_text("Lock it off")
    expect(title).to_be_focused()
    keys.use("button", "Done")
    expect(title).to_be_focused()
    keys.type("What the meter shows", "0.2")
    page.keyboard.press("Enter")
    expect(page.locator(".reading-shown")).to_have_text("0.2 V")
    expect_said_once(page, "0.2 V.")
    keys.expect_seen()
    keys.use("button", "Next step")
    expect(title).to_be_focused()
    keys.use("button", "Done")
    keys.use("button", "OL: it shows no number")
    keys.use("button", "Judge it")
    expect(page.locator(".reading-shown")).to_be_visible()
    keys.expect_seen()
    read_on(keys, "4.1", "102")
    expect_plain_to_hear(page)
    keys.use("button", "Next step")
    keys.use("button", "Leave out")
    expect(page.locator(".test-rows")).to_be_visible()
    keys.use("button", "To the summary")
    expect(page.locator(".test-zone")).to_be_visible()
    keys.expect_seen()
    expect_plain_to_hear(page)


def test_a_reading_is_judged_taken_back_as_proposed_and_opened(keys: Keys) -> None:
    page = keys.page
    open_line(page, nave())
    look_at(page, "Meter")
    page.keyboard.press("Tab")
    keys.go("combobox", "What is read").select_option("z_1k_ohm")
    keys.type("What the meter shows", "230")
    page.keyboard.press("Enter")
    expect(page.locator(".meter-read")).to_contain_text("230 Ω")
    expect(page.get_by_label("What the meter shows")).to_be_focused()
    expect_said_once(page, "Reading 1: 230 Ω")
    expect_plain_to_hear(page)
    keys.use("button", "Take this reading")
    expect(page.get_by_label("What the meter shows")).to_be_focused()
    assert page.get_by_label("Where", exact=True).input_value().startswith("point:")
    keys.use("button", "Take this reading back")
    expect(page.locator(".meter-read")).to_have_count(0)
    keys.expect_seen()
    page.get_by_label("Where", exact=True).select_option(index=0)
    keys.type("What the meter shows", "102")
    page.keyboard.press("Enter")
    expect(page.locator(".meter-read")).to_contain_text("102 Ω")
    keys.reach(page.locator(".meter-should .meter-big button"))
    page.keyboard.press("Enter")
    expect(page.locator("#working-title")).to_be_focused()
    page.keyboard.press("Escape")
    expect(page.locator(".working")).to_have_count(0)
    keys.expect_seen()


def test_a_distance_from_one_end_and_from_both(keys: Keys) -> None:
    page = keys.page
    open_line(page, nave())
    look_at(page, "Meter")
    page.keyboard.press("Tab")
    keys.use("link", "How far is it")
    expect(page.get_by_role("heading", level=2, name="How far is it")).to_be_visible()
    keys.use("button", "How far")
    expect(page.get_by_role("alert")).to_contain_text("what the meter shows at the amplifier")
    expect(page.get_by_label("At the amplifier")).to_be_focused()
    page.keyboard.type("2.6")
    page.keyboard.press("Enter")
    expect(page.locator(".meter-big")).to_have_text("48.1 m")
    expect(page.get_by_label("At the amplifier")).to_be_focused()
    expect_said_once(page, "48.1 m")
    keys.go("radio", "A short", back=True)
    keys.press("ArrowRight")
    expect(page.get_by_role("radio", name="A break")).to_be_checked()
    keys.press("ArrowLeft")
    keys.type("At the far end, if read", "4")
    expect_plain_to_hear(page)
    keys.go("combobox", "Read at").select_option(label="Nave 6")
    keys.use("button", "How far")
    expect(page.locator(".meter-big, #why-far").first).to_be_visible()
    keys.expect_seen()

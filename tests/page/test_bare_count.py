"""Something is wrong with a line of which nothing but a count is known."""

import pytest
from playwright.sync_api import Page, expect

from tests.page.axe import expect_nothing_found
from tests.page.hands import begin_with_about_ten, open_screen, open_trouble, touch, type_reading


@pytest.fixture
def about_ten(page: Page) -> Page:
    """A line of about ten, 5 W on 70.7 V, and nothing more known of it."""
    begin_with_about_ten(page)
    expect(page.locator(".tile")).to_have_count(10)
    return page


def test_a_bare_count_and_ears_name_the_break_and_what_is_not_heard_stays_unknown(
    about_ten: Page,
) -> None:
    for number in (6, 7, 8, 9):
        about_ten.locator(".tile").nth(number).tap()
    expect(about_ten.get_by_text("unknown", exact=True)).to_have_count(6)
    touch(about_ten, "All others play well")
    first = about_ten.locator(".suspect").first
    expect(first.locator(".strip-cross")).to_have_count(1)
    expect(first).to_contain_text("broken between Loudspeaker 6 and Loudspeaker 7")
    expect(first).not_to_contain_text(" m from the amplifier")
    expect(about_ten.locator(".meter")).to_contain_text("Found, by a rough count")
    expect(about_ten.locator(".meter")).to_contain_text("This rests on the count as it was typed")
    expect_nothing_found(about_ten)
    touch(about_ten, "Start over")


def test_a_bare_count_survives_a_reload_and_becomes_a_job_with_its_readings(
    about_ten: Page,
) -> None:
    about_ten.get_by_label("The complaint", exact=True).select_option("silent_beyond")
    about_ten.get_by_label("What is read", exact=True).select_option("z_1k_ohm")
    type_reading(about_ten, "168")
    expect(about_ten.locator(".reading-shown")).to_have_text("168 Ω")
    about_ten.reload()
    expect(about_ten.locator(".reading-shown")).to_have_text("168 Ω")
    about_ten.locator(".reading-should button").tap()
    expect(about_ten.locator(".working-result")).to_be_visible()
    about_ten.get_by_role("button", name="Close").tap()
    touch(about_ten, "Keep it as a job")
    expect(about_ten.get_by_role("heading", level=1)).to_have_text("Line")
    expect(about_ten.locator(".reading-shown")).to_have_text("168 Ω")
    open_screen(about_ten, "Trouble")
    touch(about_ten, "Start over")


def say_instrument(page: Page, *, name: str, tolerance: str) -> None:
    """Say what is measured with."""
    if not page.get_by_label("Its tolerance").is_visible():
        page.locator(".instrument summary").tap()
    page.get_by_label("Meter", exact=True).fill(name)
    page.get_by_label("Its tolerance").fill(tolerance)


def test_what_is_typed_of_the_instrument_counts_on_a_bare_count_and_goes_into_the_job(
    about_ten: Page,
) -> None:
    about_ten.get_by_label("What is read", exact=True).select_option("z_1k_ohm")
    say_instrument(about_ten, name="", tolerance="")
    type_reading(about_ten, "120")
    usual = about_ten.locator(".reading-should button").inner_text()
    touch(about_ten, "Take this reading back")
    say_instrument(about_ten, name="Bench 7", tolerance="1")
    type_reading(about_ten, "120")
    expect(about_ten.locator(".reading-should button")).not_to_have_text(usual)
    sharp = about_ten.locator(".reading-should button").inner_text()
    touch(about_ten, "Keep it as a job")
    expect(about_ten.get_by_role("heading", level=1)).to_have_text("Line")
    about_ten.locator(".reading-should button").tap()
    expect(about_ten.locator(".working")).to_contain_text("1 %")
    about_ten.get_by_role("button", name="Close").tap()
    assert sharp != usual
    say_instrument(about_ten, name="", tolerance="")
    open_screen(about_ten, "Trouble")
    touch(about_ten, "Start over")


def test_what_was_started_over_can_be_put_back(about_ten: Page) -> None:
    about_ten.get_by_label("What is read", exact=True).select_option("z_1k_ohm")
    type_reading(about_ten, "168")
    expect(about_ten.locator(".reading-shown")).to_have_text("168 Ω")
    touch(about_ten, "Start over")
    expect(about_ten.get_by_label("Loudspeakers, about")).to_have_value("")
    touch(about_ten, "Put it back")
    expect(about_ten.locator(".reading-shown")).to_have_text("168 Ω")
    touch(about_ten, "Start over")


def test_readings_stay_with_the_same_count_and_those_of_another_can_be_put_back(
    about_ten: Page,
) -> None:
    about_ten.get_by_label("What is read", exact=True).select_option("z_1k_ohm")
    type_reading(about_ten, "168")
    shown = about_ten.locator(".reading-shown")
    touch(about_ten, "Change")
    touch(about_ten, "Begin")
    expect(shown).to_have_text("168 Ω")
    touch(about_ten, "Change")
    about_ten.get_by_label("Loudspeakers, about").fill("12")
    touch(about_ten, "Begin")
    expect(about_ten.locator(".tile")).to_have_count(12)
    expect(shown).to_have_count(0)
    touch(about_ten, "Put it back")
    expect(shown).to_have_text("168 Ω")
    expect(about_ten.locator(".tile")).to_have_count(10)
    touch(about_ten, "Start over")


def test_what_cannot_be_done_there_is_not_asked_for_and_is_remembered(about_ten: Page) -> None:
    complaint = about_ten.get_by_label("The complaint", exact=True)
    complaint.select_option("silent_beyond")
    about_ten.get_by_label("What is read", exact=True).select_option("z_1k_ohm")
    type_reading(about_ten, "201")
    walk = about_ten.locator(".meter-next-words", has_text="walk once through")
    climb = about_ten.locator(".meter-next-words", has_text="At Loudspeaker")
    expect(walk).to_have_count(1)
    about_ten.get_by_text("How hard it is to get there", exact=True).tap()
    about_ten.get_by_label("Walk and listen").select_option("never")
    expect(climb).to_have_count(1)
    expect_nothing_found(about_ten)
    about_ten.reload()
    complaint.select_option("silent_beyond")
    expect(climb).to_have_count(1)
    about_ten.get_by_text("How hard it is to get there", exact=True).tap()
    about_ten.get_by_label("Walk and listen").select_option("usual")
    expect(walk).to_have_count(1)
    touch(about_ten, "Start over")


def test_a_reading_that_cannot_be_read_goes_back_to_where_it_was_typed(about_ten: Page) -> None:
    about_ten.get_by_label("What is read", exact=True).select_option("z_1k_ohm")
    type_reading(about_ten, "1.6.8")
    expect(about_ten.locator(".notices")).to_contain_text("1.6.8")
    expect(about_ten.get_by_label("What the meter shows")).to_have_value("1.6.8")
    expect(about_ten.locator(".reading-shown")).to_have_count(0)
    touch(about_ten, "Start over")


def test_a_count_that_cannot_be_read_says_so_where_it_is_typed(page: Page) -> None:
    open_trouble(page)
    page.get_by_label("Loudspeakers, about").fill("ten")
    page.get_by_label("On a tap of").fill("5")
    page.get_by_label("70.7 V", exact=True).tap()
    touch(page, "Begin")
    expect(page.locator("#why-wrong")).to_contain_text("cannot be read")
    expect_nothing_found(page)
    page.get_by_label("Loudspeakers, about").fill("")

"""The meter on a phone: what a line should read, a reading judged, suspects, what is next."""

import pytest
from playwright.sync_api import Page, expect

from tests.page.axe import expect_nothing_found
from tests.page.hands import expect_kept, open_demo, open_zone, touch, type_reading


@pytest.fixture
def meter(fresh: Page) -> Page:
    """The meter's screen of a zone of the demo, on a phone where nothing was read yet."""
    open_demo(fresh)
    open_zone(fresh, "Palm House")
    fresh.get_by_role("link", name="Meter", exact=True).tap()
    expect(fresh.locator(".meter-big")).to_be_visible()
    return fresh


def test_before_any_reading_it_says_what_the_line_should_read_and_what_to_do_first(
    meter: Page,
) -> None:
    expect(meter.locator(".meter-big")).to_have_text("168 Ω")
    expect(meter.locator(".meter")).to_contain_text("Lock the amplifier off")
    expect(meter.locator(".suspect")).to_have_count(0)


def test_a_reading_far_too_high_gives_suspects_and_the_next_reading(meter: Page) -> None:
    type_reading(meter, "230")
    expect(meter.locator(".reading-shown")).to_have_text("230 Ω")
    expect(meter.locator(".reading .band")).to_be_visible()
    expect(meter.locator(".suspect").first).to_contain_text("broken")
    expect(meter.locator(".meter")).not_to_contain_text("safe to connect")
    touch(meter, "Take this reading")
    place = meter.get_by_label("Where", exact=True)
    assert str(place.input_value()).startswith("point:")
    expect(place).to_contain_text("Palm House")


def test_a_reading_in_its_band_is_as_expected_and_says_what_it_cannot_see(meter: Page) -> None:
    type_reading(meter, "168")
    expect(meter.locator(".meter-verdict")).to_contain_text("As expected")
    meter.get_by_text("What no reading here can see", exact=True).tap()
    expect(meter.locator(".meter")).to_contain_text("polarity")


def test_a_reading_is_kept_with_the_job_and_can_be_taken_back(meter: Page) -> None:
    type_reading(meter, "230")
    expect(meter.locator(".reading-shown")).to_have_text("230 Ω")
    expect_kept(meter)
    meter.get_by_role("link", name="List", exact=True).tap()
    meter.get_by_role("link", name="Meter", exact=True).tap()
    expect(meter.locator(".reading-shown")).to_have_text("230 Ω")
    touch(meter, "Take this reading back")
    expect(meter.locator(".reading-shown")).to_have_count(0)


def test_a_meter_that_shows_no_number_is_an_open_line(meter: Page) -> None:
    touch(meter, "OL: it shows no number")
    expect(meter.get_by_label("What the meter shows")).to_have_value("OL")
    expect(meter.locator(".suspect")).to_have_count(0)
    touch(meter, "Judge it")
    expect(meter.locator(".suspect").first).to_contain_text("broken")


def test_ears_are_quick_several_in_a_row_and_only_what_is_touched_counts(meter: Page) -> None:
    meter.get_by_label("What is read", exact=True).select_option("plays")
    tiles = meter.locator(".tile")
    tiles.nth(2).tap()
    tiles.nth(3).tap()
    expect(meter.locator(".tile-silent")).to_have_count(2)
    expect(meter.locator(".tile").first).to_contain_text("unknown")
    touch(meter, "All others play well")
    expect(meter.get_by_text("unknown", exact=True)).to_have_count(0)
    tiles.nth(3).tap()
    expect(meter.locator(".tile-silent")).to_have_count(1)
    expect(meter.locator(".suspect").first).to_contain_text("Palm House")
    expect(meter.locator(".heard-short")).not_to_contain_text("Nothing heard")


def test_a_complaint_tells_what_it_usually_is_and_what_decides(meter: Page) -> None:
    meter.get_by_label("The complaint", exact=True).select_option("hum_with_rain")
    expect(meter.get_by_role("heading", name="What decides", exact=True)).to_be_visible()
    expect(meter.locator(".meter")).to_contain_text("earth")


def test_axe_finds_nothing_on_the_meter(meter: Page) -> None:
    expect_nothing_found(meter)
    type_reading(meter, "230")
    expect(meter.locator(".suspect").first).to_be_visible()
    expect_nothing_found(meter)

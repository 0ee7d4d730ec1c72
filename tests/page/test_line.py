"""Changing a job: amplifiers, outputs, zones and what hangs on a line, with undo and redo."""

from playwright.sync_api import Page, expect

from tests.page.hands import (
    expect_kept,
    open_demo,
    open_screen,
    open_zone,
    pick_point,
    point,
    touch,
)


def open_new_job(page: Page) -> None:
    """Start a job with one amplifier of 100 W at 70.7 V and one zone on it."""
    open_screen(page, "Jobs")
    touch(page, "New job")
    touch(page, "Add amplifier")
    touch(page, "Add")
    expect(page.locator(".has-problem")).to_contain_text("Choose the voltage")
    page.get_by_label("Line voltage").select_option(label="70.7 V")
    page.get_by_label("Watts of the output").fill("100")
    touch(page, "Add")
    expect(page.locator(".output")).to_have_count(1)
    touch(page, "Add zone")
    page.get_by_label("Name of the zone").fill("Foyer")
    touch(page, "Add")
    open_zone(page, "Foyer")


def hang(page: Page, *, count: str, tap: str) -> None:
    """Hang loudspeakers at the far end."""
    touch(page, "Loudspeakers")
    page.get_by_label("How many").fill(count)
    page.get_by_label("Tap, watts").fill(tap)
    touch(page, "Add")


def test_a_job_is_built_from_nothing(page: Page) -> None:
    open_new_job(page)
    hang(page, count="4", tap="7,5")
    expect(page.locator(".point")).to_have_count(4)
    expect(page.locator(".zone-figures")).to_contain_text("30 W")
    expect(point(page, "Foyer 4")).to_contain_text("7.5 W at 70.7 V")
    expect_kept(page)


def test_nonsense_is_answered_beside_its_field_and_changes_nothing(page: Page) -> None:
    open_new_job(page)
    hang(page, count="2", tap="five-ish")
    field = page.locator(".field.has-problem")
    expect(field).to_contain_text("five-ish")
    expect(field.get_by_label("Tap, watts")).to_have_value("five-ish")
    expect(page.locator(".point")).to_have_count(0)
    page.get_by_label("Tap, watts").fill("5")
    touch(page, "Add")
    expect(page.locator(".point")).to_have_count(2)


def test_a_count_that_is_no_count_is_answered_beside_its_field(page: Page) -> None:
    open_new_job(page)
    hang(page, count="several", tap="5")
    expect(page.locator(".field.has-problem")).to_contain_text("whole number")


def test_every_change_is_undone_and_done_again(page: Page) -> None:
    open_new_job(page)
    hang(page, count="3", tap="5")
    expect(page.locator(".point")).to_have_count(3)
    pick_point(page, "Foyer 2")
    page.locator(".chip").filter(has_text="10 W").tap()
    expect(point(page, "Foyer 2")).to_contain_text("10 W at 70.7 V")
    touch(page, "Undo")
    expect(point(page, "Foyer 2")).to_contain_text("5 W at 70.7 V")
    touch(page, "Close")
    touch(page, "Undo")
    expect(page.locator(".point")).to_have_count(0)
    touch(page, "Redo")
    expect(page.locator(".point")).to_have_count(3)
    touch(page, "Redo")
    expect(point(page, "Foyer 2")).to_contain_text("10 W at 70.7 V")
    expect(page.get_by_role("button", name="Redo")).to_be_disabled()


def test_undo_outlives_a_reload(page: Page) -> None:
    open_new_job(page)
    hang(page, count="2", tap="5")
    expect(page.locator(".point")).to_have_count(2)
    expect_kept(page)
    page.reload()
    expect(page.locator(".point")).to_have_count(2)
    touch(page, "Undo")
    expect(page.locator(".point")).to_have_count(0)


def test_a_loudspeaker_is_disconnected_and_connected(page: Page) -> None:
    open_demo(page)
    open_zone(page, "Palm House")
    pick_point(page, "Palm House 3")
    touch(page, "Disconnect")
    expect(point(page, "Palm House 3")).to_contain_text("disconnected")
    touch(page, "Connect")
    expect(point(page, "Palm House 3")).not_to_contain_text("disconnected")


def test_an_attenuator_is_hung_set_and_turned_off(page: Page) -> None:
    open_new_job(page)
    hang(page, count="2", tap="5")
    expect(page.locator(".point")).to_have_count(2)
    touch(page, "Attenuator")
    page.get_by_label("Label").fill("Foyer control")
    page.get_by_label("Rated watts").fill("35")
    page.get_by_label("Hangs behind").select_option(label="Foyer: the terminals")
    touch(page, "Add")
    expect(page.locator(".point").first).to_contain_text("Foyer control")
    pick_point(page, "Foyer control")
    touch(page, "Set in dB")
    page.get_by_label("Setting, dB").fill("6")
    touch(page, "Change the sign")
    touch(page, "Save")
    expect(page.locator(".point").first).to_contain_text("−6 dB")
    touch(page, "Turn off")
    expect(page.locator(".point").first.locator(".point-line")).to_have_text("off")


def test_removing_in_mid_run_asks_whether_to_join_or_to_cut(page: Page) -> None:
    open_new_job(page)
    hang(page, count="4", tap="5")
    expect(page.locator(".point")).to_have_count(4)
    pick_point(page, "Foyer 2")
    touch(page, "Remove")
    touch(page, "Join the line through")
    expect(page.locator(".point")).to_have_count(3)
    pick_point(page, "Foyer 3")
    touch(page, "Remove")
    touch(page, "Cut off all behind it")
    expect(page.locator(".point")).to_have_count(1)
    touch(page, "Undo")
    expect(page.locator(".point")).to_have_count(3)


def test_a_line_nobody_has_drawn_is_entered_by_what_it_measures(page: Page) -> None:
    open_new_job(page)
    touch(page, "Existing part")
    page.get_by_label("It measures, ohms").fill("120")
    touch(page, "Add")
    expect(page.locator(".point")).to_contain_text("120 Ω")
    expect(page.locator(".zone-figures")).to_contain_text("37.5 W")


def test_a_point_is_moved_behind_another(page: Page) -> None:
    open_new_job(page)
    hang(page, count="3", tap="5")
    expect(page.locator(".point")).to_have_count(3)
    pick_point(page, "Foyer 1")
    touch(page, "Move")
    page.get_by_label("Hangs behind").select_option(label="Foyer: Foyer 3")
    touch(page, "Move")
    expect(page.locator(".point").nth(2)).to_contain_text("Foyer 1")


def test_a_zone_is_landed_on_another_output_and_moved_up(page: Page) -> None:
    open_demo(page)
    zones = page.locator(".zone-words b")
    before = zones.all_inner_texts()
    open_zone(page, "Orchid House")
    page.get_by_role("region", name="What you can do here").get_by_role(
        "button", name="Zone", exact=True
    ).tap()
    touch(page, "Zone, output")
    page.get_by_label("Driven by").select_option(index=1)
    touch(page, "Save")
    expect_kept(page)
    page.get_by_role("link", name="Back to Ilverne Glasshouses").tap()
    expect(zones.nth(1)).to_have_text("Orchid House")
    assert before[1] == "Orchid House"
    first = page.locator(".output").first
    expect(first.locator(".zone-way")).to_have_count(2)


def test_the_limits_of_a_job_change_its_verdict(page: Page) -> None:
    open_new_job(page)
    expect(page.locator(".zone-verdict")).to_have_count(0)
    hang(page, count="9", tap="7.5")
    expect(page.locator(".zone-verdict")).to_contain_text("fits")
    expect(page.locator(".verdict-reason")).to_contain_text("Not checked: cable")
    page.get_by_role("link", name="Back to").tap()
    page.get_by_role("link", name="Limits").tap()
    page.get_by_label("Load, at most this share of the maximum").fill("50 %")
    touch(page, "Save")
    expect(page.locator(".verdict-big")).to_have_text("No reserve")
    expect(page.locator("main.sheet-job")).to_be_visible()
    expect_kept(page)


def test_limits_that_are_left_by_the_keyboard_lead_back_to_the_job(page: Page) -> None:
    open_demo(page)
    page.get_by_role("link", name="Limits").tap()
    expect(page.get_by_label("Load, at most this share of the maximum")).to_be_visible()
    page.keyboard.press("Escape")
    expect(page.locator(".verdict-big")).to_be_visible()


def test_each_tap_says_before_it_is_turned_what_it_would_do(page: Page) -> None:
    open_new_job(page)
    hang(page, count="3", tap="30")
    expect(page.locator(".point")).to_have_count(3)
    pick_point(page, "Foyer 2")
    chip = page.locator(".chip").filter(has_text="60 W")
    expect(chip).to_contain_text("too much")
    expect(chip).to_contain_text("120 W")
    expect(point(page, "Foyer 2")).to_contain_text("30 W at 70.7 V")

"""What if is done by one touch, and what is removed can be put back by one."""

from playwright.sync_api import Page, expect

from tests.page.hands import expect_kept, open_screen, pick_point, point, touch
from tests.page.lines import look_at, nave, open_line, speaker
from tests.page.test_one_manner import choose

CEILING = {"id": "k", "name": "ceiling", "taps": [{"w": w, "at_v": 100.0} for w in (10.0, 20.0)]}


def mixed() -> dict[str, object]:
    """The nave, its first loudspeaker of a kind that has other taps than the usual."""
    job = nave()
    job["kinds"]["loudspeakers"] = [CEILING]
    job["zones"][0]["line"][0] = speaker("Nave 1", None, 60.0, kind="k", tap_w=20.0)
    return job


def test_another_cable_is_tried_and_put_in_by_one_touch_and_put_back_by_another(
    page: Page,
) -> None:
    open_line(page, nave())
    look_at(page, "What if")
    expect(page.get_by_role("button", name="Change the job so")).to_have_count(0)
    touch(page, "Another cable")
    page.locator("#if-cable").select_option(label="2.5 mm²")
    expect(page.locator(".compared")).to_contain_text("2.5 mm² through all of Nave")
    touch(page, "The home run only")
    expect(page.locator(".compared")).to_contain_text("2.5 mm² in the home run of Nave")
    touch(page, "Change the job so")
    expect(page.locator(".notice")).to_contain_text("Changed: 2.5 mm² in the home run of Nave.")
    expect(page.locator(".compared")).to_have_count(0)
    look_at(page, "List")
    expect(point(page, "Nave 1")).to_contain_text("2.5 mm²")
    expect(point(page, "Nave 2")).to_contain_text("0.75 mm²")
    touch(page, "Undo")
    expect(point(page, "Nave 1")).to_contain_text("0.75 mm²")


def test_all_go_on_one_tap_but_those_whose_kind_has_none_which_are_named(page: Page) -> None:
    open_line(page, mixed())
    look_at(page, "What if")
    touch(page, "All on one tap")
    touch(page, "6 W")
    expect(page.locator(".if-left")).to_contain_text("left as they are: Nave 1.")
    touch(page, "20 W")
    expect(page.locator(".compared")).to_contain_text("on 20 W")
    expect(page.locator(".if-left")).to_have_count(0)
    touch(page, "6 W")
    touch(page, "Change the job so")
    expect(page.locator(".notice")).to_contain_text("on 6 W")
    look_at(page, "List")
    expect(point(page, "Nave 1")).to_contain_text("20 W")
    for name in ("Nave 2", "Nave 6", "Chapel 1"):
        expect(point(page, name)).to_contain_text("6 W at 100 V")
    touch(page, "Undo")
    expect(point(page, "Nave 2")).to_contain_text("15 W at 100 V")


def test_more_at_the_end_are_hung_as_they_were_shown(page: Page) -> None:
    open_line(page, nave())
    look_at(page, "What if")
    touch(page, "More at the end")
    page.get_by_label("How many, how far apart").fill("2 x 6 m")
    touch(page, "15 W")
    touch(page, "Change the job so")
    expect(page.locator(".notice")).to_contain_text("2 more at the end of Nave")
    look_at(page, "List")
    expect(page.locator(".point")).to_have_count(11)
    expect(page.locator(".point").last).to_contain_text("6 m")
    expect_kept(page)


def test_what_is_shown_is_of_the_job_as_it_is_now(page: Page) -> None:
    open_line(page, nave())
    look_at(page, "What if")
    touch(page, "All on one tap")
    touch(page, "6 W")
    touch(page, "Change the job so")
    touch(page, "10 W")
    expect(page.locator(".compared")).to_contain_text("on 10 W")
    load = page.locator(".compared tr").filter(has_text="Vestry rack: load")
    expect(load.locator("td").first).to_contain_text("48 W")
    touch(page, "Undo")
    expect(load.locator("td").first).to_contain_text("102 W")
    touch(page, "Change the job so")
    expect(page.locator(".notice")).to_contain_text("on 10 W")
    expect(page.locator(".compared")).to_have_count(0)


def test_what_was_supposed_in_another_manner_is_not_shown_in_this_one(page: Page) -> None:
    open_line(page, nave())
    look_at(page, "What if")
    touch(page, "Another cable")
    touch(page, "The whole line")
    page.locator("#if-cable").select_option(label="16 AWG")
    expect(page.locator(".compared")).to_contain_text("16 AWG through all of Nave")
    first = page.locator("#if-cable optgroup").nth(1).locator("option").first
    expect(first).to_have_text("0.5 mm²")
    choose(page, "length", "ft")
    expect(page.locator(".compared")).to_have_count(0)
    expect(page.locator("#if-cable")).to_have_value("")
    expect(first).to_contain_text("AWG")
    choose(page, "length", "m")
    choose(page, "decimal", ",")
    expect(first).to_have_text("0,5 mm²")
    page.locator("#if-cable").select_option(label="2,5 mm²")
    expect(page.locator(".compared")).to_contain_text("2,5 mm² through all of Nave")
    choose(page, "decimal", ".")


def test_a_removed_zone_is_told_and_put_back_with_its_ticks(page: Page) -> None:
    job = nave()
    tick = {"tap_w": 15.0, "tap_at_v": 100.0, "at": "2026-11-26", "initials": "KO"}
    job["ticks"] = [{**tick, "point": "Nave1"}, {**tick, "point": "Nave2"}]
    open_line(page, job)
    expect(page.locator(".point-ticked")).to_have_count(2)
    touch(page, "Zone")
    touch(page, "Remove zone")
    notice = page.locator(".notice")
    expect(notice).to_contain_text("Removed: Nave, with what hung on it (9), its readings (0)")
    expect(notice).to_contain_text("ticks (2)")
    expect(page.locator(".zone-way")).to_have_count(0)
    touch(page, "Put it back")
    expect(page.locator(".zone-way")).to_have_count(1)
    expect(notice).to_have_count(0)
    page.get_by_role("link", name="Nave").tap()
    expect(page.locator(".point-ticked")).to_have_count(2)


def test_a_removed_loudspeaker_is_told_and_put_back_where_it_hung(page: Page) -> None:
    open_line(page, nave())
    notice = page.locator(".notice")
    pick_point(page, "Nave 6")
    touch(page, "Remove")
    expect(notice).to_contain_text("Removed: Nave 6.")
    expect(page.locator(".point")).to_have_count(8)
    touch(page, "Put it back")
    expect(point(page, "Nave 6")).to_contain_text("12 m")
    expect(notice).to_have_count(0)


def test_what_a_removed_control_took_with_it_is_counted_and_comes_back(page: Page) -> None:
    open_line(page, nave())
    notice = page.locator(".notice")
    pick_point(page, "Nave control")
    touch(page, "Remove")
    touch(page, "Cut off all behind it")
    expect(notice).to_contain_text("Removed: Nave control, with what hung behind it (2).")
    expect(page.locator(".point")).to_have_count(6)
    touch(page, "Put it back")
    expect(page.locator(".point")).to_have_count(9)
    pick_point(page, "Nave control")
    touch(page, "Remove")
    touch(page, "Join the line through")
    expect(notice).to_contain_text("Removed: Nave control.")
    expect(page.locator(".point")).to_have_count(8)
    touch(page, "Put it back")
    expect(point(page, "Nave control")).to_be_visible()


def test_a_removed_output_says_which_zones_are_landed_nowhere_now(page: Page) -> None:
    open_line(page, nave())
    open_screen(page, "Job")
    page.locator(".output .pick").tap()
    touch(page, "Remove")
    expect(page.locator(".notice")).to_contain_text("Landed nowhere now: Nave.")
    touch(page, "Put it back")
    expect(page.locator(".output .zone-way")).to_have_count(1)


def test_the_way_of_the_bottom_line_a_zone_belongs_to_is_lit(page: Page) -> None:
    open_line(page, nave())
    way = page.get_by_role("navigation").get_by_role("link", name="Job", exact=True)
    expect(way).to_have_attribute("aria-current", "true")
    way.tap()
    expect(way).to_have_attribute("aria-current", "page")

"""At one loudspeaker, with one thumb: taps and what they would do, swaps, ticks, plans."""

from typing import Any

import pytest
from playwright.sync_api import FloatRect, Locator, Page, expect

from tests.page.conftest import NewContext
from tests.page.hands import expect_kept, open_demo, open_zone, pick_point, point, touch
from tests.page.lines import look_at, nave, open_line
from tests.page.test_offline import end, ending_server, wait_until_ready  # noqa: F401
from tests.page.thumb import Thumb
from web.tools.server import FolderServer


@pytest.fixture
def ladder(page: Page) -> Page:
    """At Nave 3 of the nave."""
    open_line(page, nave())
    pick_point(page, "Nave 3")
    expect(page.locator(".tap-row .effect").first).to_be_visible()
    return page


def tap_row(page: Page, watts: str):  # type: ignore[no-untyped-def]
    """The row of a tap."""
    return page.locator(".tap-row").filter(has=page.get_by_text(watts, exact=True))


def test_each_tap_tells_what_it_would_do_before_it_is_taken(ladder: Page) -> None:
    row = tap_row(ladder, "30 W")
    # 10·log10(30 / 15) is 3.01 dB; the cable takes a little of it
    expect(row).to_contain_text("+2.95 dB")
    for name in ("zone 117 W", "output 78 %", "far end"):
        expect(row).to_contain_text(name)
    expect(point(ladder, "Nave 3")).to_contain_text("15 W at 100 V")


def box_of(thing: Locator) -> FloatRect:
    """Where a thing lies on the screen."""
    box = thing.bounding_box()
    assert box is not None
    return box


def test_what_one_does_most_lies_under_the_thumb_at_once(ladder: Page) -> None:
    top = box_of(ladder.locator(".bench"))["y"]
    end = box_of(ladder.locator(".foot"))["y"]
    for name in ("Add after", "Add before", "Tick as fitted", "Swap", "Remove"):
        box = box_of(ladder.get_by_role("button", name=name, exact=True))
        assert top <= box["y"] <= end - box["height"], name
        assert min(box["width"], box["height"]) >= 48, name


def test_the_tap_it_stands_on_tells_its_figures_too(ladder: Page) -> None:
    now = ladder.locator(".tap-row[aria-pressed=true]")
    expect(now).to_contain_text("15 W")
    # four of 15 W, two of 15 W behind the control, two of 6 W, of the 150 W of the output
    for text in ("now", "zone 102 W", "output 68 %", "far end"):
        expect(now).to_contain_text(text)
    expect(ladder.locator(".known-means").first).to_contain_text("found on site")


def test_behind_a_control_its_share_is_told_too(page: Page) -> None:
    open_line(page, nave())
    pick_point(page, "Nave 5")
    # 15 W of Nave 6 and 30 W of this one, of the 40 W of the control
    row = tap_row(page, "30 W")
    expect(row).to_contain_text("control 113 %")
    expect(row).to_contain_text("too much")


def test_the_neighbours_come_first_and_the_largest_that_keeps_all_is_marked(page: Page) -> None:
    open_line(page, nave())
    pick_point(page, "Chapel 1")
    expect(page.locator(".tap-row .effect").first).to_be_visible()
    expect(page.locator(".tap-row").first).to_contain_text("neighbours")
    expect(page.locator(".tap-row").first).to_contain_text("15 W")


def test_same_as_neighbours_takes_two_touches(page: Page) -> None:
    open_line(page, nave())
    thumb = Thumb(page)
    thumb.tap(point(page, "Chapel 1"))
    thumb.tap(page.locator(".tap-row").first)
    expect(point(page, "Chapel 1")).to_contain_text("15 W at 100 V")
    assert thumb.touches == 2


def test_a_tap_is_taken_and_undone(ladder: Page) -> None:
    tap_row(ladder, "6 W").tap()
    expect(point(ladder, "Nave 3")).to_contain_text("6 W at 100 V")
    touch(ladder, "Undo")
    expect(point(ladder, "Nave 3")).to_contain_text("15 W at 100 V")


def test_planned_found_set_and_checked_are_kept_apart(ladder: Page) -> None:
    touch(ladder, "found")
    expect(ladder.get_by_role("button", name="found", exact=True)).to_have_attribute(
        "aria-pressed", "true"
    )
    tap_row(ladder, "10 W").tap()
    head = ladder.locator(".bench-title")
    expect(head).to_contain_text("10 W at 100 V · planned 15 W")
    touch(ladder, "checked")
    expect(ladder.get_by_role("button", name="checked", exact=True)).to_have_attribute(
        "aria-pressed", "true"
    )
    expect(head).to_contain_text("planned 15 W")
    touch(ladder, "planned")
    expect(head).not_to_contain_text("planned")


def test_a_loudspeaker_is_ticked_by_the_initials_the_device_remembers(ladder: Page) -> None:
    ladder.get_by_label("Initials").fill("QX")
    touch(ladder, "Tick as fitted")
    expect(ladder.locator(".ticked")).to_contain_text("QX")
    expect(point(ladder, "Nave 3").locator(".point-ticked")).to_have_count(1)
    pick_point(ladder, "Nave 4")
    expect(ladder.get_by_label("Initials")).to_have_value("QX")
    touch(ladder, "Tick as fitted")
    expect(ladder.locator(".point-ticked")).to_have_count(2)
    expect(ladder.get_by_role("button", name="Undo")).to_be_disabled()
    expect_kept(ladder)
    ladder.reload()
    expect(ladder.locator(".point-ticked")).to_have_count(2)
    pick_point(ladder, "Nave 3")
    touch(ladder, "Take back")
    expect(ladder.locator(".point-ticked")).to_have_count(1)
    tap_row(ladder, "6 W")
    pick_point(ladder, "Nave 4")
    tap_row(ladder, "6 W").tap()
    expect(ladder.locator(".point-ticked")).to_have_count(0)


def test_one_is_put_in_front_and_the_line_stays_as_long(ladder: Page) -> None:
    touch(ladder, "Add before")
    ladder.get_by_label("How many").fill("5 m")
    touch(ladder, "Add")
    expect(ladder.locator(".point")).to_have_count(10)
    expect(point(ladder, "Nave 7")).to_contain_text("5 m")
    expect(point(ladder, "Nave 3")).to_contain_text("7 m")
    expect(point(ladder, "Chapel 1")).to_contain_text("8 m")


def test_one_is_put_behind_like_the_one_at_hand(ladder: Page) -> None:
    touch(ladder, "Add after")
    expect(ladder.get_by_label("Tap, watts")).to_have_value("15 W")
    ladder.get_by_label("How many").fill("4 m")
    touch(ladder, "Add")
    expect(ladder.locator(".point")).to_have_count(10)
    expect(point(ladder, "Nave 7")).to_contain_text("15 W at 100 V")
    expect(point(ladder, "Nave 4")).to_contain_text("8 m")


def test_put_behind_without_a_length_the_cable_is_divided_and_nothing_becomes_unknown(
    ladder: Page,
) -> None:
    touch(ladder, "Add after")
    expect(ladder.get_by_text("divided evenly")).to_be_visible()
    touch(ladder, "Add")
    expect(ladder.locator(".point")).to_have_count(10)
    expect(point(ladder, "Nave 7")).to_contain_text("6 m")
    expect(point(ladder, "Nave 4")).to_contain_text("6 m")


def test_more_than_the_section_is_long_is_refused_there(ladder: Page) -> None:
    touch(ladder, "Add after")
    ladder.get_by_label("How many").fill("40 m")
    touch(ladder, "Add")
    expect(ladder.locator(".field-problem")).to_contain_text("12 m")
    expect(ladder.locator(".point")).to_have_count(9)
    ladder.get_by_label("Which cable it hangs on").select_option(label="with cable of its own")
    touch(ladder, "Add")
    expect(ladder.locator(".point")).to_have_count(10)
    expect(point(ladder, "Nave 4")).to_contain_text("12 m")


def test_an_attenuator_is_put_in(ladder: Page) -> None:
    touch(ladder, "Attenuator before")
    ladder.get_by_label("Kind", exact=True).select_option(index=2)
    touch(ladder, "Add")
    expect(ladder.locator(".point")).to_have_count(10)
    expect(point(ladder, "Nave A1")).to_contain_text("0 m")
    expect(point(ladder, "Nave 3")).to_contain_text("12 m")


def test_cutting_off_says_who_goes_silent(ladder: Page) -> None:
    touch(ladder, "Remove")
    expect(ladder.locator(".silent")).to_contain_text("Nave 4, Nave 5, Nave 6")
    touch(ladder, "Cut off all behind it")
    expect(ladder.locator(".point")).to_have_count(4)
    touch(ladder, "Undo")
    expect(ladder.locator(".point")).to_have_count(9)


def test_the_ladder_works_from_a_cold_start_without_a_server(
    new_context: NewContext,
    ending_server: FolderServer,  # noqa: F811
) -> None:
    context = new_context(service_workers="allow")
    page = context.new_page()
    page.goto(ending_server.address)
    open_line(page, nave())
    expect_kept(page)
    wait_until_ready(page)
    page.close()
    end(ending_server)
    page = context.new_page()
    page.goto(f"{ending_server.address}#/jobs")
    page.locator(".job-line a, .job-line button").first.tap()
    page.locator(".zone-way").first.tap()
    pick_point(page, "Nave 3")
    expect(tap_row(page, "30 W")).to_contain_text("output 78 %")
    tap_row(page, "10 W").tap()
    expect(point(page, "Nave 3")).to_contain_text("10 W at 100 V")
    touch(page, "Tick as fitted")
    expect(page.locator(".point-ticked")).to_have_count(1)
    expect_kept(page)
    look_at(page, "Drawing")
    expect(page.locator(".drawing")).to_be_visible()


def test_one_in_a_wrong_row_is_offered_the_right_one_and_is_put_right_by_one_touch(
    page: Page,
) -> None:
    open_demo(page)
    open_zone(page, "Palm House")
    pick_point(page, "Palm House 7")
    first = page.locator(".tap-row").first
    expect(first).to_contain_text("5 W at 100 V")
    expect(first).to_contain_text("neighbours")
    expect(page.locator(".bench-reason")).to_contain_text("marked for 70.7 V")
    first.tap()
    expect(page.locator(".bench-reason.v-over")).to_have_count(0)
    expect(point(page, "Palm House 7")).to_contain_text("5 W at 100 V")
    touch(page, "Close")
    expect(page.locator(".zone-verdict")).to_contain_text("fits")
    touch(page, "Undo")
    expect(page.locator(".zone-verdict")).to_contain_text("wrong")


def marked(job: dict[str, Any], label: str, **fitted: Any) -> dict[str, Any]:
    """The job with one loudspeaker fitted otherwise."""
    for one in job["zones"][0]["line"]:
        if one["fitted"]["label"] == label:
            one["fitted"].update(fitted)
    return job


def test_the_same_watts_in_another_row_are_not_called_the_neighbours_tap(page: Page) -> None:
    open_line(page, marked(nave(), "Nave 2", tap_at_v=70.7))
    pick_point(page, "Nave 3")
    row = page.locator(".tap-row").first
    expect(row).to_contain_text("15 W")
    expect(row).to_contain_text("now · neighbours, but in the 70.7 V row")
    expect(tap_row(page, "10 W")).not_to_contain_text("neighbours")


def test_two_marks_of_one_voltage_are_one_row(page: Page) -> None:
    job = marked(nave(), "Nave 2", tap_at_v=70.0)
    for one in job["zones"][0]["line"]:
        if one["fitted"]["is"] == "loudspeaker" and one["id"] != "Nave2":
            one["fitted"] |= {"tap_at_v": 71.0, "tap_w": 10.0}
    job["amplifiers"][0]["outputs"][0]["line_v"] = 70.7
    open_line(page, job)
    pick_point(page, "Nave 3")
    first = page.locator(".tap-row").first
    expect(first).to_contain_text("15 W")
    expect(first).to_contain_text("neighbours")
    expect(first).not_to_contain_text("row")

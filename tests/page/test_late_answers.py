"""What is on the screen while the core still works: nothing of another job, nothing that moves."""

from collections.abc import Callable

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.page.hands import choose_supply, count_row, pick_point, point, touch
from tests.page.held_answers import held_back, know_engines
from tests.page.lines import look_at, nave, open_line

# A mark among the words may lift its row by a fraction of this.
SEEN_PIXELS = 1
WAITING = "Waiting for what could hang here."


@pytest.fixture
def line(page: Page) -> Page:
    """A line of six, a branch and a control."""
    know_engines(page)
    open_line(page, nave())
    return page


def tops(rows: Locator) -> list[float]:
    """Where each begins, from the top of the screen."""
    return [box["y"] for each in rows.all() if (box := each.bounding_box())]


def swap_list(page: Page) -> Locator:
    """What could hang in the place of the third loudspeaker."""
    pick_point(page, "Nave 3")
    touch(page, "Swap")
    return page.locator(".bench-swap .tap-row")


def test_what_could_hang_in_another_job_is_not_offered_here(line: Page) -> None:
    expect(swap_list(line).filter(has_text="horn 30 W")).to_be_visible()
    open_line(line, nave())
    with held_back(line):
        offered = swap_list(line)
        expect(line.get_by_text(WAITING)).to_be_visible()
        expect(offered).to_have_count(0)
    expect(offered.filter(has_text="horn 30 W")).to_be_visible()


def test_what_could_hang_before_a_change_is_not_offered_after_it(line: Page) -> None:
    swap_list(line).filter(has_text="horn 30 W").tap()
    expect(line.locator(".point.picked")).to_contain_text("horn 30 W")
    expect(line.locator(".top-state")).to_have_text("Kept")
    with held_back(line):
        touch(line, "Swap")
        expect(line.get_by_text(WAITING)).to_be_visible()
    expect(line.locator(".bench-swap .tap-row").first).to_be_visible()


VIEWS: dict[str, Callable[[Page], Locator]] = {
    "Drawing": lambda page: page.locator(".drawing"),
    "Cable": lambda page: page.locator("section.cable"),
}


@pytest.mark.parametrize("view", VIEWS)
def test_a_line_of_the_same_name_in_another_job_is_not_shown_for_this_one(
    line: Page, view: str
) -> None:
    look_at(line, view)
    expect(VIEWS[view](line)).to_be_visible()
    open_line(line, nave(gap=True))
    with held_back(line):
        look_at(line, view)
        expect(line.locator(".sheet .empty[role=status]")).to_be_visible()
        expect(VIEWS[view](line)).to_have_count(0)
    expect(VIEWS[view](line)).to_be_visible()


def test_taps_stay_where_they_are_when_it_is_known_what_they_would_do(line: Page) -> None:
    rows = line.locator(".tap-row")
    with held_back(line):
        pick_point(line, "Nave 3")
        expect(rows.first).to_be_visible()
        waiting = tops(rows)
        known_as = tops(line.locator(".bench .segments"))
    expect(line.locator(".tap-cells .effect").first).to_be_visible()
    assert waiting
    assert tops(rows) == pytest.approx(waiting, abs=SEEN_PIXELS)
    assert tops(line.locator(".bench .segments")) == pytest.approx(known_as, abs=SEEN_PIXELS)


def test_taps_stay_where_they_are_when_the_numbers_of_a_drawn_loudspeaker_come(line: Page) -> None:
    look_at(line, "Drawing")
    expect(line.locator(".drawing")).to_be_visible()
    rows = line.locator(".tap-row")
    with held_back(line):
        line.locator(".drawn-pick").filter(has_text="Nave 3").tap()
        expect(rows.first).to_be_visible()
        waiting = tops(rows)
    expect(line.locator(".numbers td .figure").first).to_be_visible()
    expect(line.locator(".tap-cells .effect").first).to_be_visible()
    assert waiting
    assert tops(rows) == pytest.approx(waiting, abs=SEEN_PIXELS)


def test_the_list_of_other_kinds_opens_as_tall_as_it_will_be(line: Page) -> None:
    pick_point(line, "Nave 3")
    bench = line.locator(".bench")
    with held_back(line):
        touch(line, "Swap")
        expect(line.get_by_text(WAITING)).to_be_visible()
        waiting = tops(bench)
    expect(line.locator(".bench-swap .tap-row").first).to_be_visible()
    assert tops(bench) == pytest.approx(waiting, abs=SEEN_PIXELS)


def test_what_was_worked_out_before_a_change_is_marked_until_it_is_worked_out_anew(
    line: Page,
) -> None:
    pick_point(line, "Nave 3")
    expect(line.locator(".tap-cells .effect").first).to_be_visible()
    line.evaluate(
        """() => new MutationObserver(() => {
            if (document.querySelector(".tap-rows.late")) globalThis.wasMarked = true;
        }).observe(document.body, { attributes: true, subtree: true })"""
    )
    touch_another = line.locator(".tap-row[aria-pressed=false]").first
    touch_another.tap()
    expect(point(line, "Nave 3")).not_to_contain_text("15 W at 100 V")
    expect(line.locator(".tap-rows.late")).to_have_count(0)
    assert line.evaluate("globalThis.wasMarked === true")


def supposing(page: Page) -> Locator:
    """Where it stands what all on one tap would change."""
    look_at(page, "What if")
    touch(page, "All on one tap")
    return page.locator(".compared")


def test_what_is_done_is_never_what_was_supposed_before(line: Page) -> None:
    compared = supposing(line)
    touch(line, "20 W")
    expect(compared).to_contain_text("on 20 W")
    do = line.get_by_role("button", name="Change the job so")
    expect(do).to_be_enabled()
    with held_back(line):
        touch(line, "6 W")
        expect(do).to_be_disabled()
    expect(compared).to_contain_text("on 6 W")
    do.tap()
    expect(line.locator(".notice")).to_contain_text("on 6 W")


def test_what_is_supposed_while_a_change_is_on_its_way_is_answered_for_the_job_after_it(
    line: Page,
) -> None:
    compared = supposing(line)
    touch(line, "6 W")
    expect(compared).to_contain_text("on 6 W")
    with held_back(line):
        touch(line, "Change the job so")
        touch(line, "10 W")
    expect(compared).to_contain_text("on 10 W")
    expect(line.get_by_role("button", name="Change the job so")).to_be_enabled()


def test_a_working_opened_too_early_tells_of_the_number_that_came(page: Page) -> None:
    know_engines(page)
    choose_supply(page, volts="100 V", watts="120")
    count_row(page, "6", "6 W")
    expect(page.locator(".sum-big")).to_have_text("36 W")
    with held_back(page):
        page.get_by_role("button", name="One more").tap()
        page.locator(".sum-big button").tap()
        expect(page.locator(".bench-working")).to_be_visible()
    expect(page.locator(".sum-big")).to_have_text("42 W")
    expect(page.locator(".working-result")).to_contain_text("42 W")

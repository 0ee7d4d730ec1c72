"""Every screen of the app, and the way to it from an empty tally."""

from collections.abc import Callable

from playwright.sync_api import Page, expect

from tests.page.hands import (
    begin_with_about_ten,
    choose_supply,
    count_row,
    give_output,
    hear_as,
    open_demo,
    open_screen,
    open_trouble,
    open_zone,
    pick_point,
    touch,
    type_reading,
)
from tests.page.line_stops import if_answered, removed, view
from tests.page.lines import nave, open_line

Way = Callable[[Page], None]


def tally(page: Page) -> None:
    """A tally that is too much, so that its longest words stand there."""
    choose_supply(page, volts="70.7 V", watts="120")
    count_row(page, "6", "30 W")
    expect(page.locator(".sum-headline")).to_have_text("Too much")


def tally_outputs(page: Page) -> None:
    """Two outputs that can take less than the watts they share."""
    choose_supply(page, volts="70.7 V", watts="240")
    touch(page, "Several outputs")
    for name in ("B", "A"):
        give_output(page, name, "60")
    count_row(page, "4", "10 W")
    expect(page.locator(".sum-small")).to_contain_text("left on outputs")


def tally_draft(page: Page) -> None:
    """A tally while a form waits half filled."""
    open_demo(page)
    touch(page, "Name and place")
    page.get_by_label("Name of the job").fill("Half a name")
    open_screen(page, "Tally")
    tally(page)


def tally_working(page: Page) -> None:
    """How a sum came to be."""
    tally(page)
    page.locator(".sum-big button").tap()
    expect(page.locator(".working-result")).to_be_visible()


def jobs(page: Page) -> None:
    """The jobs, one of them with its ways unfolded."""
    open_demo(page)
    open_screen(page, "Jobs")
    page.get_by_role("button", name="More for Ilverne Glasshouses").first.tap()


def job(page: Page) -> None:
    """A job with a mistake in it."""
    open_demo(page)


def job_form(page: Page) -> None:
    """A long form."""
    open_demo(page)
    touch(page, "Add amplifier")


def way_of_job(name: str) -> Way:
    """A screen that is reached by a way of the job's own."""

    def go(page: Page) -> None:
        open_demo(page)
        page.get_by_role("link", name=name, exact=True).tap()
        expect(page.get_by_role("heading", level=1)).to_have_text(name)

    return go


def kind_form(page: Page) -> None:
    """A kind of one's own, with what is wrong in it said."""
    way_of_job("Kinds")(page)
    touch(page, "Own loudspeaker")
    touch(page, "Add")
    expect(page.locator(".field-problem")).to_be_visible()


def zone(page: Page) -> None:
    """A line as a list."""
    open_demo(page)
    open_zone(page, "Palm House")


def zone_gap(page: Page) -> None:
    """A line with an unknown length in it, so that what it loses lies in ranges."""
    open_line(page, nave(gap=True))
    expect(page.locator(".point-detail").first).to_contain_text("dB to")


def ladder(page: Page) -> None:
    """At one loudspeaker, with what its taps would do."""
    zone(page)
    pick_point(page, "Palm House 7")
    expect(page.locator(".tap-row").first).to_be_visible()


def ladder_change(page: Page) -> None:
    """Everything of one loudspeaker, to change."""
    ladder(page)
    touch(page, "Change")
    expect(page.locator(".form")).to_be_visible()


def ladder_remove(page: Page) -> None:
    """The question before a loudspeaker goes."""
    ladder(page)
    touch(page, "Remove")


def ladder_swap(page: Page) -> None:
    """The choice of another kind."""
    ladder(page)
    touch(page, "Swap")


def meter(page: Page) -> None:
    """What a line should read, before anything is read."""
    view("Meter")(page)
    expect(page.locator(".meter-big")).to_be_visible()


def meter_judged(page: Page) -> None:
    """A reading far off, with suspects and what to do next, all of it unfolded."""
    meter(page)
    page.get_by_label("What is read", exact=True).select_option("z_1k_ohm")
    type_reading(page, "230")
    expect(page.locator(".suspect").first).to_be_visible()
    page.evaluate("document.querySelectorAll('details').forEach((each) => (each.open = true))")


def meter_heard(page: Page) -> None:
    """Two that are silent."""
    meter(page)
    page.get_by_label("What is read", exact=True).select_option("plays")
    hear_as(page, "silent")
    page.locator(".tile").nth(1).tap()
    expect(page.locator(".tile-silent")).to_have_count(1)


def meter_working(page: Page) -> None:
    """How what it should read came to be."""
    meter(page)
    page.locator(".meter-big button").tap()
    expect(page.locator(".working-result")).to_be_visible()


def distance(page: Page) -> None:
    """How far, before anything is typed, with everything unfolded."""
    meter(page)
    page.get_by_role("link", name="How far is it", exact=True).tap()
    page.locator(".far-more summary").tap()


def distance_found(page: Page) -> None:
    """A short in metres, from both ends."""
    distance(page)
    page.get_by_label("At the amplifier").fill("2,6")
    page.get_by_label("At the far end").fill("3")
    page.get_by_label("Read at", exact=True).select_option(label="Nave 6")
    touch(page, "How far")
    expect(page.locator(".meter-big, #why-far").first).to_be_visible()


def trouble(page: Page) -> None:
    """Where a search begins."""
    open_trouble(page)


def trouble_heard(page: Page) -> None:
    """About ten, two of them silent."""
    begin_with_about_ten(page)
    hear_as(page, "silent")
    page.locator(".tile").nth(3).tap()
    expect(page.locator(".tile-silent")).to_have_count(1)
    expect(page.locator(".suspect").first).to_be_visible()


def first_test(page: Page) -> None:
    """A first test that has not begun."""
    open_line(page, nave())
    open_screen(page, "Job")
    page.get_by_role("link", name="First test", exact=True).tap()
    expect(page.get_by_role("button", name="Begin", exact=True)).to_be_visible()


def first_test_step(page: Page) -> None:
    """Its first step, to confirm."""
    first_test(page)
    touch(page, "Begin")
    touch(page, "Test Nave")
    expect(page.locator(".test-words")).to_be_visible()


def first_test_reading(page: Page) -> None:
    """A step with a reading that is bad."""
    first_test_step(page)
    touch(page, "Done")
    type_reading(page, "0.2")
    touch(page, "Next step")
    touch(page, "Done")
    type_reading(page, "5k")
    expect(page.locator(".reading-shown")).to_be_visible()


def first_test_summary(page: Page) -> None:
    """What was recorded so far."""
    first_test_reading(page)
    touch(page, "All zones")
    page.locator(".test-zone summary").tap()


def test_sheet(page: Page) -> None:
    """The paper of what every box must read."""
    way_of_job("Test sheet")(page)
    expect(page.locator(".paper table").first).to_be_visible()


def open_problem(page: Page) -> None:
    """A link that cannot be read."""
    page.goto(f"{page.url.split('#')[0]}#1.cut")
    expect(page.locator(".open-problem")).to_be_visible()


def about(page: Page) -> None:
    """What the app is, and its choices."""
    open_screen(page, "About")


STOPS: dict[str, Way] = {
    "tally": tally,
    "tally outputs": tally_outputs,
    "tally draft": tally_draft,
    "tally working": tally_working,
    "jobs": jobs,
    "job": job,
    "job form": job_form,
    "limits": way_of_job("Limits"),
    "kinds": way_of_job("Kinds"),
    "kind form": kind_form,
    "share": way_of_job("Share"),
    "history": way_of_job("History"),
    "zone": zone,
    "zone gap": zone_gap,
    "ladder": ladder,
    "ladder change": ladder_change,
    "ladder remove": ladder_remove,
    "ladder swap": ladder_swap,
    "drawing": view("Drawing"),
    "cable": view("Cable"),
    "what if": view("What if"),
    "what if answered": if_answered,
    "removed": removed,
    "meter": meter,
    "meter judged": meter_judged,
    "meter heard": meter_heard,
    "meter working": meter_working,
    "distance": distance,
    "distance found": distance_found,
    "trouble": trouble,
    "trouble heard": trouble_heard,
    "first test": first_test,
    "first test step": first_test_step,
    "first test reading": first_test_reading,
    "first test summary": first_test_summary,
    "test sheet": test_sheet,
    "tap schedule": way_of_job("Tap schedule"),
    "open problem": open_problem,
    "about": about,
}

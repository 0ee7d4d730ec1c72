"""Metres or feet, point or comma: one choice, and every screen follows it, whatever is open."""

import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import Page, expect

from tests.page.hands import PATIENCE_MILLISECONDS
from tests.page.stops import STOPS

LOOK_AGAIN_MILLISECONDS = 250

# The choices of the screen About, put on whatever screen is open, so that it need not be left.
CHOOSE = """([field, value]) => {
    const choice = document.createElement("input");
    choice.dataset.input = `manner.${field}`;
    choice.value = value;
    document.getElementById("app").append(choice);
    choice.dispatchEvent(new Event("input", { bubbles: true }));
    choice.remove();
}"""
# What a person has typed stands as it was typed; the address of a link is no number.
READ = """() => {
    const typed = (one) => one.matches("input, textarea, .version, .share-link");
    const seen = [...document.querySelectorAll("body *")].filter((one) =>
        one.checkVisibility() && !one.closest("script, style") && !typed(one));
    const texts = seen.flatMap((one) =>
        [...one.childNodes].filter((part) => part.nodeType === 3).map((part) => part.data));
    const hints = [...document.querySelectorAll("[placeholder]")].map((one) => one.placeholder);
    const named = [...document.querySelectorAll("[aria-label]")].map((one) => one.ariaLabel);
    return [...texts, ...hints, ...named].map((text) => text.trim()).filter(Boolean);
}"""
POINT = re.compile(r"\d\.\d")
METRES = re.compile(r"\d[\s\u00a0](?:m|km)\b(?!²)")
# Dates of readings, versions, a clause of a standard, the choice of the sign itself, a hint that
# has both lengths, and the distance at which every maker states a sensitivity.
OTHER = re.compile(
    r"^point: 7\.5$|^(?:Version )?\d+\.\d+\.\d+$|254\.5|or 40.ft|1.W and 1.m|\d{4}-\d\d-\d\d"
)


def choose(page: Page, field: str, value: str) -> None:
    """Choose a manner where one is."""
    page.evaluate(CHOOSE, [field, value])


@pytest.fixture
def back(page: Page) -> Iterator[Page]:
    """A page that reads as before when the test is over."""
    yield page
    choose(page, "decimal", ".")
    choose(page, "length", "m")


# A form and a working are left before another manner can be chosen, so they are opened after it.
OPENED_AFTER = ("limits", "kind form", "meter working", "distance found")
# The cables of the demo carry names that a person gave them.
NAMED = re.compile(r"[\d.]+[\s\u00a0]mm²[\s\u00a0]fine stranded")


@pytest.mark.parametrize("stop", list(STOPS))
def test_every_screen_follows_the_manner(back: Page, stop: str) -> None:
    """Metres and points first, then feet and commas."""
    if stop not in OPENED_AFTER:
        STOPS[stop](back)
    choose(back, "decimal", ",")
    choose(back, "length", "ft")
    if stop in OPENED_AFTER:
        STOPS[stop](back)
    for wrong in (POINT, METRES):
        left = still(back, wrong)
        assert not left, left


def test_a_distance_told_in_the_other_manner_is_asked_for_anew(back: Page) -> None:
    STOPS["distance found"](back)
    choose(back, "length", "ft")
    expect(back.locator(".meter-big")).to_have_count(0)
    expect(back.get_by_label("At the amplifier")).to_have_value("2,6")


def still(page: Page, wrong: re.Pattern[str]) -> list[str]:
    """What on the page is still in the other manner, when its answers have come."""
    left = [""]
    for _ in range(PATIENCE_MILLISECONDS // LOOK_AGAIN_MILLISECONDS):
        told = (NAMED.sub("", one) for one in page.evaluate(READ))
        left = [one for one in told if wrong.search(one) and not OTHER.search(one)]
        if not left:
            break
        page.wait_for_timeout(LOOK_AGAIN_MILLISECONDS)
    return left

"""Narrow screens, gloves and enlarged letters: every screen of the app is looked at."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Page

from tests.page.conftest import go_back_to_an_empty_tally
from tests.page.patience import patience
from tests.page.stops import STOPS
from web.tools.server import FolderServer

LEAST_TARGET_PIXELS = 48
TALL = 740
WIDTHS = (320, 360, 412)
# How far a thumb may be off and still hits: an underlined figure reaches beyond its letters.
SMALL = """(least) => {
    const reach = (one) => {
        one.scrollIntoView({ block: "center", inline: "center" });
        const { left, top, width, height } = one.getBoundingClientRect();
        const [x, y] = [left + width / 2, top + height / 2];
        const hits = (dx, dy) => {
            const hit = document.elementFromPoint(x + dx, y + dy);
            return Boolean(hit) && (one.contains(hit) || hit.contains(one) && hit.matches("label"));
        };
        const far = (dx, dy) => {
            let steps = 0;
            while (steps < least && hits(dx * (steps + 1), dy * (steps + 1))) steps += 1;
            return steps;
        };
        if (!hits(0, 0)) return [0, 0];
        return [far(-1, 0) + far(1, 0) + 1, far(0, -1) + far(0, 1) + 1];
    };
    const enough = (sides) => Math.min(...sides) >= least - 0.5;
    const sidesOf = (one) => {
        const { width, height } = one.getBoundingClientRect();
        return [width, height];
    };
    const size = (one) => {
        const label = one.closest("label");
        const sides = label && !enough(sidesOf(one)) ? sidesOf(label) : sidesOf(one);
        return enough(sides) ? sides : reach(one);
    };
    return [...document.querySelectorAll("a[href], button, summary, select, textarea, input")]
        .filter((one) => one.checkVisibility() && !one.closest(".unseen"))
        .map((one) => [one.outerHTML.slice(0, 120), size(one)])
        .filter(([, sides]) => !enough(sides));
}"""
# A drawing and a table of numbers keep their shape and are moved in frames of their own, which
# WCAG 2.2, 1.4.10 leaves to them. The words of a field scroll in it. What still fits stands in one
# line, and a touch lists all of it.
CUT = """(width) => {
    const frames = ".drawn-all, .numbers-frame, .paper, .fits-line";
    const fields = "input, select, textarea, option";
    const seen = [...document.querySelectorAll("body *")].filter((one) =>
        one.checkVisibility() && !one.closest(".unseen, svg") && !one.matches(fields) &&
        !one.closest(frames));
    const cut = (one) => {
        const { overflowX, overflowY } = getComputedStyle(one);
        const wide = overflowX !== "visible" && one.scrollWidth > one.clientWidth + 1;
        const tall = ["hidden", "clip"].includes(overflowY) &&
            one.scrollHeight > one.clientHeight + 1;
        return wide || tall;
    };
    const out = (one) => {
        const { left, right } = one.getBoundingClientRect();
        return left < -1 || right > width + 1;
    };
    const told = seen.filter((one) => cut(one) || out(one))
        .map((one) => one.outerHTML.slice(0, 120));
    return document.scrollingElement.scrollWidth > width ? ["the page", ...told] : told;
}"""
HEADS = "h1, h2, h3, .verdict-big, .meter-big, .sum-headline, .bench-button, .foot, .drawn"
# A heading or a key whose words are torn cannot be read at a glance.
TORN = """(heads) => {
    const seen = [...document.querySelectorAll(heads)].filter((one) => one.checkVisibility());
    const lines = (text, word) => {
        const range = document.createRange();
        range.setStart(text, word.index);
        range.setEnd(text, word.index + word[0].length);
        return new Set([...range.getClientRects()].map(({ top }) => Math.round(top))).size;
    };
    return seen.flatMap((head) => {
        const walker = document.createTreeWalker(head, NodeFilter.SHOW_TEXT);
        const torn = [];
        while (walker.nextNode()) {
            const text = walker.currentNode;
            const words = [...text.data.matchAll(/[^\\s-]+/g)];
            torn.push(...words.filter((word) => lines(text, word) > 1).map(([word]) => word));
        }
        return torn;
    });
}"""
# What one touches or types into stands beside the next, never over it. The key that sends a form
# stays in sight while its fields pass below.
OVER = """() => {
    const halves = [...document.querySelectorAll("main, .bench")];
    const fields = halves.flatMap((half) => [...half.querySelectorAll("input, select")]
        .filter((one) => one.checkVisibility() && !one.closest(".unseen, .form-send"))
        .map((one) => [half, one.outerHTML.slice(0, 100), one.getBoundingClientRect()]));
    const meet = (a, b) => a.left < b.right - 1 && b.left < a.right - 1 &&
        a.top < b.bottom - 1 && b.top < a.bottom - 1;
    return fields.flatMap(([half, name, box], at) => fields.slice(at + 1)
        .filter(([its, , other]) => half === its && meet(box, other))
        .map(([, other]) => [name, other]));
}"""
# What stands in an empty field is read in it: it cannot be scrolled there.
SHORT = """() => {
    const brush = document.createElement("canvas").getContext("2d");
    return [...document.querySelectorAll("input, textarea")]
        .filter((one) => one.placeholder && !one.value && one.checkVisibility())
        .map((one) => {
            const { font, paddingLeft, paddingRight } = getComputedStyle(one);
            brush.font = font;
            const room = one.clientWidth - parseFloat(paddingLeft) - parseFloat(paddingRight);
            return [one.placeholder, brush.measureText(one.placeholder).width, room];
        })
        .filter(([, width, room]) => width > room + 1);
}"""
PAINTED = "() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))"


@pytest.fixture(scope="module", params=STOPS)
def at_stop(warm: Page, served: FolderServer, request: pytest.FixtureRequest) -> Page:
    """The warm page at one of its screens, for all tests that look at it."""
    with patience():
        STOPS[request.param](go_back_to_an_empty_tally(warm, served))
    return warm


@pytest.fixture
def stop(at_stop: Page) -> Iterator[Page]:
    """The same; as wide and as large as it was when the test is over."""
    size = at_stop.viewport_size
    yield at_stop
    at_stop.evaluate("document.documentElement.style.fontSize = ''")
    if size:
        at_stop.set_viewport_size(size)


def test_every_target_takes_a_glove(stop: Page) -> None:
    for width in WIDTHS:
        stop.set_viewport_size({"width": width, "height": TALL})
        stop.evaluate(PAINTED)
        assert stop.evaluate(SMALL, LEAST_TARGET_PIXELS) == [], width


def test_the_narrowest_screen_and_letters_of_twice_the_size_cut_nothing_off(stop: Page) -> None:
    stop.set_viewport_size({"width": 320, "height": TALL})
    stop.evaluate(PAINTED)
    assert stop.evaluate(CUT, 320) == []
    stop.set_viewport_size({"width": 360, "height": TALL})
    stop.evaluate(PAINTED)
    assert stop.evaluate(CUT, 360) == []
    stop.evaluate("document.documentElement.style.fontSize = '200%'")
    stop.evaluate(PAINTED)
    assert stop.evaluate(CUT, 360) == []


def test_the_narrowest_screen_with_letters_of_twice_the_size_tears_and_covers_nothing(
    stop: Page,
) -> None:
    stop.set_viewport_size({"width": 320, "height": TALL})
    stop.evaluate("document.documentElement.style.fontSize = '200%'")
    stop.evaluate(PAINTED)
    assert stop.evaluate(CUT, 320) == []
    assert stop.evaluate(TORN, HEADS) == []
    assert stop.evaluate(SHORT) == []
    assert stop.evaluate(OVER) == []

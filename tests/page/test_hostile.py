"""Text that means harm is shown as the text it is: on every screen and on paper."""

import json
import re
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from pycore.carry.saved import save
from pycore.jobs import Job
from tests.page.hands import expect_kept, give_file, open_screen, paper, touch
from tests.page.visitors import fragment_of, make_visitor, open_way
from web.tools.server import FolderServer

HARM = [
    '<script>window.harmed="script"</script>',
    '<img src=x onerror="window.harmed=1">',
    '"><svg/onload=window.harmed=2>',
    "javascript:window.harmed=3//",
    '=HYPERLINK("x";window.harmed)',
    "${window.harmed=4}{{window.harmed=5}}",
    "__proto__",
    "</textarea><iframe srcdoc='<script>parent.harmed=6</script>'>",
]
WATCH = """() => {
    window.violations = [];
    document.addEventListener("securitypolicyviolation", (event) => {
        violations.push(`${event.violatedDirective} ${event.blockedURI}`);
    });
}"""
# What a person may not be shown in a name: it would turn the words around it.
TURNING = re.compile("[\u202a-\u202e\u200e\u200f]")


def make_hostile(job_id: str) -> Job:
    """A job in which every text that is free is one that means harm."""
    raw = make_visitor(job_id, HARM[0]).model_dump(mode="json", by_alias=True)
    raw |= {"place": f"{HARM[1]} {job_id}", "notes": "\n".join(HARM)}
    for family in raw["kinds"].values():
        for number, kind in enumerate(family):
            kind["name"] = HARM[number % len(HARM)]
    for number, amplifier in enumerate(raw["amplifiers"]):
        amplifier["name"] = HARM[number % len(HARM)]
        for output in amplifier["outputs"]:
            output["name"] = HARM[2]
    for zone in raw["zones"]:
        zone["name"] = HARM[3]
        for number, point in enumerate(zone["line"]):
            point["fitted"]["label"] = HARM[number % len(HARM)]
    return Job.model_validate_json(json.dumps(raw))


def expect_harmless(page: Page) -> None:
    """Nothing of it has run, none of it has become an element, and the policy was not needed."""
    assert page.evaluate("window.harmed") is None
    assert page.evaluate("window.violations") == []
    assert page.evaluate("({}).harmed") is None
    for element in ("img", "iframe", "#app script", "[onerror]", "[onload]", "[srcdoc]"):
        assert page.locator(element).count() == 0, element
    for link in page.locator("a[href]").all():
        assert not (link.get_attribute("href") or "").startswith("javascript:")


@pytest.fixture
def watched(page: Page) -> Page:
    """The warm page, telling of everything it should not do."""

    def refuse(dialog: Any) -> None:
        dialog.dismiss()
        pytest.fail(f"a dialog opened: {dialog.message}")

    page.on("dialog", refuse)
    page.evaluate(WATCH)
    return page


@pytest.mark.parametrize("way", ["link", "file"])
def test_hostile_text_in_every_field_is_shown_on_every_screen_and_never_run(
    watched: Page, served: FolderServer, way: str
) -> None:
    page, job = watched, make_hostile(f"x{way[0]}1")
    if way == "link":
        page.goto(f"{served.address}#{fragment_of(job)}")
    else:
        give_file(page, paper("<b>.json", save(job)))
    expect(page.locator(".open-preview h2")).to_have_text(job.name)
    expect_harmless(page)
    touch(page, "Keep it")
    expect(page.get_by_role("heading", level=1)).to_have_text(job.name)
    expect_kept(page)
    expect_harmless(page)
    visit_every_screen(page, served, job)


def visit_every_screen(page: Page, served: FolderServer, job: Job) -> None:
    """Walk through all screens of a job, with its forms, its paper and its working."""
    zone = job.zones[0]
    page.locator(".output .pick").first.tap()
    expect(page.locator(".bench h2")).to_contain_text(HARM[2])
    touch(page, "Close")
    for form in ("Name and place", "Add zone", "Add amplifier"):
        touch(page, form)
        expect_harmless(page)
        touch(page, "Close without saving")
    page.locator(".figure.opens").first.tap()
    expect(page.locator(".working-result")).to_be_visible()
    expect_harmless(page)
    page.goto(f"{served.address}#/job/{job.id}/zone/{zone.id}")
    expect(page.get_by_role("heading", level=1)).to_have_text(HARM[3])
    expect(page.locator("main")).to_contain_text(HARM[1])
    page.locator(".point-pick").nth(1).tap()
    expect_harmless(page)
    for screen in ("share", "history", "limits"):
        page.goto(f"{served.address}#/job/{job.id}/{screen}")
        expect(page.get_by_role("heading", level=1)).to_have_text(screen.title())
        expect_harmless(page)
    page.emulate_media(media="print")
    page.goto(f"{served.address}#/job/{job.id}/share")
    expect(page.locator(".code")).to_be_visible()
    expect_harmless(page)
    page.emulate_media(media="screen")
    open_screen(page, "Jobs")
    expect(page.locator(".cards")).to_contain_text(HARM[0])
    expect_harmless(page)


def test_hostile_text_in_a_comparison_is_shown_as_text(watched: Page, served: FolderServer) -> None:
    page, job = watched, make_visitor("xc1", "Plain")
    page.goto(f"{served.address}#{fragment_of(job)}")
    touch(page, "Keep it")
    expect(page.get_by_role("heading", level=1)).to_have_text("Plain")
    expect_kept(page)
    page.goto(f"{served.address}#{fragment_of(make_hostile('xc1'))}")
    expect(page.locator(".differences")).to_contain_text(HARM[0])
    expect_harmless(page)
    touch(page, "Compare, take some")
    expect(page.locator(".side").filter(has_text=HARM[1]).first).to_be_visible()
    expect_harmless(page)
    touch(page, "All theirs")
    touch(page, "Bring it in")
    expect(page.get_by_role("heading", level=1)).to_have_text(HARM[0])
    open_way(page, "History")
    expect_harmless(page)


def test_signs_that_turn_words_around_never_reach_the_page(watched: Page) -> None:
    page = watched
    text = save(make_visitor("xt1", "NAME")).replace("NAME", "abc\u202edcba\u2066x")
    give_file(page, paper("t.json", text))
    expect(page.locator("#came-title, .open-problem").first).to_be_visible()
    assert not TURNING.search(page.locator("body").inner_text())
    expect_harmless(page)

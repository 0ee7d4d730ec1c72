"""Text that means harm, in every field a person may write, shown in every engine: as text."""

from pathlib import Path

import pytest

from pycore.carry.link import write_link
from pycore.carry.saved import open_saved
from pycore.jobs import Job
from tests.page.engines.driver import Driver
from tests.page.engines.stand import Stand, copy_app
from tests.page.engines.walk import Walker
from tests.samples.hostile import COMPARED, NOWHERE, SCREENS, WHERE, Text, make_hostile

pytestmark = [pytest.mark.slow, pytest.mark.browser]

VIEWS = ("", "/drawing", "/cable", "/if", "/meter", "/distance")
TRAVEL = ("/share", "/history", "/limits", "/kinds", "/test", "/paper")
# What a screen shows only when the core has answered.
LATER = {
    "/paper": ".paper-title",
    "/drawing": "svg",
    "/meter": ".visit",
    "/share": ".share-link",
    "/history": ".state-line",
}
ELSEWHERE = ("#/jobs", "#/about", "#/open", "#/wrong", "#/")


def test_hostile_text_in_every_field_is_text_on_every_screen(
    engine: Driver, stand: Stand, dist: Path
) -> None:
    copy_app(dist, stand.folder / "a")
    file, texts = make_hostile(first=1)
    job = open_saved(file)
    walker = Walker(engine)
    come_in(walker, stand.address_of("a"), file=file, job=job)
    visit_screens(walker, job)
    on_screens = len(walker.seen)
    later, other_texts = make_hostile(first=500)
    compare(walker, later)
    faults = {(seen.after, fault) for seen in walker.seen for fault in seen.faults}
    assert faults == set()
    told = [text for seen in walker.seen for text in seen.texts]
    assert not [text for text in told if cuts(text, [*texts, *other_texts])]
    expect_seen(walker, texts, until=on_screens)
    assert notices_harm(walker, engine)
    engine.go("about:blank")


def come_in(walker: Walker, address: str, *, file: str, job: Job) -> None:
    """Look at the job by its link and put it away; look at it by its file and keep it."""
    walker.begin(f"{address}#{write_link(job, '0.1.0')}")
    walker.wait_for(".open-preview h2")
    walker.look("preview by link")
    walker.click("Do not keep it")
    walker.go("#/open")
    walker.fill("#pasted", file)
    walker.click("Look at it")
    walker.wait_for(".open-preview h2")
    walker.look("preview by file")
    walker.click("Keep it")
    walker.wait_for(".verdict-big")
    walker.look("kept")


def visit_screens(walker: Walker, job: Job) -> None:
    """Every screen of the job with all it opens, and the paper of those that are printed."""
    home, zone = f"#/job/{job.id}", job.zones[0].id
    zones = [f"{home}/zone/{zone}{view}" for view in VIEWS]
    for screen in (home, *zones, *(home + way for way in TRAVEL), *ELSEWHERE):
        walker.go(screen)
        walker.wait_for(LATER.get(f"/{screen.rpartition('/')[2]}", "h1"))
        if screen == zones[1]:
            walker.look(screen)  # what can be opened here is what the list opens
        else:
            walker.open_everything(screen)
        if screen in (home, zones[0], zones[1], f"{home}/share"):
            walker.print(f"{screen} on paper")
    walker.go(zones[0])
    walker.open_one("thing.pick", job.zones[0].line[0].id)
    walker.open_one("point.remove")  # in mid-line: it asks which of the others go with it
    walker.wait_for(".bench-sure")
    walker.look("asked before removing")


def compare(walker: Walker, file: str) -> None:
    """The same job with every text another comes in: what differs, then side by side."""
    walker.go("#/open")
    walker.fill("#pasted", file)
    walker.click("Look at it")
    walker.wait_for(".differences")
    walker.look("what differs")
    walker.click("Compare, take some")
    walker.wait_for(".change")
    walker.look("compared")
    walker.click("All theirs")
    walker.click("Bring it in")
    walker.wait_for(".verdict-big")
    walker.look("taken over")


def notices_harm(walker: Walker, engine: Driver) -> bool:
    """Whether the walk would have noticed what it looked for in vain."""
    engine.evaluate("void document.body.append(document.createElement('img'))")
    engine.evaluate("void (document.body.lastChild.setAttribute('onharm', ''), window.harmed = 1)")
    walker.look("with harm done by hand")
    return {"img", "img onharm", "harmed 1"} <= {*walker.seen[-1].faults}


def cuts(text: str, texts: list[Text]) -> list[Text]:
    """The hostile texts of which something is missing where their mark is shown."""
    return [each for each in texts if each.mark in text and not is_whole(each, text)]


def is_whole(each: Text, text: str) -> bool:
    """Whether a text is shown as it was written; a sentence shows its line breaks as spaces."""
    return each.plain in text or each.plain.replace("\n", " ") in text


def expect_seen(walker: Walker, texts: list[Text], *, until: int) -> None:
    """Each field is seen where it is said to be, and a field that is nowhere is not."""
    screens = {text for seen in walker.seen[:until] for text in seen.texts}
    compared = {text for seen in walker.seen[until:] for text in seen.texts}
    places = {
        SCREENS: {each.place for each in texts if any(each.mark in text for text in screens)},
        COMPARED: {each.place for each in texts if any(each.mark in text for text in compared)},
    }
    for place, where in WHERE.items():
        if where == NOWHERE:
            assert place not in places[SCREENS] | places[COMPARED], place
        else:
            assert place in places[where], place

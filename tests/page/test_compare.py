"""Two states of a job side by side: each change is taken from one of them, and none is guessed."""

import pytest
from playwright.sync_api import Locator, Page, expect

from pycore.jobs import Job
from tests.page.hands import expect_kept, open_screen, touch
from tests.page.test_share import kept_job
from tests.page.visitors import (
    changed,
    make_visitor,
    open_link,
    open_way,
    read_kept,
    rename,
    take_in,
    with_tap,
)
from web.tools.server import FolderServer


def difference(page: Page, thing: str | None, field: str) -> Locator:
    """One change, by the thing and the field."""
    return page.get_by_role("group", name=f"{thing}: {field}", exact=True)


def side(change: Locator, name: str) -> Locator:
    """One of the two sides of a change."""
    return change.get_by_role("button", name=name)


def tap_of(job: Job, point: int) -> object:
    """The tap of a point in the first zone."""
    return getattr(job.zones[0].line[point].fitted, "tap_w", None)


def test_three_states_leave_only_what_both_changed_to_be_chosen(
    page: Page, served: FolderServer
) -> None:
    job = make_visitor("c1a", "Tannery")
    take_in(page, job, address=served.address)
    rename(page, "Tannery, the ladder")
    theirs = with_tap(
        changed(job, name="Tannery, the office"), 2, 6.0 if tap_of(job, 2) != 6.0 else 3.0
    )
    open_link(page, theirs, address=served.address)
    touch(page, "Compare, take some")
    expect(page.locator(".change")).to_have_count(2)
    name = difference(page, "Job", "Name")
    expect(name).to_contain_text("both changed it")
    expect(name).to_contain_text("Before: Tannery")
    tap = difference(page, theirs.zones[0].line[2].fitted.label, "Tap")
    expect(side(tap, "Theirs")).to_have_attribute("aria-pressed", "true")
    expect(page.locator(".bench")).to_contain_text("1 difference needs your choice.")
    expect(page.get_by_role("button", name="Bring it in")).to_be_disabled()
    side(name, "Mine").tap()
    expect(page.locator(".bench")).to_contain_text("Every difference is settled.")
    touch(page, "Bring it in")
    expect(page.get_by_role("heading", level=1)).to_have_text("Tannery, the ladder")
    expect_kept(page)
    assert tap_of(kept_job(page, "c1a"), 2) == tap_of(theirs, 2)
    touch(page, "Undo")
    expect_kept(page)
    assert tap_of(kept_job(page, "c1a"), 2) == tap_of(job, 2)
    assert kept_job(page, "c1a").name == "Tannery, the ladder"


def test_two_states_without_a_common_one_leave_every_difference_to_be_chosen(
    page: Page, served: FolderServer
) -> None:
    open_screen(page, "Jobs")
    touch(page, "New job")
    rename(page, "Brewery, mine")
    job_id = page.url.rpartition("/")[2]
    stranger = make_visitor(job_id, "Brewery, theirs", rev=200, place="Elsewhere", zones=[])
    open_link(page, stranger, address=served.address)
    touch(page, "Compare, take some")
    expect(page.locator(".compare-words")).to_contain_text("each difference needs a choice")
    expect(page.locator(".bench")).to_contain_text("differences need your choice.")
    touch(page, "All theirs")
    side(difference(page, "Job", "Name"), "Mine").tap()
    touch(page, "Bring it in")
    expect(page.get_by_role("heading", level=1)).to_have_text("Brewery, mine")
    expect_kept(page)
    assert kept_job(page, job_id).place == "Elsewhere"


def test_what_comes_back_is_compared_with_what_it_grew_from(
    page: Page, served: FolderServer
) -> None:
    job = make_visitor("c3a", "Ferry")
    take_in(page, job, address=served.address)
    first = with_tap(job, 1, 1.5 if tap_of(job, 1) != 1.5 else 3.0)
    open_link(page, first, address=served.address)
    touch(page, "Compare, take some")
    touch(page, "Bring it in")
    expect(page.get_by_role("heading", level=1)).to_have_text("Ferry")
    expect_kept(page)
    rename(page, "Ferry, mine")
    second = with_tap(first, 4, 1.5 if tap_of(job, 4) != 1.5 else 3.0)
    open_link(page, second, address=served.address)
    touch(page, "Compare, take some")
    expect(page.locator(".bench")).to_contain_text("Every difference is settled.")
    expect(difference(page, "Job", "Name")).to_contain_text("changed here")
    touch(page, "Bring it in")
    expect(page.get_by_role("heading", level=1)).to_have_text("Ferry, mine")
    expect_kept(page)
    assert tap_of(kept_job(page, "c3a"), 4) == tap_of(second, 4)
    assert kept_job(page, "c3a").name == "Ferry, mine"


@pytest.mark.parametrize("name", ["Pottery", "Pottery, mine"])
def test_what_was_taken_in_and_undone_is_offered_again_as_it_was_at_first(
    page: Page, served: FolderServer, name: str
) -> None:
    job_id = f"c6{len(name)}"
    job = make_visitor(job_id, "Pottery")
    take_in(page, job, address=served.address)
    if name != "Pottery":
        rename(page, name)
    theirs = with_tap(job, 2, 6.0 if tap_of(job, 2) != 6.0 else 3.0)
    for again in (False, True):
        open_link(page, theirs, address=served.address)
        touch(page, "Compare, take some")
        tap = difference(page, theirs.zones[0].line[2].fitted.label, "Tap")
        expect(side(tap, "Theirs")).to_have_attribute("aria-pressed", "true")
        touch(page, "Bring it in")
        expect(page.get_by_role("heading", level=1)).to_have_text(name)
        expect_kept(page)
        assert tap_of(kept_job(page, job_id), 2) == tap_of(theirs, 2)
        if not again:
            touch(page, "Undo")
            expect_kept(page)
            assert tap_of(kept_job(page, job_id), 2) == tap_of(job, 2)


def test_choices_that_break_the_line_are_refused_and_named(
    page: Page, served: FolderServer
) -> None:
    job = make_visitor("c4a", "Cannery")
    take_in(page, job, address=served.address)
    zones = job.model_dump(mode="json", by_alias=True)["zones"]
    line = zones[0]["line"]
    line[-1]["after"] = line[-3]["id"]
    added = {**line[-1], "id": "c4new", "after": line[-1]["id"]}
    added["fitted"] = {**added["fitted"], "label": "The new one"}
    tail = {**line[-1], "id": "c4tail", "after": "c4new"}
    tail["fitted"] = {**tail["fitted"], "label": "The tail"}
    zones[0]["line"] = [*line, added, tail]
    open_link(page, changed(job, zones=zones), address=served.address)
    touch(page, "Compare, take some")
    side(difference(page, "The new one", "In the job"), "Mine").tap()
    touch(page, "Bring it in")
    expect(page.locator(".bench .field-problem")).to_contain_text("hangs on a point that is not")
    record = read_kept(page, "c4a")
    assert record is not None
    assert len(record["job"]["zones"][0]["line"]) == len(line)


def test_an_earlier_state_gives_back_only_what_is_chosen(page: Page, served: FolderServer) -> None:
    job = make_visitor("c5a", "Windmill")
    take_in(page, job, address=served.address)
    rename(page, "Windmill, second")
    touch(page, "Name and place")
    page.get_by_label("Place", exact=True).fill("Another place")
    touch(page, "Save")
    expect_kept(page)
    open_way(page, "History")
    page.locator(".state-line").last.get_by_role("button", name="Compare").tap()
    side(difference(page, "Job", "Place"), "Then").tap()
    touch(page, "Bring it in")
    expect(page.get_by_role("heading", level=1)).to_have_text("Windmill, second")
    expect_kept(page)
    assert kept_job(page, "c5a").place == job.place

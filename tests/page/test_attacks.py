"""Files and pastes that are no job, or far too much of one: said plainly, and nothing is harmed."""

import json
import random
from typing import Any

import pytest
from playwright.sync_api import FilePayload, Page, expect

from pycore.carry.saved import save
from tests.page.hands import HeldEngine, expect_kept, open_screen, touch
from tests.page.visitors import changed, make_visitor, open_link, read_kept, rename, take_in
from web.tools.server import FolderServer

NOISE = random.Random(3).randbytes(400_000)
JOB = json.loads(save(make_visitor("a0a", "Many", loudspeakers=1)))


def jobs_file(count: int) -> bytes:
    """A file of so many jobs, each under an id of its own."""
    jobs = [{**JOB, "id": f"a0a{number}"} for number in range(count)]
    return json.dumps({"format": "rungline-jobs", "version": 1, "jobs": jobs}).encode()


ATTACKS: dict[str, tuple[bytes, str]] = {
    "10 MB of spaces": (b" " * 10_000_000, "too large to be a job"),
    "10 MB of a job": (save(make_visitor("a1a", "X")).encode() + b" " * 10_000_000, "too large"),
    "nothing": (b"", "damaged or is no JSON"),
    "noise": (NOISE, "damaged or is no JSON"),
    "a picture": (b"\x89PNG\r\n\x1a\n" + NOISE, "damaged or is no JSON"),
    "deep": (b'{"format":"rungline-job","notes":' + b"[" * 200_000, "damaged or is no JSON"),
    "a thousand jobs": (jobs_file(1000), "One file holds 500 jobs at most"),
    "another program's": (b'{"name": "Hall", "version": 1}', "not a"),
    "of a later version": (json.dumps({**JOB, "version": 2}).encode(), "later version"),
}


def drop_in(page: Page, content: bytes, name: str = "came.json") -> None:
    """Open a file by the button."""
    open_screen(page, "Jobs")
    expect(page.get_by_role("heading", level=1)).to_have_text("Jobs")
    file = FilePayload(name=name, mimeType="application/json", buffer=content)
    page.locator("input[type=file]").set_input_files(file)


@pytest.mark.parametrize("attack", sorted(ATTACKS))
def test_a_file_that_is_no_job_is_refused_in_plain_words(page: Page, attack: str) -> None:
    content, words = ATTACKS[attack]
    drop_in(page, content)
    expect(page.locator(".open-problem")).to_contain_text(words)
    expect(page.locator(".open-problem")).not_to_contain_text("unexpected")
    expect(page.get_by_label("A link, or a message with one in it")).to_be_visible()
    open_screen(page, "Tally")
    expect(page.locator(".keys")).to_be_visible()


@pytest.mark.parametrize(
    ("pasted", "words"),
    [
        ("x" * 400_000, "too long for a link"),
        ("#1." + "A" * 150_000, "damaged"),
        ("{" * 100_000, "damaged or is no JSON"),
        ("javascript:alert(1)", "no Rungline link"),
    ],
    ids=["too long", "a long link", "deep", "script"],
)
def test_a_paste_that_is_no_job_is_refused_in_plain_words(
    page: Page, pasted: str, words: str
) -> None:
    open_screen(page, "Jobs")
    page.get_by_role("link", name="Paste a link").tap()
    page.get_by_label("A link, or a message with one in it").fill(pasted)
    touch(page, "Look at it")
    expect(page.locator(".open-problem")).to_contain_text(words)


def test_five_hundred_jobs_in_a_file_are_shown_and_put_away_again(page: Page) -> None:
    drop_in(page, jobs_file(500))
    expect(page.locator(".open-one")).to_have_count(500, timeout=60_000)
    touch(page, "Do not keep it")
    assert read_kept(page, "a0a7") is None


def test_a_job_of_the_same_id_takes_nothing_of_an_edit_that_waits(
    fresh: Page, served: FolderServer
) -> None:
    page, came = fresh, make_visitor("a2a", "Gasworks")
    take_in(page, came, address=served.address)
    page.goto("about:blank")
    held = HeldEngine(page)
    page.goto(f"{served.address}#/job/a2a")
    touch(page, "Name and place")
    page.get_by_label("Name of the job").fill("Named while it started")
    touch(page, "Save")
    drop_in(page, save(changed(came, name="From elsewhere", rev=99)).encode())
    held.let_go()
    expect(page.locator(".differences")).to_contain_text("From elsewhere")
    expect(page.locator(".differences")).to_contain_text("Named while it started")
    kept = read_kept(page, "a2a")
    assert kept is not None
    assert kept["job"]["name"] == "Named while it started"
    touch(page, "Replace mine")
    expect(page.get_by_role("heading", level=1)).to_have_text("From elsewhere")
    expect_kept(page)
    touch(page, "Undo")
    expect(page.get_by_role("heading", level=1)).to_have_text("Named while it started")


def test_a_preview_left_open_while_the_job_changes_replaces_nothing_unseen(
    page: Page, served: FolderServer, context_tab: Any
) -> None:
    came = make_visitor("a3a", "Waterworks")
    take_in(page, came, address=served.address)
    open_link(page, changed(came, name="From elsewhere", rev=99), address=served.address)
    other = context_tab()
    other.goto(f"{served.address}#/job/a3a")
    touch(other, "Change it here")
    rename(other, "Changed meanwhile")
    touch(page, "Replace mine")
    expect(page.locator(".notice.bad")).to_contain_text("open for changes in another tab")
    other.close()
    kept = read_kept(page, "a3a")
    assert kept is not None
    assert kept["job"]["name"] == "Changed meanwhile"


@pytest.fixture
def context_tab(page: Page) -> Any:
    """Open another tab beside the warm one."""
    return page.context.new_page

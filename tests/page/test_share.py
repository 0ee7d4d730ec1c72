"""A job goes to another phone by link, code or file, and is always looked at before it is kept."""

import json
from collections.abc import Callable
from pathlib import Path
from zlib import crc32

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from pycore.carry.link import read_link
from pycore.carry.prints import print_of
from pycore.carry.saved import save, save_all
from pycore.jobs import Job
from tests.page.hands import expect_kept, give_file, open_screen, touch
from tests.page.picture import read_code
from tests.page.visitors import (
    changed,
    fragment_of,
    make_visitor,
    open_link,
    open_way,
    read_kept,
    rename,
    take_in,
    with_tap,
)
from web.tools.server import FolderServer


def standing(page: Page) -> str:
    """How what came stands to what is here."""
    return page.locator(".open-standing").inner_text()


def kept_job(page: Page, job_id: str) -> Job:
    """A job as the device has it."""
    record = read_kept(page, job_id)
    assert record is not None
    return Job.model_validate_json(json.dumps(record["job"]))


def test_a_link_is_looked_at_first_and_leaves_the_address(page: Page, served: FolderServer) -> None:
    job = make_visitor("s1a", "Boat hall", saved_at="2026-11-20T08:05Z")
    open_link(page, job, address=served.address)
    expect(page.locator(".open-preview")).to_contain_text("8 loudspeakers in 1 zone")
    expect(page.locator(".open-preview")).to_contain_text("20 Nov 2026")
    assert standing(page) == "This job is not on this device yet."
    assert page.evaluate("location.hash") == "#/open"
    assert read_kept(page, "s1a") is None
    touch(page, "Keep it")
    expect(page.get_by_role("heading", level=1)).to_have_text("Boat hall")
    kept = kept_job(page, "s1a")
    assert print_of(kept) == print_of(job)
    assert kept.base is not None
    assert kept.base.print == print_of(job)


def test_the_same_content_opens_the_copy_that_is_here(page: Page, served: FolderServer) -> None:
    job = make_visitor("s2a", "Mill")
    take_in(page, job, address=served.address)
    open_link(page, changed(job, id="s2b"), address=served.address)
    assert standing(page) == "The very same is on this device already."
    touch(page, "Open the one here")
    expect(page.get_by_role("heading", level=1)).to_have_text("Mill")
    assert "#/job/s2a" in page.url
    assert read_kept(page, "s2b") is None


def test_another_state_replaces_mine_only_when_told_and_undo_brings_mine_back(
    page: Page, served: FolderServer
) -> None:
    job = make_visitor("s3a", "Weir")
    take_in(page, job, address=served.address)
    rename(page, "Weir, mine")
    open_link(page, with_tap(changed(job, name="Weir, theirs"), 2, 10.0), address=served.address)
    assert standing(page) == "This job is on this device already, in another state."
    expect(page.locator(".differences")).to_contain_text("Weir, mine here, Weir, theirs there")
    touch(page, "Replace mine")
    expect(page.get_by_role("heading", level=1)).to_have_text("Weir, theirs")
    expect_kept(page)
    touch(page, "Undo")
    expect(page.get_by_role("heading", level=1)).to_have_text("Weir, mine")


def test_another_state_can_be_kept_as_a_job_of_its_own(page: Page, served: FolderServer) -> None:
    job = make_visitor("s4a", "Quay")
    take_in(page, job, address=served.address)
    open_link(page, changed(job, place="North"), address=served.address)
    touch(page, "Keep as a new job")
    expect(page.get_by_role("heading", level=1)).to_have_text("Quay (from elsewhere)")
    assert kept_job(page, "s4a").place == job.place


WRONG: dict[str, tuple[Callable[[str], str], str]] = {
    "cut": (lambda text: text[: len(text) // 2], "The link is cut short: only 4"),
    "damaged": (lambda text: text[:60] + ("B" if text[60] != "B" else "C") + text[61:],
                "The link is damaged: some of its characters changed on the way."),
    "newer": (lambda text: "7" + text[1:], "The link was written by a later version of Rungline."),
    "empty": (lambda _: "1.", "There is no Rungline link in this text."),
}  # fmt: skip


@pytest.mark.parametrize("how", WRONG)
def test_a_wrong_link_says_exactly_what_is_wrong(
    page: Page, served: FolderServer, how: str
) -> None:
    spoil, words = WRONG[how]
    page.goto(f"{served.address}#{spoil(fragment_of(make_visitor('s5a', 'Dam')))}")
    expect(page.locator(".open-problem")).to_contain_text(words)
    assert page.evaluate("location.hash") == "#/open"
    assert read_kept(page, "s5a") is None


def test_a_link_is_pasted_with_the_message_around_it(page: Page, served: FolderServer) -> None:
    job = make_visitor("s6a", "Kiln")
    open_screen(page, "Jobs")
    page.get_by_role("link", name="Paste a link").tap()
    page.get_by_label("A link, or a message with one in it").fill(
        f"Have a look:\n{served.address}#{fragment_of(job)}\nSee you!"
    )
    touch(page, "Look at it")
    expect(page.locator(".open-preview h2")).to_have_text("Kiln")
    touch(page, "Do not keep it")
    expect(page.get_by_label("A link, or a message with one in it")).to_have_value("")


def test_the_share_screen_makes_a_link_that_carries_the_job_whole(
    page: Page, served: FolderServer
) -> None:
    job = make_visitor("s7a", "Forge", loudspeakers=60)
    take_in(page, job, address=served.address)
    rename(page, "Forge, second")
    open_way(page, "Share")
    link = page.get_by_label("characters").input_value()
    assert link.startswith(f"{served.address}#1.")
    assert len(link) - len(served.address) <= 900 + 1
    read = read_link(link)
    assert read.job.name == "Forge, second"
    assert read.job.saved_at is not None
    assert print_of(read.job) == print_of(kept_job(page, "s7a"))


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_code_on_the_screen_is_read_by_an_independent_reader(
    page: Page, served: FolderServer, scheme: str
) -> None:
    job = make_visitor(f"s8{scheme[0]}", f"Dye works, {scheme}", loudspeakers=60)
    take_in(page, job, address=served.address)
    page.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
    open_way(page, "Share")
    expect(page.locator(".code")).to_be_visible()
    (text,) = read_code(page.locator(".code"))
    assert text.startswith(f"{served.address}#1n.")
    assert print_of(read_link(text).job) == print_of(job)
    page.goto(text)
    expect(page.locator(".open-preview h2")).to_have_text(job.name)
    assert standing(page) == "The very same is on this device already."


def test_a_job_too_large_for_a_code_says_so_and_offers_the_file(page: Page, tmp_path: Path) -> None:
    job = make_visitor("s9a", "Harbour", loudspeakers=300)
    raw = job.model_dump(mode="json", by_alias=True)
    for zone in raw["zones"]:
        for point in zone["line"]:
            point["fitted"]["label"] = f"{point['id'][::-1]} {crc32(point['id'].encode()) % 9973}"
    file = tmp_path / "harbour.json"
    file.write_text(save(changed(job, zones=raw["zones"])), encoding="utf-8")
    give_file(page, file)
    touch(page, "Keep it")
    expect_kept(page)
    open_way(page, "Share")
    expect(page.locator("main")).to_contain_text("This does not fit a QR code")
    expect(page.locator(".code")).to_have_count(0)
    with page.expect_download() as waiting:
        touch(page, "Save the file")
    assert json.loads(waiting.value.path().read_text(encoding="utf-8"))["id"] == "s9a"


def test_a_copied_link_counts_as_a_copy_elsewhere_and_many_changes_remind_of_one(
    page: Page, served: FolderServer
) -> None:
    job = make_visitor("t1a", "Lime pit", rev=40)
    page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    take_in(page, job, address=served.address)
    reminder = page.get_by_text("changes are on this device only")
    for number in range(20):
        expect(reminder).to_have_count(0)
        rename(page, f"Lime pit {number}")
    expect(reminder).to_have_text("20 changes are on this device only. Keep a copy somewhere else.")
    page.get_by_role("link", name="Share or save").tap()
    touch(page, "Copy the link")
    expect(page.locator(".share-copy")).to_have_text(
        "Nothing changed since the last copy was made, or since it came here."
    )
    copied = page.evaluate("navigator.clipboard.readText()")
    assert read_link(copied).job.name == "Lime pit 19"
    page.go_back()
    expect(page.get_by_role("heading", level=1)).to_have_text("Lime pit 19")
    expect(reminder).to_have_count(0)


def test_a_file_of_all_jobs_is_looked_at_one_by_one_or_kept_as_a_whole(
    page: Page, served: FolderServer, tmp_path: Path
) -> None:
    old = make_visitor("t2a", "Old yard")
    take_in(page, old, address=served.address)
    newer = (make_visitor("t2b", "East yard"), make_visitor("t2c", "West yard"))
    file = tmp_path / "all.json"
    file.write_text(save_all((old, *newer)), encoding="utf-8")
    give_file(page, file)
    expect(page.locator(".open-one")).to_have_count(3)
    expect(page.locator(".open-one").nth(0)).to_contain_text("here already")
    expect(page.locator(".open-one").nth(1)).to_contain_text("new")
    touch(page, "Keep all that are new")
    expect(page.get_by_role("heading", level=1)).to_have_text("Jobs")
    assert {kept_job(page, each.id).name for each in newer} == {"East yard", "West yard"}


def test_all_jobs_are_saved_as_one_file(page: Page, served: FolderServer) -> None:
    take_in(page, make_visitor("t3a", "Granary"), address=served.address)
    open_way(page, "Share")
    with page.expect_download() as waiting:
        touch(page, "Save all jobs as one file")
    saved = json.loads(waiting.value.path().read_text(encoding="utf-8"))
    assert saved["format"] == "rungline-jobs"
    assert "Granary" in [job["name"] for job in saved["jobs"]]


DROP = """([text, name]) => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([text], name, { type: "application/json" }));
    for (const kind of ["dragover", "drop"]) {
        const how = { dataTransfer: transfer, bubbles: true, cancelable: true };
        document.body.dispatchEvent(new DragEvent(kind, how));
    }
}"""


def test_a_file_that_is_dragged_on_is_looked_at(page: Page) -> None:
    page.evaluate(DROP, [save(make_visitor("t4a", "Ropewalk")), "job.json"])
    expect(page.locator(".open-preview h2")).to_have_text("Ropewalk")
    expect(page.locator(".open-preview")).to_contain_text("From a file")


def test_a_link_survives_a_reload_until_it_is_decided_on(fresh: Page, served: FolderServer) -> None:
    page = fresh
    open_link(page, make_visitor("t5a", "Sluice"), address=served.address)
    page.reload()
    expect(page.locator(".open-preview h2")).to_have_text("Sluice")
    touch(page, "Do not keep it")
    page.reload()
    expect(page.get_by_label("A link, or a message with one in it")).to_be_visible()


SHEET = """() => {
    globalThis.sent = [];
    navigator.canShare = () => true;
    navigator.share = async ({ url, files }) => {
        sent.push(url ?? `${files[0].name} ${files[0].size}`);
        document.documentElement.dataset.sent = sent.length;
    };
}"""


def test_the_link_and_the_file_go_to_the_share_sheet_where_there_is_one(
    page: Page, served: FolderServer
) -> None:
    page.evaluate(SHEET)
    take_in(page, make_visitor("t6a", "Foundry"), address=served.address)
    open_way(page, "Share")
    touch(page, "Send the link")
    touch(page, "Send the file")
    expect(page.locator("html")).to_have_attribute("data-sent", "2")
    sent = page.evaluate("sent")
    assert read_link(sent[0]).job.name == "Foundry"
    assert sent[1].startswith("foundry.rungline.json ")
    page.evaluate("() => { delete navigator.share; delete navigator.canShare; }")


def test_a_text_shared_by_another_program_is_looked_at(
    phone: BrowserContext, served: FolderServer
) -> None:
    page = phone.new_page()
    text = f"{served.address}#{fragment_of(make_visitor('t7a', 'Smithy'))}"
    page.goto(f"{served.address}?text={text.replace('#', '%23')}")
    expect(page.locator(".open-preview h2")).to_have_text("Smithy")
    assert page.url == f"{served.address}#/open"

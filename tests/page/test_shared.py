"""What other programs hand to the installed app: by a share sheet, or by opening files with it."""

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, BrowserContext, FilePayload, Page, expect

from pycore.carry.saved import save
from tests.page.conftest import PHONE
from tests.page.hands import PATIENCE_MILLISECONDS, expect_kept, open_screen, touch
from tests.page.visitors import fragment_of, make_visitor, read_kept
from web.tools.places import WEB
from web.tools.server import FolderServer

# What an installed app's share sheet sends, as the manifest says it.
SHEET = """<form method="post" enctype="multipart/form-data" action="{action}">
  <textarea name="text"></textarea><input name="url" /><input name="file" type="file" multiple />
  <button>Share</button></form>"""
LAUNCH = """() => {
    const value = { setConsumer(consumer) { globalThis.launch = consumer; } };
    Object.defineProperty(globalThis, "launchQueue", { value });
}"""
OPENED = """async (files) => {
    const handleOf = ([name, text]) => ({ getFile: async () => new File([text], name) });
    await launch({ files: files.map(handleOf) });
}"""


@pytest.fixture(scope="module")
def installed(chromium: Browser, served: FolderServer) -> Iterator[BrowserContext]:
    """A phone on which the service worker has everything and answers."""
    context = chromium.new_context(**PHONE)
    context.set_default_timeout(PATIENCE_MILLISECONDS)
    page = context.new_page()
    page.goto(served.address)
    open_screen(page, "About")
    expect(page.locator(".offline")).to_have_text("Ready without signal.", timeout=60_000)
    page.close()
    yield context
    context.close()


def file_of(name: str, text: str) -> FilePayload:
    """A file as another program holds it."""
    return {"name": name, "mimeType": "application/json", "buffer": text.encode()}


def share(
    context: BrowserContext,
    served: FolderServer,
    *,
    files: tuple[FilePayload, ...] = (),
    text: str = "",
) -> Page:
    """Share something with the app from a program that is not it."""
    target = json.loads((WEB / "manifest.webmanifest").read_text("utf-8"))["share_target"]
    assert (target["method"], target["enctype"]) == ("POST", "multipart/form-data")
    assert [each["name"] for each in target["params"]["files"]] == ["file"]
    page = context.new_page()
    action = served.address + target["action"].removeprefix("./")
    page.set_content(SHEET.format(action=action))
    page.locator("textarea").fill(text)
    page.locator("input[type=file]").set_input_files(files)
    page.get_by_role("button", name="Share").click()
    return page


def test_a_shared_file_is_looked_at_before_anything_of_it_is_kept(
    installed: BrowserContext, served: FolderServer
) -> None:
    job = make_visitor("s1a", "Sawmill")
    page = share(installed, served, files=(file_of("sawmill.json", save(job)),))
    expect(page.locator(".open-preview h2")).to_have_text("Sawmill")
    expect(page.locator(".open-preview")).to_contain_text("From a file")
    assert page.url == f"{served.address}#/open"
    assert read_kept(page, "s1a") is None
    touch(page, "Keep it")
    expect_kept(page)
    kept = read_kept(page, "s1a")
    assert kept is not None
    assert kept["job"]["name"] == "Sawmill"
    assert page.evaluate("caches.has(`rungline-shared|${location.pathname}`)") is False


def test_several_shared_files_are_all_shown_and_a_bad_one_costs_no_other(
    installed: BrowserContext, served: FolderServer
) -> None:
    good = [make_visitor(f"s2{one}", name) for one, name in (("a", "Kiln"), ("b", "Drying loft"))]
    bad = file_of("holiday.json", '{"sun": true}')
    files = (file_of("1.json", save(good[0])), bad, file_of("2.json", save(good[1])))
    page = share(installed, served, files=files)
    expect(page.locator(".open-one")).to_have_count(2)
    expect(page.locator(".open-problem")).to_contain_text("holiday.json")
    touch(page, "Keep all that are new")
    expect(page.locator("main.sheet-jobs .cards")).to_contain_text("Drying loft")
    for job in good:
        kept = read_kept(page, job.id)
        assert kept is not None
        assert kept["job"]["name"] == job.name


def test_a_shared_text_with_a_link_in_it_is_looked_at(
    installed: BrowserContext, served: FolderServer
) -> None:
    link = f"{served.address}#{fragment_of(make_visitor('s3a', 'Weir house'))}"
    page = share(installed, served, text=f"Have a look: {link}\nthanks")
    expect(page.locator(".open-preview h2")).to_have_text("Weir house")
    page.reload()
    expect(page.locator(".open-preview h2")).to_have_text("Weir house")


@pytest.mark.parametrize(
    ("files", "words"),
    [
        ((), "What was shared did not arrive."),
        ((file_of("big.json", "x" * 8_100_000),), "too large to be a job"),
        ((file_of("noise.json", "\x00\x01\ufffd" * 999),), "damaged or is no JSON"),
    ],
    ids=["nothing", "too large", "noise"],
)
def test_what_cannot_be_read_is_said_and_the_ways_in_stay_open(
    installed: BrowserContext, served: FolderServer, files: tuple[FilePayload, ...], words: str
) -> None:
    page = share(installed, served, files=files)
    expect(page.locator(".open-problem")).to_contain_text(words)
    expect(page.get_by_label("A link, or a message with one in it")).to_be_visible()


def test_a_device_without_room_says_that_nothing_came(
    installed: BrowserContext, served: FolderServer
) -> None:
    tab = installed.new_page()
    tab.goto(served.address)
    tools = installed.new_cdp_session(tab)
    origin = "/".join(served.address.split("/", 3)[:3])
    file = file_of("job.json", save(make_visitor("s4a", "Tannery")) + " " * 3_000_000)
    tools.send("Storage.overrideQuotaForOrigin", {"origin": origin, "quotaSize": 1000})
    page = share(installed, served, files=(file,))
    expect(page.locator(".open-problem")).to_contain_text("What was shared did not arrive.")
    tools.send("Storage.overrideQuotaForOrigin", {"origin": origin})


def test_files_opened_with_the_installed_app_are_looked_at(
    phone: BrowserContext, served: FolderServer
) -> None:
    page = phone.new_page()
    page.add_init_script(f"({LAUNCH})()")
    page.goto(served.address)
    expect(page.locator(".keys")).to_be_visible()
    page.evaluate(OPENED, [["quarry.json", save(make_visitor("s5a", "Quarry"))]])
    expect(page.locator(".open-preview h2")).to_have_text("Quarry")
    assert page.url == f"{served.address}#/open"
    page.evaluate(
        OPENED, [[f"{n}.json", save(make_visitor(f"s5{n}", f"Pit {n}"))] for n in range(3)]
    )
    expect(page.locator(".open-one")).to_have_count(3)
    page.evaluate("(link) => launch({ targetURL: link })", f"{served.address}#/jobs")
    expect(page.get_by_role("heading", level=1)).to_have_text("Jobs")


def test_the_manifest_names_the_files_that_are_saved(dist: Path) -> None:
    manifest = json.loads((dist / "manifest.webmanifest").read_text(encoding="utf-8"))
    assert manifest["file_handlers"][0]["accept"] == {"application/json": [".json"]}
    accepted = manifest["share_target"]["params"]["files"][0]["accept"]
    assert {".json", "application/json"} <= {*accepted}

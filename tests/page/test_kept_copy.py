"""What is said of the engine's copy is true: prepared when it is kept, and not a moment before."""

from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, Route, expect

from tests.page.engines.device import HAS_COPY, SHELF
from tests.page.hands import Gate
from web.tools.places import DIST, WEB
from web.tools.server import FolderServer

PREPARED = "Quick start: prepared now, for the next time."
PREPARING = "Quick start: not used this time. It is being prepared for the next."
NOT_KEPT = "What was prepared for the next could not be kept on this device."
# The engine's room on a device whose storage refuses the bytes of the copy, and nothing else.
REFUSE = """
const put = IDBObjectStore.prototype.put;
IDBObjectStore.prototype.put = function (value, key) {
  if (key !== "bytes") return put.call(this, value, key);
  globalThis.refused = value;
  throw new DOMException("no", "FAULT");
};
"""
LITTLE_MEMORY = 'Object.defineProperty(navigator, "deviceMemory", { get: () => 2 });'
MAY_MAKE = """async ([device, starts]) => {
  const { mayMake } = await import("/snapshot/policy.js");
  return mayMake({ starts, off: "", barred: ["another build"] }, "this build", device);
}"""
# Memory in GB and room in bytes, where the browser tells them; good starts so far; is one made?
DEVICES = (
    (0.5, 9e9, 9, False),
    (2, 9e9, 9, False),
    (4, 9e9, 0, True),
    (8, 249e6, 9, False),
    (8, 251e6, 0, True),
    (8, None, 0, True),
    (None, 9e9, 1, False),
    (None, 9e9, 2, True),
    (None, 1e6, 2, False),
)
FULL, CLOSED = "QuotaExceededError", "InvalidStateError"


def open_about(phone: BrowserContext, served: FolderServer, before: str = "") -> Page:
    """Open the screen About on a new phone, in whose engine's room something else comes first."""
    page = phone.new_page()

    def answer(route: Route) -> None:
        room = Path(DIST / "worker.js").read_text(encoding="utf-8")
        route.fulfill(body=before + room, content_type="text/javascript")

    Gate(page, "**/worker.js", meet=answer)
    page.goto(f"{served.address}#/about")
    return page


def on_shelf(page: Page, act: str) -> object:
    """Look at the shelf of the copy."""
    return page.evaluate(SHELF.replace("ACT", act))


def test_a_copy_is_said_to_be_prepared_once_it_is_kept(
    new_phone: BrowserContext, served: FolderServer
) -> None:
    page = open_about(new_phone, served)
    card = page.get_by_role("region", name="On this device")
    expect(card).to_contain_text(PREPARING)
    assert not on_shelf(page, HAS_COPY)
    expect(card).to_contain_text(PREPARED)
    assert on_shelf(page, HAS_COPY)


def test_none_is_made_with_little_memory_and_that_is_said(
    new_phone: BrowserContext, served: FolderServer
) -> None:
    page = open_about(new_phone, served, LITTLE_MEMORY)
    card = page.get_by_role("region", name="On this device")
    expect(card).to_contain_text("Quick start: not used this time.")
    assert PREPARING not in card.inner_text()
    notes = on_shelf(page, 'return read("notes", "notes");')
    assert isinstance(notes, dict)
    assert (notes["starts"], notes.get("barred")) == (1, [])


def test_one_is_made_only_where_memory_and_room_are_enough(new_phone: BrowserContext) -> None:
    """By the decision itself, as it stands in its own file."""
    server = FolderServer(WEB, host="127.0.0.1", port=0)
    with server.serve_in_background() as address:
        page = new_phone.new_page()
        page.goto(address + "changes.json")
        for memory, room, starts, made in DEVICES:
            device = {"memory": memory, "room": room}
            given = {key: value for key, value in device.items() if value is not None}
            assert page.evaluate(MAY_MAKE, [given, starts]) == made, (memory, room, starts)


@pytest.mark.parametrize(("fault", "barred"), [(FULL, 1), (CLOSED, 0)], ids=["full", "closed"])
def test_a_copy_that_cannot_be_kept_is_let_go_and_never_said_to_be_prepared(
    new_phone: BrowserContext, served: FolderServer, fault: str, barred: int
) -> None:
    page = open_about(new_phone, served, REFUSE.replace("FAULT", fault))
    card = page.get_by_role("region", name="On this device")
    expect(card).to_contain_text(NOT_KEPT)
    assert PREPARED not in card.inner_text()
    assert page.workers[-1].evaluate("refused.byteLength") == 0
    notes = on_shelf(page, 'return read("notes", "notes");')
    assert isinstance(notes, dict)
    assert len(notes["barred"]) == barred

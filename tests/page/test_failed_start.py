"""What the page says when the engine cannot start: the likely cause, and what to do about it."""

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, Route, expect

from tests.page.hands import Gate, choose_supply, count_row, touch
from web.tools.places import DIST
from web.tools.server import FolderServer

SCRIPT = "**/py/pyodide.mjs"
RUNTIME = "**/py/pyodide.asm.wasm"
ARCHIVE = "**/py/site.zip"
NO_ROOM = """
WebAssembly.compile = WebAssembly.compileStreaming = async () => {
  throw new RangeError("WebAssembly.Memory(): could not allocate memory");
};
"""
TOO_OLD = """
WebAssembly.validate = () => false;
WebAssembly.compile = WebAssembly.compileStreaming = async () => {
  throw new WebAssembly.CompileError("unknown section code #0x0d");
};
"""


def call_by_wrong_type(route: Route) -> None:
    """Answer with the file, called by a type that says nothing."""
    name = re.sub(r".*/py/", "", route.request.url)
    route.fulfill(body=(DIST / "py" / name).read_bytes(), content_type="application/octet-stream")


def answer_that_it_is_missing(route: Route) -> None:
    """Answer as a server does that does not have the file."""
    route.fulfill(status=404, body="")


def break_off(route: Route) -> None:
    """Break the connection off."""
    route.abort("connectionreset")


def begin_with(text: str) -> Callable[[Route], None]:
    """Answer with the engine's room, which does something else first."""

    def answer(route: Route) -> None:
        room = Path(DIST / "worker.js").read_text(encoding="utf-8")
        route.fulfill(body=text + room, content_type="text/javascript")

    return answer


@pytest.mark.parametrize(
    ("address", "meet", "likely"),
    [
        (SCRIPT, call_by_wrong_type, "sends pyodide.mjs under a wrong type"),
        (SCRIPT, answer_that_it_is_missing, "not on the server"),
        (ARCHIVE, answer_that_it_is_missing, "not on the server"),
        (RUNTIME, answer_that_it_is_missing, "not on the server"),
        (ARCHIVE, break_off, "the connection broke off"),
        ("**/worker.js", begin_with(NO_ROOM), "too little free memory"),
        ("**/worker.js", begin_with(TOO_OLD), "too old"),
    ],
    ids=[
        "type of a script",
        "missing script",
        "missing archive",
        "missing runtime",
        "broken off",
        "no memory",
        "old browser",
    ],
)
def test_a_failed_start_names_its_likely_cause_and_starts_when_that_is_gone(
    new_phone: BrowserContext,
    served: FolderServer,
    address: str,
    meet: Callable[[Route], None],
    likely: str,
) -> None:
    page = new_phone.new_page()
    gate = Gate(page, address, meet=meet)
    page.goto(served.address)
    expect(page.locator(".notice.bad")).to_contain_text(likely)
    gate.open()
    touch(page, "Try again")
    expect(page.locator(".notice.bad")).to_have_count(0)
    expect_an_answer(page)


def test_a_runtime_called_by_a_wrong_type_is_compiled_all_the_same(
    new_phone: BrowserContext, served: FolderServer
) -> None:
    page = new_phone.new_page()
    Gate(page, RUNTIME, meet=call_by_wrong_type)
    page.goto(served.address)
    expect_an_answer(page)


def expect_an_answer(page: Page) -> None:
    """Expect the engine to add up."""
    choose_supply(page, volts="70.7 V", watts="120")
    count_row(page, "6", "5 W")
    expect(page.locator(".sum-big")).to_have_text("30 W")

"""A phone for each test: brand-new, with nothing of the app but its engine, or warm."""

from collections.abc import Callable, Generator, Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, Playwright, expect

from tests.page.forgetting import forget_all_but_the_engine
from tests.page.hands import PATIENCE_MILLISECONDS, touch
from tests.page.patience import patience
from tests.page.what_it_showed import tell_what_pages_show
from web.tools.server import FolderServer

PHONE: dict[str, Any] = {
    "viewport": {"width": 360, "height": 740},
    "device_scale_factor": 2,
    "has_touch": True,
    "is_mobile": True,
    "locale": "en-GB",
}

NewContext = Callable[..., BrowserContext]


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(
    item: pytest.Item, call: pytest.CallInfo[None]
) -> Generator[None, pytest.TestReport, pytest.TestReport]:
    """Beside a failure stands what the page showed."""
    report = yield
    if report.failed and call.when != "teardown" and isinstance(item, pytest.Function):
        tell_what_pages_show(item, report)
    return report


@pytest.fixture(autouse=True)
def look_before_touching() -> Iterator[None]:
    """Hands of tests are swifter than a person's: they wait where the page asks for it."""
    with patience():
        yield


@pytest.fixture
def new_context(chromium: Browser) -> Iterator[NewContext]:
    """Make contexts like a phone's; they are closed after the test.

    Without a service worker unless a test asks for it: requests can then be held and seen.
    """
    made: list[BrowserContext] = []

    def make(**more: Any) -> BrowserContext:
        context = chromium.new_context(**{**PHONE, "service_workers": "block", **more})
        context.set_default_timeout(PATIENCE_MILLISECONDS)
        made.append(context)
        return context

    yield make
    for context in made:
        context.close()


@pytest.fixture
def new_phone(new_context: NewContext) -> BrowserContext:
    """One phone that has never seen the app; pages opened in it share what is kept."""
    return new_context()


@pytest.fixture(scope="session")
def started(
    playwright: Playwright, own_chromium: dict[str, Any], tmp_path_factory: pytest.TempPathFactory
) -> Iterator[BrowserContext]:
    """One phone for many tests, so that the engine need not start from nothing in each.

    It has a disk, as phones have: there the browser keeps what it compiled, too.
    """
    context = playwright.chromium.launch_persistent_context(
        tmp_path_factory.mktemp("phone"), **own_chromium, **PHONE, service_workers="block"
    )
    context.set_default_timeout(PATIENCE_MILLISECONDS)
    yield context
    context.close()


@pytest.fixture
def phone(started: BrowserContext, served: FolderServer) -> Iterator[BrowserContext]:
    """One phone that has kept nothing yet but a copy of the engine; its pages share what is kept.

    What a test changes of it, it changes of a page; whoever changes more wants a `new_phone`.
    """
    forget_all_but_the_engine(started, served)
    yield started
    # The first is the browser's own, without which it would end.
    for page in started.pages[1:]:
        page.close()


@pytest.fixture
def fresh(phone: BrowserContext, served: FolderServer) -> Page:
    """The app on a phone that has kept nothing of it. Its engine may still be starting."""
    page = phone.new_page()
    page.goto(served.address)
    return page


@pytest.fixture(scope="session")
def warm(chromium: Browser, served: FolderServer) -> Iterator[Page]:
    """One page whose engine has started, for all tests that need no fresh phone."""
    context = chromium.new_context(**PHONE, service_workers="block")
    context.set_default_timeout(PATIENCE_MILLISECONDS)
    page = context.new_page()
    page.goto(served.address)
    yield page
    context.close()


def go_back_to_an_empty_tally(warm: Page, served: FolderServer) -> Page:
    """Leave nothing of what an earlier test did with the warm page."""
    warm.emulate_media(media="screen", color_scheme="light")
    warm.goto(f"{served.address}#/about")
    warm.goto(f"{served.address}#/")
    expect(warm.locator(".keys")).to_be_visible()
    if warm.locator(".tally-row").count():
        touch(warm, "Start over")
        expect(warm.locator(".tally-row")).to_have_count(0)
    while warm.locator(".entry-count").count():  # a count that was typed and put on no tap
        touch(warm, "Erase")
    notes = warm.locator(".notice .square")
    while notes.count():  # of what was cleared, and of forms that other tests left half filled
        notes.first.tap()
    while warm.get_by_role("button", name="One output fewer").count():
        touch(warm, "One output fewer")
    return warm


@pytest.fixture
def page(warm: Page, served: FolderServer) -> Page:
    """The warm page, back at an empty tally."""
    return go_back_to_an_empty_tally(warm, served)

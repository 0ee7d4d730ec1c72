"""The built app itself, in every engine: kept, left without a server, killed, updated, run full."""

import shutil
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from tests.engines.chromium import Chromium
from tests.engines.driver import Driver, wait_until
from tests.engines.stand import Stand, copy_app, deploy
from web.tools.places import WEB
from web.tools.precache import fill_worker

pytestmark = [pytest.mark.slow, pytest.mark.browser]

DEMO = "Ilverne Glasshouses"
READY = "Ready without signal."
NO_ROOM, ENOUGH_ROOM = 4_000_000, -1
PRESS = """[...document.querySelectorAll("button, a")]
    .find(({ textContent }) => textContent.trim() === "WORDS")?.click()"""


class App:
    """The built app in one tab of an engine."""

    def __init__(self, engine: Driver, stand: Stand, dist: Path) -> None:
        self.engine, self.stand = engine, stand
        self.served = copy_app(dist, stand.folder / "a")

    def open(self, hash_part: str) -> None:
        """Load the page at one of its screens."""
        self.engine.go("about:blank")
        self.engine.go(self.stand.address_of("a") + hash_part)

    def show(self, hash_part: str) -> None:
        """Go to a screen without loading the page."""
        self.engine.evaluate(f"void (location.hash = '{hash_part}')")

    def press(self, words: str) -> None:
        """Press what carries these words."""
        self.engine.evaluate(f"void ({PRESS.replace('WORDS', words)})")

    def read(self, selector: str) -> str:
        """Read the text of the first thing that fits, or nothing."""
        text = self.engine.evaluate(f"document.querySelector('{selector}')?.textContent")
        return str(text or "").strip()

    def wait_for(self, selector: str, words: str) -> None:
        """Wait until these words stand there."""
        wait_until(lambda: words in self.read(selector), what=f"{words!r} in {selector}")

    def open_demo(self) -> None:
        """Open the demo job and wait until it is kept."""
        self.open("#/jobs")
        self.wait_for("#app", "Open the demo")
        self.press("Open the demo")
        self.wait_for("h1", DEMO)
        self.wait_for(".top-state", "Kept")

    def read_version(self) -> Any:
        """Read which version's marker the page, as it is served to it, carries."""
        return self.engine.evaluate("fetch('./changes.json').then((answer) => answer.text())")


@pytest.fixture
def app(engine: Driver, stand: Stand, dist: Path) -> Iterator[App]:
    """The built app, not yet visited."""
    yield App(engine, stand, dist)
    engine.go("about:blank")


def test_the_app_and_its_jobs_survive_the_death_of_the_server_and_of_the_browser(app: App) -> None:
    app.open_demo()
    job = app.engine.evaluate("location.hash")
    app.show("#/about")
    app.wait_for(".offline", READY)
    app.stand.die_after(0)
    if app.engine.name != "webkit":  # its driver starts every browser on an empty profile
        app.engine.kill()
        app.engine.start()
    app.open(job)
    app.wait_for("h1", DEMO)
    app.show("#/about")
    app.wait_for("main", "Quick start")
    app.wait_for(".offline", READY)
    app.stand.revive()


def test_an_update_of_the_app_keeps_the_job_and_brings_every_file(app: App, tmp_path: Path) -> None:
    app.open_demo()
    app.show("#/about")
    app.wait_for(".offline", READY)
    deploy_next(app, tmp_path)
    app.press("Check again")
    app.wait_for(".notices", "A new version is ready.")
    assert "[]" not in app.read_version()
    app.press("Change to it")
    wait_until(lambda: app.read_version() == "[]", what="the new version")
    app.show("#/jobs")
    app.wait_for("main", DEMO)


def deploy_next(app: App, folder: Path) -> None:
    """Deploy a version in which one file differs."""
    build = folder / "next"
    shutil.copytree(app.served, build)
    (build / "changes.json").write_text("[]")
    shutil.copyfile(WEB / "sw.js", build / "sw.js")
    for squeezed in (*build.rglob("*.br"), *build.rglob("*.gz")):
        squeezed.unlink()
    fill_worker(build)
    deploy(build, app.served, "changes.json", "sw.js")
    for name in ("changes.json", "sw.js"):
        for ending in (".br", ".gz"):
            (app.served / (name + ending)).unlink(missing_ok=True)


def tell_room(engine: Driver, app: App, room_bytes: int) -> None:
    """Tell the browser how much the app may keep; only one engine can be told."""
    if not isinstance(engine, Chromium):
        pytest.skip("only Chromium can be told how much room there is")
    origin = app.stand.address.rstrip("/")
    limit = {} if room_bytes == ENOUGH_ROOM else {"quotaSize": room_bytes}
    engine.send("Storage.overrideQuotaForOrigin", origin=origin, **limit)


def test_a_full_device_keeps_jobs_rather_than_the_app_and_makes_good_later(app: App) -> None:
    app.open("#/about")
    tell_room(app.engine, app, NO_ROOM)
    app.open_demo()
    app.show("#/about")
    app.wait_for(".offline", "Not ready without signal")
    assert app.engine.evaluate("caches.keys()") == []
    assert not app.engine.evaluate(COPY_KEPT)
    tell_room(app.engine, app, ENOUGH_ROOM)
    app.press("Check again")
    app.wait_for(".offline", READY)


COPY_KEPT = """indexedDB.databases().then(async (all) => {
  const { name } = all.find((base) => base.name.startsWith("rungline-engine")) ?? {};
  if (!name) return false;
  return new Promise((resolve) => {
    const opening = indexedDB.open(name);
    opening.onsuccess = () => {
      const asking = opening.result.transaction("copy").objectStore("copy").count();
      asking.onsuccess = () => { opening.result.close(); resolve(asking.result > 0); };
    };
  });
})"""

"""The built app itself, in every engine: kept, left without a server, killed, run full."""

import pytest

from tests.page.engines.app import DEMO, READY, App
from tests.page.engines.chromium import Chromium
from tests.page.engines.driver import Driver, wait_until

pytestmark = [pytest.mark.slow, pytest.mark.browser]

NO_ROOM, ENOUGH_ROOM = 4_000_000, -1


def test_the_app_and_its_jobs_survive_the_death_of_the_server_and_of_the_browser(app: App) -> None:
    job = app.keep()
    app.stand.die_after(0)
    if app.engine.name != "webkit":  # its driver starts every browser on an empty profile
        app.engine.kill()
        app.engine.start()
    app.open(job)
    app.wait_for("h1", DEMO)
    app.show("#/about")
    app.wait_for("main", "Quick start")
    app.wait_for(".offline", READY)


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
    # A cache that was begun before the refusal is taken away in its own time.
    wait_until(lambda: app.engine.evaluate("caches.keys()") == [], what="no cache left over")
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

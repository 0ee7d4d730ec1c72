"""Updates of the built app: whole, while something is typed, and killed while they land.

Each engine is visited once; every test brings another version to what is kept there since.
"""

import contextlib
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.page.engines.app import NEXT, OLD, App
from tests.page.engines.driver import Driver, Gone, wait_until
from tests.page.engines.stand import Stand

pytestmark = [pytest.mark.slow, pytest.mark.browser]

TYPE = """(() => {
    const field = document.querySelector("[data-field=name]");
    field.value = "WORDS";
    field.dispatchEvent(new Event("input", { bubbles: true }));
})()"""
IN_ONE_MOMENT = """(() => {
    const press = (words) => [...document.querySelectorAll("button")]
        .find(({ textContent }) => textContent.trim() === words).click();
    press("Save");
    press("Change to it");
})()"""


@pytest.fixture(scope="module")
def kept(
    engine: Driver, dist: Path, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[tuple[App, str]]:
    """The built app with a job, as the first visit left it, and where the job is."""
    stand = Stand(tmp_path_factory.mktemp("served"))
    with stand.serve_in_background():
        app = App(engine, stand, dist)
        yield app, app.keep()
        stand.revive()
        engine.go("about:blank")


def type_name(app: App, job: str, words: str) -> None:
    """Open the form of the job's name and type there, without saving."""
    app.show(job)
    app.wait_for(".job-ways", "Name and place")
    app.press("Name and place")
    app.wait_for(".bench", "Name of the job")
    app.engine.evaluate(f"void {TYPE.replace('WORDS', words)}")


def test_an_update_brings_every_file_and_an_act_in_that_moment_is_kept(
    kept: tuple[App, str], tmp_path: Path
) -> None:
    app, job = kept
    app.deploy_next(tmp_path)
    app.look_for_update()
    type_name(app, job, "Typed just before")
    assert app.read_marks() == OLD
    app.engine.evaluate(f"void (globalThis.before = true, {IN_ONE_MOMENT})")
    app.wait_for_next()
    app.wait_for("h1", "Typed just before")
    app.wait_for(".top-state", "Kept")


def test_a_half_filled_form_is_there_again_after_the_update(
    kept: tuple[App, str], tmp_path: Path
) -> None:
    app, job = kept
    words = "Typed, not sent"
    app.open(job)
    app.deploy_next(tmp_path)
    app.look_for_update()
    type_name(app, job, words)
    app.accept()
    field = "document.querySelector('[data-field=name]')?.value ?? ''"
    wait_until(lambda: app.engine.evaluate(field) == words, what="what was typed")
    app.press("Save")
    app.wait_for("h1", words)
    app.wait_for(".top-state", "Kept")


BEFORE_ALL = "Kept before it all"
IS_NOT_THERE = "!document.querySelector('#app')"


def restart(app: App, job: str, *, amid_change: bool = False) -> list[bool]:
    """End the browser as a flat battery would, start it without a server; say what it shows."""
    app.stand.die_after(0)
    app.engine.kill()
    app.engine.start()
    with contextlib.suppress(Gone):
        app.open(job)
    if app.engine.evaluate(IS_NOT_THERE) and amid_change:
        # Firefox killed while it changes workers may forget that there was one: a visit with
        # signal makes the app good again, and what was kept in it is whole.
        assert app.engine.name == "firefox"
        app.stand.revive()
        app.open(job)
    app.wait_for("h1", BEFORE_ALL)
    marks = app.read_marks()
    assert marks in (OLD, NEXT)
    app.stand.revive()
    return marks


def test_killed_at_every_stage_of_an_update_the_app_and_the_job_are_whole(
    kept: tuple[App, str], tmp_path: Path
) -> None:
    app, job = kept
    if app.engine.name == "webkit":
        pytest.skip("its driver starts every browser on an empty profile")
    app.open(job)
    type_name(app, job, BEFORE_ALL)
    app.press("Save")
    app.wait_for("h1", BEFORE_ALL)
    app.wait_for(".top-state", "Kept")
    app.deploy_next(tmp_path)
    for files in (1, 3):  # the worker; and then some of the files it wants
        app.stand.die_after(files)
        look_in_vain(app)
        assert restart(app, job) == OLD
    app.look_for_update()
    assert app.read_marks() == OLD
    marks = restart(app, job)
    if marks == OLD:  # some change to what waits when nobody holds on to the old one
        app.look_for_update()
        with_the_touch_in_the_air(app)
        marks = restart(app, job, amid_change=True)
    if marks == OLD:
        app.look_for_update()
        app.accept()
    assert app.read_marks() == NEXT
    app.open(job)
    app.wait_for("h1", BEFORE_ALL)


def look_in_vain(app: App) -> None:
    """Look for a new version while the server dies."""
    app.show("#/about")
    app.wait_for(".offline", "signal")
    app.press("Check again")
    app.wait_for(".offline", "eady without signal")


def with_the_touch_in_the_air(app: App) -> None:
    """Accept the update; the browser is ended before it can say how that went."""
    with contextlib.suppress(Gone):
        app.press("Change to it")


# Last: the second tab stays in front of the first, which WebKit then gives little time.
def test_what_is_being_typed_in_one_tab_outlives_a_change_made_in_another(
    kept: tuple[App, str], tmp_path: Path
) -> None:
    app, job = kept
    words = "Typed meanwhile"
    app.open(job)
    app.deploy_next(tmp_path)
    type_name(app, job, words)
    app.engine.evaluate("void (globalThis.before = true)")
    app.engine.show(1)
    app.open("#/about")
    app.look_for_update()
    app.accept()
    app.engine.show(0)
    assert app.engine.evaluate("globalThis.before")
    assert app.engine.evaluate("document.querySelector('[data-field=name]').value") == words
    app.press("Save")
    app.wait_for_next()
    app.wait_for("h1", words)
    app.wait_for(".top-state", "Kept")
    app.engine.show(1)
    app.engine.go("about:blank")
    app.engine.show(0)

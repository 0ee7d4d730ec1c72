"""Never half-updated, in every engine: a small page kept by the app's own service worker."""

import contextlib
from pathlib import Path

import pytest

from tests.page.engines.driver import Driver, Gone, wait_until
from tests.page.engines.stand import Stand, deploy, make_small

pytestmark = [pytest.mark.slow, pytest.mark.browser]

KEPT = "app.state.offline === 'ready'"
WAITS = "app.state.waits"
IS_SETTLED = "(!('app' in globalThis) || ['ready', 'none'].includes(app.state.offline))"
FORGET_FILE = """caches.keys().then((names) => Promise.all(names.map(async (name) =>
    (await caches.open(name)).delete(new URL('./part.txt', location.href).href))))"""
FORGET_ALL = "caches.keys().then((all) => Promise.all(all.map((name) => caches.delete(name))))"
VERSIONS = "app.versions()"
COUNT_CACHES = "caches.keys().then((names) => names.filter((name) => name.includes('/a/')).length)"


class Place:
    """One small app on the stand, seen in one engine."""

    def __init__(self, engine: Driver, stand: Stand, builds: Path) -> None:
        self.engine, self.stand, self.builds = engine, stand, builds
        self.name = "a"
        self.served = make_small(stand.folder / self.name, "1")

    def build(self, version: str) -> Path:
        """Build a version without deploying it."""
        return make_small(self.builds / version, version)

    def open(self, hash_part: str = "") -> None:
        """Show the page and wait until its script has run."""
        self.engine.go(self.stand.address_of(self.name) + hash_part)
        self.wait("'app' in globalThis")

    def ask(self, expression: str) -> object:
        """Ask the page."""
        return self.engine.evaluate(expression)

    def wait(self, expression: str) -> None:
        """Wait until the page says so."""
        wait_until(lambda: self.engine.evaluate(expression), what=expression)

    def keep(self) -> None:
        """Visit until the page is kept and served from what is kept."""
        for _ in range(2):
            self.open()
            self.wait(KEPT)

    def visit_in_vain(self) -> None:
        """Visit while the server dies, until the page, if it got so far, knows how it stands."""
        with contextlib.suppress(Gone):
            self.engine.go(self.stand.address_of(self.name))
            self.wait(f"document.readyState === 'complete' && {IS_SETTLED}")

    def look_for_update(self) -> None:
        """Let the page look by hand; a server that is dead is no fault."""
        self.ask("app.updates.check()")

    def expect(self, version: str) -> None:
        """Demand that page, worker and files are of one version."""
        self.wait("'app' in globalThis")
        assert self.ask(VERSIONS) == [version] * 4

    def expect_without_server(self, version: str) -> None:
        """The same with the server dead."""
        self.stand.die_after(0)
        self.open()
        self.expect(version)
        self.stand.revive()

    def accept(self) -> None:
        """Accept the update and wait for its page: a slow worker first shows the old one anew."""
        was = self.ask("app.version")
        self.ask("(globalThis.before = true, void app.updates.accept())")
        self.wait(f"!globalThis.before && 'app' in globalThis && app.version !== '{was}'")


@pytest.fixture
def place(engine: Driver, stand: Stand, tmp_path: Path) -> Place:
    """The small app in version 1, not yet visited."""
    return Place(engine, stand, tmp_path / "builds")


def test_a_first_visit_is_kept_and_works_without_the_server(place: Place) -> None:
    place.keep()
    place.expect_without_server("1")


def test_a_first_visit_killed_at_any_file_is_made_good_by_the_next(place: Place) -> None:
    place.open()
    place.wait(KEPT)
    whole = place.stand.answered
    for files in range(1, whole):
        place.name = f"n{files}"
        make_small(place.stand.folder / place.name, "1")
        place.stand.die_after(files)
        place.visit_in_vain()
        place.stand.revive()
        place.open()
        place.wait(KEPT)
        place.expect_without_server("1")


def test_an_update_waits_until_it_is_accepted_and_then_is_whole(place: Place) -> None:
    place.keep()
    deploy(place.build("2"), place.served)
    place.look_for_update()
    place.wait(WAITS)
    place.expect("1")
    place.open()
    place.expect("1")
    place.wait(WAITS)
    place.accept()
    place.expect("2")
    place.wait(f"{COUNT_CACHES}.then((count) => count === 1)")
    place.expect_without_server("2")


def test_a_half_deployed_update_is_refused_and_the_old_version_stays(place: Place) -> None:
    place.keep()
    build = place.build("2")
    deploy(build, place.served, "sw.js", "app.js", "index.html")
    place.look_for_update()
    assert not place.ask(WAITS)
    place.open()
    place.expect("1")
    place.expect_without_server("1")
    deploy(build, place.served)
    place.look_for_update()
    place.wait(WAITS)
    place.accept()
    place.expect("2")


def test_an_update_killed_at_any_file_leaves_the_old_version_whole(place: Place) -> None:
    place.keep()
    deploy(place.build("2"), place.served)
    for files in range(1, 6):
        place.stand.die_after(files)
        place.look_for_update()
        place.open()
        place.expect("1")
        if place.ask(WAITS):
            break
    place.stand.revive()
    place.look_for_update()
    place.wait(WAITS)
    place.accept()
    place.expect_without_server("2")


def test_an_update_is_not_accepted_while_something_is_not_saved(place: Place) -> None:
    place.keep()
    deploy(place.build("2"), place.served)
    place.look_for_update()
    place.wait(WAITS)
    place.ask("(app.state.unsaved = true, null)")
    refused = place.ask("app.updates.accept().then(() => 'taken', (error) => error.message)")
    assert refused == "something is not saved"
    place.expect("1")
    assert place.ask("app.state.unsaved")
    place.ask("(app.state.unsaved = false, null)")
    place.accept()
    place.expect("2")


def test_what_is_kept_and_what_waits_is_told_though_the_server_never_answers(
    place: Place,
) -> None:
    place.keep()
    deploy(place.build("2"), place.served)
    place.look_for_update()
    place.wait(WAITS)
    place.stand.faults["sw.js"] = "silent"
    place.open()
    place.wait(f"{KEPT} && {WAITS}")
    place.accept()
    place.expect("2")
    place.stand.faults.clear()


def test_a_tab_with_something_that_is_not_saved_stays_until_it_is(place: Place) -> None:
    place.keep()
    place.engine.show(1)
    place.open()
    place.ask("(app.state.unsaved = globalThis.before = true)")
    place.engine.show(0)
    deploy(place.build("2"), place.served)
    place.look_for_update()
    place.wait(WAITS)
    place.accept()
    place.expect("2")
    place.engine.show(1)
    place.wait("app.state.tries > 2")
    assert place.ask("globalThis.before && app.state.unsaved")
    place.ask("(app.state.unsaved = false, null)")
    place.wait("!globalThis.before && 'app' in globalThis")
    place.expect("2")
    place.engine.show(0)


def test_every_tab_follows_an_update_once_nothing_is_being_typed_in_it(place: Place) -> None:
    place.keep()
    place.engine.show(1)
    place.open()
    place.ask("(app.state.typing = true, globalThis.before = true)")
    place.engine.show(0)
    deploy(place.build("2"), place.served)
    place.look_for_update()
    place.wait(WAITS)
    place.accept()
    place.expect("2")
    place.engine.show(1)
    assert place.ask("globalThis.before")
    place.ask("(app.state.typing = false, null)")
    place.wait("!globalThis.before && 'app' in globalThis")
    place.expect("2")
    place.engine.show(0)


def test_a_tab_that_looked_by_hand_before_it_was_ready_follows_an_update_too(
    place: Place,
) -> None:
    place.keep()
    place.engine.show(1)
    place.open("#late")
    place.look_for_update()
    place.wait(KEPT)
    place.ask("app.updates.register()")
    place.ask("(globalThis.before = true, null)")
    place.engine.show(0)
    deploy(place.build("2"), place.served)
    place.look_for_update()
    place.wait(WAITS)
    place.accept()
    place.engine.show(1)
    place.wait("!globalThis.before && 'app' in globalThis")
    place.expect("2")
    place.engine.show(0)


def test_a_tab_whose_engine_is_still_starting_follows_an_update_too(place: Place) -> None:
    place.keep()
    place.engine.show(1)
    place.open("#late")
    place.ask("(globalThis.before = true, null)")
    place.engine.show(0)
    deploy(place.build("2"), place.served)
    place.look_for_update()
    place.wait(WAITS)
    place.accept()
    place.engine.show(1)
    place.wait("!globalThis.before && 'app' in globalThis")
    place.expect("2")
    place.engine.show(0)


def test_a_cache_deleted_under_a_running_page_is_fetched_again(place: Place) -> None:
    place.keep()
    place.ask(FORGET_ALL)
    place.expect("1")
    place.look_for_update()
    place.wait(KEPT)
    place.expect_without_server("1")


def test_a_cache_deleted_after_a_deployment_never_mixes_versions(place: Place) -> None:
    place.keep()
    deploy(place.build("2"), place.served)
    place.ask(FORGET_ALL)
    place.look_for_update()
    place.open()
    versions = place.ask(VERSIONS)
    assert versions in (["1"] * 4, ["2"] * 4)


def test_a_file_lost_from_the_cache_is_not_replaced_by_another_version(place: Place) -> None:
    place.keep()
    # A page that looks whether all is kept would miss the file, and do without what is kept.
    place.wait("app.state.looked")
    place.ask(FORGET_FILE)
    (place.served / "part.txt").write_text("2")
    said = "fetch('./part.txt').then((answer) => answer.text(), () => 'refused')"
    assert place.ask(said) == "refused"
    (place.served / "part.txt").write_text("1")
    assert place.ask(said) == "1"


def test_the_kept_worker_carries_rules_of_its_own(place: Place) -> None:
    place.keep()
    rules = "fetch('./worker.js').then(({ headers }) => headers.get('content-security-policy'))"
    assert place.ask(rules) == (
        "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'"
    )

"""The built app in one tab of an engine, as a person uses it, and its next version."""

import json
import shutil
from pathlib import Path

from tests.page.engines.driver import Driver, wait_until
from tests.page.engines.stand import Stand, copy_app, deploy
from web.tools.places import WEB
from web.tools.precache import fill_worker

DEMO = "Ilverne Glasshouses"
READY = "Ready without signal."
WAITS = "A new version is ready."
PRESS = """[...document.querySelectorAll("button, a")]
    .find(({ textContent }) => textContent.trim() === "WORDS")?.click()"""
# What the next version changes: a script, the styles and the engine's own script.
CHANGED = ("app.js", "styles/page.css", "worker.js")
MARK = "\n/* version {} */\n"
READ_ENDS = f"""Promise.all({json.dumps(CHANGED)}.map(
    (name) => fetch("./" + name).then((answer) => answer.text())))
    .then((texts) => texts.map((text) => text.endsWith(MARK)))"""
OLD, NEXT = [False] * len(CHANGED), [True] * len(CHANGED)


class App:
    """The built app in one tab of an engine."""

    def __init__(self, engine: Driver, stand: Stand, dist: Path) -> None:
        self.engine, self.stand, self.version = engine, stand, 1
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

    def keep(self) -> str:
        """Open the demo, wait until it works without signal; give where the job is."""
        self.open_demo()
        job = str(self.engine.evaluate("location.hash"))
        self.show("#/about")
        self.wait_for(".offline", READY)
        return job

    def look_for_update(self) -> None:
        """Look by hand for a new version, and wait until it is there."""
        self.show("#/about")
        self.wait_for(".offline", "signal")
        self.press("Check again")
        self.wait_for(".notices", WAITS)

    def read_marks(self) -> list[bool]:
        """Say of each file that a version changes whether the page gets the one deployed last."""
        return list(self.engine.evaluate(READ_ENDS.replace("MARK", json.dumps(self._mark))))

    def accept(self) -> None:
        """Change to the version that waits; wait until the page that comes of it is there."""
        self.engine.evaluate("void (globalThis.before = true)")
        self.press("Change to it")
        self.wait_for_next()

    def wait_for_next(self) -> None:
        """Wait until this page was loaded anew and everything is of the next version."""
        is_new = "!globalThis.before && document.readyState === 'complete'"
        wait_until(lambda: self.engine.evaluate(is_new), what="the page to be loaded anew")
        wait_until(lambda: self.read_marks() == NEXT, what="the new version")

    @property
    def _mark(self) -> str:
        return MARK.format(self.version)

    def deploy_next(self, folder: Path) -> None:
        """Deploy one version more, in which a few files differ."""
        self.version += 1
        build = folder / "next"
        shutil.copytree(self.served, build)
        shutil.copyfile(WEB / "sw.js", build / "sw.js")
        for squeezed in (*build.rglob("*.br"), *build.rglob("*.gz")):
            squeezed.unlink()
        for name in CHANGED:
            with (build / name).open("a", encoding="utf-8") as file:
                file.write(self._mark)
        fill_worker(build)
        deploy(build, self.served, *CHANGED, "sw.js")
        for name in (*CHANGED, "sw.js"):
            for ending in (".br", ".gz"):
                (self.served / (name + ending)).unlink(missing_ok=True)

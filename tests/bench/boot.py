"""How long the engine takes to its first answer: as its makers publish it, as we build it, and
woken from the copy that the device keeps.

All start in a module worker of Chromium, from this machine, in turn, five times each.
"""

import shutil
import statistics
import zipfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, BrowserContext

from tests.bench.browser import open_browser
from tests.bench.figures import Figure
from web.tools.archives import RUNTIME, fetch_runtime_wheels
from web.tools.places import CACHE, DIST, PYCORE
from web.tools.server import FolderServer

ROUNDS = 5
MOST_TRIES = 6
# The engine keeps its copy once nothing has been asked of it for a while.
QUIET_MILLISECONDS = 8000
HERE = Path(__file__).parent
PAGE_FILES = ("boot_page.html", "boot_page.js", "boot_stock.js")
RUNTIME_FILES = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip")


def measure() -> Iterator[Figure]:
    """Boot in turn and give the medians."""
    server = FolderServer(lay_out(CACHE / "bench" / "boot"), host="127.0.0.1", port=0)
    with open_browser() as browser, server.serve_in_background() as address:
        page = f"{address}boot_page.html"
        keeping = browser.new_context()
        has_copy = keep_copy(keeping, page)
        runs: dict[str, list[float]] = {"stock": [], "ours": []}
        runs |= {"ours, woken": []} if has_copy else {}
        for _ in range(ROUNDS):
            for kind, times in runs.items():
                times.append(boot_once(browser, page, kind, keeping=keeping))
        keeping.close()
    medians = {kind: statistics.median(times) for kind, times in runs.items()}
    for kind, middle in medians.items():
        yield Figure(f"boot to the first answer, {kind}", middle, "ms")
    for kind in list(medians)[1:]:
        yield Figure(f"boot, {kind} / stock", medians[kind] / medians["stock"], "ratio")


def boot_once(browser: Browser, page: str, kind: str, *, keeping: BrowserContext) -> float:
    """Boot in the context that keeps the copy, or in a fresh one that has none."""
    if kind == "ours, woken":
        return float(boot(keeping, f"{page}?ours")["answered"])
    context = browser.new_context()
    times = boot(context, f"{page}?{kind}")
    context.close()
    return float(times["answered"])


def keep_copy(context: BrowserContext, page: str) -> bool:
    """Boot until the engine is woken from a copy; say whether that came about."""
    for _ in range(MOST_TRIES):
        if boot(context, f"{page}?ours", then_milliseconds=QUIET_MILLISECONDS)["way"] == "copy":
            return True
    return False


def boot(context: BrowserContext, address: str, *, then_milliseconds: int = 0) -> dict[str, Any]:
    """Start one engine; give how it started and the milliseconds it took."""
    page = context.new_page()
    page.goto(address)
    times: dict[str, Any] = page.evaluate("() => globalThis.booted")
    page.wait_for_timeout(then_milliseconds)
    page.close()
    if "failed" in times or not times["right"]:
        raise RuntimeError(str(times))
    return times


def lay_out(folder: Path) -> Path:
    """Lay the published engine beside the built app."""
    shutil.rmtree(folder, ignore_errors=True)
    shutil.copytree(DIST, folder)
    for name in PAGE_FILES:
        shutil.copyfile(HERE / name, folder / name)
    stock = folder / "stock"
    stock.mkdir()
    for name in RUNTIME_FILES:
        shutil.copyfile(RUNTIME / name, stock / name)
    for number, wheel in enumerate(sorted(fetch_runtime_wheels().glob("*.whl"))):
        shutil.copyfile(wheel, stock / f"wheel{number}.zip")
    with zipfile.ZipFile(stock / "core.zip", "w", zipfile.ZIP_DEFLATED) as archive:
        for path in sorted(PYCORE.rglob("*.py")):
            archive.write(path, Path("pycore") / path.relative_to(PYCORE))
    return folder

"""How long the engine takes to its first answer: the runtime as it comes, and as we build it.

Both start in a module worker of Chromium, from this machine, in turn, five times each.
"""

import shutil
import statistics
import zipfile
from collections.abc import Iterator
from pathlib import Path

from playwright.sync_api import Browser

from tests.bench.browser import open_browser
from tests.bench.figures import Figure
from web.tools.archives import RUNTIME, fetch_runtime_wheels
from web.tools.places import CACHE, DIST, PYCORE
from web.tools.server import FolderServer

ROUNDS = 5
PAGE = Path(__file__).with_name("boot_page.html")
SCRIPTS = ("boot_page.js", "boot_worker.js")
RUNTIME_FILES = ("pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip")


def measure() -> Iterator[Figure]:
    """Boot both in turn and give medians by stage."""
    folder = lay_out(CACHE / "bench" / "boot")
    runs: dict[str, list[dict[str, float]]] = {"stock": [], "ours": []}
    server = FolderServer(folder, host="127.0.0.1", port=0)
    with open_browser() as browser, server.serve_in_background() as address:
        for _ in range(ROUNDS):
            for kind, seen in runs.items():
                seen.append(boot_once(browser, f"{address}?{kind}"))
    for kind, seen in runs.items():
        for stage in seen[0]:
            middle = statistics.median(run[stage] for run in seen)
            yield Figure(f"boot {kind}: {stage}", middle, "ms")
    totals = {
        kind: statistics.median(sum(run.values()) for run in seen) for kind, seen in runs.items()
    }
    for kind, total in totals.items():
        yield Figure(f"boot {kind}: total to the first answer", total, "ms")
    yield Figure("boot ours / stock", totals["ours"] / totals["stock"], "ratio")


def boot_once(browser: Browser, address: str) -> dict[str, float]:
    """Start one engine in a fresh context; give the milliseconds of each stage."""
    context = browser.new_context()
    page = context.new_page()
    page.goto(address)
    stages = page.evaluate("() => globalThis.booted")
    context.close()
    if "failed" in stages:
        raise RuntimeError(stages["failed"])
    return {str(name): float(value) for name, value in stages.items()}


def lay_out(folder: Path) -> Path:
    """Lay both engines side by side."""
    shutil.rmtree(folder, ignore_errors=True)
    stock = folder / "stock"
    stock.mkdir(parents=True)
    shutil.copyfile(PAGE, folder / "index.html")
    for name in SCRIPTS:
        shutil.copyfile(PAGE.with_name(name), folder / name)
    shutil.copytree(DIST / "py", folder / "ours")
    for name in RUNTIME_FILES:
        shutil.copyfile(RUNTIME / name, stock / name)
    for number, wheel in enumerate(sorted(fetch_runtime_wheels().glob("*.whl"))):
        shutil.copyfile(wheel, stock / f"wheel{number}.zip")
    with zipfile.ZipFile(stock / "core.zip", "w", zipfile.ZIP_DEFLATED) as archive:
        for path in sorted(PYCORE.rglob("*.py")):
            archive.write(path, Path("pycore") / path.relative_to(PYCORE))
    return folder

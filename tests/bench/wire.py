"""How many bytes a first visit and an update take, plain and with brotli."""

import json
import random
import statistics
from collections.abc import Iterable, Iterator
from pathlib import Path

from tests.bench.figures import Figure
from web.tools.parts import CORE, PIECES_FOLDER, PIECES_LIST
from web.tools.places import DIST

RUNTIME = {
    "pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip", "site.zip",
    "pydantic_core.wasm",
}  # fmt: skip
# What every release changes: the lists of files and of modules, and what bears the build's name.
ALWAYS = (
    "sw.js", "index.html", "changes.json", "engine.js", "worker.js", f"py/{PIECES_LIST}",
)  # fmt: skip
# Modules of the core and files of the page that a release changes.
RELEASES = ((1, 1), (5, 3), (20, 10))
DRAWS = 200


def measure() -> Iterator[Figure]:
    """Add up dist/ as a browser without anything kept, and with the runtime kept, gets it."""
    paths = [
        path
        for path in DIST.rglob("*")
        if path.is_file() and path.suffix not in (".br", ".gz", ".part")
    ]
    app = [path for path in paths if path.name not in RUNTIME]
    core = [DIST / "py" / CORE]
    shares = {"first visit": paths, "release that changes every file of the app": app, "core": core}
    for name, some in shares.items():
        yield Figure(f"{name}, plain", count_bytes(some, squeezed=False) / 1000, "kB")
        yield Figure(f"{name}, brotli", count_bytes(some, squeezed=True) / 1000, "kB")
    page = [path for path in app if path.suffix in (".js", ".css") and path.name != "sw.js"]
    for core_files, page_files in RELEASES:
        sizes = draw_releases(page, core_files=core_files, page_files=page_files)
        name = f"release of {core_files} core and {page_files} page files, brotli"
        yield Figure(f"{name}, median", statistics.median(sizes) / 1000, "kB")
        yield Figure(f"{name}, largest of {DRAWS}", max(sizes) / 1000, "kB")


def draw_releases(page: list[Path], *, core_files: int, page_files: int) -> list[int]:
    """Let chance choose the files that change; give what each such release makes one fetch."""
    draw = random.Random(1)
    listed = json.loads((DIST / "py" / PIECES_LIST).read_text())
    *modules, list_piece = [DIST / "py" / PIECES_FOLDER / name for name, _ in listed]
    always = {list_piece, *(DIST / name for name in ALWAYS)}
    sizes = []
    for _ in range(DRAWS):
        changed = {*draw.sample(modules, core_files), *draw.sample(page, page_files)}
        sizes.append(count_bytes(changed | always, squeezed=True))
    return sizes


def count_bytes(paths: Iterable[Path], *, squeezed: bool) -> int:
    """Add up these files as they go over the wire."""
    total = 0
    for path in paths:
        small = path.with_name(path.name + ".br")
        total += (small if squeezed and small.is_file() else path).stat().st_size
    return total

"""How many bytes a first visit takes, and what an update without a patch does, plain and brotli."""

from collections.abc import Iterable, Iterator
from pathlib import Path

from tests.bench.figures import Figure
from web.tools.engine_files import CORE
from web.tools.patches import ENDING
from web.tools.places import DIST

RUNTIME = {
    "pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip", "site.zip",
    "pydantic_core.wasm",
}  # fmt: skip


def measure() -> Iterator[Figure]:
    """Add up dist/ as a browser without anything kept, and with the runtime kept, gets it."""
    paths = [
        path
        for path in DIST.rglob("*")
        if path.is_file() and path.suffix not in (".br", ".gz", ENDING)
    ]
    app = [path for path in paths if path.name not in RUNTIME]
    core = [DIST / "py" / CORE]
    shares = {"first visit": paths, "every file of the app, unpatched": app, "core": core}
    for name, some in shares.items():
        yield Figure(f"{name}, plain", count_bytes(some, squeezed=False) / 1000, "kB")
        yield Figure(f"{name}, brotli", count_bytes(some, squeezed=True) / 1000, "kB")


def count_bytes(paths: Iterable[Path], *, squeezed: bool) -> int:
    """Add up these files as they go over the wire."""
    total = 0
    for path in paths:
        small = path.with_name(path.name + ".br")
        total += (small if squeezed and small.is_file() else path).stat().st_size
    return total

"""What updates would have taken had states of this project been releases: its own history, each
state built by the tools of today with the runtime of today. What is not committed is not measured.
"""

import io
import shutil
import subprocess
import sys
import tarfile
import tempfile
from collections.abc import Iterator
from pathlib import Path

from tests.bench.figures import Figure
from tests.bench.wire import count_bytes
from web.tools.patches import is_patched, list_kept, make_patch
from web.tools.places import CACHE, MODULES, ROOT, WEB
from web.tools.say import Halt, run_program, tell
from web.tools.squeeze import squeeze_folder

STEPS = (1, 5, 10, 20, 50, 100)
TOOLING = ("tools", "locks", "licences", "package.json", "package-lock.json", ".npmrc")
BUILD = "from pathlib import Path; from web.tools.make import assemble; assemble(Path('dist'))"


def measure() -> Iterator[Figure]:
    """Build the newest state and some before it; count what each lacks of the newest."""
    # By its own name, since somebody may commit meanwhile.
    head = run_program(
        ["git", "rev-parse", "HEAD"], what="git does not answer", remedy="measure in a clone"
    ).strip()
    with tempfile.TemporaryDirectory() as place:
        newest = build_state(head, Path(place) / "newest")
        squeeze_folder(newest)
        for commits in STEPS:
            try:
                older = build_state(f"{head}~{commits}", Path(place) / str(commits))
            except Halt as halt:
                tell(f"  {commits} commits ago is not measured: {halt.what}{halt.detail}")
                continue
            yield from compare(older, newest, commits=commits)


def build_state(commit: str, folder: Path) -> Path:
    """Lay out one state of the sources under the tools of today and build it."""
    said = subprocess.run(
        ["git", "archive", commit], cwd=ROOT, capture_output=True, check=False
    )  # fmt: skip
    if said.returncode:
        raise Halt(f"git knows no {commit}", remedy="measure in a clone with its history")
    with tarfile.open(fileobj=io.BytesIO(said.stdout)) as archive:
        archive.extractall(folder, filter="data")
    for name in TOOLING:
        lay_over(WEB / name, folder / "web" / name)
    (folder / "web" / MODULES.name).symlink_to(MODULES)
    (folder / CACHE.name).symlink_to(CACHE)
    run_program(
        [sys.executable, "-c", BUILD],
        what=f"{commit} could not be built",
        remedy="read the lines above",
        folder=folder,
    )
    return folder / "dist"


def lay_over(source: Path, target: Path) -> None:
    """Put a file or folder of today in the place of an older one."""
    if source.is_dir():
        shutil.rmtree(target, ignore_errors=True)
        shutil.copytree(source, target, ignore=shutil.ignore_patterns("__pycache__"))
    else:
        shutil.copyfile(source, target)


def compare(older: Path, newest: Path, *, commits: int) -> Iterator[Figure]:
    """Count the patch between two states, and the files that are fetched whole beside it."""
    kept, changed = list_kept(older), []
    for name, integrity in list_kept(newest).items():
        if kept.get(name) != integrity:
            changed.append(name)
    patch = make_patch(older, newest) or b""
    whole = [name for name in changed if name not in kept or not is_patched(name)]
    beside = count_bytes((newest / name for name in whole), squeezed=True)
    worker = count_bytes([newest / "sw.js"], squeezed=True)
    instead = count_bytes((newest / name for name in changed if name != "./"), squeezed=True)
    name = f"update over {commits} commit{'s' if commits > 1 else ''}"
    yield Figure(name, (len(patch) + beside + worker) / 1000, "kB")
    yield Figure(f"{name}, unpatched, brotli", (instead + worker) / 1000, "kB")
    yield Figure(f"{name}, files changed", len(changed), "files")

"""What the tooling says while it works, and how it runs other programs."""

import subprocess
import sys
import time
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path

from web.tools.places import ROOT


class Halt(Exception):
    """A step that cannot go on: what failed in a plain sentence, and what to do about it."""

    def __init__(self, what: str, *, remedy: str, detail: str = "") -> None:
        super().__init__(what)
        self.what = what
        self.remedy = remedy
        self.detail = detail

    def __str__(self) -> str:
        detail = f"\n{self.detail.rstrip()}\n" if self.detail.strip() else ""
        return f"{detail}\nStopped: {self.what}\nTo go on: {self.remedy}"


def tell(line: str) -> None:
    """Print one line at once, also into a pipe."""
    print(line, flush=True)


@contextmanager
def announce_step(name: str) -> Iterator[None]:
    """Print the step before it starts and how long it took."""
    sys.stdout.write(f"  {name} ... ")
    sys.stdout.flush()
    started = time.perf_counter()
    try:
        yield
    except BaseException:
        tell("failed")
        raise
    tell(f"{time.perf_counter() - started:.1f} s")


def run_program(
    command: Sequence[str | Path],
    *,
    what: str,
    remedy: str,
    folder: Path = ROOT,
    environment: Mapping[str, str] | None = None,
    text: str = "",
) -> str:
    """Run a program quietly on `text`; when it fails, halt with its last lines and a way on."""
    words = [str(word) for word in command]
    try:
        done = subprocess.run(
            words,
            cwd=folder,
            env=environment,
            input=text,
            capture_output=True,
            text=True,
            check=False,
        )
    except OSError as error:
        raise Halt(f"{what} ({error})", remedy=remedy) from error
    if done.returncode:
        said = (done.stdout + done.stderr).strip().splitlines()
        raise Halt(what, remedy=remedy, detail="\n".join(line[:300] for line in said[-25:]))
    return done.stdout

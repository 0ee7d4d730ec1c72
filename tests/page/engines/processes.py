"""Programs that a driver starts, and how it ends them."""

import contextlib
import os
import shutil
import signal
import socket
import subprocess
from pathlib import Path

from tests.page.engines.driver import Absent

END_WITHIN_SECONDS = 10


def find_program(name: str, *, package: str) -> str:
    """Find a program, or say which Debian package would bring it."""
    found = shutil.which(name)
    if found is None:
        raise Absent(f"{name} is not here (Debian, as root: apt-get install {package})")
    return found


def find_free_port() -> int:
    """Give a port of this machine that nobody listens on now."""
    with socket.socket() as listener:
        listener.bind(("127.0.0.1", 0))
        return int(listener.getsockname()[1])


class Program:
    """A program with children of its own, ended together with them."""

    def __init__(self, words: list[str], *, environment: dict[str, str], said: Path) -> None:
        with said.open("ab") as output:
            self._process = subprocess.Popen(
                words,
                env={**os.environ, **environment},
                stdin=subprocess.DEVNULL,
                stdout=output,
                stderr=output,
                start_new_session=True,
            )

    @property
    def ended(self) -> bool:
        """Say whether it has ended by itself."""
        return self._process.poll() is not None

    def end(self) -> None:
        """Ask it to end, and insist when it does not."""
        self._signal(signal.SIGTERM)
        try:
            self._process.wait(END_WITHIN_SECONDS)
        except subprocess.TimeoutExpired:
            self.kill()

    def wait(self) -> None:
        """Let it end by itself, and insist when it does not."""
        try:
            self._process.wait(END_WITHIN_SECONDS)
        except subprocess.TimeoutExpired:
            self.kill()

    def kill(self) -> None:
        """End it and its children at once."""
        self._signal(signal.SIGKILL)
        self._process.wait()

    def _signal(self, kind: signal.Signals) -> None:
        with contextlib.suppress(ProcessLookupError):
            os.killpg(self._process.pid, kind)

"""A server that can die after any number of files, come back, and be deployed to in pieces."""

import shutil
import socket
import threading
import time
from http import HTTPStatus
from pathlib import Path
from typing import Literal

from tests.page.engines.driver import LOOK_AGAIN_AFTER_SECONDS
from web.tools.places import WEB
from web.tools.precache import fill_worker
from web.tools.server import TYPES, FolderServer, Handler

SMALL = Path(__file__).with_name("small")
SHARED_SCRIPTS = ("sw.js", "trust.js", "updates.js")
BLANK = "blank.html"
Fault = Literal["missing", "broken", "silent"]


class DyingHandler(Handler):
    """Answers while the server is alive; afterwards the line goes dead in mid-request."""

    server: "Stand"

    def _answer(self, *, with_body: bool) -> None:
        if not self.server.may_answer():
            return self._hang_up()
        name = self.path.rpartition("/")[2]
        while self.server.faults.get(name) == "silent":
            time.sleep(LOOK_AGAIN_AFTER_SECONDS)
        fault = self.server.faults.get(name)
        if fault == "missing":
            return self._send(HTTPStatus.NOT_FOUND, {"Content-Type": "text/plain"}, b"")
        if fault == "broken":
            return self._break_off()
        return super()._answer(with_body=with_body)

    def _break_off(self) -> None:
        """Send half of a file under the head of the whole."""
        path = self.server.find_file(self.path)
        assert path is not None
        body = path.read_bytes()
        self.send_response(HTTPStatus.OK)
        self.send_header("Content-Type", TYPES[path.suffix])
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.wfile.write(body[: len(body) // 2])
        self.wfile.flush()
        self._hang_up()

    def _hang_up(self) -> None:
        self.close_connection = True
        self.connection.shutdown(socket.SHUT_RDWR)


class Stand(FolderServer):
    """Serves every folder below one, each as an app of its own."""

    def __init__(self, folder: Path) -> None:
        super().__init__(folder, host="127.0.0.1", port=0)
        self.RequestHandlerClass = DyingHandler
        self._guard = threading.Lock()
        self._left: int | None = None
        self.answered = 0
        # What goes wrong with single files, by name.
        self.faults: dict[str, Fault] = {}

    def may_answer(self) -> bool:
        """Count a request; say whether the server still lives."""
        with self._guard:
            if self._left == 0:
                return False
            if self._left is not None:
                self._left -= 1
            self.answered += 1
            return True

    def die_after(self, files: int) -> None:
        """Answer so many more requests and then none."""
        with self._guard:
            self._left = files

    def revive(self) -> None:
        """Answer everything again."""
        with self._guard:
            self._left, self.answered = None, 0

    def address_of(self, name: str) -> str:
        """Give the address of one app."""
        return f"{self.address}{name}/"

    def find_file(self, target: str) -> Path | None:
        """Find a file; the folder of an app stands for its index.html."""
        path = target.partition("?")[0]
        return super().find_file(path + "index.html" if path.endswith("/") else path)


def make_small(target: Path, version: str) -> Path:
    """Build the small app in one version."""
    shutil.rmtree(target, ignore_errors=True)
    target.mkdir(parents=True)
    for path in sorted(SMALL.iterdir()):
        text = path.read_text(encoding="utf-8").replace("__APP__", version)
        (target / path.name).write_text(text, encoding="utf-8")
    for name in SHARED_SCRIPTS:
        shutil.copyfile(WEB / name, target / name)
    fill_worker(target)
    return target


def copy_app(dist: Path, target: Path) -> Path:
    """Copy the built app, with an empty page beside it from which its parts can be tried."""
    shutil.copytree(dist, target)
    (target / BLANK).write_text("<!doctype html><title>blank</title>", encoding="utf-8")
    return target


def deploy(source: Path, target: Path, *names: str) -> None:
    """Put files of a build over what is served: the named ones, or all."""
    for name in names or [path.name for path in source.iterdir()]:
        shutil.copyfile(source / name, target / name)

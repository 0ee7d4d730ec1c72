"""WebKitGTK's small browser, driven over WebDriver, in a screen that nobody looks at."""

import contextlib
import json
import time
import urllib.error
import urllib.request
from pathlib import Path
from typing import Any

from tests.page.engines.driver import Absent, Gone
from tests.page.engines.processes import Program, find_free_port, find_program

PATIENCE_SECONDS = 120
PACKAGES = "webkit2gtk-driver xvfb"
BROWSERS = "*/webkit2gtk-4.*/MiniBrowser"
ANSWER = """
const done = arguments[arguments.length - 1];
(async () => ({ value: JSON.stringify((await (EXPRESSION)) ?? null) }))().then(
  done,
  (error) => done({ error: String(error) }),
);
"""


class WebKit:
    """One WebKitGTK browser."""

    name = "webkit"

    def __init__(self, folder: Path) -> None:
        self._driver_path = find_program("WebKitWebDriver", package=PACKAGES)
        self._screen_path = find_program("Xvfb", package=PACKAGES)
        found = sorted(Path("/usr/lib").glob(BROWSERS))
        if not found:
            raise Absent(f"MiniBrowser is not here (Debian, as root: apt-get install {PACKAGES})")
        self._browser_path = str(found[0])
        self._folder = folder
        folder.mkdir(parents=True, exist_ok=True)

    def start(self) -> None:
        """Start a screen, the driver and the browser on its profile."""
        said = self._folder / "said.txt"
        self._screen, display = self._open_screen(said)
        port = find_free_port()
        home = {
            "DISPLAY": display, "HOME": str(self._folder), "NO_AT_BRIDGE": "1",
            "XDG_DATA_HOME": str(self._folder / "data"), "GDK_BACKEND": "x11",
            "XDG_CACHE_HOME": str(self._folder / "cache"), "LIBGL_ALWAYS_SOFTWARE": "1",
        }  # fmt: skip
        self._driver = Program([self._driver_path, f"--port={port}"], environment=home, said=said)
        self._base = f"http://127.0.0.1:{port}"
        self._session = self._open_session()
        self._send("POST", "/timeouts", {"script": PATIENCE_SECONDS * 1000})
        self._tabs = [self._send("GET", "/window")]

    def stop(self) -> None:
        """Close it in good order."""
        with contextlib.suppress(Gone, OSError):
            self._send("DELETE", "")
        self._driver.end()
        self._screen.end()

    def kill(self) -> None:
        """End it at once."""
        self._driver.kill()
        self._screen.kill()

    def go(self, address: str) -> None:
        """Show an address."""
        self._send("POST", "/url", {"url": address})

    def show(self, tab: int) -> None:
        """Speak to this tab from now on; the next one after the last is opened."""
        if tab == len(self._tabs):
            self._tabs.append(self._send("POST", "/window/new", {"type": "tab"})["handle"])
        self._send("POST", "/window", {"handle": self._tabs[tab]})

    def evaluate(self, expression: str) -> Any:
        """Give the value of an expression in the page."""
        script = ANSWER.replace("EXPRESSION", expression)
        said = self._send("POST", "/execute/async", {"script": script, "args": []})
        if said is None or "error" in said:
            raise Gone(str(said))
        return json.loads(said["value"])

    def print(self) -> bytes | None:
        """This engine's driver cannot print."""
        return None

    def _open_screen(self, said: Path) -> tuple[Program, str]:
        for number in range(90, 200):
            if not Path(f"/tmp/.X11-unix/X{number}").exists():
                words = [self._screen_path, f":{number}", "-screen", "0", "1280x900x24"]
                screen = Program([*words, "-nolisten", "tcp"], environment={}, said=said)
                while not screen.ended:
                    if Path(f"/tmp/.X11-unix/X{number}").exists():
                        return screen, f":{number}"
                    time.sleep(0.05)
        raise ConnectionError("no screen could be opened")

    def _open_session(self) -> str:
        wants = {
            "browserName": "MiniBrowser",
            "webkitgtk:browserOptions": {"binary": self._browser_path, "args": ["--automation"]},
        }
        end = time.monotonic() + PATIENCE_SECONDS
        while time.monotonic() < end:
            try:
                said = self._request("POST", "/session", {"capabilities": {"alwaysMatch": wants}})
                return str(said["sessionId"])
            except urllib.error.URLError:
                time.sleep(0.1)
        raise ConnectionError((self._folder / "said.txt").read_text()[-2000:])

    def _send(self, method: str, path: str, body: object = None) -> Any:
        return self._request(method, f"/session/{self._session}{path}", body)

    def _request(self, method: str, path: str, body: object) -> Any:
        content = None if body is None else json.dumps(body).encode()
        request = urllib.request.Request(self._base + path, content, method=method)
        request.add_header("Content-Type", "application/json")
        try:
            with urllib.request.urlopen(request, timeout=PATIENCE_SECONDS) as answer:
                return json.load(answer)["value"]
        except urllib.error.HTTPError as error:
            raise Gone(error.read().decode()) from error

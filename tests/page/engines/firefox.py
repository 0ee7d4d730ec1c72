"""Firefox ESR as Debian ships it, driven over WebDriver BiDi."""

import base64
import json
import time
from pathlib import Path
from typing import Any

from tests.page.engines.driver import Gone
from tests.page.engines.processes import Program, find_free_port, find_program
from tests.page.engines.websocket import WebSocket

PATIENCE_SECONDS = 120
PREFERENCES = {
    "remote.active-protocols": 1,
    "browser.shell.checkDefaultBrowser": False,
    "browser.startup.homepage_override.mstone": "ignore",
    "datareporting.policy.dataSubmissionEnabled": False,
    "toolkit.telemetry.enabled": False,
    "app.update.enabled": False,
    "app.normandy.enabled": False,
    "network.captive-portal-service.enabled": False,
    "network.connectivity-service.enabled": False,
    "services.settings.server": "data:,",
    "browser.safebrowsing.update.enabled": False,
    "extensions.update.enabled": False,
    "browser.newtabpage.enabled": False,
}


class Firefox:
    """One Firefox, headless."""

    name = "firefox"

    def __init__(self, folder: Path) -> None:
        self._program_path = find_program("firefox-esr", package="firefox-esr")
        self._folder = folder
        profile = folder / "profile"
        profile.mkdir(parents=True, exist_ok=True)
        lines = [f"user_pref({json.dumps(k)},{json.dumps(v)});" for k, v in PREFERENCES.items()]
        (profile / "user.js").write_text("\n".join(lines))
        self._counter = 0

    def start(self) -> None:
        """Start it on its profile and take its first tab."""
        port = find_free_port()
        self._program = Program(
            [self._program_path, "--headless", "--no-remote", "--profile",
             str(self._folder / "profile"), "--remote-debugging-port", str(port)],
            environment={"HOME": str(self._folder), "MOZ_DISABLE_CONTENT_SANDBOX": "1"},
            said=self._folder / "said.txt",
        )  # fmt: skip
        self._socket = self._connect(port)
        self._command("session.new", capabilities={})
        self._tab = self._command("browsingContext.getTree")["contexts"][0]["context"]
        self._tabs = [self._tab]

    def stop(self) -> None:
        """Close it in good order, so that what it stored is on its disk."""
        try:
            self._command("browser.close")
        except (ConnectionError, Gone):
            self._program.end()
        self._program.wait()
        self._socket.close()

    def kill(self) -> None:
        """End it at once."""
        self._program.kill()
        self._socket.close()

    def go(self, address: str) -> None:
        """Show an address."""
        self._command("browsingContext.navigate", context=self._tab, url=address, wait="complete")

    def show(self, tab: int) -> None:
        """Speak to this tab from now on; the next one after the last is opened."""
        if tab == len(self._tabs):
            self._tabs.append(self._command("browsingContext.create", type="tab")["context"])
        self._tab = self._tabs[tab]

    def evaluate(self, expression: str) -> Any:
        """Give the value of an expression in the page."""
        said = self._command(
            "script.evaluate",
            expression=f"(async () => JSON.stringify((await ({expression})) ?? null))()",
            target={"context": self._tab},
            awaitPromise=True,
        )
        if said["type"] != "success":
            raise Gone(said["exceptionDetails"]["text"])
        return json.loads(said["result"]["value"])

    def print(self) -> bytes:
        """Give the page as it comes out on paper, as a PDF."""
        return base64.b64decode(self._command("browsingContext.print", context=self._tab)["data"])

    def _connect(self, port: int) -> WebSocket:
        end = time.monotonic() + PATIENCE_SECONDS
        while time.monotonic() < end and not self._program.ended:
            try:
                return WebSocket(port, "/session", patience_seconds=PATIENCE_SECONDS)
            except OSError:
                time.sleep(0.1)
        raise ConnectionError((self._folder / "said.txt").read_text()[-2000:])

    def _command(self, method: str, **parameters: Any) -> Any:
        self._counter += 1
        number = self._counter
        self._socket.send(json.dumps({"id": number, "method": method, "params": parameters}))
        while True:
            said = json.loads(self._socket.receive())
            if said.get("id") == number:
                break
        if said.get("type") == "error":
            raise Gone(f"{said['error']}: {said['message']}")
        return said["result"]

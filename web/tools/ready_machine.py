"""Get from the machine what only tests and measurements need: a browser, a circuit solver."""

import contextlib
import os
import shutil
from pathlib import Path

from web.tools.say import Halt, announce_step, run_program, tell

BROWSERS = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome")
BROWSER_PLACES = (
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "C:/Program Files/Google/Chrome/Application/chrome.exe",
)
# Nothing but the page itself is to use the network; root may not start a sandbox.
BROWSER_ARGUMENTS = (
    "--no-sandbox",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-quic",
)
# The program that is looked for, and the Debian package that brings it.
DEBIAN_PACKAGES = {
    "chromium": "chromium",
    "ngspice": "ngspice",
    "firefox-esr": "firefox-esr",
    "WebKitWebDriver": "webkit2gtk-driver",
    "Xvfb": "xvfb",
}
DONE_WITHOUT = {
    "ngspice": "the comparison with a circuit solver is skipped",
    "firefox-esr": "the scenarios are skipped in Firefox",
    "WebKitWebDriver": "the scenarios are skipped in WebKit",
    "Xvfb": "the scenarios are skipped in WebKit",
}


def find_chromium() -> Path | None:
    """Return a Chromium on this machine; RUNGLINE_CHROMIUM names one of your own."""
    chosen = os.environ.get("RUNGLINE_CHROMIUM")
    if chosen:
        return Path(chosen)
    for name in BROWSERS:
        found = shutil.which(name)
        if found:
            return Path(found)
    return next((Path(place) for place in BROWSER_PLACES if Path(place).is_file()), None)


def get_machine_ready() -> None:
    """Install what is missing where that is possible, and say plainly what is not."""
    if shutil.which("apt-get") and hasattr(os, "geteuid") and os.geteuid() == 0:
        if find_chromium() is None:
            _install_debian(["chromium"])
        if wanted := _list_optional():
            # Not every Debian-like system has them all; what is missing then is named below.
            with contextlib.suppress(Halt):
                _install_debian(wanted)
    if find_chromium() is None:
        raise Halt(
            "the page tests need Chromium, and there is none here",
            remedy="install it by hand (Debian, as root: apt-get install chromium ngspice; "
            "elsewhere Chromium or Chrome from the system's own store), or put the path of "
            "one into RUNGLINE_CHROMIUM",
        )
    for name in _list_optional():
        tell(f"  {name} is not here: {DONE_WITHOUT[name]}")


def _list_optional() -> list[str]:
    """Name the programs that are missing and can be done without."""
    return [name for name in DONE_WITHOUT if shutil.which(name) is None]


def _install_debian(names: list[str]) -> None:
    """Install Debian's own packages."""
    environment = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    remedy = "run apt-get update by hand, see what it says, and run the same command again"
    with announce_step(f"installing {' and '.join(names)} from Debian"):
        run_program(
            ["apt-get", "update", "--quiet"],
            what="Debian's list of packages could not be fetched",
            remedy=remedy,
            environment=environment,
        )
        packages = [DEBIAN_PACKAGES[name] for name in names]
        run_program(
            ["apt-get", "install", "--yes", "--quiet", "--no-install-recommends", *packages],
            what=f"Debian's {' and '.join(names)} could not be installed",
            remedy=remedy,
            environment=environment,
        )

"""A slower processor: the browser's own throttle slows the page but not the worker in which
Python runs, so the whole process is stopped and let go in short turns instead.
"""

import os
import signal
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager

from playwright.sync_api import Browser

TURN_SECONDS = 0.004


def list_renderers(browser: Browser) -> list[int]:
    """Give the processes of this browser that run pages."""
    session = browser.new_browser_cdp_session()
    processes = session.send("SystemInfo.getProcessInfo")["processInfo"]
    session.detach()
    return [int(each["id"]) for each in processes if each["type"] == "renderer"]


@contextmanager
def slow_down(processes: list[int], *, times: int) -> Iterator[None]:
    """Let these processes run only one part in `times` of the time, in short turns."""
    ended = threading.Event()

    def take_turns() -> None:
        while not ended.is_set():
            send(processes, signal.SIGSTOP)
            time.sleep(TURN_SECONDS * (times - 1) / times)
            send(processes, signal.SIGCONT)
            time.sleep(TURN_SECONDS / times)

    turns = threading.Thread(target=take_turns)
    turns.start()
    try:
        yield
    finally:
        ended.set()
        turns.join()
        send(processes, signal.SIGCONT)


def send(processes: list[int], kind: signal.Signals) -> None:
    """Send a signal to those that still run."""
    for process in processes:
        try:
            os.kill(process, kind)
        except ProcessLookupError:
            continue

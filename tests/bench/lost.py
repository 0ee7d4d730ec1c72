"""Fifty times: edit without end, kill the browser at a random moment, look at what is there."""

import random
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from playwright.sync_api import sync_playwright

from tests.bench.figures import Figure
from tests.page.losing import Survivor
from web.tools.places import DIST
from web.tools.server import FolderServer

ROUNDS = 50
SEED = 7


def measure(rounds: int = ROUNDS) -> Iterator[Figure]:
    """How many edits were shown as kept, how many of them were lost, how often the job opened."""
    chance = random.Random(SEED)
    server = FolderServer(DIST, host="127.0.0.1", port=0)
    with TemporaryDirectory() as folder, server.serve_in_background(), sync_playwright() as one:
        survivor = Survivor(Path(folder), one, server.address)
        survivor.begin()
        lived = [survivor.live_and_die(chance) for _ in range(rounds)]
    yield Figure("browser killed", len(lived), "times")
    yield Figure("edits shown as kept before a kill", sum(each.shown for each in lived), "edits")
    yield Figure("edits shown as kept and lost", sum(len(each.lost) for each in lived), "edits")
    yield Figure("job opened after a kill", sum(each.opens for each in lived), "times")

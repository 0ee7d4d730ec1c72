"""A coverage-guided fuzzer on links, files and requests: how many runs, and what broke."""

import json
import re
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

from pycore.asks.table import ASKS
from pycore.carry.link import write_link
from pycore.carry.saved import save, save_all
from tests.bench.figures import Figure
from tests.bench.hostile import loosen
from tests.samples.travellers import make_traveller
from web.tools.places import ROOT
from web.tools.ready_python import install_lock

RUNS = {"link": 300_000, "link_inside": 150_000, "saved": 60_000, "all_saved": 60_000,
        "door": 40_000, "asks": 40_000}  # fmt: skip
MOST_SECONDS = 240
SLOWEST_SECONDS = 1
DONE = re.compile(r"Done (\d+) runs in (\d+) second")


def measure() -> Iterator[Figure]:
    """Run every target from true texts; a crash stops its target and is shown."""
    if sys.platform != "linux":
        return
    install_lock("fuzz", telling="installing the fuzzer")
    for target, runs in RUNS.items():
        done, failed = fuzz(target, runs=runs, most_seconds=MOST_SECONDS)
        yield Figure(f"fuzzed {target}", done, "runs")
        yield Figure(f"fuzzed {target}: broke", failed, "times")


def fuzz(target: str, *, runs: int, most_seconds: int) -> tuple[int, int]:
    """Fuzz one target in a process of its own; give the runs done and whether one broke it."""
    with tempfile.TemporaryDirectory() as folder:
        start = Path(folder) / "start"
        start.mkdir()
        for number, some in enumerate(make_starts(target)):
            (start / f"{number}").write_bytes(some)
        done = subprocess.run(
            [sys.executable, "-m", "tests.fuzz.outside_text", target, f"-runs={runs}",
             f"-max_total_time={most_seconds}", f"-timeout={SLOWEST_SECONDS}", "-max_len=4096",
             f"-artifact_prefix={folder}/", "-print_final_stats=1", str(start)],
            cwd=ROOT, capture_output=True, text=True, check=False,
        )  # fmt: skip
    if done.returncode:
        print(done.stderr[-3000:], file=sys.stderr)
    found = DONE.search(done.stderr)
    return (int(found[1]) if found else 0), int(done.returncode != 0)


def make_starts(target: str) -> list[bytes]:
    """True texts for the fuzzer to start from."""
    job = make_traveller(4, free_labels=True, ticked=True)
    link = write_link(job, "0.1.0")
    request = {"n": 1, "ask": "read_link", "body": {"text": link}}
    starts = {
        "link": [link.encode(), b"https://rungline.example/#" + link.encode()],
        "link_inside": [loosen(link)],
        "saved": [save(job).encode()],
        "all_saved": [save_all((job,)).encode(), save(job).encode()],
        "door": [json.dumps(request).encode(), b'{"n":1,"ask":"version","body":{}}'],
        "asks": [bytes([ask, *range(ask, ask + 9)]) for ask in range(len(ASKS))],
    }
    return starts[target]

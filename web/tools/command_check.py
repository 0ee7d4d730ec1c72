"""build.py check"""

import argparse
import os
import subprocess
import sys
import time
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path

from web.tools.places import MODULES, ROOT, TESTS, WEB
from web.tools.ready_node import find_node
from web.tools.say import tell

# These run beside all others, and take about as long.
FIRST_LANE = ("carry", "cases", "house", "laws")
# `build.py test` runs these too: comparisons with a circuit simulator take their time.
SLOW = "--ignore-glob=*/outside/*"
NOT_TESTS = ("bench", "page", "outside")


@dataclass(frozen=True)
class Outcome:
    """What one tool said."""

    name: str
    passed: bool
    seconds: float
    said: str


def run(_known: argparse.Namespace, _rest: list[str]) -> int:
    """Run every tool, two at a time, and show what the failing ones say."""
    started = time.perf_counter()
    with ThreadPoolExecutor(max_workers=2) as pool:
        outcomes = list(pool.map(lambda pair: _run_tool(*pair), _list_tools().items()))
    for outcome in outcomes:
        tell(
            f"  {outcome.name:18} {'ok' if outcome.passed else 'FAILED':6} {outcome.seconds:5.1f} s"
        )
    for outcome in outcomes:
        if not outcome.passed:
            tell(f"\n--- {outcome.name} ---\n{outcome.said.rstrip()}")
    failed = [outcome.name for outcome in outcomes if not outcome.passed]
    tell(f"\ncheck {'failed: ' + ', '.join(failed) if failed else 'passed'} "
         f"({time.perf_counter() - started:.1f} s)")  # fmt: skip
    return 1 if failed else 0


def _list_tools() -> dict[str, list[str | Path]]:
    """Name the tools with the slowest first, so that the two lanes end together."""
    python, node = sys.executable, find_node()
    tsc = MODULES / "typescript" / "bin" / "tsc"
    pytest = [python, "-m", "pytest", "-q", "-m", "not slow", SLOW]
    folders = [each for each in sorted(TESTS.glob("[a-z]*/")) if each.name not in NOT_TESTS]
    return {
        "laws, cases, house": [
            *pytest,
            *(folder for folder in folders if folder.name in FIRST_LANE),
        ],
        "other tests": [*pytest, *(folder for folder in folders if folder.name not in FIRST_LANE)],
        "mypy": [python, "-m", "mypy"],
        "tsc page": [node, tsc, "-p", WEB / "tsconfig.json"],
        "tsc workers": [node, tsc, "-p", WEB / "tsconfig.workers.json"],
        "ruff check": [python, "-m", "ruff", "check", "."],
        "ruff format": [python, "-m", "ruff", "format", "--check", "."],
    }


def _run_tool(name: str, command: list[str | Path]) -> Outcome:
    """Run one tool and keep what it says."""
    started = time.perf_counter()
    done = subprocess.run(
        [str(word) for word in command],
        cwd=ROOT,
        env={**os.environ, "PYTHONDONTWRITEBYTECODE": "1", "RUNGLINE_EXAMPLES": "check"},
        capture_output=True,
        text=True,
        check=False,
    )
    seconds = time.perf_counter() - started
    return Outcome(name, done.returncode == 0, seconds, done.stdout + done.stderr)

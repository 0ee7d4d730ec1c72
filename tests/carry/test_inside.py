"""Links and merges in the interpreter that people get: its own squeezer, floats and hashes."""

import re
from pathlib import Path

import pytest

from web.tools.trial import run_tests_inside

pytestmark = pytest.mark.slow
# Not the codes, whose reader is compiled for this machine, nor what starts processes.
INSIDE = ("round_trip", "old_links", "codec1_is_whole", "link_faults", "plain", "saved",
          "compare", "merge")  # fmt: skip


def test_links_and_merges_hold_inside_the_built_runtime(dist: Path) -> None:
    files = [f"tests/carry/test_{name}.py" for name in INSIDE]
    done = run_tests_inside(dist, "-q", *files)
    said = done.stdout + done.stderr
    assert done.returncode == 0, said
    passed = re.search(r"(\d+) passed", said)
    assert passed, said
    assert int(passed[1]) > len(files)

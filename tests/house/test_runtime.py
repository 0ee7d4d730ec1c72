"""The core in the interpreter that people get: Python 3.14, compiled, with the shipped library."""

import json
import re
import subprocess
import sys
from pathlib import Path

import pytest

from tests.house.files import ROOT
from web.tools.trial import install_inside, run_tests_inside
from web.tools.versions import read_core_version

pytestmark = pytest.mark.slow
PLACES = """
import pydantic.main
import pytest
from pycore import door


@pytest.mark.parametrize("module", [door, pydantic.main])
def test_places(module):
    code = next(each.__code__ for each in vars(module).values() if hasattr(each, "__code__"))
    places = list(code.co_positions())
    assert {place[2:] for place in places} == {(None, None)}
    lines = {place[0] for place in places}
    assert len(lines) > 1
    assert code.co_firstlineno in lines
"""


@pytest.mark.parametrize("folder", ["laws", "cases"])
def test_laws_and_cases_hold_inside_the_built_runtime(dist: Path, folder: str) -> None:
    done = run_tests_inside(dist, "-q", f"tests/{folder}")
    said = done.stdout + done.stderr
    assert done.returncode == 0, said
    passed = re.search(r"(\d+) passed", said)
    assert passed, said
    assert int(passed.group(1)) > 0


def test_a_failing_test_inside_the_runtime_is_seen_outside(dist: Path, tmp_path: Path) -> None:
    (tmp_path / "test_wrong.py").write_text("def test_wrong() -> None:\n    assert 1 == 2\n")
    done = run_tests_inside(dist, "-q", "tests", folder=tmp_path)
    assert done.returncode == 1
    assert "1 failed" in done.stdout


def test_a_traceback_of_what_is_shipped_names_lines_and_no_columns(
    dist: Path, tmp_path: Path
) -> None:
    """Columns would make the core a third larger on its way; nobody reads them."""
    (tmp_path / "test_places.py").write_text(PLACES)
    done = run_tests_inside(dist, "-q", "tests", folder=tmp_path)
    assert done.returncode == 0, done.stdout + done.stderr
    assert "2 passed" in done.stdout


def test_micropip_installs_our_wheel_into_the_runtime(dist: Path, tmp_path: Path) -> None:
    subprocess.run(
        [sys.executable, "-m", "flit_core.wheel", "--outdir", str(tmp_path), str(ROOT)],
        check=True,
        capture_output=True,
    )
    (wheel,) = tmp_path.glob("*.whl")
    done = install_inside(dist, wheel)
    assert done.returncode == 0, done.stdout + done.stderr
    said = json.loads(done.stdout.strip().splitlines()[-1])
    assert said["answer"]["body"] == {"version": read_core_version()}
    assert said["from"].startswith("/lib/python3.14/site-packages/pycore/")

"""The floors of pycore, kept by import-linter with the contract in pyproject.toml."""

import shutil
import subprocess
from pathlib import Path

import pytest

from tests.house.files import ROOT
from web.tools.places import find_venv_tool


def check_floors(folder: Path, cache: Path) -> subprocess.CompletedProcess[str]:
    """Run the contract of pyproject.toml on the pycore in this folder."""
    return subprocess.run(
        [str(find_venv_tool("lint-imports")), "--config", str(ROOT / "pyproject.toml"),
         "--cache-dir", str(cache)],
        cwd=folder, capture_output=True, text=True, check=False,
    )  # fmt: skip


@pytest.fixture
def copied_core(tmp_path: Path) -> Path:
    """A copy of pycore to break."""
    shutil.copytree(ROOT / "pycore", tmp_path / "pycore")
    return tmp_path


def test_an_upper_floor_imports_a_lower_one_and_never_the_other_way() -> None:
    said = check_floors(ROOT, ROOT / ".cache" / "import-linter")
    assert said.returncode == 0, said.stdout
    assert "1 kept, 0 broken" in said.stdout


@pytest.mark.parametrize(
    ("floor", "line"),
    [
        ("ground", "import pycore.calc"),
        ("calc", "import pycore.edit"),
        ("jobs", "import pycore.formulas"),
    ],
)
def test_an_import_up_or_sideways_breaks_the_contract(
    copied_core: Path, floor: str, line: str
) -> None:
    (copied_core / "pycore" / floor / "stray.py").write_text(line + "\n")
    said = check_floors(copied_core, copied_core / "cache")
    assert said.returncode == 1
    assert f"pycore.{floor} is not allowed to import" in said.stdout


def test_a_room_that_is_on_no_floor_breaks_the_contract(copied_core: Path) -> None:
    (copied_core / "pycore" / "attic.py").write_text("")
    assert check_floors(copied_core, copied_core / "cache").returncode != 0

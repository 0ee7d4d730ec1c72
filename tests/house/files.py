"""Which files the house rules are asked of: everything git knows or would add."""

import subprocess
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


@cache
def list_files() -> tuple[Path, ...]:
    """Give every file of the project, relative to its root."""
    said = subprocess.run(
        ["git", "ls-files", "--cached", "--others", "--exclude-standard", "-z"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    ).stdout
    return tuple(
        sorted(Path(each) for each in said.split("\0") if each and (ROOT / each).is_file())
    )


def list_python(*folders: str) -> list[Path]:
    """Give the Python files below these folders; all of the project's when none is named."""
    wanted = folders or ("pycore", "web", "tests", "build.py")
    return [each for each in list_files() if each.suffix == ".py" and each.parts[0] in wanted]


def list_page() -> list[Path]:
    """Give the page's own JavaScript."""
    return [
        each
        for each in list_files()
        if each.parts[0] == "web" and each.suffix == ".js" and each.parts[1] != "generated"
    ]

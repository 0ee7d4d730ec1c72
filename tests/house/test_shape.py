"""The shape of the house: what lies at the top, how long a file and a function may be."""

import ast
import re
import statistics
from pathlib import Path

import pytest

from tests.house.files import ROOT, list_files, list_page, list_python
from tests.house.javascript import Token, read_tokens

TOP = {"README.md", "DEVELOPERS.md", "LICENSE", "build.py", "pyproject.toml"} | {
    "pycore",
    "web",
    "tests",
}
LONGEST_FILE, LONGEST_FUNCTION, MEDIAN_FILE = 300, 30, 120
WRITTEN = (".py", ".js", ".mjs", ".ts", ".css", ".html")
SAYS_WHY = re.compile(r"long because", re.IGNORECASE)


def test_nothing_else_lies_at_the_top() -> None:
    tops = {path.parts[0] for path in list_files()}
    assert {top for top in tops - TOP if not top.startswith(".")} == set()
    assert tops >= TOP


def test_a_file_fits_a_few_screens_or_says_why_not() -> None:
    for path in written_files():
        lines = (ROOT / path).read_text(encoding="utf-8").splitlines()
        says_why = SAYS_WHY.search("\n".join(lines[:20]))
        assert len(lines) <= LONGEST_FILE or says_why, f"{path} has {len(lines)} lines"


@pytest.mark.parametrize("folder", ["pycore", "web", "tests"])
def test_the_middle_file_of_each_folder_fits_two_screens(folder: str) -> None:
    lengths = [
        len((ROOT / path).read_text(encoding="utf-8").splitlines())
        for path in written_files()
        if path.parts[0] == folder
    ]
    assert statistics.median(lengths) <= MEDIAN_FILE


@pytest.mark.parametrize("path", list_python(), ids=str)
def test_a_python_function_fits_one_screen(path: object) -> None:
    for node in ast.walk(ast.parse((ROOT / str(path)).read_text(encoding="utf-8"))):
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            first = node.body[1] if ast.get_docstring(node) and len(node.body) > 1 else node.body[0]
            length = (node.end_lineno or 0) - first.lineno + 1
            assert length <= LONGEST_FUNCTION, f"{path}: {node.name} has {length} lines"


@pytest.mark.parametrize("path", list_page(), ids=str)
def test_a_function_of_the_page_fits_one_screen(path: object) -> None:
    tokens = read_tokens((ROOT / str(path)).read_text(encoding="utf-8"))
    for opening, closing in find_leaf_bodies(tokens):
        length = tokens[closing].line - tokens[opening].line - 1
        assert length <= LONGEST_FUNCTION, f"{path} line {tokens[opening].line}: {length} lines"


def find_leaf_bodies(tokens: list[Token]) -> list[tuple[int, int]]:
    """Give the bodies of functions that hold no function with a body of its own.

    A function that only makes others (a closure around a few of them) is as long as they
    are together; each of them is measured instead.
    """
    bodies: list[tuple[int, int, bool]] = []
    opened: list[int] = []
    holding: set[int] = set()
    for place, token in enumerate(tokens):
        if token.text in ("{", "${"):
            opened.append(place)
        elif token.text in ("}", "}$"):
            opening = opened.pop()
            if is_body(tokens, opening):
                bodies.append((opening, place, opening in holding))
                holding.update(opened)
    return [(opening, closing) for opening, closing, holds in bodies if not holds]


def is_body(tokens: list[Token], opening: int) -> bool:
    """Tell the brace of a function from that of a block, a class or an object."""
    before = tokens[opening - 1].text if opening else ""
    if before == "=>":
        return True
    if before != ")" or tokens[opening].text != "{":
        return False
    depth, place = 1, opening - 2
    while depth:
        depth += {")": 1, "(": -1}.get(tokens[place].text, 0)
        place -= 1
    return tokens[place].text not in ("if", "for", "while", "switch", "catch", "with", "await")


def written_files() -> list[Path]:
    """Give what people write: neither locks nor what the build makes."""
    return [
        path
        for path in list_files()
        if path.suffix in WRITTEN and path.parts[:2] != ("web", "generated")
    ]

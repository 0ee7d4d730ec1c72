"""What pycore may not do: no clock, chance, files, network or browser, and no loose numbers."""

import ast
import re

import pytest

from tests.house.files import ROOT, list_python

FORBIDDEN_MODULES = {
    "asyncio", "builtins", "concurrent", "ctypes", "http", "importlib", "io", "js", "logging",
    "micropip", "multiprocessing", "os", "pathlib", "pickle", "pyodide", "random", "secrets",
    "shutil", "signal", "socket", "sqlite3", "ssl", "subprocess", "sys", "tempfile", "threading",
    "time", "urllib", "uuid",
}  # fmt: skip
FORBIDDEN_CALLS = {"open", "eval", "exec", "compile", "input", "print", "__import__", "breakpoint"}
FORBIDDEN_ENDS = {"json.loads", "json.load", "datetime.now", "datetime.today", "datetime.utcnow",
                  "date.today"}  # fmt: skip
UNIT = re.compile(r"_(w|v|m|a|db|dba|ohm|hz|c|mm2|km|pct|deg|uh|pf)$")
CORE = list_python("pycore")


def read_tree(path: object) -> ast.Module:
    """Parse one file of the project."""
    return ast.parse((ROOT / str(path)).read_text(encoding="utf-8"))


def name_call(node: ast.Call) -> str:
    """Name what a call calls by its last two words."""
    return ".".join(ast.unparse(node.func).split(".")[-2:])


@pytest.mark.parametrize("path", CORE, ids=str)
def test_the_core_imports_nothing_from_outside_its_room(path: object) -> None:
    for node in ast.walk(read_tree(path)):
        names: list[str] = []
        if isinstance(node, ast.Import):
            names = [alias.name for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"line {node.lineno}: imports name the whole path"
            names = [node.module or ""]
        assert not {name.split(".")[0] for name in names} & FORBIDDEN_MODULES, f"line {node.lineno}"  # type: ignore[attr-defined]


@pytest.mark.parametrize("path", CORE, ids=str)
def test_the_core_reads_no_clock_no_file_and_no_untyped_json(path: object) -> None:
    for node in ast.walk(read_tree(path)):
        if isinstance(node, ast.Call):
            name = name_call(node)
            assert name not in FORBIDDEN_CALLS | FORBIDDEN_ENDS, f"line {node.lineno}: {name}"
        if isinstance(node, ast.ImportFrom) and node.module == "json":
            assert not {alias.name for alias in node.names} & {"loads", "load"}


@pytest.mark.parametrize("path", CORE, ids=str)
def test_no_argument_has_a_physical_value_by_default(path: object) -> None:
    for node in ast.walk(read_tree(path)):
        if isinstance(node, ast.FunctionDef):
            placed = node.args.posonlyargs + node.args.args
            pairs = list(zip(placed[::-1], node.args.defaults[::-1], strict=False))
            pairs += zip(node.args.kwonlyargs, node.args.kw_defaults, strict=True)  # type: ignore[arg-type]
            for argument, default in pairs:
                is_number = isinstance(default, ast.Constant) and default.value is not None
                assert not (UNIT.search(argument.arg) and is_number), f"{node.name}: {argument.arg}"


@pytest.mark.parametrize("path", CORE, ids=str)
def test_a_function_takes_more_than_two_things_only_by_name(path: object) -> None:
    for node in ast.walk(read_tree(path)):
        if isinstance(node, ast.FunctionDef):
            placed = [each.arg for each in node.args.posonlyargs + node.args.args]
            placed = [each for each in placed if each not in ("self", "cls")]
            assert len(placed) <= 2, f"{node.name}({', '.join(placed)})"


@pytest.mark.parametrize("path", list_python("pycore/formulas", "pycore"), ids=str)
def test_a_formula_says_what_it_is_and_where_it_comes_from(path: object) -> None:
    if "formulas" not in str(path):
        return
    for node in read_tree(path).body:
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
            decorators = [each for each in node.decorator_list if isinstance(each, ast.Call)]
            named = {keyword.arg for each in decorators for keyword in each.keywords}
            assert {"unit", "source"} <= named, f"{node.name} names no unit or no source"
            assert ast.get_docstring(node), f"{node.name} has no docstring"
            assert not node.args.args, f"{node.name} takes its quantities by name only"

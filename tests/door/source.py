"""The core's own source, looked through for the codes it can emit."""

import ast
from collections.abc import Iterator
from functools import cache
from pathlib import Path

from pycore.ground import problems

CORE = Path(problems.__file__).resolve().parents[1]
PROBLEMS = {
    name
    for name, one in vars(problems).items()
    if isinstance(one, type) and issubclass(one, problems.Problem)
}


@cache
def trees() -> dict[str, ast.Module]:
    """Every file of the core, parsed, but for the words themselves."""
    return {
        str(path.relative_to(CORE)): ast.parse(path.read_text(encoding="utf-8"))
        for path in sorted(CORE.rglob("*.py"))
        if "words" not in path.relative_to(CORE).parts
    }


def calls_of(*names: str) -> Iterator[tuple[str, ast.Call]]:
    """Every call of a function or class of one of these names, with its file."""
    for path, tree in trees().items():
        for node in ast.walk(tree):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name | ast.Attribute):
                name = node.func.id if isinstance(node.func, ast.Name) else node.func.attr
                if name in names:
                    yield path, node


def constants() -> set[str]:
    """Every text that stands in the core's source."""
    return {
        node.value
        for tree in trees().values()
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant) and isinstance(node.value, str)
    }


def texts_in(node: ast.expr) -> set[str]:
    """The texts an expression can be, as far as they stand in it: its constants and choices."""
    if isinstance(node, ast.Constant):
        return {node.value} if isinstance(node.value, str) else set()
    if isinstance(node, ast.IfExp):
        return texts_in(node.body) | texts_in(node.orelse)
    return set()


def keyword_of(call: ast.Call, name: str) -> ast.expr | None:
    """The expression given for one keyword of a call."""
    return next((one.value for one in call.keywords if one.arg == name), None)

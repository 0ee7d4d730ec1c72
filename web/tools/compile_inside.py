"""Compile archives to byte code. Runs inside the shipped runtime, started by archives.py.

ARGUMENT is JSON: {"wanted": ["python_stdlib" | "site" | "pycore", ...]}.
/stock holds the stock python_stdlib.zip, /wheels the wheels, /core the folder pycore, /locks
the list of standard modules to ship, /out takes the archives and beside each a list of what
it imports.

The byte code is of the kind that is never compared with its source: no clock goes in, so the
same input makes the same bytes.
"""

import _imp
import ast
import importlib._bootstrap_external as bootstrap
import io
import json
import zipfile
from collections.abc import Callable, Iterator
from pathlib import Path

Member = tuple[str, bytes]
LIBRARY = "/lib/python314.zip/"
SITE = "/lib/python3.14/site-packages/"
# Never looked at; so a module of which only words to a reader change keeps its bytes.
NO_HASH = bytes(8)
NOT_SHIPPED = (
    "pydantic/v1/", "pydantic/mypy.py", "pydantic/_hypothesis_plugin.py",
    "segno/cli.py",
)  # fmt: skip


def read_library() -> Iterator[Member]:
    """Give the standard modules named in the committed list."""
    listed = set(Path("/locks/stdlib.txt").read_text().split())
    with zipfile.ZipFile("/stock/python_stdlib.zip") as stock:
        missing = listed - set(stock.namelist())
        if missing:
            raise LookupError(
                f"web/locks/stdlib.txt names what the runtime has not: {sorted(missing)}"
            )
        for name in sorted(listed):
            yield name, stock.read(name)


def read_wheels() -> Iterator[Member]:
    """Give what is imported from the wheels: no type stubs, no metadata, no old interface.

    What is compiled to machine code is shipped beside the archive, for the browser to compile.
    """
    members: dict[str, bytes] = {}
    for wheel in sorted(Path("/wheels").glob("*.whl")):
        with zipfile.ZipFile(wheel) as archive:
            for name in archive.namelist():
                if name.endswith(".py") and not name.startswith(NOT_SHIPPED):
                    members[name] = archive.read(name)
    yield from sorted(members.items())


def read_core() -> Iterator[Member]:
    """Give every module of pycore."""
    for path in sorted(Path("/core").rglob("*.py")):
        yield "pycore/" + path.relative_to("/core").as_posix(), path.read_bytes()


def compile_member(member: Member, root: str) -> Member:
    """Turn one source into byte code that says where it came from; leave the rest alone."""
    name, content = member
    if not name.endswith(".py"):
        return member
    tree = ast.parse(content) if root == LIBRARY else drop_docstrings(ast.parse(content))
    code = compile(tree, root + name, "exec", dont_inherit=True)
    packed = bootstrap._code_to_hash_pyc(code, NO_HASH, False)  # type: ignore[attr-defined]
    return name + "c", bytes(packed)


def drop_docstrings(tree: ast.Module) -> ast.Module:
    """Leave out what only a reader of the source needs; asserts and line numbers stay."""
    for node in ast.walk(tree):
        if not isinstance(node, (ast.Module, ast.ClassDef, ast.FunctionDef, ast.AsyncFunctionDef)):
            continue
        if ast.get_docstring(node, clean=False) is not None:
            node.body[:1] = (
                [] if len(node.body) > 1 else [ast.copy_location(ast.Pass(), node.body[0])]
            )
    return tree


def pack(members: list[Member], *, stored: bool) -> bytes:
    """Zip with one fixed date, so that equal input gives equal bytes.

    What is stored is squeezed on its way by the server, many modules together.
    """
    whole = io.BytesIO()
    with zipfile.ZipFile(whole, "w", zipfile.ZIP_DEFLATED, compresslevel=9) as archive:
        for name, content in members:
            entry = zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0))
            entry.compress_type = zipfile.ZIP_STORED if stored else zipfile.ZIP_DEFLATED
            archive.writestr(entry, content)
    return whole.getvalue()


def list_imports(name: str, source: bytes, *, inside_functions: bool) -> set[str]:
    """Name every module a source may import; those inside functions only when asked."""
    package = name.removesuffix("/__init__.py").removesuffix(".py").split("/")
    if not name.endswith("/__init__.py"):
        package = package[:-1]
    found: set[str] = set()
    waiting: list[ast.AST] = [ast.parse(source)]
    while waiting:
        node = waiting.pop()
        if isinstance(node, ast.Import):
            found.update(alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            start = package[: len(package) - node.level + 1] if node.level else []
            base = ".".join([*start, *([node.module] if node.module else [])])
            found.update([base, *(f"{base}.{alias.name}" for alias in node.names)])
        elif is_run(node, inside_functions=inside_functions):
            waiting.extend(ast.iter_child_nodes(node))
    return found


def is_run(node: ast.AST, *, inside_functions: bool) -> bool:
    """Say whether imports below this node can happen."""
    if isinstance(node, (ast.FunctionDef, ast.AsyncFunctionDef, ast.Lambda)):
        return inside_functions
    if isinstance(node, ast.ExceptHandler):
        return inside_functions  # the library's own stand-ins for what is compiled into the runtime
    if isinstance(node, ast.If):
        test = ast.unparse(node.test)
        return not any(word in test for word in ("TYPE_CHECKING", "__name__", "win32"))
    return True


def is_built_in(module: str) -> bool:
    """Say whether the runtime has this module inside itself, so that its file is never read."""
    return _imp.is_frozen(module) or module.startswith("importlib._bootstrap")


def name_library_files(modules: set[str]) -> set[str]:
    """Turn module names into the files of the stock library that hold them."""
    with zipfile.ZipFile("/stock/python_stdlib.zip") as stock:
        known = set(stock.namelist())
    found: set[str] = set()
    for module in modules:
        parts = module.split(".")
        for length in range(1, len(parts) + 1):
            if not is_built_in(".".join(parts[:length])):
                path = "/".join(parts[:length])
                found |= {f"{path}.py", f"{path}/__init__.py"} & known
    return found


READERS: dict[str, tuple[Callable[[], Iterator[Member]], str, bool]] = {
    "python_stdlib": (read_library, LIBRARY, False),
    "site": (read_wheels, SITE, True),
    "pycore": (read_core, SITE, True),
}


def make_archive(kind: str) -> None:
    """Write one archive and the list of standard files it leans on."""
    read, root, inside_functions = READERS[kind]
    members = list(read())
    needs: set[str] = set()
    for name, content in members:
        if name.endswith(".py"):
            needs |= list_imports(name, content, inside_functions=inside_functions)
    Path(f"/out/{kind}.needs").write_text("\n".join(sorted(name_library_files(needs))))
    compiled = [compile_member(each, root) for each in members]
    Path(f"/out/{kind}.zip").write_bytes(pack(compiled, stored=kind == "pycore"))


for wanted in json.loads(ARGUMENT)["wanted"]:  # type: ignore[name-defined]  # noqa: F821
    make_archive(wanted)

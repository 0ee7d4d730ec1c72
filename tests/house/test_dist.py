"""What is uploaded: whole, sealed, the same from every build, and small enough."""

import base64
import gzip
import hashlib
import itertools
import json
import re
import zipfile
from pathlib import Path

import brotli
import pytest

from tests.house.files import ROOT
from tests.house.javascript import read_tokens
from web.tools.engine_files import CORE, read_archives
from web.tools.make import assemble
from web.tools.server import CONTENT_RULES, TYPES

pytestmark = pytest.mark.slow
FIRST_VISIT_BYTES = 8_000_000


def list_names(folder: Path) -> set[str]:
    """Name every file that is not the squeezed form of another."""
    names = {path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file()}
    return {name for name in names if not name.endswith((".br", ".gz"))}


def read_kept(folder: Path) -> dict[str, str]:
    """Read the list of files that the service worker keeps."""
    match = re.search(r"FILES = (\[.*?\]);", (folder / "sw.js").read_text())
    assert match
    return dict(json.loads(match.group(1)))


def count_wire_bytes(path: Path) -> int:
    """Count what goes over the wire to a browser that takes brotli."""
    squeezed = path.with_name(path.name + ".br")
    return (squeezed if squeezed.is_file() else path).stat().st_size


def test_everything_is_kept_for_offline_with_the_hash_it_has(dist: Path) -> None:
    kept = read_kept(dist)
    shipped = list_names(dist)
    assert set(kept) == (shipped - {"sw.js", "index.html"}) | {"./"}
    for name, integrity in kept.items():
        content = (dist / ("index.html" if name == "./" else name)).read_bytes()
        assert integrity == "sha256-" + base64.b64encode(hashlib.sha256(content).digest()).decode()


def test_the_version_of_the_worker_is_the_hash_of_its_list(dist: Path) -> None:
    text = (dist / "sw.js").read_text()
    match = re.search(r"FILES = (\[.*?\]);", text)
    assert match
    assert f'"{hashlib.sha256(match.group(1).encode()).hexdigest()[:16]}"' in text
    assert "__VERSION__" not in text


def test_every_shipped_file_has_a_type_of_its_own(dist: Path) -> None:
    assert {Path(name).suffix for name in list_names(dist)} <= set(TYPES)


def test_the_page_carries_the_same_content_rules_as_the_server(dist: Path) -> None:
    assert f'content="{CONTENT_RULES}"' in (dist / "index.html").read_text()


def test_every_import_of_the_page_is_shipped(dist: Path) -> None:
    for path in [*dist.glob("*.js"), *dist.glob("*/*.js")]:
        tokens = read_tokens(path.read_text(encoding="utf-8"))
        for before, token in itertools.pairwise(tokens):
            target = token.text.strip("\"'")
            if token.kind == "text" and before.text in ("from", "import"):
                assert (path.parent / target).is_file(), f"{path.name} imports {target}"


def test_a_first_visit_is_small_enough(dist: Path) -> None:
    fetched = [dist / name for name in list_names(dist)]
    assert sum(map(count_wire_bytes, fetched)) <= FIRST_VISIT_BYTES


def test_beside_every_file_lie_two_that_are_smaller_and_hold_the_same(dist: Path) -> None:
    """But for pictures and patches, which are squeezed already, and what fits in one packet."""
    small = [
        dist / name
        for name in sorted(list_names(dist))
        if Path(name).suffix not in (".png", ".patch") and (dist / name).stat().st_size >= 256
    ]
    assert dist / "index.html" in small
    for path in small:
        content = path.read_bytes()
        for ending, open_again in ((".br", brotli.decompress), (".gz", gzip.decompress)):
            squeezed = path.with_name(path.name + ending).read_bytes()
            assert len(squeezed) < len(content), path
            assert open_again(squeezed) == content, path


def test_what_the_readme_asks_of_a_server_is_what_our_own_does() -> None:
    asked: dict[str, str] = {}
    for endings, types in re.findall(
        r"^\| (`\..*?`) \| `Content-Type: (.*?)` \|$",
        (ROOT / "README.md").read_text(),
        re.MULTILINE,
    ):
        names = re.findall(r"`(\.\w+)`", endings)
        each = types.split("`, `")
        asked |= dict(zip(names, each * len(names) if len(each) == 1 else each, strict=False))
    assert {".js", ".mjs", ".wasm", ".webmanifest", ".zip", ".patch"} == set(asked)
    for ending, named in asked.items():
        assert TYPES[ending].partition(";")[0] == named, ending


def test_the_archive_of_the_core_holds_every_module(dist: Path) -> None:
    assert [path.name for path in read_archives(dist / "py")] == ["site.zip", CORE]
    with zipfile.ZipFile(dist / "py" / CORE) as archive:
        assert archive.testzip() is None
        modules = {name.removesuffix("c") for name in archive.namelist()}
    sources = {path.relative_to(ROOT).as_posix() for path in (ROOT / "pycore").rglob("*.py")}
    assert modules == sources


def test_two_builds_give_the_same_bytes(dist: Path, tmp_path: Path) -> None:
    assemble(tmp_path / "again", kept=tmp_path / "archives")
    assert list_names(tmp_path / "again") == list_names(dist)
    for name in sorted(list_names(dist)):
        assert (tmp_path / "again" / name).read_bytes() == (dist / name).read_bytes(), name


def test_the_terms_lie_beside_what_they_cover(dist: Path) -> None:
    assert "Mozilla Public License" in (dist / "licences.txt").read_text(encoding="utf-8")
    assert (dist / "changes.json").read_bytes() == (ROOT / "web" / "changes.json").read_bytes()

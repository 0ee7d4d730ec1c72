"""A patch makes the newer build from the older one, and is small for a release of the app."""

import gzip
import io
import json
import shutil
import struct
import zipfile
from pathlib import Path

import bsdiff4
import pytest

from web.tools.engine_files import CORE
from web.tools.patches import (
    ENDING,
    FOLDER,
    MOST_PATCHES,
    find_chain,
    make_patch,
    read_head,
    read_kept,
    read_version,
    write_patches,
)  # fmt: skip
from web.tools.places import WEB
from web.tools.precache import fill_worker
from web.tools.say import Halt

APP_UPDATE_BYTES = 150_000


def build(folder: Path, **files: str) -> Path:
    """Make and seal a build of these files."""
    folder.mkdir()
    for name, content in {"index": "page", **files}.items():
        (folder / f"{name}.html").write_text(content, encoding="utf-8")
    shutil.copyfile(WEB / "sw.js", folder / "sw.js")
    fill_worker(folder)
    return folder


def apply(patch: bytes, before: Path) -> dict[str, bytes]:
    """Apply a patch with the library that made its differences, not with the app's own reader."""
    whole = gzip.decompress(patch)
    (length,) = struct.unpack_from(">I", whole)
    head, body = json.loads(whole[4 : 4 + length]), whole[4 + length :]
    numbers = [number for turn in zip(*head["turns"], strict=True) for number in turn]
    control = b"".join(struct.pack("<Q", abs(each) | (each < 0) << 63) for each in numbers)
    own = sum(head["turns"][0])
    old = b"".join(read_kept(before, name) for name, _ in head["files"])
    size = sum(length for _, length in head["files"])
    made = io.BytesIO(bsdiff4.core.patch(old, size, control, body[:own], body[own:]))
    return {name: made.read(length) for name, length in head["files"]}


def test_a_patch_holds_every_file_of_both_that_has_changed(tmp_path: Path) -> None:
    before = build(tmp_path / "before", a="as it was " * 50, b="same", gone="gone")
    after = build(tmp_path / "after", a="as it was " * 49 + "no more", b="same", new="new")
    patch = make_patch(before, after)
    assert patch
    assert apply(patch, before) == {"a.html": read_kept(after, "a.html")}
    assert patch == make_patch(before, after)


def test_what_changes_no_file_of_both_needs_no_patch(tmp_path: Path) -> None:
    before, after = build(tmp_path / "before"), build(tmp_path / "after", new="new")
    assert write_patches(after, before) is None
    same = build(tmp_path / "same")
    assert write_patches(same, before) is None


def test_the_patches_of_earlier_releases_are_taken_along(tmp_path: Path) -> None:
    builds = [build(tmp_path / "0", a="0")]
    for number in range(1, MOST_PATCHES + 4):
        builds.append(build(tmp_path / str(number), a=str(number)))
        assert write_patches(builds[-1], builds[-2])
    chain = find_chain(builds[-1] / FOLDER, read_version(builds[-1]))
    expected = [read_version(each) for each in builds[-2 : -2 - MOST_PATCHES : -1]]
    assert [path.stem for path in chain] == expected
    assert len(list((builds[-1] / FOLDER).iterdir())) == MOST_PATCHES
    assert read_head(chain[0])["to"] == read_version(builds[-1])


def test_a_release_that_is_made_again_keeps_its_patches(tmp_path: Path) -> None:
    first, second = build(tmp_path / "1", a="1"), build(tmp_path / "2", a="2")
    assert write_patches(second, first)
    again = build(tmp_path / "again", a="2")
    write_patches(again, second)
    assert [path.name for path in (again / FOLDER).iterdir()] == [read_version(first) + ENDING]


def test_a_folder_that_is_no_release_is_refused(tmp_path: Path) -> None:
    with pytest.raises(Halt, match="no release of Rungline"):
        write_patches(build(tmp_path / "build"), tmp_path)


@pytest.mark.slow
def test_a_large_release_of_the_app_alone_is_a_small_patch(dist: Path, tmp_path: Path) -> None:
    """The release before lacks every tenth module of the core and every tenth line of the page."""
    before = tmp_path / "before"
    shutil.copytree(dist, before, ignore=shutil.ignore_patterns("*.br", "*.gz", FOLDER))
    for path in [*before.glob("*.js"), *before.glob("styles/*.css")]:
        if path.name != "sw.js":
            lines = path.read_text(encoding="utf-8").splitlines(keepends=True)
            path.write_text("".join(line for at, line in enumerate(lines) if at % 10))
    core = before / "py" / CORE
    with zipfile.ZipFile(dist / "py" / CORE) as new, zipfile.ZipFile(core, "w") as old:
        for at, entry in enumerate(new.infolist()):
            if at % 10:
                old.writestr(entry, new.read(entry))
    shutil.copyfile(WEB / "sw.js", before / "sw.js")
    fill_worker(before)
    patch = make_patch(before, dist)
    assert patch
    assert len(patch) <= APP_UPDATE_BYTES
    made = apply(patch, before)
    assert set(made) >= {f"py/{CORE}", "parts.js"}
    assert all(content == read_kept(dist, name) for name, content in made.items())

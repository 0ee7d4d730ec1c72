"""The tools behind build.py do what they say, and say in words what they cannot do."""

import argparse
import json
import socket
import subprocess
import sys
from pathlib import Path
from typing import Literal, NamedTuple

import pytest
from pydantic import BaseModel, Field
from typing_extensions import TypedDict

from tests.bench.figures import Figure, find_percentile
from tests.house.files import ROOT
from web.tools import command_release, precache
from web.tools.command_serve import open_server
from web.tools.door_types import write_door_types
from web.tools.page_files import list_page_files
from web.tools.say import Halt, run_program
from web.tools.stamps import hash_inputs, is_done, mark_done


class Tap(BaseModel):
    """A tap."""

    w: float
    shade: Literal["warm", "cold"] | None = None
    class_: int = Field(default=1, alias="class")


class AskBody(BaseModel):
    taps: tuple[Tap, ...]
    by_name: dict[str, Tap]


class Answer(TypedDict):
    pair: tuple[float, str]
    tap: Tap | None


class Ask(NamedTuple):
    body: type
    answer: object


def test_types_for_the_page_say_what_the_models_say() -> None:
    text = write_door_types({"look-up": Ask(AskBody, Answer)})
    for line in (
        "/** A tap. */\nexport interface Tap {",
        "  w: number;",
        '  shade?: "warm" | "cold" | null;',
        "  class?: number;",
        "  taps: Tap[];",
        "  by_name: Record<string, Tap>;",
        "  pair: [number, string];",
        "  tap: Tap | null;",
        '  "look-up": { body: AskBody; answer: Answer };',
    ):
        assert line in text, text


def test_a_failed_program_is_told_in_a_sentence_with_a_way_to_go_on() -> None:
    with pytest.raises(Halt) as caught:
        run_program(
            [sys.executable, "-c", "raise SystemExit('the disk is full')"],
            what="the thing could not be made",
            remedy="make room",
        )
    said = str(caught.value)
    assert "the disk is full" in said
    assert "Stopped: the thing could not be made\nTo go on: make room" in said


def test_a_program_that_is_not_there_is_told_the_same_way() -> None:
    with pytest.raises(Halt, match="no-such-program"):
        run_program(["no-such-program"], what="it could not start", remedy="install it")


def test_a_stamp_holds_only_for_the_input_it_was_made_for(tmp_path: Path) -> None:
    lock, stamp = tmp_path / "lock", tmp_path / "folder" / "stamp"
    lock.write_text("one")
    key = hash_inputs([lock, "words"])
    assert not is_done(stamp, key)
    mark_done(stamp, key)
    assert is_done(stamp, key)
    lock.write_text("two")
    assert not is_done(stamp, hash_inputs([lock, "words"]))
    assert hash_inputs(["ab", "c"]) != hash_inputs(["a", "bc"])


def test_a_taken_port_is_told_when_it_was_asked_for() -> None:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        with pytest.raises(Halt, match=f"port {port} is taken"):
            open_server("127.0.0.1", port)


def test_a_taken_usual_port_gives_way_to_a_free_one(monkeypatch: pytest.MonkeyPatch) -> None:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        monkeypatch.setattr("web.tools.command_serve.USUAL_PORT", port)
        with open_server("127.0.0.1", None) as server:
            assert server.server_address[1] != port


def test_the_page_is_shipped_without_tools_types_and_locks() -> None:
    names = {path.as_posix() for path in list_page_files()}
    assert {"index.html", "app.js", "sw.js", "changes.json", "generated/words.js"} <= names
    for name in names:
        assert not name.startswith(("tools/", "locks/", "node_modules/", "types/", "."))
        assert not name.endswith((".d.ts", ".d.mts", ".py", ".lock"))
        assert not Path(name).name.startswith(("package", "tsconfig"))


@pytest.fixture
def small_app(tmp_path: Path) -> Path:
    """An app of two files and a worker with its blanks."""
    (tmp_path / "index.html").write_text("<!doctype html>")
    (tmp_path / "app.js").write_text("1")
    (tmp_path / "sw.js").write_text('const VERSION = "__VERSION__";\nconst FILES = __FILES__;')
    return tmp_path


def test_another_content_gives_the_worker_another_version(small_app: Path) -> None:
    worker = small_app / "sw.js"
    blank = worker.read_text()
    assert precache.fill_worker(small_app) == 2
    first = worker.read_text()
    (small_app / "app.js").write_text("2")
    worker.write_text(blank)
    precache.fill_worker(small_app)
    assert worker.read_text().splitlines()[0] != first.splitlines()[0]


def test_a_worker_without_its_blanks_is_refused(small_app: Path) -> None:
    (small_app / "sw.js").write_text('const VERSION = "1";')
    with pytest.raises(Halt, match="__VERSION__"):
        precache.fill_worker(small_app)


def test_an_unknown_command_is_refused_with_the_list_of_real_ones() -> None:
    done = subprocess.run(
        [sys.executable, "build.py", "bake"], cwd=ROOT, capture_output=True, text=True, check=False
    )
    assert done.returncode == 2
    assert "serve" in done.stderr
    assert "release" in done.stderr


def test_a_figure_is_one_line_of_json() -> None:
    assert json.loads(Figure("a", 1.23456, "ms").write_line()) == {
        "name": "a", "value": 1.235, "unit": "ms",
    }  # fmt: skip
    assert find_percentile([float(each) for each in range(1, 101)], 0.95) == 95
    assert find_percentile([7.0], 0.95) == 7


def test_a_release_with_two_version_numbers_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(command_release, "read_core_version", lambda: "999.0.0")
    with pytest.raises(Halt, match=r"says 999\.0\.0, and the head of web/changes\.json says"):
        command_release.run(argparse.Namespace(), [])

"""Starts of the engine, in every browser: woken from a copy, and what a bad copy leads to."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.page.engines.device import Device
from tests.page.engines.driver import Driver
from tests.page.engines.stand import Fault, Stand

pytestmark = [pytest.mark.slow, pytest.mark.browser]

ANOTHER_BUILD = 'await write("copy", "label", { ...label, key: label.key.replace("1 ", "1 0") });'
OTHER_TABLE = """const shape = { ...label.shape, table: label.shape.table + 1 };
await write("copy", "label", { ...label, shape });"""
OTHER_ANSWER = 'await write("copy", "label", { ...label, proof: label.proof + " " });'
TRUNCATED = 'await write("copy", "bytes", bytes.slice(0, bytes.byteLength / 2));'
FLIPPED = """const flipped = new Uint8Array(bytes.slice(0));
flipped[9_000_001] ^= 1;
await write("copy", "bytes", flipped.buffer);"""

NO_COPY = """await write("copy", "label", undefined);"""
SCRIPT = "pyodide.mjs"
FILES = (SCRIPT, "pyodide.asm.wasm", "python_stdlib.zip", "pydantic_core.wasm", "site.zip")
CAUSES: dict[Fault, str] = {"missing": "missing", "broken": "network"}


@pytest.fixture(scope="module")
def device(
    engine: Driver, dist: Path, tmp_path_factory: pytest.TempPathFactory
) -> Iterator[Device]:
    """The built app in each engine, with a copy made and set aside."""
    folder = tmp_path_factory.mktemp("served")
    stand = Stand(folder)
    with stand.serve_in_background():
        device = Device(engine, stand, dist)
        device.make_copy()
        yield device
        engine.go("about:blank")


def test_a_copy_is_made_once_the_device_is_trusted_and_woken_from_then_on(device: Device) -> None:
    told = device.engine.evaluate("navigator.deviceMemory ?? null")
    assert device.ways == (["plain", "plain", "making"] if told is None else ["making"])
    assert device.start()["way"] == "copy"
    assert device.start()["way"] == "copy"


def test_a_woken_engine_answers_as_one_that_was_started(device: Device) -> None:
    device.lay_copy()
    woken = device.start(ask="catalogue")
    after_a_hang = device.start(ask="catalogue", name="again")
    assert (woken["way"], after_a_hang["way"]) == ("copy", "plain")
    assert woken["answer"] == after_a_hang["answer"]
    assert device.has_copy()


@pytest.mark.parametrize(
    "damage", [TRUNCATED, FLIPPED, ANOTHER_BUILD], ids=["truncated", "bit flipped", "other build"]
)
def test_a_copy_that_is_not_the_one_that_was_kept_is_replaced(device: Device, damage: str) -> None:
    device.lay_copy(damage)
    assert device.start()["way"] == "making"
    assert not device.has_copy()
    assert not device.read_notes()["barred"]


@pytest.mark.parametrize("damage", [OTHER_TABLE, OTHER_ANSWER], ids=["table", "answer"])
def test_a_copy_that_fails_is_thrown_away_and_none_is_made_again(
    device: Device, damage: str
) -> None:
    device.lay_copy(damage)
    said = device.start()
    assert said["way"] == "off"
    assert "wake" in said["stages"]
    assert not device.has_copy()
    assert len(device.read_notes()["barred"]) == 1


@pytest.mark.parametrize("fault", CAUSES)
def test_a_file_that_does_not_come_says_nothing_of_the_copy(device: Device, fault: Fault) -> None:
    device.lay_copy()
    for name in FILES:
        said = device.start_in_vain(name, fault)
        assert said["failed"], name
        if name != SCRIPT:  # which is asked for again, and may have come by then
            assert said["cause"] == CAUSES[fault], name
        notes = device.read_notes()
        assert [notes[each] for each in ("trying", "barred", "off")] == [False, [], ""], name
        assert device.has_copy(), name
    assert device.start()["way"] == "copy"


@pytest.mark.parametrize("fault", CAUSES)
def test_a_file_that_does_not_come_keeps_no_copy_from_being_made_later(
    device: Device, fault: Fault
) -> None:
    device.lay_copy(NO_COPY)
    for name in FILES:
        assert device.start_in_vain(name, fault)["failed"], name
    assert device.start()["way"] == "making"


@pytest.mark.parametrize("name", ["site.zip", "pydantic_core.wasm", "pyodide.asm.wasm"])
def test_time_that_a_file_takes_to_arrive_is_not_held_against_the_copy(
    device: Device, name: str
) -> None:
    device.lay_copy()
    started = device.wake_while_a_file_lingers(name)
    assert (started["starts"], started["way"]) == (1, "copy"), started
    assert [device.read_notes()[each] for each in ("trying", "off")] == [False, ""]


def test_a_start_that_took_the_page_down_is_the_last_one_from_a_copy(device: Device) -> None:
    device.lay_copy()
    device.start_and_kill(at="unpack")
    assert device.read_notes()["trying"]
    said = device.start()
    assert said["way"] == "off"
    assert "wake" not in said["stages"]
    assert not device.has_copy()


def test_a_page_that_was_left_while_its_engine_woke_may_try_again(device: Device) -> None:
    device.lay_copy()
    device.start_and_kill(at="unpack")
    assert device.start(name="left")["way"] == "copy"
    assert not device.read_notes()["trying"]


def test_two_engines_at_once_do_not_take_each_other_for_a_crash(device: Device) -> None:
    device.lay_copy()
    both = device.start_two()
    notes = device.read_notes()
    ways = sorted(said.get("way", "none") for said in both)
    assert ways in (["copy", "plain"], ["copy", "copy"]), (both, notes)
    assert device.has_copy()
    assert not notes["off"]
    assert not notes["barred"]


def test_an_engine_killed_in_the_middle_of_a_question_is_replaced_and_asked_again(
    device: Device,
) -> None:
    said = device.ask_through_door_and_kill()
    assert said["version"]
    assert said["starts"] == 2


# Each of these goes to a place of its own, and the copy that was set aside stays behind.


@pytest.mark.parametrize("version", [1, 7], ids=["without a store", "of a later version"])
def test_a_shelf_that_is_not_as_it_was_made_is_thrown_away_and_made_anew(
    device: Device, version: int
) -> None:
    device.move(f"strange{version}")
    device.lay_strange_shelf(version=version)
    way = device.start()["way"]
    assert way == ("making" if device.engine.evaluate("navigator.deviceMemory ?? 0") else "plain")
    assert device.read_notes()["starts"] == 1


def test_an_engine_starts_though_its_shelf_never_opens(device: Device) -> None:
    device.move("stuck")
    device.block_shelf()
    assert device.start()["way"] == "plain"
    device.let_go_of_shelf()

"""An update of the core fetches only its new pieces, in every engine, and keeps the whole."""

import io
import zipfile
from pathlib import Path

import pytest

from tests.engines.driver import Driver
from tests.engines.stand import Stand, deploy, make_small
from tests.engines.test_updates import KEPT, WAITS, Place
from web.tools.parts import CORE, PIECES_FOLDER, PIECES_LIST, place_core
from web.tools.places import WEB
from web.tools.precache import fill_worker

pytestmark = [pytest.mark.slow, pytest.mark.browser]

MODULES = 12
READ_CORE = f"""fetch("./py/{CORE}").then(async (answer) =>
    [...new Uint8Array(await answer.arrayBuffer())].map((byte) => String.fromCharCode(byte))
    .join(""))"""


def write_core(target: Path, *changed: int) -> bytes:
    """Put a small core into a small app; some of its modules are changed."""
    whole = io.BytesIO()
    with zipfile.ZipFile(whole, "w") as archive:
        for number in range(MODULES):
            text = f"module {number} {'changed' if number in changed else ''}" * 9
            archive.writestr(zipfile.ZipInfo(f"core/m{number:02}.pyc"), text)
    (target / "core.zip").write_bytes(whole.getvalue())
    (target / "py").mkdir()
    place_core(target / "core.zip", target / "py")
    (target / "core.zip").unlink()
    (target / "sw.js").write_text((WEB / "sw.js").read_text(encoding="utf-8"), encoding="utf-8")
    fill_worker(target)
    return whole.getvalue()


@pytest.fixture
def place(engine: Driver, stand: Stand, tmp_path: Path) -> Place:
    """The small app in version 1 with a core, kept."""
    place = Place(engine, stand, tmp_path / "builds")
    write_core(place.served)
    place.keep()
    return place


def deploy_core(place: Place, *changed: int) -> bytes:
    """Deploy version 2, in which some modules of the core are changed."""
    build = place.build("2")
    whole = write_core(build, *changed)
    deploy(build, place.served, *(path.name for path in build.iterdir() if path.is_file()))
    for path in (build / "py").iterdir():
        if path.is_file():
            deploy(build, place.served, f"py/{path.name}")
    known = {path.name for path in (place.served / "py" / PIECES_FOLDER).iterdir()}
    for path in (place.served / "py" / PIECES_FOLDER).iterdir():
        path.unlink()
    for path in (build / "py" / PIECES_FOLDER).iterdir():
        if path.name not in known:
            deploy(build, place.served, f"py/{PIECES_FOLDER}/{path.name}")
    return whole


def accept_without_server(place: Place) -> str:
    """Change to version 2; give the core as it is kept."""
    place.look_for_update()
    place.wait(WAITS)
    place.accept()
    place.expect("2")
    place.wait(KEPT)
    place.stand.die_after(0)
    core = str(place.ask(READ_CORE))
    place.stand.revive()
    return core


def test_only_the_new_pieces_are_fetched(place: Place) -> None:
    whole = deploy_core(place, 3, 7)
    (place.served / "py" / CORE).unlink()
    assert accept_without_server(place).encode("latin-1") == whole


def test_a_piece_that_is_missing_or_another_costs_the_whole(place: Place) -> None:
    whole = deploy_core(place, 3, 7)
    one, *others = sorted((place.served / "py" / PIECES_FOLDER).iterdir())
    one.write_text("another")
    others[0].unlink()
    assert accept_without_server(place).encode("latin-1") == whole


def test_what_is_not_whole_is_refused(place: Place) -> None:
    deploy_core(place, 3, 7)
    (place.served / "py" / CORE).unlink()
    next((place.served / "py" / PIECES_FOLDER).iterdir()).write_text("another")
    place.look_for_update()
    assert not place.ask(WAITS)
    place.expect_without_server("1")


def test_a_core_of_which_most_is_new_is_asked_for_as_a_whole(place: Place) -> None:
    deploy_core(place, *range(10))
    (place.served / "py" / CORE).unlink()
    place.look_for_update()
    assert not place.ask(WAITS)
    place.expect("1")


def test_the_list_of_pieces_is_kept_for_the_next_update(place: Place) -> None:
    assert f"py/{PIECES_LIST}" in (place.served / "sw.js").read_text(encoding="utf-8")
    deploy_core(place, 3)
    accept_without_server(place)
    build = place.builds / "3"
    make_small(build, "2")
    whole = write_core(build, 3, 8)
    for name in ("sw.js", f"py/{PIECES_LIST}"):
        deploy(build, place.served, name)
    for path in (build / "py" / PIECES_FOLDER).iterdir():
        deploy(build, place.served, f"py/{PIECES_FOLDER}/{path.name}")
    (place.served / "py" / CORE).unlink()
    assert accept_without_server(place).encode("latin-1") == whole

"""An update comes as patches from the versions before, in every engine, and is never trusted."""

import gzip
import random
import shutil
from pathlib import Path

import pytest

from tests.page.engines.driver import Driver
from tests.page.engines.stand import Stand, make_small
from tests.page.engines.test_updates import KEPT, WAITS, Place
from web.tools.engine_files import CORE
from web.tools.patches import ENDING, FOLDER, MOST_PATCHES, write_patches
from web.tools.places import WEB
from web.tools.precache import fill_worker

pytestmark = [pytest.mark.slow, pytest.mark.browser]

READ_CORE = f"""fetch("./py/{CORE}").then(async (answer) =>
    [...new Uint8Array(await answer.arrayBuffer())].map((byte) => String.fromCharCode(byte))
    .join(""))"""


def write_core(version: str) -> bytes:
    """Make bytes most of which all versions share, in an order of its own, some changed or new."""
    kept, own = random.Random(1), random.Random(version)
    blocks = [kept.randbytes(400) for _ in range(30)]
    own.shuffle(blocks)
    for at in own.sample(range(30), 10):
        blocks[at] = blocks[at][:200] + bytes([own.randrange(256)]) + blocks[at][201:]
    return b"".join(blocks) + own.randbytes(50)


class Releases:
    """The small app with a core, released again and again."""

    def __init__(self, place: Place) -> None:
        self.place = place
        self.last = self.build("1", before=None)
        self.serve(self.last)

    def build(self, version: str, *, before: Path | None) -> Path:
        """Build a version with the patches that lead to it."""
        build = make_small(self.place.builds / version, version)
        (build / "py").mkdir()
        (build / "py" / CORE).write_bytes(write_core(version))
        shutil.copyfile(WEB / "sw.js", build / "sw.js")
        fill_worker(build)
        if before:
            assert write_patches(build, before)
        return build

    def serve(self, build: Path) -> None:
        """Put a whole build in the place of what is served."""
        shutil.rmtree(self.place.served)
        shutil.copytree(build, self.place.served)

    def release(self, *versions: str, whole: bool) -> None:
        """Release versions, each after the one before; serve the last, whole or as patches only."""
        for version in versions:
            self.last = self.build(version, before=self.last)
        self.serve(self.last)
        if whole:
            return
        for path in self.place.served.rglob("*"):
            if path.is_file() and path.name != "sw.js" and path.suffix != ENDING:
                path.unlink()

    @property
    def patches(self) -> list[Path]:
        """The patches that are served."""
        return sorted((self.place.served / FOLDER).iterdir())

    def expect(self, version: str) -> None:
        """Accept the update; demand that all of it is of one version, without the server."""
        self.place.look_for_update()
        self.place.wait(WAITS)
        self.place.accept()
        self.place.wait(KEPT)
        self.place.expect_without_server(version)
        self.place.stand.die_after(0)
        core = str(self.place.ask(READ_CORE))
        self.place.stand.revive()
        assert core.encode("latin-1") == write_core(version)

    def expect_refused(self) -> None:
        """Demand that the update is not taken, and that version 1 still works."""
        self.place.look_for_update()
        assert not self.place.ask(WAITS)
        self.place.expect_without_server("1")


@pytest.fixture
def releases(engine: Driver, stand: Stand, tmp_path: Path) -> Releases:
    """The small app, released and kept in version 1."""
    releases = Releases(Place(engine, stand, tmp_path / "builds"))
    releases.place.keep()
    return releases


def test_an_update_is_made_from_the_patch_alone(releases: Releases) -> None:
    releases.release("2", whole=False)
    releases.expect("2")
    releases.release("3", whole=False)
    releases.expect("3")


def test_a_device_that_missed_releases_climbs_their_patches(releases: Releases) -> None:
    releases.release("2", "3", "4", whole=False)
    releases.expect("4")


def test_who_is_too_far_back_fetches_the_whole(releases: Releases) -> None:
    versions = [str(number) for number in range(2, MOST_PATCHES + 3)]
    releases.release(*versions, whole=False)
    releases.expect_refused()
    releases.serve(releases.last)
    releases.expect(versions[-1])


@pytest.mark.parametrize("harm", ["missing", "cut", "flipped", "no gzip file", "of another"])
def test_a_patch_that_is_no_good_costs_the_whole(releases: Releases, harm: str) -> None:
    other = make_patch_of_another(releases)
    releases.release("2", whole=False)
    (patch,) = releases.patches
    content = patch.read_bytes()
    flipped = bytearray(gzip.decompress(content))
    flipped[len(flipped) // 2] ^= 1
    harmed = {
        "cut": content[: len(content) // 2],
        "flipped": gzip.compress(bytes(flipped)),
        "no gzip file": b"another",
        "of another": other,
    }
    patch.unlink()
    if harm in harmed:
        patch.write_bytes(harmed[harm])
    releases.expect_refused()
    releases.serve(releases.last)
    (patch,) = releases.patches
    patch.unlink()
    if harm in harmed:
        patch.write_bytes(harmed[harm])
    releases.expect("2")


def make_patch_of_another(releases: Releases) -> bytes:
    """Give a patch from version 1 that leads elsewhere."""
    build = releases.build("elsewhere", before=releases.last)
    (patch,) = (build / FOLDER).iterdir()
    return patch.read_bytes()

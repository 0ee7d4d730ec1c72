"""Assemble dist/: the page, the runtime, the compiled core, terms, and what keeps it offline."""

import os
import shutil
from pathlib import Path

from web.tools import generated
from web.tools.archives import fetch_runtime_wheels, make_archives
from web.tools.engine_files import copy_compiled, place_archives
from web.tools.join import join_page
from web.tools.licences import write_licences
from web.tools.page_files import copy_page
from web.tools.patches import write_patches
from web.tools.places import CACHE, DIST
from web.tools.precache import fill_worker
from web.tools.say import announce_step, tell
from web.tools.squeeze import squeeze_folder
from web.tools.vendor import copy_vendor


def assemble(target: Path, *, kept: Path = CACHE / "archives") -> None:
    """Build the app into `target`; compiled archives are taken from `kept` where they fit."""
    archives = make_archives(kept)
    shutil.rmtree(target, ignore_errors=True)
    target.mkdir(parents=True)
    copy_page(target)
    copy_vendor(target)
    copy_compiled(fetch_runtime_wheels(), target / "py")
    place_archives(archives, target / "py")
    licences = write_licences(fetch_runtime_wheels())
    (target / "licences.txt").write_text(licences, encoding="utf-8")
    join_page(target)
    fill_worker(target)


def make_dist(before: Path | None = None) -> None:
    """Build dist/ anew, with the patches from the release before where its folder is given.

    The old dist/ stays until the new one is whole.
    """
    generated.write_generated()
    partial = CACHE / f"dist.partial-{os.getpid()}"
    assemble(partial)
    with announce_step("squeezing (slow only the first time)"):
        squeeze_folder(partial)
    if before:
        add_patches(partial, before)
    old = CACHE / f"dist.old-{os.getpid()}"
    shutil.rmtree(old, ignore_errors=True)
    if DIST.exists():
        DIST.rename(old)
    partial.rename(DIST)
    shutil.rmtree(old, ignore_errors=True)


def add_patches(target: Path, before: Path) -> None:
    """Put the patches into a build, and say what the update from the release before takes."""
    with announce_step("comparing with the release before"):
        patch = write_patches(target, before)
    size = f"a patch of {patch.stat().st_size / 1000:.0f} kB" if patch else "nothing to patch"
    tell(f"  from the release before: {size}")

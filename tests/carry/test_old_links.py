"""Every codec ever made is read for ever: one text of each is kept, with the job it holds.

The files are never made again. The squeezer may write other bytes one day; these are read.
"""

from pathlib import Path

import pytest

from pycore.carry.link import CODECS, NEWEST, read_link, write_link
from pycore.carry.saved import open_saved

KEPT = Path(__file__).resolve().parents[1] / "samples" / "links"


@pytest.mark.parametrize("path", sorted(KEPT.glob("codec_*.txt")), ids=lambda path: path.stem)
def test_a_kept_link_opens_as_the_job_it_was(path: Path) -> None:
    read = read_link(path.read_text(encoding="utf-8"))
    assert read.job == open_saved(path.with_suffix(".json").read_text(encoding="utf-8"))
    assert read.made_by == "0.1.0"


def test_there_is_a_kept_link_of_every_codec() -> None:
    assert {f"codec_{number}" for number in CODECS} == {path.stem for path in KEPT.glob("*.txt")}
    assert max(CODECS) == NEWEST


def test_the_newest_kept_job_is_written_by_the_newest_codec_as_short_as_then() -> None:
    text = (KEPT / f"codec_{NEWEST}.txt").read_text(encoding="utf-8").strip()
    again = write_link(read_link(text).job, "0.1.0")
    assert len(again) <= len(text) * 1.05

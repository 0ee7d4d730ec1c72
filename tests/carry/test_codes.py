"""QR codes, read by an independent reader from the picture a page would show."""

import pytest
import zxingcpp
from hypothesis import given
from hypothesis import strategies as st

from pycore.carry.link import read_link, write_link
from pycore.carry.qr import LARGEST_VERSION, MOST_BYTES, code_of
from tests.bench.hostile import NASTY
from tests.samples.travellers import make_traveller

ADDRESS = "https://rungline.example/app/#"
QUIET = 4
PLAIN = zxingcpp.TextMode.Plain


def read_picture(rows: tuple[str, ...], scale: int) -> list[str]:
    """Draw a code, white all around, and have it read."""
    wide = len(rows) + 2 * QUIET
    empty = "0" * wide
    all_rows = [empty] * QUIET + ["0" * QUIET + row + "0" * QUIET for row in rows] + [empty] * QUIET
    grey = {"1": b"\x00" * scale, "0": b"\xff" * scale}
    some = b"".join(b"".join(grey[module] for module in row) * scale for row in all_rows)
    picture = memoryview(some).cast("B", (wide * scale, wide * scale))
    return [found.text for found in zxingcpp.read_barcodes(picture, text_mode=PLAIN)]


@pytest.mark.parametrize("scale", [1, 2, 5])
@pytest.mark.parametrize("loudspeakers", [1, 20, 60, 120, 300])
def test_the_code_of_a_whole_job_is_read_from_its_picture(loudspeakers: int, scale: int) -> None:
    job = make_traveller(loudspeakers, free_labels=False, ticked=False)
    code = code_of(ADDRESS + write_link(job, "0.1.0"))
    assert code is not None
    assert read_picture(code.rows, scale) == [code.text]
    assert code.text.startswith(ADDRESS)
    assert read_link(code.text).job == job


def test_sixty_loudspeakers_are_one_small_code() -> None:
    job = make_traveller(60, free_labels=False, ticked=False)
    link = write_link(job, "0.1.0")
    code = code_of(ADDRESS + link)
    assert len(link) <= 900
    assert code is not None
    assert code.version <= 20


@pytest.mark.parametrize("free_labels", [True, False])
@pytest.mark.parametrize("loudspeakers", [3, 100, 110, 150, 200, 400, 500])
def test_no_code_is_larger_than_a_phone_reads(loudspeakers: int, free_labels: bool) -> None:
    job = make_traveller(loudspeakers, free_labels=free_labels, ticked=False)
    code = code_of(ADDRESS + write_link(job, "0.1.0"))
    assert code is None or code.version <= LARGEST_VERSION
    if code is not None:
        assert len(code.rows) == code.size == 17 + 4 * code.version
        assert {len(row) for row in code.rows} == {code.size}


@given(st.text(NASTY.replace("\ud800", "") + "Ünï123", min_size=1, max_size=200))
def test_any_text_is_read_as_it_was(text: str) -> None:
    code = code_of(text)
    assert code is not None
    assert code.text == text
    assert read_picture(code.rows, 3) == [text]


@pytest.mark.parametrize("text", ["", "x" * (MOST_BYTES + 1), "é" * 700, "x" * 1_000_000])
def test_a_text_too_large_has_no_code(text: str) -> None:
    assert code_of(text) is None


def test_the_largest_code_is_of_version_25() -> None:
    assert [code and code.version for code in (code_of("x" * MOST_BYTES),)] == [LARGEST_VERSION]

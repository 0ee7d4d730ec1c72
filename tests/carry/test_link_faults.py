"""A link that did not arrive as it left says exactly what happened, and what to do."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pycore.carry.codec1 import pack
from pycore.carry.codec1.coders import Choices, Texts
from pycore.carry.codec1.octets import Reader, Writer
from pycore.carry.codec1.shape import JOB as JOB_TABLE
from pycore.carry.codec1.table import Cells, Context, Desk, Field, Table
from pycore.carry.envelope import MOST_CHARACTERS, as_digits, wrap
from pycore.carry.link import read_link, write_link
from pycore.ground.problems import NewerJob, Problem, TooLarge
from tests.bench.hostile import LETTERS, squeeze
from tests.samples.travellers import make_traveller

JOB = make_traveller(20, free_labels=False, ticked=False)
LINK = write_link(JOB, "0.1.0")
DIGITS = as_digits(LINK) or ""
CELLS = Cells(Context(Desk(), [{}, {}], [0, 0], None), [0, 1])
AROUND = (
    "{}",
    "  {}\n",
    "https://rungline.example/app/#{}",
    "https://rungline.example/app/?a=1#{}",
    "https://rungline.example/app/%23{}",
    "Here is the job: https://rungline.example/#{} Bye",
    "Version 1.2 of the plan (https://rungline.example/#{}), see you",
    "<https://rungline.example/#{}>",
    "> quoted: https://rungline.example/#{}\n> and so on",
    "\u2068{}\u2069",
    "\u200b{}\ufeff",
    "{}\nabc",
    "Text without an address\n{}",
)


def fault_of(text: str) -> str:
    """The code of what is wrong with a text; the job has to be the same when nothing is."""
    try:
        assert read_link(text).job == JOB
    except Problem as problem:
        return problem.code
    return "whole"


@pytest.mark.parametrize("around", AROUND)
@pytest.mark.parametrize("link", [LINK, DIGITS], ids=["letters", "digits"])
def test_a_link_is_found_in_what_a_messenger_makes_of_it(around: str, link: str) -> None:
    assert fault_of(around.format(link)) == "whole"


@pytest.mark.parametrize("between", ["\n", "\r\n", " ", "\n> ", "\n>> ", "\u200b", "\u00ad"])
def test_breaks_within_a_link_do_no_harm(between: str) -> None:
    parts = [LINK[at : at + 60] for at in range(0, len(LINK), 60)]
    assert fault_of("https://rungline.example/#" + between.join(parts)) == "whole"


@given(st.integers(1, len(LINK) - 1))
def test_a_link_cut_anywhere_says_so_and_how_much_arrived(kept: int) -> None:
    with pytest.raises(Problem) as caught:
        read_link("#" + LINK[:kept])
    assert caught.value.code == ("link_cut" if kept > 2 else "not_a_link")
    if kept > 12:
        assert caught.value.values["percent"] == 100 * (kept - 2) // (len(LINK) - 2)


@given(st.integers(2, len(LINK) - 2), st.sampled_from(LETTERS))
def test_a_link_with_one_sign_changed_is_damaged(at: int, sign: str) -> None:
    changed = LINK[:at] + sign + LINK[at + 1 :]
    assert fault_of(changed) == ("whole" if changed == LINK else "link_damaged")


@given(st.integers(3, len(DIGITS) - 1), st.sampled_from("0123456789"))
def test_digits_with_one_changed_are_damaged(at: int, sign: str) -> None:
    changed = DIGITS[:at] + sign + DIGITS[at + 1 :]
    assert fault_of(changed) == ("whole" if changed == DIGITS else "link_damaged")


@pytest.mark.parametrize("number", ["2", "17", "999999"])
def test_a_link_of_a_later_codec_says_so(number: str) -> None:
    with pytest.raises(NewerJob) as caught:
        read_link(number + LINK[1:])
    assert caught.value.code == "link_newer"


def test_a_field_of_a_later_version_says_so(monkeypatch: pytest.MonkeyPatch) -> None:
    later = Table(*JOB_TABLE.fields, Field("mood", Texts()))
    raw = JOB.model_dump(mode="json", by_alias=True, exclude_none=True)
    with monkeypatch.context() as patched:
        patched.setattr("pycore.carry.codec1.whole.JOB", later)
        text = wrap(1, pack({**raw, "mood": "calm"}, "9.0.0"))
    with pytest.raises(NewerJob) as caught:
        read_link(text)
    assert caught.value.code == "link_newer"


def test_a_choice_of_a_later_version_says_so() -> None:
    later = Choices("copper", "copper_clad_aluminium", "silver")
    out = Writer()
    later.write(out, ["copper", "silver"], cells=CELLS)
    with pytest.raises(NewerJob):
        Choices("copper", "copper_clad_aluminium").read(Reader(bytes(out.done)), CELLS)
    assert later.read(Reader(bytes(out.done)), CELLS) == ["copper", "silver"]


@pytest.mark.parametrize(
    "text",
    ["", "hello", "https://rungline.example/", "#", "#1.", "1.5 mm²", "12.5", "#0.abcdefghijkl",
     "javascript:alert(1)", "{}", "1", "n.", "#1m.abcdefghijk"],
)  # fmt: skip
def test_a_text_without_a_link_says_so(text: str) -> None:
    assert fault_of(text) == "not_a_link"


def test_the_version_that_wrote_a_link_is_shown_short_and_plain() -> None:
    raw = JOB.model_dump(mode="json", by_alias=True, exclude_none=True)
    made_by = read_link(wrap(1, pack(raw, "9\u202e.0" + "x" * 5000))).made_by
    assert made_by == "9.0" + "x" * 37


def test_a_text_far_too_long_is_not_searched() -> None:
    with pytest.raises(TooLarge) as caught:
        read_link("#" + LINK + " " * MOST_CHARACTERS)
    assert caught.value.code == "link_text_too_long"


def test_a_link_that_unsqueezes_to_too_much_stops_early() -> None:
    bomb = wrap(1, squeeze(bytes(20_000_000)))
    assert len(bomb) < 30_000
    assert fault_of(bomb) == "link_holds_too_much"


def test_few_bytes_cannot_ask_for_many_rows() -> None:
    raw = JOB.model_dump(mode="json", by_alias=True, exclude_none=True)
    raw["zones"][0]["line"] = raw["zones"][0]["line"][:1] * 50_000
    assert fault_of(wrap(1, pack(raw, "0.1.0"))) == "link_holds_too_much"


@pytest.mark.parametrize(
    ("where", "value", "because"),
    [
        (("limits", "load_fraction"), 3.0, "number_too_large"),
        (("rev",), -1, "number_too_small"),
        (("name",), "x" * 121, "text_too_long"),
        (("zones", 0, "line", 0, "after"), "m3q13", "loop"),
        (("zones", 0, "id"), "m3q2", "id_twice"),
    ],
)
def test_a_whole_link_with_a_job_against_the_rules_is_refused(
    where: tuple[str | int, ...], value: object, because: str
) -> None:
    raw = JOB.model_dump(mode="json", by_alias=True, exclude_none=True)
    at: Any = raw
    for step in where[:-1]:
        at = at[step]
    at[where[-1]] = value
    with pytest.raises(Problem) as caught:
        read_link(wrap(1, pack(raw, "0.1.0")))
    assert (caught.value.code, caught.value.values["because"]) == ("link_not_sound", because)


def test_a_job_too_large_for_any_link_is_refused_with_the_file_offered() -> None:
    from tests.carry.sizes import make_large

    with pytest.raises(TooLarge) as caught:
        write_link(make_large(), "0.1.0")
    assert caught.value.code in ("link_holds_too_much", "link_too_much")

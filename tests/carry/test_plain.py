"""Nothing unseen in a name steers what a person reads, and no script loses what it needs."""

import json
import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pycore.carry.link import read_link, write_link
from pycore.ground.plain import isolated, plain_line, plain_notes
from pycore.ground.words import say
from pycore.jobs import Job
from tests.drawn import as_read
from tests.samples.travellers import make_traveller

# Unicode Standard Annex 9, section 2: the explicit formatting characters (from memory).
REORDERING = "\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"
TEXTS = st.text(st.characters(exclude_categories=["Cs"]))
NAMES = (
    "Foyer 12", "Üst kat", "長廊 3", "مدخل ۲", "חדר 12", "नमस्ते", "می\u200cخواهم", "👩\u200d🚒 post",
    "\u200fאבג", "❤️", "a\u0301", "<b>&amp;</b>", "=1+1", "O'Neil \"x\"",
)  # fmt: skip


@given(TEXTS)
def test_a_plain_line_has_no_control_and_nothing_that_reorders(text: str) -> None:
    line = plain_line(text)
    assert not [sign for sign in line if unicodedata.category(sign) == "Cc"]
    assert not set(line) & set(REORDERING)
    assert not set(line) & set("\u2028\u2029\ufeff\u00ad\u200b")
    assert len(line) <= len(text)
    assert plain_line(line) == line


@given(TEXTS)
def test_plain_notes_keep_breaks_and_tabs_only(text: str) -> None:
    notes = plain_notes(text)
    assert {sign for sign in notes if unicodedata.category(sign) == "Cc"} <= {"\n", "\t"}
    assert not set(notes) & set(REORDERING)
    assert plain_notes(notes) == notes


@pytest.mark.parametrize("name", NAMES)
def test_names_of_all_scripts_and_with_markup_stay_as_they_are(name: str) -> None:
    assert plain_line(name) == name
    assert plain_notes(name) == name


def test_breaks_become_a_space_in_a_line_and_one_break_in_notes() -> None:
    assert plain_line("a\tb\r\nc\x00\x1bd\x7f") == "a b  cd"
    assert plain_notes("a\tb\r\nc\rd\u2028e\x00") == "a\tb\nc\nd\ne"


@pytest.mark.parametrize("text", ["חדר", "مدخل", "x ܐ", "\u200f1"])
def test_a_name_from_right_to_left_keeps_to_itself_in_a_sentence(text: str) -> None:
    assert isolated(text) == f"\u2068{text}\u2069"
    said = say("change_value", "hung_first", values={"zone": text}, language="en")
    assert f"\u2068{text}\u2069" in said


def test_other_names_go_into_a_sentence_as_they_are() -> None:
    assert as_read(isolated("Üst kat 12 −6 dB")) == "Üst kat 12 −6 dB"
    said = say("change_value", "hung_first", values={"zone": "a\u202eb"}, language="en")
    assert "ab" in said


def test_every_text_of_a_job_is_made_plain_on_its_way_in() -> None:
    raw = make_traveller(3, free_labels=False, ticked=True).model_dump(mode="json")
    spoilt, count = spoil(raw)
    job = Job.model_validate_json(json.dumps(spoilt))
    assert count > 20
    text = job.model_dump_json()
    assert "\u202e" not in text
    assert "\\u0007" not in text
    assert read_link(write_link(job, "0")).job == job


def spoil(value: object, name: str = "") -> tuple[object, int]:
    """Put what is unseen into every text that a person wrote."""
    if isinstance(value, dict):
        pairs = {key: spoil(each, key) for key, each in value.items()}
        return {key: each for key, (each, _) in pairs.items()}, sum(n for _, n in pairs.values())
    if isinstance(value, list):
        some = [spoil(each, name) for each in value]
        return [each for each, _ in some], sum(count for _, count in some)
    if isinstance(value, str) and name in WRITTEN:
        return f"\u202e\x07{value}", 1
    return value, 0


WRITTEN = {"name", "place", "notes", "label", "initials", "at", "saved_at", "mount", "position"}

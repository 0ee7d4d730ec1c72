"""Every text of the job format is tried as one that means harm; a new one cannot be forgotten."""

import json

from pycore.carry.link import read_link, write_link
from pycore.carry.saved import open_saved
from pycore.ground.plain import UNSEEN
from tests.samples.hostile import WHERE, make_hostile, text_fields


def test_every_text_field_of_the_format_says_where_it_is_seen() -> None:
    assert set(WHERE) == text_fields()


def test_the_hostile_job_has_a_harmful_text_in_every_field() -> None:
    text, texts = make_hostile(first=1)
    assert {each.place for each in texts} == text_fields()
    assert len({each.mark for each in texts}) == len(texts)
    assert all(text.count(each.mark) == 1 for each in texts)


def test_the_hostile_job_is_read_from_file_and_link_without_what_cannot_be_seen() -> None:
    text, texts = make_hostile(first=1)
    job = open_saved(text)
    assert read_link(write_link(job, "0.1.0")).job == job
    kept = json.loads(job.model_dump_json())
    assert UNSEEN.search(json.loads(text)["notes"])
    for each in texts:
        assert json.dumps(each.plain)[1:-1] in json.dumps(kept), each
        assert not UNSEEN.search(each.plain)

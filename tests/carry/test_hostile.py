"""Whatever a link, a file or a request says, out comes a job or a plain problem."""

import json
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pycore.carry.saved import open_all, open_saved
from pycore.door import handle
from pycore.ground.problems import Problem
from pycore.ground.words import has
from tests.bench.fuzz import RUNS, make_starts
from tests.bench.hostile import NASTY, try_links
from tests.fuzz.outside_text import load_targets

A_FEW = 600
TEXTS = st.one_of(
    st.text(),
    st.text(NASTY),
    st.sampled_from(("[" * 100_000, '{"a":' * 100_000, '"' * 1000, "1e999", "NaN", "9" * 5000)),
    st.recursive(st.none() | st.booleans() | st.floats() | st.text(), st.lists).map(json.dumps),
)
FILES = st.fixed_dictionaries(
    {"format": st.sampled_from(("rungline-job", "rungline-jobs", "other", None, 3))},
    optional={
        "version": st.sampled_from((1, 0, -1, 2, 10**30, 1.5, "1", None, True)),
        "jobs": st.lists(st.dictionaries(st.text(max_size=5), st.integers()), max_size=3),
        "__proto__": st.just({"polluted": True}),
        "id": TEXTS,
        "name": TEXTS,
    },
).map(json.dumps)


def test_hostile_links_end_in_a_job_or_a_problem_with_words() -> None:
    tried = try_links(A_FEW, seed=11, memory_every=50)
    assert sum(tried.ends.values()) == A_FEW
    for code in set(tried.ends) - {"a job"}:
        assert has("problem", code), code
    assert {"a job", "link_cut", "link_damaged", "link_holds_too_much", "link_newer",
            "link_not_sound", "not_a_link"} <= set(tried.ends)  # fmt: skip
    assert tried.most_bytes < 30_000_000


@given(TEXTS | FILES)
def test_any_file_ends_in_jobs_or_a_problem(text: str) -> None:
    for read in (open_saved, open_all):
        assert has("problem", code_of(read, text)), text


def code_of(read: Callable[[str], object], text: str) -> str:
    """The code of the problem; that of a job is any that has words."""
    try:
        read(text)
    except Problem as problem:
        return problem.code
    return "not_a_job"


@given(
    st.sampled_from(("read_link", "open_saved", "open_all", "qr")), TEXTS | FILES, st.text(NASTY)
)
def test_the_door_answers_any_outside_text_with_words(ask: str, text: str, more: str) -> None:
    request = json.dumps({"n": 1, "ask": ask, "body": {"text": text + more}})
    answer = json.loads(handle(request))
    if "problem" in answer:
        assert answer["problem"]["code"] != "unexpected"
        assert answer["problem"]["words"]
    else:
        assert answer["body"]


@given(TEXTS)
def test_the_door_answers_anything(text: str) -> None:
    answer = json.loads(handle(text))
    assert answer["problem"]["code"] != "unexpected"


@pytest.mark.parametrize("target", sorted(RUNS))
def test_what_the_fuzzer_drives_takes_true_and_spoilt_texts(target: str) -> None:
    drive = load_targets()[target]
    for start in make_starts(target):
        for some in (start, start[:-1], start[1:], bytes(reversed(start)), b"", b"\xff\xfe"):
            drive(some)

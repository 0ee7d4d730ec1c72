"""Whatever text reaches the door: an answer or a plain problem, never an exception."""

import json
from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from pycore.asks.table import ASKS
from pycore.door import MOST_CHARACTERS
from tests.door.examples import FULL, MANNER, Raw, answer_to, body_of, request_of
from tests.strategies import raw_jobs

WRONG: tuple[Any, ...] = (None, True, -1e308, 7, "\u0000x", [], {}, [[]], "9" * 500)


@pytest.mark.parametrize("name", sorted(ASKS))
def test_every_ask_is_answered(name: str) -> None:
    answer = answer_to(request_of(name, body_of(name)))
    assert answer["n"] == 7
    assert "body" in answer, answer


def leaves_of(value: Any, path: tuple[str | int, ...] = ()) -> Iterator[tuple[str | int, ...]]:
    """The way to every value in plain data, lists and objects themselves included."""
    if path:
        yield path
    if isinstance(value, dict):
        for key, one in value.items():
            yield from leaves_of(one, (*path, key))
    elif isinstance(value, list):
        for place, one in enumerate(value):
            yield from leaves_of(one, (*path, place))


def with_put(value: Any, path: tuple[str | int, ...], new: Any) -> Any:
    """A copy of plain data with one value changed."""
    if not path:
        return new
    head, rest = path[0], path[1:]
    if isinstance(value, dict):
        return {**value, head: with_put(value[head], rest, new)}
    return [with_put(one, rest, new) if at == head else one for at, one in enumerate(value)]


@pytest.mark.parametrize("wrong", WRONG, ids=repr)
def test_a_job_with_any_one_value_wrong_is_answered_or_refused(wrong: Any) -> None:
    for path in leaves_of(FULL):
        answer = answer_to(request_of("findings", {"job": with_put(FULL, path, wrong)}))
        if "problem" in answer:
            assert answer["problem"]["where"], path


@given(st.data())
def test_any_request_with_one_value_wrong_is_answered_or_refused(data: st.DataObject) -> None:
    name = data.draw(st.sampled_from(sorted(ASKS)))
    body = body_of(name)
    path = data.draw(st.sampled_from([*leaves_of(body)] or [()]))
    wrong = data.draw(st.sampled_from(WRONG) | st.floats(-1e6, 1e6) | st.text(max_size=20))
    answer_to(request_of(name, with_put(body, path, wrong)))


@given(st.text(max_size=200))
def test_any_text_is_answered(text: str) -> None:
    assert "problem" in answer_to(text)


@given(st.sampled_from(sorted(ASKS)), st.data())
def test_a_request_that_was_cut_or_garbled_is_answered(name: str, data: st.DataObject) -> None:
    text = request_of(name, body_of(name))
    start = data.draw(st.integers(0, len(text)))
    end = data.draw(st.integers(start, min(len(text), start + 40)))
    answer_to(text[:start] + data.draw(st.text(max_size=10)) + text[end:])


@given(raw_jobs(most_points=4), st.data())
def test_numbers_at_the_bounds_of_a_job_are_still_answered(job: Raw, data: st.DataObject) -> None:
    extremes = st.sampled_from((0.0, 1e-9, 0.001, 0.1, 1.0, 1e4, 1e6, 1e9))
    for path in leaves_of(job):
        number: Any = job
        for step in path:
            number = number[step]
        if isinstance(number, float) and data.draw(st.booleans()):
            job = with_put(job, path, data.draw(extremes))
    answer_to(request_of("findings", {"job": job}))


def test_a_name_that_reads_like_no_number_is_only_a_name() -> None:
    answer = answer_to(request_of("findings", {"job": {**FULL, "name": "Infinity and NaN"}}))
    assert answer["body"]["faces"]["job"]["title"] == "Infinity and NaN"


ODD_TEXTS = {
    "nothing": "",
    "a null sign": "\x00",
    "a lone surrogate": '{"n": 1, "ask": "version\ud800"}',
    "a lone surrogate, escaped": '{"n": 1, "ask": "start", "body": {"id": "a", "name": "\\ud800"}}',
    "not a number": '{"n": 1, "ask": "findings", "body": {"job": NaN}}',
    "infinity": '{"n": 1, "ask": "findings", "body": {"job": -Infinity}}',
    "a thousand deep": '{"n": 1, "ask": "findings", "body": ' + "[" * 1000 + "]" * 1000 + "}",
    "a hundred thousand deep": '{"n": 1, "ask": "findings", "body": ' + "[" * 100_000,
    "objects a thousand deep": '{"n": 1, "ask": "findings", "body": ' + '{"a":' * 1000,
    "ten million signs": "x" * 10_000_000,
    "a body of nine million signs": '{"n":1,"ask":"start","body":{"id":"a","name":"'
    + "x" * (MOST_CHARACTERS - 60)
    + '"}}',
    "half a million fields": '{"n":1,"ask":"findings","body":{"job":{'
    + ",".join(f'"a{number}":1' for number in range(500_000))
    + "}}}",
    "a number of five thousand figures": '{"n":1,"ask":"start","body":{"id":' + "9" * 5000 + "}}",
    "a number of four thousand figures": '{"n":1,"ask":"start","body":{"id":' + "9" * 4000 + "}}",
    "no ask": '{"n": 1}',
    "an ask nobody knows": '{"n": 1, "ask": "delete_everything", "body": {}}',
    "a manner nobody has": '{"n": 1, "ask": "version", "manner": {"length": "ell"}, "body": {}}',
    "no body": '{"n": 1, "ask": "findings"}',
    "a list": "[1, 2]",
    "two requests": '{"n": 1, "ask": "version", "body": {}} {"n": 2}',
    "a negative number": '{"n": -5, "ask": "version", "body": {}}',
}


@pytest.mark.parametrize("text", ODD_TEXTS.values(), ids=ODD_TEXTS.keys())
def test_odd_texts_are_refused_in_plain_words(text: str) -> None:
    assert "problem" in answer_to(text)


def test_a_request_that_cannot_be_read_gets_its_own_number_back() -> None:
    assert answer_to('{"n": 41, "ask": "findings", "body": ' + "[" * 9000)["n"] == 41
    assert answer_to('{"n":42,"ask":"version","body":{}' + " " * MOST_CHARACTERS)["n"] == 42


@pytest.mark.parametrize("number", ["1e999", "-1e999", "NaN", "Infinity", "1e400"])
def test_a_number_that_is_none_is_refused_where_it_stands(number: str) -> None:
    text = request_of("findings", {"job": with_put(FULL, ("limits", "loss_db"), 0.123456)})
    problem = answer_to(text.replace("0.123456", number))["problem"]
    assert problem["code"] in ("number_not_finite", "number_too_large", "number_too_small")
    assert problem["where"] == {"field": "job.limits.loss_db"}


def test_a_saved_text_that_is_deep_or_wrong_is_refused_with_the_way_on() -> None:
    for text in (
        "[" * 100_000,
        '{"format":"rungline-job","version":1,"zones":' + "[" * 3000,
        "\x00",
    ):
        problem = answer_to(request_of("open_saved", {"text": text}))["problem"]
        assert problem["remedy"]


def test_a_newer_job_is_known_among_any_other_faults() -> None:
    newer = {**FULL, "version": 3, "colour": "red", "zones": 5}
    for ask, body in (("open_saved", {"text": json.dumps(newer)}), ("findings", {"job": newer})):
        problem = answer_to(request_of(ask, body))["problem"]
        assert problem["code"] == "job_newer"
        assert "later version" in problem["words"]


@pytest.mark.parametrize("language", ["en", "de", "", "xx-XX"])
def test_a_language_nobody_has_written_yet_is_answered_in_english(language: str) -> None:
    request = {"n": 1, "ask": "findings", "manner": {**MANNER, "language": language}}
    answer = answer_to(json.dumps({**request, "body": {"job": FULL}}))
    assert answer["body"]["faces"]["job"]["headline"]

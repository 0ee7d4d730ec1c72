"""Links of jobs in which everything stands at its limit, and of jobs beyond what a link holds."""

import json
from typing import Any

import pytest

from pycore.carry.codec1.octets import MOST_ROWS
from pycore.carry.envelope import as_digits
from pycore.carry.link import read_link, write_link
from pycore.ground.problems import TooLarge
from pycore.jobs import Job
from tests.samples.fields import Field, each_field
from tests.samples.hostile import EVERYTHING, longest_text
from tests.samples.travellers import make_traveller

ID_CHARACTERS = 40
LEAST_ABOVE_ZERO = 5e-324
UNBOUNDED = 10**9


def make_at_limit(way: str, sign: str) -> Job:
    """The job that has every field, each at its least or its most, texts and ids at full length."""
    raw = json.loads(EVERYTHING.read_text(encoding="utf-8"))
    fields = list(each_field(raw))
    for field in fields:
        put_at_limit(field, way=way, sign=sign)
    return Job.model_validate_json(lengthen_ids(json.dumps(raw), fields))


def put_at_limit(field: Field, *, way: str, sign: str) -> None:
    """Put one field at its limit; numbers only where one stands, since some exclude others."""
    longest = longest_text(field)
    value = field.holder.get(field.name)
    if longest is not None:
        field.holder[field.name] = sign * longest
    elif isinstance(value, int | float) and not is_chosen(field):
        field.holder[field.name] = limit_of(field, way)


def is_chosen(field: Field) -> bool:
    """Whether only some values may stand there."""
    types = {one.get("type") for one in field.branches()}
    return "boolean" in types or any({"const", "enum"} & set(one) for one in field.branches())


def limit_of(field: Field, way: str) -> Any:
    """The least or the most a number may be there."""
    its = next(one for one in field.branches() if one.get("type") in ("number", "integer"))
    if way == "most":
        return its.get("maximum", UNBOUNDED)
    return its.get("minimum", LEAST_ABOVE_ZERO)


def lengthen_ids(text: str, fields: list[Field]) -> str:
    """The same job with ids as long as they may be, those with one stem first."""
    named = {field.holder["id"] for field in fields if field.name == "id"}
    for one in sorted(named, key=len, reverse=True):
        text = text.replace(f'"{one}"', f'"{one}{"-" * (ID_CHARACTERS - len(one))}"')
    return text


@pytest.mark.parametrize("sign", ["W", "9", "é", "\U0001f50a"])
@pytest.mark.parametrize("way", ["least", "most"])
def test_a_job_with_every_field_at_its_limit_comes_back_as_it_left(way: str, sign: str) -> None:
    job = make_at_limit(way, sign)
    link = write_link(job, "0.1.0")
    assert read_link(link).job == job
    digits = as_digits(link)
    assert digits is not None
    assert read_link(digits).job == job
    for cut in (1, 9, len(link) // 2):
        with pytest.raises(Exception, match=r"link_(cut|damaged)|not_a_link"):
            read_link(link[:-cut])


def test_as_many_rows_as_a_link_holds_come_back_and_one_more_is_refused() -> None:
    most = find_most_loudspeakers()
    job = make_traveller(most, free_labels=False, ticked=False)
    assert read_link(write_link(job, "0.1.0")).job == job
    with pytest.raises(TooLarge) as caught:
        write_link(make_traveller(most + 1, free_labels=False, ticked=False), "0.1.0")
    assert caught.value.code == "link_too_much"


def find_most_loudspeakers() -> int:
    """How many loudspeakers of such a job a link still holds, by halving."""
    fits, too_many = 1, MOST_ROWS + 1
    while too_many - fits > 1:
        middle = (fits + too_many) // 2
        try:
            write_link(make_traveller(middle, free_labels=False, ticked=False), "0.1.0")
        except TooLarge:
            too_many = middle
        else:
            fits = middle
    return fits

"""What leaves by a link comes back equal: any job, to the last bit of every number."""

import math

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from pycore.carry.codec1.numbers import read_numbers, write_numbers
from pycore.carry.codec1.octets import Reader, Writer
from pycore.carry.codec1.wholes import read_wholes, write_wholes
from pycore.carry.digits import digits_for, from_digits, to_digits
from pycore.carry.envelope import as_digits, find, unwrap, wrap
from pycore.carry.link import read_link, write_link
from pycore.carry.prints import print_of
from pycore.jobs import Job
from tests.carry.wild import wild_jobs
from tests.strategies import jobs

NUMBERS = st.one_of(
    st.floats(allow_nan=False, allow_infinity=False),
    st.integers(-5000, 5000).map(lambda tenths: tenths / 10),
    st.integers(0, 5000).map(lambda tenths: tenths / 10 * 0.3048),
    st.integers(0, 500).map(lambda inches: inches // 12 * 0.3048 + inches % 12 * 0.0254),
)


@given(jobs(most_points=12))
def test_a_job_comes_back_from_its_link_equal(job: Job) -> None:
    assert read_link(write_link(job, "0.1.0")) == (job, "0.1.0")


@settings(suppress_health_check=list(HealthCheck))
@given(wild_jobs())
def test_any_job_at_all_comes_back_with_every_field(job: Job) -> None:
    text = write_link(job, "0.1.0")
    back = read_link(text).job
    assert back == job
    assert text[-1].isalnum()
    assert read_link(as_digits(text) or "").job == job
    assert print_of(back) == print_of(job)


@given(st.lists(st.integers(-(2**53), 2**53), max_size=40) | st.lists(st.integers(0, 3)))
def test_a_column_of_whole_numbers_comes_back(values: list[int]) -> None:
    out = Writer()
    write_wholes(out, values)
    source = Reader(bytes(out.done))
    assert read_wholes(source, len(values)) == values
    source.end()


@given(st.lists(NUMBERS, min_size=1, max_size=40))
def test_a_column_of_decimals_comes_back_to_the_last_bit(values: list[float]) -> None:
    out = Writer()
    write_numbers(out, values)
    source = Reader(bytes(out.done))
    back = read_numbers(source, len(values))
    assert [value.hex() for value in back] == [value.hex() for value in values]
    source.end()


@given(st.binary(max_size=60))
def test_bytes_come_back_from_digits_in_as_many_as_are_said(some: bytes) -> None:
    digits = to_digits(some)
    assert from_digits(digits) == some
    assert len(digits) == digits_for(len(some))
    assert math.ceil(len(some) * 8 * math.log10(2)) <= len(digits) <= len(some) * 2.5 + 3


@pytest.mark.parametrize("sign", ["", "-"])
def test_minus_nothing_keeps_its_sign_among_decimals(sign: str) -> None:
    out = Writer()
    write_numbers(out, [float(sign + "0.0"), 1.5])
    assert math.copysign(1, read_numbers(Reader(bytes(out.done)), 2)[0]) == float(sign + "1")


@given(st.binary(max_size=30))
def test_a_link_never_ends_in_a_sign_that_messengers_drop(some: bytes) -> None:
    link = wrap(1, some)
    assert link[-1].isalnum()
    assert unwrap(find(link)) == some
    assert unwrap(find(as_digits(link) or "")) == some

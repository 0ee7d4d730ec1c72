"""Readings weighed together are weighed as their whole covariance says."""

import math
import random

import numpy as np
import pytest

from pycore.calc import priors
from pycore.calc.likelihood import Row, Shared, covariance, log_likelihood, log_likelihoods


def random_readings(seed: int, count: int) -> tuple[list[Row], Shared]:
    """Readings with what they share."""
    chance = random.Random(seed)
    rows = []
    for _ in range(count):
        follows = chance.random()
        rows.append(Row(chance.gauss(0, 0.2), follows, 1 - follows, chance.uniform(1e-4, 1e-2)))
    shared = Shared(
        loads=tuple(chance.choice([0, 1]) for _ in rows),
        instruments=tuple(chance.choice(["one", "other"]) for _ in rows),
        gains=tuple(chance.uniform(0, 0.05) for _ in rows),
        load_variances=(0.003, 0.2),
        copper_variance=0.001,
    )
    return rows, shared


@pytest.mark.parametrize("count", [1, 2, 3, 5, 12])
@pytest.mark.parametrize("seed", range(8))
def test_any_number_of_readings_is_weighed_by_its_covariance(seed: int, count: int) -> None:
    rows, shared = random_readings(seed, count)
    matrix = np.array(
        [
            [covariance(rows, shared, one=one, other=other) for other in range(count)]
            for one in range(count)
        ]
    )
    off = np.array([row.off for row in rows])
    distance = float(off @ np.linalg.solve(matrix, off))
    freedom = priors.DOUBT_FREEDOM
    expected = -0.5 * float(np.linalg.slogdet(matrix)[1])
    expected -= 0.5 * (freedom + count) * math.log1p(distance / freedom)
    assert log_likelihood(rows, shared) == pytest.approx(expected, rel=1e-9)
    open_line = [rows[0]._replace(beyond=True), *rows[1:]]
    alike = shared._replace(loads=(0,) * count, instruments=("one",) * count)
    for some in (rows, open_line):
        for each in (shared, alike):
            told = log_likelihoods([some, some], each)
            assert told == pytest.approx([log_likelihood(some, each)] * 2, rel=1e-9)


def test_a_reading_beyond_what_a_meter_shows_is_no_news_when_it_is_beyond() -> None:
    shared = Shared((0,), ("one",), (0.02,), (0.003, 0.2), 0.001)
    agrees = Row(-1.0, 1.0, 0.0, 0.001, beyond=True)
    falls_short = agrees._replace(off=0.5)
    assert log_likelihood([agrees], shared) == 0.0
    assert log_likelihood([falls_short], shared) < -5.0


def test_one_odd_reading_among_good_ones_costs_less_than_by_a_normal_law() -> None:
    shared = Shared((0,), ("one",), (0.0,), (0.0, 0.2), 0.0)
    ten_deviations = Row(1.0, 0.0, 0.0, 0.01)
    fine = ten_deviations._replace(off=0.0)
    cost = log_likelihood([fine], shared) - log_likelihood([ten_deviations], shared)
    assert 5 < cost < 50

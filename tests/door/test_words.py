"""Every code that can be emitted has words, and every word belongs to a code."""

import re
import string
from functools import cache
from typing import get_args

import pytest
from hypothesis import given

from pycore.asks.editing import TOO_FAR
from pycore.asks.see import see
from pycore.asks.verdict_words import verdict_words
from pycore.calc.finding import Verdict
from pycore.ground.refusals import CODES
from pycore.ground.units import Manner
from pycore.ground.words import ENGLISH
from pycore.jobs import Job
from tests.door.source import PROBLEMS, calls_of, constants, keyword_of, texts_in
from tests.strategies import MANNERS, jobs

LEFT_OPEN = re.compile(r"\{[a-z_]+\}|\bNone\b|\bnan\b|\binf\b")
VERDICTS = get_args(Verdict)
# Codes a limit makes of its own name and its verdict.
JUDGED = ("output_load", "pool_load", "impedance", "attenuator_load")


@cache
def codes_raised() -> dict[str, set[str]]:
    """Every problem code in the source, with the names of the values it is raised with."""
    raised: dict[str, set[str]] = {}
    for _, call in calls_of(*PROBLEMS):
        given_names = {one.arg for one in call.keywords if one.arg}
        for code in texts_in(call.args[0]) if call.args else ():
            raised[code] = raised.get(code, given_names) & given_names
    return raised


def fields_of(template: str) -> set[str]:
    """The names a template has places for."""
    return {name for _, name, _, _ in string.Formatter().parse(template) if name}


def test_every_problem_that_can_be_raised_has_words() -> None:
    codes = codes_raised().keys() | set(CODES.values()) | set(TOO_FAR.values())
    assert len(codes) > 40
    assert codes - ENGLISH["problem"].keys() == set()


def test_every_problem_with_words_can_be_raised() -> None:
    assert ENGLISH["problem"].keys() - constants() == set()


def test_every_problem_says_what_to_do_next() -> None:
    assert ENGLISH["problem_remedy"].keys() ^ ENGLISH["problem"].keys() == set()


@pytest.mark.parametrize("code", sorted(codes_raised()))
def test_the_words_of_a_problem_ask_only_for_what_it_is_raised_with(code: str) -> None:
    names = codes_raised()[code]
    for table in ("problem", "problem_remedy"):
        assert fields_of(ENGLISH[table].get(code, "")) - names - {"unit"} == set()


def test_every_finding_has_a_title_and_every_title_a_finding() -> None:
    whats: set[str] = set()
    for _, call in calls_of("Finding", "Limit", "_replace"):
        what = keyword_of(call, "what")
        whats |= texts_in(what) if what is not None else set()
    assert whats
    assert whats - {""} - ENGLISH["title"].keys() == set()
    assert ENGLISH["title"].keys() - constants() == set()


def test_every_verdict_of_a_limit_has_words_and_a_way_on_where_one_is_needed() -> None:
    for stem in JUDGED:
        for verdict in set(get_args(Verdict)) - {"note"}:
            assert f"{stem}_{verdict}" in ENGLISH["finding"]
            assert verdict == "ok" or f"{stem}_{verdict}" in ENGLISH["remedy"]
    assert ENGLISH["remedy"].keys() - ENGLISH["finding"].keys() == set()


def test_every_verdict_has_its_word_on_a_load_on_a_loss_and_on_a_mark() -> None:
    families = {"output_load_w": "too much", "zone_loss_db": "too quiet", "wrong_voltage": "wrong",
                "meter_reading": "do not connect", "foreign_v": "not dead"}  # fmt: skip
    manner = Manner("en", "m", ".", "")
    for what, over in families.items():
        assert verdict_words(what, "over", manner=manner) == over
    made = {f"{family}_{verdict}" for family in ("load", "loss", "mark") for verdict in VERDICTS}
    made |= {"meter_over", "live_over"}  # a finding of the meter is never anything else
    assert made == ENGLISH["verdict"].keys()


def test_every_finding_that_can_be_made_has_words() -> None:
    for _, call in calls_of("Finding"):
        code = keyword_of(call, "code")
        if code is not None:
            assert texts_in(code) - ENGLISH["finding"].keys() == set()


def test_every_step_and_assumption_in_the_source_has_words() -> None:
    for _, call in calls_of("step"):
        assert texts_in(call.args[0]) - ENGLISH["step"].keys() == set()
    assert ENGLISH["assumption"].keys() - constants() == set()


@given(jobs(), MANNERS)
def test_no_text_of_any_job_has_a_hole_in_it(job: Job, manner: Manner) -> None:
    seen = see(job, manner)
    texts = [seen["faces"]["job"]["headline"], seen["faces"]["job"]["reason"]]
    for finding in seen["findings"]:
        texts += [finding["words"], finding["title"], finding["remedy"] or "-"]
        texts += [str(text) for text in finding["shown"].values()]
    for face in seen["faces"]["things"].values():
        texts += [face["line"] or "-", face["load"] or "-", face["detail"] or "-"]
    for text in texts:
        assert text.strip()
        assert not LEFT_OPEN.search(text), text
        assert "  " not in text, text

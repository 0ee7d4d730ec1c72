"""The ask `working`: how a finding's number came to be, ready to print."""

import re
from collections.abc import Mapping
from types import MappingProxyType

from pycore.asks.answers import InputAnswer, StepAnswer, WorkingAnswer
from pycore.asks.names import names_of
from pycore.asks.opened import open_finding
from pycore.asks.requests import WorkingBody
from pycore.asks.shown import marks_of, range_text, shown_finding
from pycore.asks.would import job_as_it_would_be
from pycore.calc.check import check_job
from pycore.calc.finding import Finding
from pycore.calc.solve import solve_lines
from pycore.ground.units import Manner, show, show_beside
from pycore.ground.words import decimals_of, has, kind_name, say
from pycore.ground.working import Known, Step

MOST_TERMS = 8
NO_NAMES: Mapping[str, str] = MappingProxyType({})
WORD = re.compile(r"[a-z_][a-z0-9_]*")


def working(body: WorkingBody, manner: Manner) -> WorkingAnswer:
    """Every step behind one finding's number, its inputs, sources and assumptions."""
    job = job_as_it_would_be(body, manner)
    names = names_of(job, language=manner.language)
    before = None if job is body.job else solve_lines(body.job)
    finding, story = open_finding(check_job(job), body.finding, before=before)
    return {
        "title": shown_finding(finding, names, manner=manner)["title"],
        "result": _result(finding, manner),
        "steps": [
            step_answer(one, manner, names=names, marks=_marks(one, finding)) for one in story.steps
        ],
        "assumptions": [
            say("assumption", code, language=manner.language) for code in story.assumptions
        ],
    }


def _marks(made: Step, finding: Finding) -> tuple[float, ...]:
    """What the result of a step is told apart from: the limit, where it is a number like it."""
    return marks_of(finding) if made.equation.unit == finding.unit else ()


def _result(finding: Finding, manner: Manner) -> str:
    """The number that was opened, signed as the page has it; a count of what fits is two."""
    if finding.what == "sound_change_db" and (finding.value or 0.0) > 0:
        return say(
            "effect",
            "more",
            values={"value": range_text(finding, manner)},
            language=manner.language,
        )
    if finding.what != "what_fits" or finding.high is None:
        return range_text(finding, manner)
    counts = {
        name: show(float(finding.values[name] or 0), "count", manner=manner)
        for name in ("with_reserve", "to_rating")
    }
    return say("face", "fits_result", values=counts, language=manner.language)


def step_answer(
    made: Step,
    manner: Manner,
    *,
    names: Mapping[str, str] = NO_NAMES,
    marks: tuple[float, ...] = (),
) -> StepAnswer:
    """One step of a working, ready to print. `names`: by id, for steps that speak of a limit;
    `marks`: what its result must not read like unless it is the same."""
    unit = made.equation.unit
    source = made.equation.source
    return {
        "title": _title(made, names, manner=manner),
        "formula": _tidy(WORD.sub(lambda word: _named(word[0], manner), _written(made, manner))),
        "put_in": _put_in(made, manner),
        "result": show_beside(made.result, unit, marks=marks, manner=manner),
        "inputs": [_input(name, known, manner=manner) for name, known in made.inputs.items()],
        "source": ", ".join(part for part in (source.name, source.clause) if part),
        "source_note": say("seen", source.seen, language=manner.language),
    }


def _title(made: Step, names: Mapping[str, str], *, manner: Manner) -> str:
    language = manner.language
    values = {name: kind_name(text, language=language) for name, text in made.values.items()}
    if "what" in values:
        place = names.get(values["place"], values["place"])
        limit = say("title", values["what"], values={"place": place}, language=language)
        values["limit"] = limit
    return say("step", made.code, values=values, language=language)


def _named(word: str, manner: Manner) -> str:
    return say("name", word, language=manner.language) if has("name", word) else word


def _put_in(made: Step, manner: Manner) -> str:
    """The formula with the numbers in place of the names; a long sum is cut, its length said."""
    numbers = {
        # inside a formula a factor stands as a plain number: its sign is the formula's own
        name: _number(known, manner).removeprefix("×")
        for name, known in made.inputs.items()
    }
    if made.equation.text.startswith("sum("):
        return next(iter(numbers.values()))
    return _tidy(
        WORD.sub(lambda word: numbers.get(word[0], _named(word[0], manner)), _written(made, manner))
    )


def _written(made: Step, manner: Manner) -> str:
    """The expression, its constants with the person's decimal sign."""
    return decimals_of(made.equation.text, language=manner.language)


def _number(known: Known, manner: Manner) -> str:
    if isinstance(known.value, tuple):
        return _sum(known.value, known.unit, manner=manner)
    return show(known.value, known.unit, manner=manner)


def _sum(terms: tuple[float, ...], unit: str, *, manner: Manner) -> str:
    """Like terms together: "6 × 5 W + 4 × 7.5 W"."""
    counts: dict[float, int] = {}
    for term in terms:
        counts[term] = counts.get(term, 0) + 1
    told = [
        show(term, unit, manner=manner)
        if times == 1
        else f"{times} × {show(term, unit, manner=manner)}"
        for term, times in counts.items()
    ]
    cut = [*told[:MOST_TERMS], "…"] if len(told) > MOST_TERMS else told
    return " + ".join(cut) or show(0.0, unit, manner=manner)


def _tidy(text: str) -> str:
    """An expression in the signs people write: ², ×, and no programming."""
    signs: Mapping[str, str] = {
        " ** 2": "²",
        " ** ": " ^ ",
        " * ": " × ",
        " - ": " − ",
        "sum(each)": "sum of all",
        "the larger of(": "the larger of (",
        "the smaller of(": "the smaller of (",
        "(-": "(−",
    }
    for code, sign in signs.items():
        text = text.replace(code, sign)
    return text


def _input(name: str, known: Known, *, manner: Manner) -> InputAnswer:
    answer: InputAnswer = {
        "name": known.label or _named(name, manner),
        "shown": _number(known, manner),
        "origin": say("origin", known.origin, language=manner.language),
    }
    if known.source is not None:
        answer["source"] = ", ".join(part for part in known.source[:2] if part)
    return answer

"""A problem with its words."""

from pycore.asks.answers import ProblemAnswer
from pycore.ground.problems import Problem, Value
from pycore.ground.units import Manner, show_typed, unit_of
from pycore.ground.words import has, say


def problem_answer(problem: Problem, manner: Manner) -> ProblemAnswer:
    """The problem as the page gets it."""
    texts = {name: _text(name, value, manner=manner) for name, value in problem.values.items()}
    if "unit" in texts:
        texts["unit"] = f" ({texts['unit']})" if texts["unit"] else ""
    remedy = None
    if has("problem_remedy", problem.code):
        remedy = say("problem_remedy", problem.code, values=texts, language=manner.language)
    return {
        "code": problem.code,
        "values": dict(problem.values),
        "words": say("problem", problem.code, values=texts, language=manner.language),
        "where": dict(problem.where),
        "remedy": remedy,
    }


def _text(name: str, value: Value, *, manner: Manner) -> str:
    """A value as text; a number whose name carries a unit is printed with it."""
    unit = unit_of(name) if isinstance(value, float) else None
    return str(value) if unit is None else show_typed(float(value), unit, manner=manner)

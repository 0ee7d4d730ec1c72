"""A number with its story: equations that carry their own text, and the steps they made.

An equation is a plain function decorated with the very expression it runs. The laws test
evaluates that expression beside the function for every equation in `EQUATIONS`, so the
line a person is shown is the line that was run.
"""

from collections.abc import Callable, Mapping
from typing import Literal, NamedTuple

from pycore.ground.sources import Source

# Where a number came from. "computed" is the result of an earlier step of the same working, a
# law test holds it to that; "solved" is a number of the whole line at once, which no step makes;
# "told" are the results of earlier steps together with what was entered.
Origin = Literal[
    "typed",
    "start",
    "absent",
    "catalogue",
    "table",
    "computed",
    "told",
    "solved",
    "assumed",
    "elsewhere",
    "tried",
    "same",
]
Number = float | tuple[float, ...]


class Equation(NamedTuple):
    """A function of keyword numbers, the expression it runs, its unit and its source."""

    name: str
    run: Callable[..., float]
    text: str
    unit: str
    source: Source

    def __call__(self, **numbers: Number) -> float:
        """Run it: keyword numbers in, the result in `unit` out."""
        return self.run(**numbers)


EQUATIONS: dict[str, Equation] = {}


def equation(text: str, *, unit: str, source: Source) -> Callable[[Callable[..., float]], Equation]:
    """Make a plain function an equation that can be shown: `text` is the expression it runs."""

    def keep(run: Callable[..., float]) -> Equation:
        made = Equation(name=run.__name__, run=run, text=text, unit=unit, source=source)
        EQUATIONS[made.name] = made
        return made

    return keep


class Known(NamedTuple):
    """A number put into an equation, and where it came from."""

    value: Number
    unit: str
    origin: Origin
    source: Source | None = None
    label: str = ""


class Step(NamedTuple):
    """One equation run on known numbers. `code` and `values` name it in words."""

    code: str
    values: Mapping[str, str]
    equation: Equation
    inputs: Mapping[str, Known]
    result: float


class Working(NamedTuple):
    """How a finding's number came to be: its steps in order, and what was assumed (codes)."""

    steps: tuple[Step, ...]
    assumptions: tuple[str, ...]


def step(code: str, run: Equation, *, inputs: Mapping[str, Known], **values: str) -> Step:
    """Run an equation on known numbers and keep the story."""
    result = run(**{name: known.value for name, known in inputs.items()})
    return Step(code=code, values=values, equation=run, inputs=inputs, result=result)


def computed(made: Step) -> Known:
    """The result of a step, as a number that can go into the next."""
    return Known(value=made.result, unit=made.equation.unit, origin="computed")

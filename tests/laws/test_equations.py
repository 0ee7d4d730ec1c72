"""Every equation that can be shown is the equation that is run."""

import importlib
import inspect
import math
import pkgutil
from collections.abc import Iterable
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

import pycore.formulas
from pycore.ground.words import ENGLISH
from pycore.ground.working import EQUATIONS, Equation

MODULES = [
    importlib.import_module(f"pycore.formulas.{found.name}")
    for found in pkgutil.iter_modules(pycore.formulas.__path__)
]
# What the text of an equation may use besides its inputs: mathematics, and two signs more.
SIGNS = {name: one for name, one in vars(math).items() if not name.startswith("_")}
SPANS = {"db": (-60.0, 60.0), "fraction": (0.001, 0.9), "c": (-50.0, 150.0), "awg": (0.0, 30.0)}
USUAL_SPAN = (0.01, 1000.0)


def exact_sum(terms: Iterable[float]) -> float:
    """What `sum` means in the text of an equation."""
    return math.fsum(terms)


def numbers_for(name: str) -> st.SearchStrategy[float]:
    """Numbers an input of this name can have."""
    span = next((SPANS[end] for end in SPANS if name == end or name.endswith("_" + end)), None)
    low, high = span or USUAL_SPAN
    return st.floats(1.01 if name == "spacing_factor" else low, high)


@st.composite
def inputs_of(draw: st.DrawFn, shown: Equation) -> dict[str, Any]:
    """Numbers for every input of an equation."""
    drawn: dict[str, Any] = {}
    for name, given_input in inspect.signature(shown.run).parameters.items():
        several = "tuple" in str(given_input.annotation)
        one = numbers_for(name)
        drawn[name] = tuple(draw(st.lists(one, max_size=6))) if several else draw(one)
    return drawn


def test_no_two_equations_share_a_name() -> None:
    made = [one for module in MODULES for one in vars(module).values() if isinstance(one, Equation)]
    assert {one.name: one for one in made} == EQUATIONS
    assert len(made) > 50


# Few examples each: where a text and its function differ, they differ almost everywhere.
@pytest.mark.parametrize("name", sorted(EQUATIONS))
@settings(max_examples=12)
@given(data=st.data())
def test_the_text_of_an_equation_is_what_is_run(name: str, data: st.DataObject) -> None:
    shown = EQUATIONS[name]
    inputs = data.draw(inputs_of(shown))
    try:
        run = shown(**inputs)
    except ValueError:  # outside where its functions are defined, as below zero for a logarithm
        assume(False)
        raise
    words = {**SIGNS, "sum": exact_sum, "max": max, "min": min}
    told = eval(shown.text, {"__builtins__": {}}, {**words, **inputs})
    assert told == pytest.approx(run, rel=1e-12, abs=1e-12)


@pytest.mark.parametrize("name", sorted(EQUATIONS))
def test_everything_put_into_an_equation_has_a_plain_name(name: str) -> None:
    inputs = inspect.signature(EQUATIONS[name].run).parameters
    assert [one for one in inputs if one not in ENGLISH["name"]] == []

"""A number's unit is the end of its name, in the model and in the exported contract alike."""

from collections.abc import Iterator
from typing import Any, get_args

import pytest
from pydantic import BaseModel, TypeAdapter

from pycore.asks.table import ASKS
from pycore.edit import COMMANDS, Command
from pycore.ground.units import unit_of
from pycore.ground.units.table import TYPED
from pycore.jobs import Job

# What carries no unit: counts and places in a list, costs beside each other, and the numbers of a
# reading, whose unit its quantity says.
COUNTS = {
    "budget",
    "count",
    "firsts",
    "kept",
    "n",
    "next",
    "next_first",
    "output",
    "rev",
    "version",
}
COSTS = {"rack", "box", "control", "open_another", "again", "listen", "tone", "probe", "earth"}
WITHOUT_UNIT = {"group", *COUNTS, *COSTS, "class", "value", "low", "high"}


def numbers_in(schema: dict[str, Any], name: str) -> Iterator[tuple[str, dict[str, Any]]]:
    """The numeric shapes a field can have, through the choices of a union."""
    if schema.get("type") in ("number", "integer"):
        yield name, schema
    for choice in (*schema.get("anyOf", ()), *schema.get("oneOf", ())):
        yield from numbers_in(choice, name)


def fields_of_contract(adapter: TypeAdapter[Any]) -> list[tuple[str, dict[str, Any]]]:
    """Every numeric field in an exported JSON schema."""
    whole = adapter.json_schema()
    found = []
    for shape in (whole, *whole.get("$defs", {}).values()):
        for name, field in shape.get("properties", {}).items():
            found += list(numbers_in(field, name))
    return found


CONTRACTS: dict[str, TypeAdapter[Any]] = {
    "job": TypeAdapter(Job),
    "commands": COMMANDS,
    **{name: TypeAdapter(ask.body) for name, ask in ASKS.items()},
}


@pytest.mark.parametrize("name", sorted(CONTRACTS))
def test_the_contract_says_the_unit_that_the_name_says(name: str) -> None:
    for field, schema in fields_of_contract(CONTRACTS[name]):
        if field in WITHOUT_UNIT:
            assert "unit" not in schema
        else:
            assert schema.get("unit") == unit_of(field), field
            assert schema["unit"] in TYPED, f"{field} cannot be typed"


def models_in(annotation: Any) -> Iterator[type[BaseModel]]:
    """The models an annotation speaks of."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        yield annotation
        for field in annotation.model_fields.values():
            yield from models_in(field.annotation)
    for one in get_args(annotation):
        yield from models_in(one)


def units_said(annotation: Any, metadata: list[Any]) -> set[str]:
    """The units in the notes of a field and of the choices inside it."""
    said: set[str] = set()
    for note in metadata:
        extra = getattr(note, "json_schema_extra", None)
        if isinstance(extra, dict) and "unit" in extra:
            said.add(str(extra["unit"]))
    for one in get_args(annotation):
        said |= units_said(one, list(getattr(one, "__metadata__", ())))
    return said


MODELS = sorted(
    {
        *models_in(Job),
        *(model for ask in ASKS.values() for model in models_in(ask.body)),
        *models_in(Command),
    },
    key=lambda model: model.__name__,
)


@pytest.mark.parametrize("model", MODELS, ids=lambda model: model.__name__)
def test_the_model_says_the_unit_that_the_name_says(model: type[BaseModel]) -> None:
    for name, field in model.model_fields.items():
        extra = field.json_schema_extra
        own = {str(extra["unit"])} if isinstance(extra, dict) and "unit" in extra else set()
        said = own | units_said(field.annotation, list(field.metadata))
        if float in _kinds(field.annotation) and (field.alias or name) not in WITHOUT_UNIT:
            assert said == {unit_of(field.alias or name)}, f"{model.__name__}.{name}"


def _kinds(annotation: Any) -> set[Any]:
    inner = {kind for one in get_args(annotation) for kind in _kinds(one)}
    return {annotation} | inner


def test_the_test_sees_numbers_at_all() -> None:
    seen = {field for name in CONTRACTS for field, _ in fields_of_contract(CONTRACTS[name])}
    assert {"max_w", "length_m", "loss_db", "load_fraction", "awg", "loop_ohm_per_km"} <= seen

"""Reading outside text into models, and saying plainly why a text was refused.

Outside text goes through pydantic's own JSON reader only: it stops at a fixed depth, and
refuses NaN and infinity, where the standard reader takes the whole runtime down.
"""

from typing import Any, TypeVar

from pydantic import BaseModel, TypeAdapter, ValidationError
from pydantic_core import ErrorDetails

from pycore.ground.problems import BadText, NewerJob, Problem, Value

Model = TypeVar("Model", bound=BaseModel)
Kind = TypeVar("Kind")

CODES = {
    "json_invalid": "text_unread",
    "missing": "field_missing",
    "extra_forbidden": "field_unknown",
    "finite_number": "number_not_finite",
    "float_type": "number_expected",
    "int_type": "number_expected",
    "int_from_float": "number_not_whole_here",
    "bool_type": "yes_or_no_expected",
    "string_type": "text_expected",
    "string_too_long": "text_too_long",
    "string_too_short": "text_too_short",
    "string_pattern_mismatch": "id_unread",
    "too_long": "list_too_long",
    "too_short": "list_too_short",
    "tuple_type": "list_expected",
    "model_type": "object_expected",
    "dict_type": "object_expected",
    "literal_error": "not_a_choice",
    "union_tag_invalid": "not_a_choice",
    "union_tag_not_found": "field_missing",
    "greater_than": "number_too_small",
    "greater_than_equal": "number_too_small",
    "less_than": "number_too_large",
    "less_than_equal": "number_too_large",
}
LONGEST_SHOWN = 60


def read_model(model: type[Model], text: str | bytes) -> Model:
    """A model from its JSON text; BadText (or another Problem) says why not."""
    try:
        return model.model_validate_json(text)
    except ValidationError as refused:
        raise refusal(refused) from None


def read_kind(kind: TypeAdapter[Kind], text: str | bytes) -> Kind:
    """The same for a type that is not a model."""
    try:
        return kind.validate_json(text)
    except ValidationError as refused:
        raise refusal(refused) from None


def refusal(refused: ValidationError) -> Problem:
    """The plain problem behind pydantic's first error; a newer version goes before all."""
    errors = refused.errors(include_url=False, include_context=True)
    for error in errors:
        newer = error["type"] == "literal_error" and error["loc"][-1:] == ("version",)
        if newer and isinstance(error["input"], int) and error["input"] > 1:
            return NewerJob("job_newer", where={"field": _place(error)}, version=error["input"])
    first = errors[0]
    code = CODES.get(first["type"], "value_refused")
    return BadText(code, where={"field": _place(first)}, **_values(first))


def _place(error: ErrorDetails) -> str:
    """The dotted name of the field, without the tags pydantic puts in for unions."""
    parts = [str(part) for part in error["loc"]]
    return ".".join(parts)[:200]


def _values(error: ErrorDetails) -> dict[str, Value]:
    context: dict[str, Any] = error.get("ctx", {})
    bounds = [context[key] for key in ("gt", "ge", "lt", "le", "max_length") if key in context]
    values: dict[str, Value] = {"field": _place(error) or "the text"}
    if bounds:
        values["bound"] = f"{bounds[0]:g}"
    if "expected" in context:
        values["expected"] = str(context["expected"])[:LONGEST_SHOWN]
    values["given"] = str(error.get("input", ""))[:LONGEST_SHOWN]
    return values

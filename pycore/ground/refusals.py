"""Reading outside text into models, and saying plainly why a text was refused.

Outside text goes through pydantic's own JSON reader only: it stops at a fixed depth, and
refuses NaN and infinity, where the standard reader takes the whole runtime down.
"""

import re
from collections.abc import Collection
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
    "greater_than": "number_not_above",
    "greater_than_equal": "number_too_small",
    "less_than": "number_too_large",
    "less_than_equal": "number_too_large",
    "string_unicode": "text_unread",
}
LONGEST_SHOWN = 60
# More faults than this are not listed one by one: listing them takes longer than reading.
MOST_FAULTS = 1000
NO_TAGS: frozenset[str] = frozenset()
NAME = re.compile(r"[A-Za-z_][A-Za-z0-9_]*")
# Below these fields the name of the choice made comes into pydantic's path.
CHOICE_BELOW = ("fitted",)


def read_model(model: type[Model], text: str | bytes) -> Model:
    """A model from its JSON text; BadText (or another Problem) says why not."""
    try:
        return model.model_validate_json(text)
    except ValidationError as refused:
        raise refusal(refused) from None
    except UnicodeError:
        raise BadText("text_unread") from None


def read_kind(kind: TypeAdapter[Kind], text: str | bytes, *, tags: Collection[str]) -> Kind:
    """The same for a type that is not a model; `tags` are the names of its choices."""
    try:
        return kind.validate_json(text)
    except ValidationError as refused:
        raise refusal(refused, tags) from None


def refusal(refused: ValidationError, tags: Collection[str] = NO_TAGS) -> Problem:
    """The plain problem behind pydantic's first error; a newer version goes before all."""
    if refused.error_count() > MOST_FAULTS:
        return BadText("faults_too_many", count=refused.error_count())
    errors = refused.errors(include_url=False, include_context=True)
    for error in errors:
        newer = error["type"] == "literal_error" and error["loc"][-1:] == ("version",)
        if newer and isinstance(error["input"], int) and error["input"] > 1:
            where = {"field": _place(error, tags)}
            return NewerJob("job_newer", where=where, version=error["input"])
    first = errors[0]
    code = CODES.get(first["type"], "value_refused")
    place = _place(first, tags)
    return BadText(code, where={"field": place}, **_values(first, place))


def _place(error: ErrorDetails, tags: Collection[str]) -> str:
    """The dotted name of the field, without what pydantic puts in for the choices of unions."""
    path, kind = error["loc"], error["type"]
    nothing_else = len(path) if tags else 0
    own = (at for at, part in enumerate(path) if part not in tags and part != "body")
    start = next(own, nothing_else)
    parts = [
        str(part)
        for at, part in enumerate(path)
        if at >= start and (at == 0 or path[at - 1] not in CHOICE_BELOW) and _is_field(part, kind)
    ]
    if kind.startswith("union_tag"):
        parts.append(error.get("ctx", {})["discriminator"].split("'")[-2])
    return ".".join(parts)[:200]


def _is_field(part: str | int, kind: str) -> bool:
    """Not the name pydantic gives a check; an unknown key may be written in any way."""
    return isinstance(part, int) or kind == "extra_forbidden" or NAME.fullmatch(part) is not None


def _values(error: ErrorDetails, place: str) -> dict[str, Value]:
    context: dict[str, Any] = error.get("ctx", {})
    bounds = [context[key] for key in ("gt", "ge", "lt", "le", "max_length") if key in context]
    values: dict[str, Value] = {"field": place or "the text"}
    if bounds:
        values["bound"] = f"{bounds[0]:g}"
    if "expected" in context:
        values["expected"] = str(context["expected"])[:LONGEST_SHOWN]
    given = context.get("tag", error.get("input", ""))
    values["given"] = _shortly(given)
    return values


def _shortly(given: object) -> str:
    """What was given, in few signs; of lists and objects only that they are some."""
    if given is None or isinstance(given, bool):
        return {None: "null", True: "true", False: "false"}[given]
    if isinstance(given, str | int | float):
        return str(given)[:LONGEST_SHOWN]
    return "[…]" if isinstance(given, list | tuple) else "{…}"

"""Turn the models of the asks into TypeScript, so that page and core cannot drift apart."""

import json
import re
from collections.abc import Mapping
from typing import Any

from pydantic import TypeAdapter

Schema = dict[str, Any]
HEAD = (
    "/* Made by `python3 build.py make` from pycore/asks. Change the models there, not this. */\n"
)
SIMPLE = {
    "string": "string",
    "integer": "number",
    "number": "number",
    "boolean": "boolean",
    "null": "null",
}


def write_door_types(asks: Mapping[str, Any]) -> str:
    """Write one interface for each model and the table of asks that uses them."""
    references, whole = TypeAdapter.json_schemas(
        [
            *(((name, "body"), "validation", TypeAdapter(ask.body)) for name, ask in asks.items()),
            *(
                ((name, "answer"), "serialization", TypeAdapter(ask.answer))
                for name, ask in asks.items()
            ),
        ]
    )
    definitions = whole.get("$defs", {})
    lines = [HEAD]
    lines += [_write_definition(name, schema) for name, schema in sorted(definitions.items())]
    lines.append("/** Every ask: what goes in and what comes back. */\nexport interface Asks {")
    for name in sorted(asks):
        body = _write_type(references[((name, "body"), "validation")])
        answer = _write_type(references[((name, "answer"), "serialization")])
        lines.append(f"  {_write_key(name)}: {{ body: {body}; answer: {answer} }};")
    return "\n".join([*lines, "}", ""])


def _write_definition(name: str, schema: Schema) -> str:
    """Write one named model as an interface, anything else as a type."""
    note = _write_note(schema)
    if schema.get("type") == "object" and "properties" in schema:
        return f"{note}export interface {_write_name(name)} {_write_object(schema, indent='')}\n"
    return f"{note}export type {_write_name(name)} = {_write_type(schema)};\n"


def _write_type(schema: Schema) -> str:
    """Write the TypeScript of any schema."""
    if "$ref" in schema:
        return _write_name(schema["$ref"].rsplit("/", 1)[-1])
    if "const" in schema:
        return json.dumps(schema["const"], ensure_ascii=False)
    if "enum" in schema:
        return " | ".join(json.dumps(each, ensure_ascii=False) for each in schema["enum"])
    for several in ("anyOf", "oneOf"):
        if several in schema:
            return " | ".join(dict.fromkeys(_write_type(each) for each in schema[several]))
    if schema.get("type") == "array":
        return _write_array(schema)
    if schema.get("type") == "object":
        return _write_object(schema, indent="  ")
    return SIMPLE.get(schema.get("type", ""), "unknown")


def _write_array(schema: Schema) -> str:
    """Write a list, or a tuple whose places have types of their own."""
    if "prefixItems" in schema:
        return "[" + ", ".join(_write_type(each) for each in schema["prefixItems"]) + "]"
    inner = _write_type(schema.get("items", {}))
    return f"({inner})[]" if " | " in inner else f"{inner}[]"


def _write_object(schema: Schema, *, indent: str) -> str:
    """Write an object with its fields, or a record when the fields are not named."""
    fields = schema.get("properties")
    if fields is None:
        inner = schema.get("additionalProperties")
        return f"Record<string, {_write_type(inner) if isinstance(inner, dict) else 'unknown'}>"
    required = set(schema.get("required", ()))
    lines = ["{"]
    for name, field in fields.items():
        mark = "" if name in required else "?"
        lines.append(f"{indent}  {_write_key(name)}{mark}: {_write_type(field)};")
    return "\n".join([*lines, indent + "}"])


def _write_note(schema: Schema) -> str:
    """Write the model's own sentence above it."""
    words = " ".join(str(schema.get("description", "")).split()).replace("*/", "* /")
    return f"/** {words} */\n" if words else ""


def _write_key(name: str) -> str:
    """Quote a key only when it needs it."""
    return name if re.fullmatch(r"[A-Za-z_]\w*", name) else json.dumps(name)


def _write_name(name: str) -> str:
    """Make a type name of a model's name; generic ones carry brackets and hyphens."""
    return re.sub(r"\W+", "_", name).strip("_")

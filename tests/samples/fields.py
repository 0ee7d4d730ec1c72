"""Every field of every model in a raw job, with what the format says about it."""

from collections.abc import Iterator
from typing import Any, NamedTuple

from pycore.jobs import Job

Raw = Any
SCHEMA: Raw = Job.model_json_schema(by_alias=True)


class Field(NamedTuple):
    """A field: the name of its model, the raw model it is or could be in, and its schema."""

    model: str
    holder: Raw
    name: str
    schema: Raw

    def branches(self) -> list[Raw]:
        """What may stand there, one schema for each sort of value, also of those in a list."""
        return [self.schema, *self.schema.get("anyOf", ()), self.schema.get("items", {})]


def each_field(raw: Raw, model: str = "Job", schema: Raw = SCHEMA) -> Iterator[Field]:
    """All fields of a raw job, also those that are left out in it."""
    for name, its in schema["properties"].items():
        yield Field(model, raw, name, its)
        for inner, inside in _models_in(raw.get(name), its):
            yield from each_field(inner, inside, SCHEMA["$defs"][inside])


def _models_in(raw: Raw, schema: Raw) -> Iterator[tuple[Raw, str]]:
    """The raw models that stand in a field, each with its name."""
    for one in (schema, *schema.get("anyOf", ())):
        its = one.get("items", one)
        for item in raw if isinstance(raw, list) else [raw]:
            if not isinstance(item, dict):
                continue
            mapped = its.get("discriminator", {}).get("mapping", {})
            reference = mapped.get(item.get("is")) if mapped else its.get("$ref")
            if reference:
                yield item, reference.rpartition("/")[2]

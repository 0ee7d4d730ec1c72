"""A job in which every text a person may write means harm, and ids are names JavaScript knows.

The texts are found in the models themselves, so a text field that is added later is in it
without anybody thinking of it.
"""

import json
from collections.abc import Iterator
from itertools import count as count_up
from pathlib import Path
from typing import Any, NamedTuple

from pycore.ground.plain import plain_line, plain_notes
from pycore.jobs import Job

Raw = Any
Place = tuple[str, str]
EVERYTHING = Path(__file__).with_name("version_1") / "everything.json"
# What each text begins with; a number that is in no other text follows it.
HARM = (
    "<script>window.harmed=1</script>",
    "<img src=x onerror=window.harmed=2>",
    '"><svg/onload=window.harmed=3>',
    "javascript:window.harmed=4//",
    "</textarea><iframe srcdoc='<script>parent.harmed=5</script>'>",
    "${window.harmed=6}{{window.harmed=7}}",
    "' onfocus=window.harmed=8 autofocus='",
    "\u202egnp.\u2066exe\u2069 <b>\x07\x1b[31m\u200b",
    "__proto__[harmed]=9",
    "]]><!--<a href=javascript:harmed=10>",
)
SHORT = ("<i>", "</p>", '"><b>')
SHORT_UP_TO = 45
# Ids may be any word of letters, digits, _ and -, so also what every object has.
IDS = {
    "q4x1": "__proto__", "q4x2": "constructor", "q4x3": "toString", "q4x9": "hasOwnProperty",
    "q4x10": "__defineGetter__", "q4x11": "valueOf", "q4x12": "isPrototypeOf",
    "q4x8": "__lookupSetter__", "q4x17": "propertyIsEnumerable", "dome": "toLocaleString",
    "g16": "__defineSetter__",
}  # fmt: skip

# Where a person gets to see each text: on the screens of a job, only where two states are
# compared, or nowhere at all. A text that is not named here fails a test of the house.
SCREENS, COMPARED, NOWHERE = "screens", "compared", "nowhere"
WHERE: dict[Place, str] = {
    ("Amplifier", "name"): SCREENS,
    ("Area", "name"): COMPARED,
    ("Area", "notes"): COMPARED,
    ("Attenuator", "label"): SCREENS,
    ("AttenuatorKind", "name"): SCREENS,
    ("Base", "print"): NOWHERE,
    ("CableKind", "name"): SCREENS,
    ("Existing", "label"): SCREENS,
    ("Job", "name"): SCREENS,
    ("Job", "notes"): SCREENS,
    ("Job", "place"): SCREENS,
    ("Job", "saved_at"): NOWHERE,  # a moment is shown as a date; a text that is none is not
    ("Junction", "label"): SCREENS,
    ("Loudspeaker", "label"): SCREENS,
    ("LoudspeakerKind", "mount"): COMPARED,
    ("LoudspeakerKind", "name"): SCREENS,
    ("Output", "marked_class"): SCREENS,
    ("Output", "name"): SCREENS,
    ("Reading", "at"): SCREENS,
    ("Reading", "instrument"): COMPARED,
    ("Tap", "position"): COMPARED,
    ("Tick", "at"): SCREENS,
    ("Tick", "initials"): SCREENS,
    ("Zone", "name"): SCREENS,
}


class Text(NamedTuple):
    """One hostile text: the model and field it stands in, the mark that is its own, and what
    of it is to be read on the page."""

    place: Place
    mark: str
    plain: str


def text_fields() -> set[Place]:
    """Every field of the job format that holds a text somebody may write, by model."""
    schema = Job.model_json_schema(by_alias=True)
    models = {"Job": schema, **schema["$defs"]}
    return {
        (model, field)
        for model, inside in models.items()
        for field, its in inside.get("properties", {}).items()
        if _longest(its) is not None
    }


def make_hostile(*, first: int) -> tuple[str, list[Text]]:
    """The job as the text of a file, with everything unseen still in it; and its texts, which
    are numbered from `first`."""
    raw = json.loads(_rename(EVERYTHING.read_text(encoding="utf-8")))
    schema = Job.model_json_schema(by_alias=True)
    texts: list[Text] = []
    _fill(raw, ("Job", schema), defs=schema["$defs"], texts=texts, numbers=count_up(first))
    return json.dumps(raw), texts


def _rename(text: str) -> str:
    for plain, nasty in IDS.items():
        text = text.replace(f'"{plain}"', f'"{nasty}"')
    return text


def _longest(schema: Raw) -> int | None:
    """How long a text may be that stands there; None where no free text does."""
    branches = [schema, *schema.get("anyOf", ()), schema.get("items", {})]
    free = [
        one["maxLength"]
        for one in branches
        if one.get("type") == "string" and not {"enum", "const", "pattern"} & set(one)
    ]
    return max(free, default=None)


def _fill(
    raw: Raw, model: tuple[str, Raw], *, defs: Raw, texts: list[Text], numbers: Iterator[int]
) -> None:
    """Put a hostile text into every text field of a model and of all models in it."""
    name, schema = model
    for field, its in schema["properties"].items():
        longest = _longest(its)
        if longest is not None:
            number = next(numbers)
            raw[field] = _hostile(number, longest)
            plain = plain_notes(raw[field]) if field == "notes" else plain_line(raw[field])
            texts.append(Text((name, field), mark_of(number), plain))
        elif raw.get(field) is not None:
            for inner, inside in _models_in(raw[field], its, defs=defs):
                _fill(inner, inside, defs=defs, texts=texts, numbers=numbers)


def mark_of(number: int) -> str:
    """What stands in one text only."""
    return f"q{number:03}q"


def _hostile(number: int, longest: int) -> str:
    few = longest < SHORT_UP_TO
    harm = (SHORT if few else HARM)[number % len(SHORT if few else HARM)]
    every = "\n".join(HARM) if longest > len("".join(HARM)) * 2 else harm
    return every + mark_of(number)


def _models_in(raw: Raw, schema: Raw, *, defs: Raw) -> Iterator[tuple[Raw, tuple[str, Raw]]]:
    """The models that stand in a field, each with its schema."""
    for one in (schema, *schema.get("anyOf", ())):
        its = one.get("items", one)
        for item in raw if isinstance(raw, list) else [raw]:
            mapped = its.get("discriminator", {}).get("mapping", {})
            reference = mapped.get(item.get("is")) if mapped else its.get("$ref")
            if reference and isinstance(item, dict):
                name = reference.rpartition("/")[2]
                yield item, (name, defs[name])

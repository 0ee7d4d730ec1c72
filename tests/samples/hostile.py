"""A job in which every text a person may write means harm, and ids are names JavaScript knows.

The texts are found in the models themselves, so a text field that is added later is in it
without anybody thinking of it.
"""

import json
from pathlib import Path
from typing import NamedTuple

from pycore.ground.plain import plain_line, plain_notes
from tests.samples.fields import SCHEMA, Field, each_field

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
    models = {"Job": SCHEMA, **SCHEMA["$defs"]}
    fields = (
        Field(model, {}, name, its)
        for model, inside in models.items()
        for name, its in inside.get("properties", {}).items()
    )
    return {(field.model, field.name) for field in fields if longest_text(field) is not None}


def longest_text(field: Field) -> int | None:
    """How long a text may be that stands there; None where no free text does."""
    free = [
        one["maxLength"]
        for one in field.branches()
        if one.get("type") == "string" and not {"enum", "const", "pattern"} & set(one)
    ]
    return max(free, default=None)


def make_hostile(*, first: int) -> tuple[str, list[Text]]:
    """The job as the text of a file, with everything unseen still in it; and its texts, which
    are numbered from `first`."""
    raw = json.loads(_rename(EVERYTHING.read_text(encoding="utf-8")))
    texts: list[Text] = []
    for field in list(each_field(raw)):
        longest = longest_text(field)
        if longest is not None:
            number = first + len(texts)
            written = field.holder[field.name] = _hostile(number, longest)
            plain = plain_notes(written) if field.name == "notes" else plain_line(written)
            texts.append(Text((field.model, field.name), mark_of(number), plain))
    return json.dumps(raw), texts


def _rename(text: str) -> str:
    for plain, nasty in IDS.items():
        text = text.replace(f'"{plain}"', f'"{nasty}"')
    return text


def mark_of(number: int) -> str:
    """What stands in one text only."""
    return f"q{number:03}q"


def _hostile(number: int, longest: int) -> str:
    few = longest < SHORT_UP_TO
    harm = (SHORT if few else HARM)[number % len(SHORT if few else HARM)]
    every = "\n".join(HARM) if longest > len("".join(HARM)) * 2 else harm
    return every + mark_of(number)

"""The files made from the core and kept in the repository: words, types, and the catalogue."""

import importlib
import json
from pathlib import Path
from typing import Any

from web.tools.door_types import write_door_types
from web.tools.places import GENERATED
from web.tools.say import Halt, tell

WORDS_HEAD = (
    "/* Made by `python3 build.py make` from pycore/ground/words/en_page*.py. "
    "Change the words there. */\n"
)
CATALOGUE_HEAD = (
    "/* Made by `python3 build.py make`: what the core answers to `catalogue`, for each decimal "
    "sign.\n   With it the first screen works before the core has started. */\n"
)


def make_generated() -> dict[Path, str]:
    """Make the text of each generated file."""
    page = importlib.import_module("pycore.ground.words").ENGLISH["page"]
    kept_together = importlib.import_module("pycore.ground.plain").kept_together
    asks = importlib.import_module("pycore.asks.table").ASKS
    catalogues = json.dumps({sign: ask_catalogue(sign) for sign in ".,"}, ensure_ascii=False)
    texts = {name: kept_together(text) for name, text in sorted(page.items())}
    words = json.dumps(texts, ensure_ascii=False, indent=2)
    return {
        GENERATED / "words.js": f"{WORDS_HEAD}export const words = {words};\n",
        GENERATED / "catalogue.js": f"{CATALOGUE_HEAD}export const catalogues = {catalogues};\n",
        GENERATED / "door.d.ts": write_door_types(asks),
    }


def ask_catalogue(decimal: str, length: str = "m") -> dict[str, Any]:
    """Ask the core through its door, as the page would."""
    handle = importlib.import_module("pycore.door").handle
    manner = {"language": "en", "length": length, "decimal": decimal}
    answer = handle(json.dumps({"n": 1, "ask": "catalogue", "manner": manner, "body": {}}))
    body: dict[str, Any] = json.loads(answer)["body"]
    return body


def write_generated() -> None:
    """Write those that have changed, and say so: they belong into the next commit."""
    try:
        made = make_generated()
    except ImportError as error:
        raise Halt(
            f"the core cannot be imported: {error}", remedy="put it right, then run again"
        ) from error
    for path, text in made.items():
        if not path.is_file() or path.read_text(encoding="utf-8") != text:
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_text(text, encoding="utf-8")
            tell(f"  {path.name} was out of date and has been made anew")

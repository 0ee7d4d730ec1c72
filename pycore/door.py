"""The one door: text in, text out, and it never raises.

The head is read first and everything else in the text left aside; then the body, by the
model of its ask. What cannot be answered comes back as a problem with words and a remedy.
"""

import gc
import json
import re
from functools import cache
from typing import Any

from pydantic import BaseModel, create_model
from pydantic_core import to_json

from pycore.asks.refused import problem_answer
from pycore.asks.requests import Head, MannerBody
from pycore.asks.table import ASKS
from pycore.ground.problems import BadText, Problem, TooLarge
from pycore.ground.refusals import read_model
from pycore.ground.units import Manner

MOST_CHARACTERS = 9_000_000
# A request may carry a large job twice; more fields than this are no request of the page.
MOST_FIELDS = 300_000
# The page writes its number first, so that even a text nobody can read gets its answer.
NUMBER = re.compile(r'\s*\{\s*"n"\s*:\s*(\d{1,15})\b', re.ASCII)
PLAIN = MannerBody().manner()


def handle(text: str) -> str:
    """Answer one request: `{"n", "body"}` or `{"n", "problem"}`, whatever the text was.

    Garbage in rings is looked for only between requests: a large job is hundreds of thousands
    of things that all stay, and looking them through again and again took a third of the time.
    """
    collects = gc.isenabled()
    gc.disable()
    try:
        return _handled(text)
    finally:
        if collects:
            gc.enable()


def _handled(text: str) -> str:
    number, manner = 0, PLAIN
    try:
        number = _number(text)
        head = _head(text)
        number, manner = head.n, head.manner.manner()
        return _written({"n": number, "body": _answer(head, text, manner=manner)})
    except Problem as problem:
        return _refused(number, problem, manner=manner)
    except Exception as fault:  # noqa: BLE001 - the last resort: the page must get an answer it can show
        return _refused(number, _unexpected(fault), manner=manner)


def _refused(number: int, problem: Problem, *, manner: Manner) -> str:
    """The problem in words; where even those fail, that something did."""
    try:
        return _written({"n": number, "problem": problem_answer(problem, manner)})
    except Exception as fault:  # noqa: BLE001 - see above
        return _written({"n": number, "problem": problem_answer(_unexpected(fault), PLAIN)})


def _unexpected(fault: Exception) -> Problem:
    return Problem("unexpected", kind=type(fault).__name__)


def _number(text: str) -> int:
    found = NUMBER.match(text)
    return int(found[1]) if found else 0


def _head(text: str) -> Head:
    if len(text) > MOST_CHARACTERS:
        raise TooLarge("text_too_large", characters=len(text), most=MOST_CHARACTERS)
    fields = text.count('":') - text.count('\\":')  # those inside a carried text cost nothing here
    if fields > MOST_FIELDS:
        raise TooLarge("fields_too_many", most=MOST_FIELDS)
    try:
        return read_model(Head, text)
    except BadText:
        raise BadText("not_a_request") from None


def _answer(head: Head, text: str, *, manner: Manner) -> Any:
    ask = ASKS.get(head.ask)
    if ask is None:
        raise BadText("ask_unknown", ask=head.ask)
    request: Any = read_model(_request(head.ask), text)
    return ask.answered_by(request.body, manner)


@cache
def _request(name: str) -> type[BaseModel]:
    """The whole request of an ask: only its body is looked at, the head having been read."""
    return create_model(f"Request_{name}", body=(ASKS[name].body, ...))


def _written(answer: dict[str, Any]) -> str:
    """The answer as JSON by the quick writer, which would let pass what is no number.

    So that is looked for: a name may say "Infinity", a number never.
    """
    text = to_json(answer, exclude_none=True, by_alias=True).decode()
    if "NaN" in text or "Infinity" in text:
        json.dumps(answer, default=_plain, allow_nan=False)
    return text


def _plain(model: Any) -> Any:
    """A model as JSON takes it, what is not known left out."""
    if isinstance(model, BaseModel):
        return model.model_dump(exclude_none=True)
    raise TypeError(type(model).__name__)

"""The one door: text in, text out, and it never raises.

The head is read first and everything else in the text left aside; then the body, by the
model of its ask. What cannot be answered comes back as a problem with words and a remedy.
"""

import json
from functools import cache
from typing import Any

from pydantic import BaseModel, create_model

from pycore.asks.refused import problem_answer
from pycore.asks.requests import Head, MannerBody
from pycore.asks.table import ASKS
from pycore.ground.problems import BadText, Problem, TooLarge
from pycore.ground.refusals import read_model
from pycore.ground.units import Manner

MOST_CHARACTERS = 9_000_000
# A request may carry a large job twice; more fields than this are no request of the page.
MOST_COLONS = 300_000
PLAIN = MannerBody().manner()


def handle(text: str) -> str:
    """Answer one request: `{"n", "body"}` or `{"n", "problem"}`, whatever the text was."""
    number, manner = 0, PLAIN
    try:
        head = _head(text)
        number, manner = head.n, head.manner.manner()
        return _written({"n": number, "body": _answer(head, text, manner=manner)})
    except Problem as problem:
        return _written({"n": number, "problem": problem_answer(problem, manner)})
    except Exception as fault:  # noqa: BLE001 - the last resort: the page must get an answer it can show
        unexpected = Problem("unexpected", kind=type(fault).__name__)
        return _written({"n": number, "problem": problem_answer(unexpected, manner)})


def _head(text: str) -> Head:
    if len(text) > MOST_CHARACTERS:
        raise TooLarge("text_too_large", characters=len(text), most=MOST_CHARACTERS)
    if text.count(":") > MOST_COLONS:
        raise TooLarge("fields_too_many", most=MOST_COLONS)
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
    return json.dumps(answer, default=_plain, allow_nan=False, ensure_ascii=False)


def _plain(model: Any) -> Any:
    """A model as JSON takes it, what is not known left out."""
    if isinstance(model, BaseModel):
        return model.model_dump(exclude_none=True)
    raise TypeError(type(model).__name__)

"""The ask `qr`: a text as a QR code for the page to draw, white all around, four modules wide."""

from typing_extensions import TypedDict

from pycore.asks.carrying import TextBody
from pycore.ground.units import Manner
from pycore.ground.words import say


class CodeAnswer(TypedDict):
    """A code: `rows` of "0" and "1" (1 is dark), `size` modules a side without the white
    around, and `text`, what a reader of it gets. When it is `too_large` there are no rows, and
    `words` offer the file."""

    version: int
    size: int
    rows: list[str]
    text: str
    too_large: bool
    words: str | None


def qr(body: TextBody, manner: Manner) -> CodeAnswer:
    """The ask `qr`."""
    from pycore.carry.qr import code_of

    code = code_of(body.text)
    if code is None:
        words = say("link", "code_too_large", language=manner.language)
        return CodeAnswer(version=0, size=0, rows=[], text="", too_large=True, words=words)
    rows = list(code.rows)
    return CodeAnswer(
        version=code.version, size=code.size, rows=rows, text=code.text, too_large=False, words=None
    )

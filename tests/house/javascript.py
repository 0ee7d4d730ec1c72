"""A small reader of JavaScript: enough to tell code from text and to see what stands by what."""

import re
from typing import NamedTuple

OPERATORS = sorted(
    ("**=", "...", "===", "!==", ">>>", "<<=", ">>=", "&&=", "||=", "??=", "**", "=>", "==", "!=",
     "<=", ">=", "&&", "||", "??", "?.", "++", "--", "+=", "-=", "*=", "/=", "%=", "<<", ">>"),
    key=len,
    reverse=True,
)  # fmt: skip
# After these a slash starts a pattern; after anything else it divides.
BEFORE_PATTERN = set("(,=:[!&|?{};+-*%<>~^") | {"=>", "&&", "||", "??", "return", "typeof", "case"}


class Token(NamedTuple):
    """One piece of code: "name", "number", "text", "pattern" or "mark"."""

    kind: str
    text: str
    line: int


TOKEN = re.compile(
    r"(?P<space>\s+|//[^\n]*|/\*.*?\*/)"
    r"|(?P<name>[A-Za-z_$#][\w$]*)"
    r"|(?P<number>\d[\w.]*)"
    r"|(?P<text>\"(?:\\.|[^\"\\\n])*\"|'(?:\\.|[^'\\\n])*')",
    re.DOTALL,
)
PATTERN = re.compile(r"/(?:\\.|\[(?:\\.|[^\]\\\n])*\]|[^/\\\n\[])+/[a-z]*")


def read_tokens(source: str) -> list[Token]:
    """Cut source into tokens; templates give the code inside their braces."""
    tokens: list[Token] = []
    _read(source, 0, tokens, until="")
    return tokens


def _read(source: str, start: int, tokens: list[Token], *, until: str) -> int:
    """Read from `start` up to an unmatched `until`; return where it stopped."""
    place, depth = start, 0
    while place < len(source):
        line = source.count("\n", 0, place) + 1
        match = TOKEN.match(source, place)
        if match:
            if match.lastgroup != "space":
                tokens.append(Token(str(match.lastgroup), match.group(), line))
            place = match.end()
            continue
        if source[place] == "`":
            place = _read_template(source, place + 1, tokens)
            continue
        depth += {"{": 1, "}": -1}.get(source[place], 0)
        if until and depth < 0:
            return place + 1
        place = _read_mark(source, place, tokens, line=line)
    return place


def _read_template(source: str, start: int, tokens: list[Token]) -> int:
    """Read a template: its text is one token, the code in its braces is read as code."""
    tokens.append(Token("text", "`", source.count("\n", 0, start) + 1))
    place = start
    while source[place] != "`":
        if source[place] == "\\":
            place += 2
        elif source.startswith("${", place):
            line = source.count("\n", 0, place) + 1
            tokens.append(Token("mark", "${", line))
            place = _read(source, place + 2, tokens, until="}")
            tokens.append(Token("mark", "}$", line))
        else:
            place += 1
    return place + 1


def _read_mark(source: str, place: int, tokens: list[Token], *, line: int) -> int:
    """Read a pattern or one operator."""
    before = tokens[-1].text if tokens else "("
    pattern = PATTERN.match(source, place) if source[place] == "/" else None
    if pattern and (before in BEFORE_PATTERN or before == "${"):
        tokens.append(Token("pattern", pattern.group(), line))
        return pattern.end()
    longest = next((each for each in OPERATORS if source.startswith(each, place)), source[place])
    tokens.append(Token("mark", longest, line))
    return place + len(longest)

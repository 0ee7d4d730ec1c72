"""Text that people wrote, made plain: nothing in it that cannot be seen steers what is read.

A name, label or note comes in by a link, a file or a paste, and is shown inside sentences
with numbers a person acts on. So every text of a job passes `plain_line` or `plain_notes`
on its way in (they stand in the model of a text, and nowhere else):

- line breaks, tabs and other white controls become a space; notes keep breaks and tabs;
- other controls, and signs that reorder or hide text (overrides, embeddings and isolates
  of Unicode Annex 9, tags, byte order marks, soft hyphens, zero-width spaces) go;
- what scripts need stays: joiners, the three directional marks, variation selectors.

Names in scripts written from right to left are welcome; `isolated` keeps such a name from
turning the numbers round that stand beside it. Markup needs nothing here: the page prints
text as text.

What we write ourselves is `kept_together`: no line ends between a number and its unit.
"""

import re
from functools import lru_cache

SPACES = re.compile(r"[\t\n\v\f\r\x1c-\x1f\x85\u2028\u2029]")
BREAKS = re.compile(r"\r\n?|[\v\f\x1c-\x1f\x85\u2028\u2029]")
UNSEEN = re.compile(
    "["
    r"\x00-\x08\x0e-\x1b\x7f-\x84\x86-\x9f\u00ad"
    r"\u200b\u202a-\u202e\u2060-\u2064\u2066-\u206f"
    r"\ufdd0-\ufdef\ufeff\ufff0-\ufffb\ufffe\uffff"
    r"\U000e0000-\U000e007f"
    "]"
)
RIGHT_TO_LEFT = re.compile(
    r"[\u0590-\u08ff\u200f\ufb1d-\ufdcf\ufdf0-\ufdff\ufe70-\ufefc"
    r"\U00010800-\U00010fff\U0001e800-\U0001efff]"
)
# a space between a figure, or the place for one, and a unit
BEFORE_UNIT = re.compile(
    r"(?<=[\d}]) (?=(?:W|V|A|m|mm|km|ft|ohm|Ω|kΩ|MΩ|dB|Hz|kHz|°C|mm²|AWG|%|S|Ω/km|µH/m|pF/m)"
    r"(?![\w²°/]))"
)
NO_BREAK = "\u00a0"
FIRST_STRONG, POP = "\u2068", "\u2069"


def plain_line(text: str) -> str:
    """A text of one line without anything unseen; never longer than it was."""
    if text.isprintable():
        return text
    return UNSEEN.sub("", SPACES.sub(" ", text))


def plain_notes(text: str) -> str:
    """The same for notes, which keep their line breaks and tabs."""
    if text.isprintable():
        return text
    return UNSEEN.sub("", BREAKS.sub("\n", text))


@lru_cache(maxsize=4000)
def kept_together(text: str) -> str:
    """Words of ours in which a number and its unit stay on one line: "at most 70.7 V"."""
    return BEFORE_UNIT.sub(NO_BREAK, text)


# The same few names and numbers go into many sentences.
@lru_cache(maxsize=4000)
def isolated(text: str) -> str:
    """A plain line as it may stand in a sentence: a right-to-left one keeps to itself, and so
    does a number in a name with its unit ("2.5 mm²")."""
    if text.isascii() and text.isprintable():
        return kept_together(text)
    line = kept_together(plain_line(text))
    if line.isascii() or RIGHT_TO_LEFT.search(line) is None:
        return line
    return f"{FIRST_STRONG}{line}{POP}"

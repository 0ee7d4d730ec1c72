"""Where equations and figures come from.

A source is printed beside the number it supports, so it names what a reader can look up.
`seen` tells how far the maintainers saw it: "text" (the text itself), "second hand"
(another text that reports it), "memory", or "practice" (common practice, no source).
"""

from typing import Literal, NamedTuple

Seen = Literal["text", "second hand", "memory", "practice", "arithmetic"]


class Source(NamedTuple):
    """A place a reader can check: its name, the clause or row, and how far we saw it."""

    name: str
    clause: str
    seen: Seen


OHMS_LAW = Source("Ohm's law and Joule's law", "P = V² / R", "arithmetic")
ADDITION = Source("Parallel conductances add", "Kirchhoff's current law", "arithmetic")
COUNTING = Source("Counting", "one by one", "arithmetic")
RATIO = Source("A share of a whole", "part / whole", "arithmetic")
DECIBEL = Source("IEC 60027-3", "level difference of a field quantity, 20 log10", "memory")
TRANSFORMER = Source("Ideal transformer", "ohms go with the square of the ratio", "arithmetic")
PRACTICE = Source("common practice, no source", "", "practice")

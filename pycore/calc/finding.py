"""A finding: one number or verdict about one place, with its code and values, no sentence."""

from collections.abc import Mapping
from typing import Literal, NamedTuple

Verdict = Literal["ok", "near", "over", "unknown", "note"]
State = Literal["set", "override"]
FindingValue = str | float | int | None

# Of several, the first of these that occurs speaks for all.
WORST_FIRST: tuple[Verdict, ...] = ("over", "unknown", "near", "ok", "note")


class Finding(NamedTuple):
    """Design names; `value`, `low` and `high` are unrounded, in `unit`; None is not known."""

    code: str
    what: str
    where: Mapping[str, str]
    state: State | None
    unit: str
    verdict: Verdict
    value: float | None = None
    low: float | None = None
    high: float | None = None
    limit: float | None = None
    values: Mapping[str, FindingValue] = {}

    @property
    def id(self) -> str:
        """One name for this finding: what, where, state (and the tap, where there are several)."""
        place = ".".join(self.where.values())
        which = self.values.get("which")
        tail = [str(part) for part in (self.state, which) if part is not None]
        return ":".join([self.what, place, *tail])


def worst(verdicts: list[Verdict]) -> Verdict:
    """The verdict that speaks for all: over, unknown, near, ok; "note" when nothing was judged."""
    return next((one for one in WORST_FIRST if one in verdicts), "note")

"""What a comparison has before it: two states of a job taken apart, and the one they grew from."""

from collections.abc import Mapping
from typing import Protocol

from pycore.edit.cells import Key, Thing

Things = Mapping[Key, Thing]


class States(Protocol):
    """Both states taken apart, and the one they grew from."""

    @property
    def mine(self) -> Things:
        """Mine."""

    @property
    def theirs(self) -> Things:
        """Theirs."""

    @property
    def base(self) -> Things | None:
        """The state both grew from."""

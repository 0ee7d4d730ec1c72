"""Trying a zone otherwise than it is: other cables, other lengths, hung differently."""

from collections.abc import Mapping
from typing import NamedTuple

from pycore.calc.lay import Asked, Laid
from pycore.calc.line_loss import SLACK, Worst
from pycore.calc.pairs import Pair
from pycore.calc.solve import HZ, run
from pycore.formulas import level
from pycore.jobs import Kinds


class Trial(NamedTuple):
    """A zone to try things on, with the most load its taps allow."""

    laid: Laid
    pairs: Mapping[str, Pair]
    kinds: Kinds
    limit_db: float

    def passes(self, worst: Worst | None) -> bool:
        """Whether the worst loudspeaker keeps the limit."""
        return worst is not None and worst.loss_db <= self.limit_db * SLACK


def worst_with(
    trial: Trial, swapped: Mapping[int, Pair], *, stretch: float = 1.0, hz: float | None = None
) -> Worst | None:
    """The worst loudspeaker of a zone with other cables at some nodes, or other lengths."""
    laid = trial.laid
    asked = Asked(HZ if hz is None else hz, "override", "high", swapped=swapped, stretch=stretch)
    at = run(laid, asked).flow.at
    node = min(laid.heard, key=lambda one: abs(at[one]), default=None)
    if node is None or not abs(at[node]) > 0:
        return None
    return Worst(node, level.loss_db(from_v=1.0, at_v=abs(at[node])))

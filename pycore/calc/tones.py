"""How dark a place is drawn: its loss against the limit, in five steps. 0 is not known."""

from typing import Literal

from pycore.calc.line_loss import NEAR_TIMES, SLACK

Tone = Literal[0, 1, 2, 3, 4, 5]
# The shares of the limit up to which each tone goes; the last ones are the limits of verdicts.
STEPS: tuple[tuple[Tone, float], ...] = ((1, 0.25), (2, 0.5), (3, 1.0), (4, NEAR_TIMES))
DARKEST: Tone = 5


def tone_of(loss_db: float | None, limit_db: float) -> Tone:
    """The tone of a loss (dB) where `limit_db` (dB) is allowed."""
    if loss_db is None:
        return 0
    return next((tone for tone, share in STEPS if loss_db <= limit_db * share * SLACK), DARKEST)


def bounds_db(limit_db: float) -> dict[Tone, float]:
    """The loss (dB) each tone goes up to; the darkest goes on."""
    return {tone: limit_db * share for tone, share in STEPS}

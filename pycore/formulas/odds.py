"""Odds of what may be wrong: how often it is met, and what readings make of that."""

from pycore.ground.sources import PRACTICE, Source
from pycore.ground.working import equation

BAYES = Source("Bayes' theorem", "prior times likelihood over the average", "arithmetic")
EXCLUSIVE = Source("Odds of what excludes each other", "add up", "arithmetic")


@equation("cause_factor / all_factor", unit="fraction", source=PRACTICE)
def prior_fraction(*, cause_factor: float, all_factor: float) -> float:
    """How often a cause is met among all causes that are weighed, by their weights."""
    return cause_factor / all_factor


@equation("first_fraction * second_fraction * again_fraction", unit="fraction", source=PRACTICE)
def pair_prior_fraction(
    *, first_fraction: float, second_fraction: float, again_fraction: float
) -> float:
    """How often two causes are met together, each by its own share. `again_fraction`: how much
    rarer a second one is on a line that has a first."""
    return first_fraction * second_fraction * again_fraction


@equation("first_fraction + others_fraction", unit="fraction", source=EXCLUSIVE)
def with_others_fraction(*, first_fraction: float, others_fraction: float) -> float:
    """How often one or the other of several causes is met."""
    return first_fraction + others_fraction


@equation("own_fit_factor / average_fit_factor", unit="factor", source=BAYES)
def fit_factor(*, own_fit_factor: float, average_fit_factor: float) -> float:
    """How much better readings fit a cause than they fit all that are weighed on average."""
    return own_fit_factor / average_fit_factor


@equation("prior_fraction * fit_factor", unit="fraction", source=BAYES)
def share_fraction(*, prior_fraction: float, fit_factor: float) -> float:
    """The share of a cause: how often it is met, times how much better the readings fit it
    than they fit all causes on average."""
    return prior_fraction * fit_factor

"""Who said a number that goes into a working: the job, its start, a kind, or nobody."""

from pycore.calc.attenuators import AttenuatorFacts
from pycore.calc.judge import Limit
from pycore.calc.limits import Loads
from pycore.ground.working import Known, Origin
from pycore.jobs import Attenuator
from pycore.jobs.catalogue import DEFAULT_LIMITS


def started(value: float, unit: str, *, name: str) -> Known:
    """A number of the job's limits: where it is still the one every job starts with, that is said.

    `name` is the limit's own ("loss_db", "load_fraction", "conductor_c").
    """
    start: float = getattr(DEFAULT_LIMITS, name)
    return Known(value, unit, "start" if value == start else "typed")


def entered(value: float | None, unit: str) -> Known:
    """A number of the job; one that is not there counts as none, and that is said."""
    return Known(value or 0.0, unit, "absent" if value is None else "typed")


def of_control(fitted: Attenuator, facts: AttenuatorFacts, *, name: str) -> Origin:
    """Where a number of an attenuator stands: at the one that hangs there, or with its kind."""
    own = getattr(fitted, name) is not None
    return "typed" if own or getattr(facts, name) is None else "catalogue"


def rating(loads: Loads, limit: Limit, *, name: str) -> Known | None:
    """What a control is rated for, in watts or volts; None where nobody knows, or of another
    limit."""
    value = limit.values.get(name)
    zone = loads.zones.get(str(limit.values.get("zone")))
    if not isinstance(value, float) or zone is None or limit.point is None:
        return None
    fitted = next(one.fitted for one in zone.line if one.id == limit.point)
    assert isinstance(fitted, Attenuator)
    facts, _ = loads.asked[zone.id, limit.state].attenuators[limit.point]
    return Known(value, name.rsplit("_", 1)[-1], of_control(fitted, facts, name=name))


def most_of(loads: Loads, limit: Limit, *, worked_out: Origin) -> Known:
    """The watts a limit lets through: as entered, of a kind, or worked out from a rating."""
    most_w = limit.most_w or 0.0
    rated = rating(loads, limit, name="rated_w")
    if rated is not None:
        return rated if rated.value == most_w else Known(most_w, "w", worked_out)
    return Known(most_w, "w", "typed")

"""What is known of a wall attenuator, and how much of the load below it the line still feels."""

from typing import NamedTuple

from pycore.formulas import power
from pycore.ground.units import same_voltage, true_voltage
from pycore.jobs import Attenuator, AttenuatorKind, Kinds
from pycore.jobs.kinds import Form


class AttenuatorFacts(NamedTuple):
    """The one fitted first, then its kind; None is not known."""

    rated_w: float | None
    rated_at_v: float | None
    insertion_db: float | None
    form: Form | None
    override: bool | None


def facts_of(fitted: Attenuator, kinds: Kinds) -> AttenuatorFacts:
    """What is known of this attenuator: what was written of it, else what its kind says."""
    kind = next((one for one in kinds.attenuators if one.id == fitted.kind), None)
    rated_at_v = _first(fitted.rated_at_v, kind, name="rated_at_v")
    return AttenuatorFacts(
        _first(fitted.rated_w, kind, name="rated_w"),
        None if rated_at_v is None else true_voltage(rated_at_v),
        _first(fitted.insertion_db, kind, name="insertion_db"),
        fitted.form if fitted.form is not None else (kind.form if kind else None),
        fitted.override if fitted.override is not None else (kind.override if kind else None),
    )


def _first(own: float | None, kind: AttenuatorKind | None, *, name: str) -> float | None:
    if own is not None or kind is None:
        return own
    value: float | None = getattr(kind, name)
    return value


def share_felt(fitted: Attenuator, facts: AttenuatorFacts) -> tuple[float, float]:
    """The least and most of the load below that the line feels, as the control stands.

    Off: nothing. A pad keeps all of it on the line; an autotransformer lightens the line
    by its setting. With the form not known it is somewhere between.
    """
    if fitted.off:
        return 0.0, 0.0
    setting_db = fitted.set_db - (facts.insertion_db or 0.0)
    lightened = power.reflected_share(setting_db=setting_db)
    if facts.form == "pad":
        return 1.0, 1.0
    return lightened, lightened if facts.form == "autotransformer" else 1.0


def stands_too_high(facts: AttenuatorFacts, line_v: float) -> bool:
    """Whether a line of `line_v` (V) is more than its marking: no watts are then allowed."""
    return facts.rated_at_v is not None and line_v > facts.rated_at_v * (1 + 1e-9)


def rating_w(facts: AttenuatorFacts, line_v: float) -> float | None:
    """Watts it may carry on a line of `line_v` (V) within its marking; None when not known.

    A rating of 0 W is nobody's rating: it counts as not known.
    """
    if not facts.rated_w or facts.rated_at_v is None or stands_too_high(facts, line_v):
        return None
    if same_voltage(line_v, facts.rated_at_v):
        return facts.rated_w
    return power.rating_at_lower_voltage_w(
        rated_w=facts.rated_w, line_v=line_v, rated_at_v=facts.rated_at_v
    )

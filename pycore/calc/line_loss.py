"""What the cable of a zone costs its worst loudspeaker, judged against the limit. Only cable
is judged: the controls stand bypassed."""

from typing import NamedTuple

from pycore.calc.finding import Finding, FindingValue, Verdict
from pycore.calc.solve import Line, Run
from pycore.formulas import level

SLACK = 1 + 1e-9
# "Near" reaches to twice the limit.
NEAR_TIMES = 2.0
# A longer run than this is no loudspeaker line any more.
LONGEST_M = 100_000.0


class Worst(NamedTuple):
    """The loudspeaker that loses most, and what it loses."""

    node: int
    loss_db: float


class Loss(NamedTuple):
    """The loss of a zone: one number, or what it lies between."""

    value: Worst | None
    low: Worst | None
    high: Worst | None


NOT_KNOWN = Loss(None, None, None)


def worst_of(line: Line, solved: Run, *, nodes: list[int]) -> Worst | None:
    """The one of these nodes that loses most with every control bypassed; None of none."""
    at = solved.flow.at
    node = min(nodes, key=lambda one: abs(at[one]), default=None)
    loss_db = None if node is None else line.loss_at(solved, node)
    return None if node is None or loss_db is None else Worst(node, loss_db)


def loss_of(line: Line) -> Loss:
    """The worst loss of a zone in the override state, and its bounds."""
    laid = line.laid
    if max(laid.far_m) > LONGEST_M:
        return NOT_KNOWN
    short_of = [node for node in laid.heard if not laid.beyond[node]]
    low = worst_of(line, line.low, nodes=short_of)
    if len(short_of) < len(laid.heard):
        return Loss(None, low, None)
    value = worst_of(line, line.value, nodes=laid.heard) if line.value else None
    high = worst_of(line, line.high, nodes=laid.heard) if line.high else None
    return Loss(value, low, high)


def judge_loss(loss: Loss, limit_db: float) -> Verdict:
    """ok to the limit, near to twice, over beyond; unknown where only the high end is over."""
    most_db = limit_db * NEAR_TIMES * SLACK
    if loss.low is not None and loss.low.loss_db > most_db:
        return "over"
    if loss.high is None or loss.high.loss_db > most_db:
        return "unknown"
    return "ok" if loss.high.loss_db <= limit_db * SLACK else "near"


def limit_of(line: Line, job_loss_db: float) -> float:
    """The most a zone's cable may lose (dB): its own limit, else the job's."""
    return job_loss_db if line.zone.loss_db is None else line.zone.loss_db


def loss_finding(line: Line, limit_db: float) -> Finding | None:
    """The loss of a zone against its limit; None where there is nothing to hear."""
    if not line.laid.heard:
        existing = any(point.fitted.is_ == "existing" for point in line.laid.points)
        return (
            _finding(line, NOT_KNOWN, limit_db=limit_db, code="zone_loss_inside")
            if existing
            else None
        )
    loss = loss_of(line)
    code = _loss_code(line, loss, verdict=judge_loss(loss, limit_db))
    return _finding(line, loss, limit_db=limit_db, code=code)


def _finding(line: Line, loss: Loss, *, limit_db: float, code: str) -> Finding:
    verdict = judge_loss(loss, limit_db)
    named = loss.value or loss.high or loss.low
    told = loss.value or (loss.low if verdict == "over" else loss.high)
    return Finding(
        code=code,
        what="zone_loss_db",
        where={"zone": line.zone.id},
        state="override",
        unit="db",
        verdict=verdict,
        value=loss.value.loss_db if loss.value else None,
        low=loss.low.loss_db if loss.low else None,
        high=loss.high.loss_db if loss.high else None,
        limit=limit_db,
        values={
            "point": line.laid.id_of(named.node) if named else None,
            "far_m": line.laid.far_m[named.node] if named else None,
            "over_by_db": told.loss_db - limit_db if told else None,
            "volts_fraction": told and level.volts_lost_fraction(loss_db=told.loss_db),
            "watts_fraction": told and level.watts_lost_fraction(loss_db=told.loss_db),
            "unknown_sections": sum(line.laid.unknown),
            "unknown_taps": sum(draw.value is None for draw in line.laid.draws),
            **limit_said_otherwise(limit_db),
        },
    )


def limit_said_otherwise(limit_db: float) -> dict[str, FindingValue]:
    """A limit in decibels as shares of volts, watts and ohms: the three ten per cents."""
    return {
        "limit_volts_fraction": level.volts_lost_fraction(loss_db=limit_db),
        "limit_watts_fraction": level.watts_lost_fraction(loss_db=limit_db),
        "limit_of_load_fraction": level.loop_of_load_fraction(loss_db=limit_db),
        "limit_of_all_fraction": level.loop_of_all_fraction(loss_db=limit_db),
    }


def _loss_code(line: Line, loss: Loss, *, verdict: Verdict) -> str:
    if max(line.laid.far_m) > LONGEST_M:
        return "zone_loss_too_long"
    if all(line.laid.unknown[1:]):
        return "zone_loss_not_entered"
    if verdict != "unknown":
        return f"zone_loss_{verdict}" if loss.value else f"zone_loss_{verdict}_bounded"
    if any(line.laid.beyond[node] for node in line.laid.heard):
        return "zone_loss_unknown_section"
    return "zone_loss_unknown_load"

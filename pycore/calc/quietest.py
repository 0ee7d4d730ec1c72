"""Which loudspeaker of a zone is quietest as it is set, and by what: its tap, a control, cable.

Told, never judged: a smaller tap or a control turned down is somebody's wish. A tap is held
against the usual one of its neighbours of the same kind; where it has none, against the usual
one of the zone.
"""

from collections import Counter
from collections.abc import Iterator
from typing import NamedTuple

from pycore.calc.draw_story import Told, told_draws
from pycore.calc.draws import Lookup
from pycore.calc.finding import Finding, FindingValue
from pycore.calc.solve import Line
from pycore.formulas import arrival, level, power
from pycore.ground.working import Known, Step, Working, computed, step
from pycore.jobs import Job, Loudspeaker

# What an ear tells apart (common practice, no source).
TOLD_APART_DB = 0.1
CODES = ("tap", "control", "cable")


class Quiet(NamedTuple):
    """How much quieter (dB) a loudspeaker is, each by its cause, than its usual tap would be with
    no cable and the controls open. `cable_db` None: a length, a cable or a tap is not known."""

    node: int
    own_w: float
    usual_w: float
    tap_db: float
    control_db: float
    cable_db: float | None

    @property
    def quieter_db(self) -> float:
        """All of it (dB)."""
        return arrival.quieter_db(
            tap_db=self.tap_db, control_db=self.control_db, cable_db=self.cable_db or 0.0
        )


def quietest_of(line: Line) -> Quiet | None:
    """The quietest loudspeaker of a zone; None with less than two, a tap that is not known, or
    where no ear tells it from the others."""
    laid = line.laid
    drawn_w = {node: laid.draws[node].value for node in laid.heard}
    known_w = {node: each_w for node, each_w in drawn_w.items() if each_w}
    if len(known_w) < max(2, len(drawn_w)) or line.value is None:
        return None
    usual_w = _usual_w(line, known_w)
    whole = not any(laid.beyond[node] for node in laid.heard)
    passed = _passed(laid.parents, line.value.network.ratio)
    quiet = [
        Quiet(
            node=node,
            own_w=own_w,
            usual_w=usual_w[node],
            tap_db=power.level_of_power_ratio_db(
                factor=power.ratio_of_watts(would_w=usual_w[node], now_w=own_w)
            ),
            control_db=level.loss_db(from_v=1.0, at_v=passed[node]),
            cable_db=_cable_db(line, node, passed=passed[node]) if whole else None,
        )
        for node, own_w in known_w.items()
        if passed[node] > 0  # behind a control that stands off there is no level to compare
    ]
    most = max(quiet, key=lambda one: one.quieter_db, default=None)
    return most if most is not None and most.quieter_db >= TOLD_APART_DB else None


def _cable_db(line: Line, node: int, *, passed: float) -> float | None:
    """What cable alone loses (dB) up to a node behind controls that let `passed` through.

    Nothing is said of a cable that lets so little through that no volts are left to count.
    """
    if line.value is None:
        return None
    at_v = line.volts_at(line.value, node)
    return level.loss_db(from_v=line.reference_v * passed, at_v=at_v) if at_v > 0 else None


def _passed(parents: list[int], ratio: tuple[float, ...]) -> list[float]:
    """The share of the volts that the controls on the way to each node let through."""
    passed = [1.0] * len(parents)
    for node in range(1, len(parents)):
        passed[node] = passed[parents[node]] * ratio[parents[node]]
    return passed


def _usual_w(line: Line, known_w: dict[int, float]) -> dict[int, float]:
    """The watts most neighbours of the same kind draw; of several numbers the largest."""
    kinds = {node: _kind(line, node) for node in known_w}
    alike: dict[str | None, Counter[float]] = {}
    for node, each_w in known_w.items():
        alike.setdefault(kinds[node], Counter())[each_w] += 1
    every = _most(Counter(known_w.values()))
    usual = {kind: _most(counts) if counts.total() > 1 else every for kind, counts in alike.items()}
    return {node: usual[kind] for node, kind in kinds.items()}


def _most(counts: Counter[float]) -> float:
    return max(counts, key=lambda each_w: (counts[each_w], each_w))


def _kind(line: Line, node: int) -> str | None:
    return getattr(line.laid.points[node - 1].fitted, "kind", None)


def quietest_finding(line: Line) -> Finding | None:
    """The quietest loudspeaker, named with what makes it so."""
    quiet = quietest_of(line)
    if quiet is None:
        return None
    parts = (quiet.tap_db, quiet.control_db, quiet.cable_db or 0.0)
    cause = CODES[parts.index(max(parts))]
    values: dict[str, FindingValue] = {
        "point": line.laid.id_of(quiet.node),
        "own_w": quiet.own_w,
        "usual_w": quiet.usual_w,
        "tap_db": quiet.tap_db,
        "control_db": quiet.control_db,
        "cable_db": quiet.cable_db,
    }
    return Finding(
        code=f"zone_quietest_by_{cause}",
        what="zone_quietest_db",
        where={"zone": line.zone.id},
        state=line.state,
        unit="db",
        verdict="note",
        value=quiet.quieter_db,
        values=values,
    )


def quietest_working(job: Job, line: Line) -> Working:
    """Its tap against the usual one, the controls and the cable on the way, and all together."""
    quiet = quietest_of(line)
    if quiet is None:
        return Working((), ())
    codes = ["nominal_load", "as_set"]
    if quiet.cable_db is None:
        codes.append("by_taps_alone")
    return Working(tuple(_steps(job, line, quiet=quiet)), tuple(codes))


def _steps(job: Job, line: Line, *, quiet: Quiet) -> Iterator[Step]:
    fitted = line.laid.points[quiet.node - 1].fitted
    assert isinstance(fitted, Loudspeaker)
    told = Told(fitted, line.laid.draws[quiet.node], line.laid.line_v)
    draws = list(told_draws([told], Lookup.of(job.kinds)))
    yield from draws
    watts = {"would_w": Known(quiet.usual_w, "w", "elsewhere"), "now_w": computed(draws[-1])}
    ratio = step("quiet_ratio", power.ratio_of_watts, inputs=watts)
    yield ratio
    by_tap = step("quiet_tap", power.level_of_power_ratio_db, inputs={"factor": computed(ratio)})
    yield by_tap
    lost = Known(quiet.cable_db or 0.0, "db", "absent" if quiet.cable_db is None else "solved")
    parts = {
        "tap_db": computed(by_tap),
        "control_db": Known(quiet.control_db, "db", "solved"),
        "cable_db": lost,
    }
    yield step("quietest", arrival.quieter_db, inputs=parts)

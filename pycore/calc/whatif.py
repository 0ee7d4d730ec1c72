"""What if: the job with one thing otherwise, its findings before and after side by side.
The job itself stays as it is."""

from collections.abc import Callable, Iterable
from typing import Literal, NamedTuple

from pycore.calc.finding import Finding
from pycore.calc.judge import finding_of
from pycore.calc.limits import limits_of, loads_of
from pycore.calc.line import line_findings
from pycore.calc.wrong_rows import count_finding
from pycore.ground.problems import BadCommand
from pycore.jobs import Fitted, Job, Loudspeaker, Output, Point, Zone
from pycore.jobs.tree import hanging_order

MOST_ADDED = 500


class OtherVoltage(NamedTuple):
    """An output driven at another line voltage, every tap left as it stands."""

    output: str
    line_v: float


class OtherTap(NamedTuple):
    """Every loudspeaker of a zone on another tap."""

    zone: str
    tap_w: float
    tap_at_v: float


class MoreAtEnd(NamedTuple):
    """More loudspeakers at the far end of a zone, each as far from the one before it.

    `length_m` and `cable` None: as the last loudspeaker's own section.
    """

    zone: str
    how_many: int
    tap_w: float
    tap_at_v: float
    length_m: float | None
    cable: str | None


Change = OtherVoltage | OtherTap | MoreAtEnd
Side = Literal["before", "after"]


class Compared(NamedTuple):
    """One finding in both jobs; None where it is only in the other."""

    id: str
    before: Finding | None
    after: Finding | None


class WhatIf(NamedTuple):
    """The changed job, every finding of loads and lines, and the wrong voltage rows counted."""

    job: Job
    compared: tuple[Compared, ...]
    wrong_rows: Compared


def what_if(job: Job, change: Change) -> WhatIf:
    """The findings of a job before and after one change, side by side."""
    changed = change_job(job, change)
    before = {finding.id: finding for finding in _findings(job)}
    after = {finding.id: finding for finding in _findings(changed)}
    ids = dict.fromkeys((*before, *after))
    compared = tuple(Compared(one, before.get(one), after.get(one)) for one in ids)
    was, now = count_finding(loads_of(job)), count_finding(loads_of(changed))
    return WhatIf(changed, compared, Compared(now.id, was, now))


def _findings(job: Job) -> Iterable[Finding]:
    yield from (finding_of(limit) for limit in limits_of(loads_of(job)))
    yield from line_findings(job)


def change_job(job: Job, change: Change) -> Job:
    """The job with one thing otherwise."""
    if isinstance(change, OtherVoltage):
        return _with_voltage(job, change)
    if isinstance(change, OtherTap):
        return _with_line(job, change.zone, remake=lambda zone: _retapped(zone, change))
    return _with_line(job, change.zone, remake=lambda zone: _lengthened(zone, change))


def _with_voltage(job: Job, change: OtherVoltage) -> Job:
    known = {output.id for amplifier in job.amplifiers for output in amplifier.outputs}
    if change.output not in known:
        raise BadCommand("not_here", where={"output": change.output}, id=change.output)

    def driven(output: Output) -> Output:
        other = output.id == change.output
        return output.model_copy(update={"line_v": change.line_v}) if other else output

    amplifiers = tuple(
        amplifier.model_copy(update={"outputs": tuple(map(driven, amplifier.outputs))})
        for amplifier in job.amplifiers
    )
    return job.model_copy(update={"amplifiers": amplifiers})


def _with_line(job: Job, zone_id: str, *, remake: Callable[[Zone], tuple[Point, ...]]) -> Job:
    if zone_id not in {zone.id for zone in job.zones}:
        raise BadCommand("not_here", where={"zone": zone_id}, id=zone_id)
    zones = tuple(
        zone.model_copy(update={"line": remake(zone)}) if zone.id == zone_id else zone
        for zone in job.zones
    )
    return job.model_copy(update={"zones": zones})


def _retapped(zone: Zone, change: OtherTap) -> tuple[Point, ...]:
    tap = {"tap_w": change.tap_w, "tap_at_v": change.tap_at_v, "direct_ohm": None}

    def tapped(fitted: Fitted) -> Fitted:
        return fitted.model_copy(update=tap) if fitted.is_ == "loudspeaker" else fitted

    return tuple(point.model_copy(update={"fitted": tapped(point.fitted)}) for point in zone.line)


def _lengthened(zone: Zone, change: MoreAtEnd) -> tuple[Point, ...]:
    """The zone with more loudspeakers behind the one that is farthest along its line."""
    if not 0 < change.how_many <= MOST_ADDED:
        raise BadCommand("count_out_of_range", text=str(change.how_many), most=MOST_ADDED)
    last = far_end(zone)
    own = last.length_m if last else None
    length_m = own if change.length_m is None else change.length_m
    cable = change.cable or (last.cable if last else None)
    more: list[Point] = []
    for number in range(change.how_many):
        above = more[-1].id if more else (last.id if last else None)
        # such an id is refused everywhere else, so it can be nobody's
        point = Point.model_construct(
            id=f"+{number}",
            after=above,
            length_m=length_m,
            cable=cable,
            joint_ohm=None,
            fitted=_added(change),
        )
        more.append(point)
    return (*zone.line, *more)


def _added(change: MoreAtEnd) -> Loudspeaker:
    return Loudspeaker.model_construct(
        is_="loudspeaker",
        tap_w=change.tap_w,
        tap_at_v=change.tap_at_v,
        label="",
        connected=True,
    )


def far_end(zone: Zone) -> Point | None:
    """The loudspeaker (else the point) most metres from the terminals; lengths that are not
    known count as none, and of equals the one hanging on more others is farther."""
    far: dict[str | None, tuple[float, int]] = {None: (0.0, 0)}
    best: tuple[tuple[bool, float, int], Point] | None = None
    for point in hanging_order(zone.line):
        metres, steps = far[point.after]
        here = far[point.id] = metres + (point.length_m or 0.0), steps + 1
        rank = point.fitted.is_ == "loudspeaker", *here
        if best is None or rank > best[0]:
            best = rank, point
    return best[1] if best else None

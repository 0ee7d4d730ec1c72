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
from pycore.jobs import CableKind, Job, Kinds, Loudspeaker, Output, Point, Zone
from pycore.jobs.taps import tap_row_v
from pycore.jobs.tree import hanging_order

MOST_ADDED = 500


class OtherVoltage(NamedTuple):
    """An output driven at another line voltage, every tap left as it stands."""

    output: str
    line_v: float


class OtherTap(NamedTuple):
    """Every loudspeaker of a zone on another tap, of those whose kind has and allows it."""

    zone: str
    tap_w: float
    tap_at_v: float


class OtherCable(NamedTuple):
    """Another cable through a zone, or through its home runs alone."""

    zone: str
    sections: Literal["all", "home_run"]
    kind: CableKind


class MoreAtEnd(NamedTuple):
    """More loudspeakers at the far end of a zone, each as far from the one before it.

    `length_m` and `cable` None: as the last loudspeaker's own section. They are of its kind,
    where that has the tap.
    """

    zone: str
    how_many: int
    tap_w: float
    tap_at_v: float
    length_m: float | None
    cable: str | None


Change = OtherVoltage | OtherTap | OtherCable | MoreAtEnd
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
        return _with_line(
            job, change.zone, remake=lambda zone: _retapped(zone, change, kinds=job.kinds)
        )
    if isinstance(change, OtherCable):
        return _with_cable(job, change)
    return _with_line(job, change.zone, remake=lambda zone: _lengthened(zone, change, job=job))


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


def _retapped(zone: Zone, change: OtherTap, *, kinds: Kinds) -> tuple[Point, ...]:
    def tapped(point: Point) -> Point:
        fitted = point.fitted
        if fitted.is_ != "loudspeaker":
            return point
        row_v = tap_row_v(kinds, fitted, tap_w=change.tap_w, tap_at_v=change.tap_at_v)
        if row_v is None:
            return point
        tap = {"tap_w": change.tap_w, "tap_at_v": row_v, "direct_ohm": None}
        return point.model_copy(update={"fitted": fitted.model_copy(update=tap)})

    return tuple(map(tapped, zone.line))


def left_alone(job: Job, change: OtherTap) -> tuple[Point, ...]:
    """The loudspeakers of the zone that stay as they are, since their kind has no such tap."""
    line = next((zone.line for zone in job.zones if zone.id == change.zone), ())
    tap = {"tap_w": change.tap_w, "tap_at_v": change.tap_at_v}
    return tuple(
        point
        for point in line
        if point.fitted.is_ == "loudspeaker" and tap_row_v(job.kinds, point.fitted, **tap) is None
    )


def _with_cable(job: Job, change: OtherCable) -> Job:
    def pulled(point: Point) -> Point:
        meant = change.sections == "all" or point.after is None
        return point.model_copy(update={"cable": change.kind.id}) if meant else point

    cables = job.kinds.cables
    if not any(one.id == change.kind.id for one in cables):
        kinds = job.kinds.model_copy(update={"cables": (*cables, change.kind)})
        job = job.model_copy(update={"kinds": kinds})
    return _with_line(job, change.zone, remake=lambda zone: tuple(map(pulled, zone.line)))


def _lengthened(zone: Zone, change: MoreAtEnd, *, job: Job) -> tuple[Point, ...]:
    """The zone with more loudspeakers behind the one that is farthest along its line."""
    if not 0 < change.how_many <= MOST_ADDED:
        raise BadCommand("count_out_of_range", text=str(change.how_many), most=MOST_ADDED)
    like = like_the_last(job, change)
    more: list[Point] = []
    for number in range(change.how_many):
        above = more[-1].id if more else like.after
        # such an id is refused everywhere else, so it can be nobody's
        point = Point.model_construct(
            id=f"+{number}",
            after=above,
            length_m=like.length_m,
            cable=like.cable,
            joint_ohm=None,
            fitted=like.fitted,
        )
        more.append(point)
    return (*zone.line, *more)


class Added(NamedTuple):
    """What each of those at the far end is like, and where the first of them hangs."""

    after: str | None
    length_m: float | None
    cable: str | None
    fitted: Loudspeaker


def like_the_last(job: Job, change: MoreAtEnd) -> Added:
    """Those to be hung at the far end: as the change says, all else like the last that is there."""
    zone = next((one for one in job.zones if one.id == change.zone), None)
    last = far_end(zone) if zone else None
    kind, row_v = None, change.tap_at_v
    if last and last.fitted.is_ == "loudspeaker":
        tap = {"tap_w": change.tap_w, "tap_at_v": change.tap_at_v}
        found_v = tap_row_v(job.kinds, last.fitted, **tap)
        kind = None if found_v is None else last.fitted.kind
        row_v = change.tap_at_v if found_v is None else found_v
    own = last.length_m if last else None
    return Added(
        after=last.id if last else None,
        length_m=own if change.length_m is None else change.length_m,
        cable=change.cable or (last.cable if last else None),
        fitted=Loudspeaker.model_construct(
            is_="loudspeaker",
            kind=kind,
            tap_w=change.tap_w,
            tap_at_v=row_v,
            label="",
            connected=True,
        ),
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

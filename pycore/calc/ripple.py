"""What a change to a job reaches, judged again without looking at the rest of it.

A person on a ladder asks of one loudspeaker; its zone is solved again, its output, pool and
controls are added up again, and everything beyond them is as it was.
"""

from typing import NamedTuple

from pycore.calc.finding import Finding
from pycore.calc.judge import finding_of
from pycore.calc.limits import Loads, limits_of, loads_of
from pycore.calc.line import findings_of
from pycore.calc.marks import mark_findings
from pycore.calc.own_loads import own_load_findings
from pycore.calc.solve import Lines, solve_lines
from pycore.jobs import Amplifier, Job, Zone


class Reach(NamedTuple):
    """The part of a job that a change reaches: all of it where `zones` is None."""

    zones: frozenset[str] | None


class Rejudged(NamedTuple):
    """The findings within a reach, by id, with the loads and lines they come from."""

    findings: dict[str, Finding]
    loads: Loads
    lines: Lines


EVERYTHING = Reach(None)


def reach_of(before: Job, after: Job) -> Reach:
    """What differs between two states of a job: some zones, or so much that all is looked at."""
    same_rack = before.amplifiers == after.amplifiers and before.limits == after.limits
    if not same_rack or not _only_more_kinds(before, after):
        return EVERYTHING
    zones = {zone.id: zone for zone in before.zones}
    if set(zones) != {zone.id for zone in after.zones}:
        return EVERYTHING
    # a zone that no command touched is the very same object
    touched = [zone for zone in after.zones if zones[zone.id] is not zone]
    if any(_outputs(zone) != _outputs(zones[zone.id]) for zone in touched):
        return EVERYTHING
    return Reach(frozenset(zone.id for zone in touched))


def _only_more_kinds(before: Job, after: Job) -> bool:
    """Whether every kind is as it was; kinds that came along are used by nothing else."""
    if before.kinds is after.kinds:
        return True
    return all(
        kind in getattr(after.kinds, family)
        for family in ("cables", "loudspeakers", "attenuators")
        for kind in getattr(before.kinds, family)
    )


def rejudge(job: Job, reach: Reach, *, base: Rejudged | None = None) -> Rejudged:
    """Every limit, mark and line within a reach.

    `base`: the same reach judged in another state; what lies outside of it is taken from there.
    """
    near = _near(job, reach)
    if base is None or reach.zones is None:
        loads = loads_of(near)
    else:
        loads = _loads_over(base.loads, near, reach=reach)
    lines = solve_within(near, reach)
    found = [
        *(finding_of(limit) for limit in limits_of(loads)),
        *own_load_findings(loads),
        *mark_findings(loads._replace(job=_only(near, reach))),
        *findings_of(lines),
    ]
    return Rejudged({finding.id: finding for finding in found}, loads, lines)


def _loads_over(base: Loads, near: Job, *, reach: Reach) -> Loads:
    """The loads of a state: those of the zones in reach added up anew, the others as they were."""
    anew = loads_of(_only(near, reach))
    asked = {key: anew.asked.get(key, load) for key, load in base.asked.items()}
    zones = {zone.id: zone for zone in near.zones}
    return base._replace(job=near, zones=zones, asked=asked)


def _near(job: Job, reach: Reach) -> Job:
    """The job with only the amplifiers that drive the zones in reach, and all they drive."""
    if reach.zones is None:
        return job
    driven = {output for zone in job.zones if zone.id in reach.zones for output in _outputs(zone)}
    racks = tuple(one for one in job.amplifiers if driven & _own(one))
    outputs = {output for one in racks for output in _own(one)}
    zones = tuple(
        zone for zone in job.zones if zone.id in reach.zones or outputs & set(_outputs(zone))
    )
    return job.model_copy(update={"amplifiers": racks, "zones": zones})


def solve_within(job: Job, reach: Reach) -> Lines:
    """The lines in reach solved, and with them those that an amplifier's own ohms tie to them."""
    near = _near(job, reach)
    tied = any(output.source_ohm for one in near.amplifiers for output in one.outputs)
    return solve_lines(near if tied else _only(near, reach))


def _only(near: Job, reach: Reach) -> Job:
    """The job with the zones in reach alone."""
    if reach.zones is None:
        return near
    zones = tuple(zone for zone in near.zones if zone.id in reach.zones)
    return near.model_copy(update={"zones": zones})


def _outputs(zone: Zone) -> list[str]:
    return [one for one in (zone.output, zone.page_output) if one is not None]


def _own(amplifier: Amplifier) -> set[str]:
    return {output.id for output in amplifier.outputs}

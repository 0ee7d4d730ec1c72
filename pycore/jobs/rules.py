"""The rules a job keeps as a whole: one id one thing, lines are trees, nothing dangles."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from pycore.ground.problems import BrokenJob
from pycore.jobs.amplifiers import Amplifier
from pycore.jobs.tree import called, hanging_order
from pycore.jobs.zones import Point, Zone

if TYPE_CHECKING:
    from pycore.jobs.job import Job


def check_rules(job: Job) -> None:
    """Raise BrokenJob, naming the place, when the job breaks one of its rules."""
    _one_id_one_thing(job)
    for amplifier in job.amplifiers:
        _check_pools(amplifier)
    outputs = {output.id for amplifier in job.amplifiers for output in amplifier.outputs}
    areas = {area.id for area in job.areas}
    for zone in job.zones:
        _check_zone(zone, outputs, areas=areas)
        hanging_order(zone.line)
        _check_kinds(zone.line, job)


def _one_id_one_thing(job: Job) -> None:
    families: dict[str, Iterable[str]] = {
        "cable": (kind.id for kind in job.kinds.cables),
        "loudspeaker": (kind.id for kind in job.kinds.loudspeakers),
        "attenuator": (kind.id for kind in job.kinds.attenuators),
        "reading": (reading.id for reading in job.readings),
        "place": _places(job),
    }
    for family, ids in families.items():
        met: set[str] = set()
        for one in ids:
            if one in met:
                raise BrokenJob("id_twice", where={"id": one}, id=one, family=family)
            met.add(one)


def _places(job: Job) -> Iterable[str]:
    for amplifier in job.amplifiers:
        yield amplifier.id
        yield from (output.id for output in amplifier.outputs)
    for zone in job.zones:
        yield zone.id
        yield from (point.id for point in zone.line)
    yield from (area.id for area in job.areas)


def _check_pools(amplifier: Amplifier) -> None:
    own = {output.id for output in amplifier.outputs}
    pooled: set[str] = set()
    for pool in amplifier.pools or ():
        for one in pool.outputs:
            if one not in own or one in pooled:
                code = "pool_twice" if one in pooled else "pool_unknown"
                where = {"amplifier": amplifier.id}
                raise BrokenJob(code, where=where, amplifier=amplifier.name, output=one)
            pooled.add(one)


def _check_zone(zone: Zone, outputs: set[str], *, areas: set[str]) -> None:
    for output in (zone.output, zone.page_output):
        if output is not None and output not in outputs:
            where = {"zone": zone.id}
            raise BrokenJob("output_unknown", where=where, zone=zone.name, output=output)
    for area in zone.areas:
        if area not in areas:
            raise BrokenJob("area_unknown", where={"zone": zone.id}, zone=zone.name, area=area)


def _check_kinds(line: tuple[Point, ...], job: Job) -> None:
    cables = {kind.id for kind in job.kinds.cables}
    known = {
        "loudspeaker": {kind.id for kind in job.kinds.loudspeakers},
        "attenuator": {kind.id for kind in job.kinds.attenuators},
    }
    for point in line:
        if point.cable is not None and point.cable not in cables:
            raise _unknown_kind(point, point.cable)
        kind = getattr(point.fitted, "kind", None)
        if kind is not None and kind not in known[point.fitted.is_]:
            raise _unknown_kind(point, kind)


def _unknown_kind(point: Point, kind: str) -> BrokenJob:
    return BrokenJob("kind_unknown", where={"point": point.id}, point=called(point), kind=kind)

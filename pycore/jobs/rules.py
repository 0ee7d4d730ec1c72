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
        _check_kinds(zone, job)


def _one_id_one_thing(job: Job) -> None:
    _each_once("reading", ((one.id, f"#{n}") for n, one in enumerate(job.readings, start=1)))
    _each_once("cable", ((kind.id, kind.name) for kind in job.kinds.cables))
    _each_once("loudspeaker", ((kind.id, kind.name) for kind in job.kinds.loudspeakers))
    _each_once("attenuator", ((kind.id, kind.name) for kind in job.kinds.attenuators))
    _each_once("place", _places(job))


def _each_once(family: str, things: Iterable[tuple[str, str]]) -> None:
    """Raise BrokenJob `id_twice` with the names of both things that have one id."""
    met: dict[str, str] = {}
    for one, name in things:
        if one in met:
            where = {"id": one}
            raise BrokenJob(
                "id_twice", where=where, id=one, family=family, one=met[one], other=name
            )
        met[one] = name


def _places(job: Job) -> Iterable[tuple[str, str]]:
    """Every place of a job with its name; a point without a label goes by its number."""
    for amplifier in job.amplifiers:
        yield amplifier.id, amplifier.name
        for output in amplifier.outputs:
            yield output.id, f"{amplifier.name} · {output.name}"
    for zone in job.zones:
        yield zone.id, zone.name
        for place, point in enumerate(zone.line, start=1):
            yield point.id, point.fitted.label or f"{zone.name} #{place}"
    yield from ((area.id, area.name) for area in job.areas)


def _check_pools(amplifier: Amplifier) -> None:
    own = {output.id: output.name for output in amplifier.outputs}
    pooled: set[str] = set()
    for pool in amplifier.pools or ():
        for one in pool.outputs:
            if one not in own or one in pooled:
                code = "pool_twice" if one in pooled else "pool_unknown"
                where, name = {"amplifier": amplifier.id}, own.get(one, one)
                raise BrokenJob(code, where=where, amplifier=amplifier.name, output=name)
            pooled.add(one)


def _check_zone(zone: Zone, outputs: set[str], *, areas: set[str]) -> None:
    for output in (zone.output, zone.page_output):
        if output is not None and output not in outputs:
            where = {"zone": zone.id}
            raise BrokenJob("output_unknown", where=where, zone=zone.name, output=output)
    for area in zone.areas:
        if area not in areas:
            raise BrokenJob("area_unknown", where={"zone": zone.id}, zone=zone.name, area=area)


def _check_kinds(zone: Zone, job: Job) -> None:
    cables = {kind.id for kind in job.kinds.cables}
    known = {
        "loudspeaker": {kind.id for kind in job.kinds.loudspeakers},
        "attenuator": {kind.id for kind in job.kinds.attenuators},
    }
    for point in zone.line:
        if point.cable is not None and point.cable not in cables:
            raise _unknown_kind(point, zone, kind=point.cable)
        kind = getattr(point.fitted, "kind", None)
        if kind is not None and kind not in known[point.fitted.is_]:
            raise _unknown_kind(point, zone, kind=kind)


def _unknown_kind(point: Point, zone: Zone, *, kind: str) -> BrokenJob:
    name = called(point, zone.line)
    return BrokenJob("kind_unknown", where={"point": point.id}, point=name, kind=kind)

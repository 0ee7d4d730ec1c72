"""Two states of a job made one: each change taken from one side, readings and ticks from both.

Nothing is chosen silently: a clash, and without a common base any difference, needs a
person's word. A reading or tick that one side took out stays out. What has to go together
goes together by itself where nothing can be lost:
kinds come with what uses them, pools and zones forget outputs and areas that are gone.
"""

from collections.abc import Iterable, Mapping
from typing import Any, Literal, NamedTuple

from pycore.edit.cells import KINDS, Key, fitted_fields
from pycore.edit.change import changed
from pycore.edit.compare import FITTED, Change, compare, is_united, take_sides
from pycore.edit.desk import Desk, models_of
from pycore.edit.fits_together import check_hanging, check_landing
from pycore.edit.signed import merged_ticks
from pycore.edit.ticks import living_ticks
from pycore.ground.problems import BadCommand
from pycore.jobs import Amplifier, Job, Kinds, Output, Point, Reading, Zone
from pycore.jobs.job import Base

Taken = Mapping[str, Literal["mine", "theirs"]]
WHOLE = Key("job", "")
OWN = ("name", "place", "notes")


class States(NamedTuple):
    """Two states of a job, and the one they grew from when it is known."""

    mine: Job
    theirs: Job
    base: Job | None


def merge(states: States, taken: Taken, *, grown_from: Base) -> Job:
    """The merged job: `rev` one above both, `base` the state given.

    Raises BadCommand `merge_undecided` or `merge_one_undecided` (nobody chose),
    `change_unknown`, or what the choices leave hanging: `merge_hangs_on_gone`,
    `merge_in_a_ring`, `merge_zone_gone`, `merge_output_gone`, `merge_amplifier_gone`;
    BrokenJob for any other rule.
    """
    sides = take_sides(states.mine, states.theirs, base=states.base)
    picks = _picks(compare(sides), taken)
    touched = {key for (key, _), side in picks.items() if side == "theirs"}
    desk = Desk(sides, (models_of(states.mine), models_of(states.theirs)), picks, touched)
    check_landing(desk)
    zones = _zones(desk)
    check_hanging(zones)
    cells = desk.cells(WHOLE)
    merged = changed(
        states.mine,
        **{name: cells[name] for name in OWN},
        rev=max(states.mine.rev, states.theirs.rev) + 1,
        base=grown_from,
        limits=changed(
            states.mine.limits,
            **{name: cells[name] for name in type(states.mine.limits).model_fields},
        ),
        kinds=_kinds(desk, zones),
        amplifiers=tuple(_amplifier(desk, key) for key in _listed(desk, "amplifiers")),
        areas=tuple(_simple(desk, key) for key in _listed(desk, "areas")),
        zones=zones,
        readings=_readings(desk, states),
        ticks=merged_ticks(desk.sides, desk.picks),
    )
    return changed(merged, ticks=living_ticks(merged))


def _picks(changes: Iterable[Change], taken: Taken) -> dict[tuple[Key, str], str]:
    known = {change.id: change for change in changes}
    alien = next((one for one in taken if one not in known), None)
    if alien is not None:
        raise BadCommand("change_unknown", where={"change": alien})
    open_ones = [one for one, change in known.items() if change.must_choose and one not in taken]
    if open_ones:
        where = {"change": open_ones[0]}
        code = "merge_undecided" if len(open_ones) > 1 else "merge_one_undecided"
        raise BadCommand(code, where=where, count=len(open_ones))
    return {
        (change.key, change.cell): taken.get(one, change.usual) for one, change in known.items()
    }


def _listed(desk: Desk, name: str) -> list[Key]:
    """The things of one of the job's own lists, in their merged order."""
    family = {"amplifiers": "amplifier", "areas": "area", "zones": "zone"}.get(name) or KINDS[name]
    kept = {key.id for key in desk.keys(family)}
    return [Key(family, one) for one in desk.order(WHOLE, f"order_{name}", kept=kept)]


def _simple(desk: Desk, key: Key) -> Any:
    """A thing whose cells are its fields."""
    return changed(desk.model(key, ""), **desk.cells(key))


def _amplifier(desk: Desk, key: Key) -> Amplifier:
    cells = desk.cells(key)
    home = {one.id: desk.cells(one) for one in desk.keys("output")}
    kept = {one for one, own in home.items() if own["amplifier"] == key.id}
    outputs = tuple(
        _output(desk, Key("output", one)) for one in desk.order(key, "order", kept=kept)
    )
    pools = cells["pools"]
    if pools is not None:
        pools = tuple(
            changed(pool, outputs=tuple(one for one in pool.outputs if one in kept))
            for pool in pools
        )
    fields = {name: it for name, it in cells.items() if name not in ("order", "pools")}
    model: Amplifier = desk.model(key, "")
    return changed(model, **fields, pools=pools, outputs=outputs)


def _output(desk: Desk, key: Key) -> Output:
    cells = {name: it for name, it in desk.cells(key).items() if name != "amplifier"}
    model: Output = desk.model(key, "")
    return changed(model, **cells)


def _zones(desk: Desk) -> tuple[Zone, ...]:
    """The zones with their lines; whether the lines hang together is looked at later."""
    lines: dict[str, dict[str, Point]] = {}
    for key in desk.keys("point"):
        zone, _ = desk.cells(key)["hung"]
        lines.setdefault(zone, {})[key.id] = _point(desk, key)
    areas = {key.id for key in desk.keys("area")}
    zones = []
    for key in _listed(desk, "zones"):
        cells = {name: it for name, it in desk.cells(key).items() if name != "order"}
        cells["areas"] = tuple(one for one in cells["areas"] if one in areas)
        line = lines.get(key.id, {})
        order = desk.order(key, "order", kept=line)
        zones.append(changed(desk.model(key, ""), **cells, line=tuple(line[one] for one in order)))
    return tuple(zones)


def _point(desk: Desk, key: Key) -> Point:
    model: Point = desk.model(key, FITTED)
    if desk.is_mine_throughout(key):
        return model
    cells = desk.cells(key)
    fitted = changed(model.fitted, **fitted_fields(cells, model.fitted))
    section = {name: cells[name] for name in ("length_m", "cable", "joint_ohm")}
    return changed(model, after=cells["hung"][1], fitted=fitted, **section)


def _kinds(desk: Desk, zones: tuple[Zone, ...]) -> Kinds:
    """The kinds taken, and those that something in the merged job uses."""
    points = [point for zone in zones for point in zone.line]
    used = {
        *(("cable", point.cable) for point in points),
        *((point.fitted.is_, getattr(point.fitted, "kind", None)) for point in points),
    }
    every = {*desk.sides.mine, *desk.sides.theirs}
    families: dict[str, Any] = {}
    for name, family in KINDS.items():
        kept = {key.id for key in every if key.family == family and (desk.has(key) or key in used)}
        order = desk.order(WHOLE, f"order_{name}", kept=kept)
        families[name] = tuple(desk.model(Key(family, one), "definition") for one in order)
    return Kinds(**families)


def _readings(desk: Desk, states: States) -> tuple[Reading, ...]:
    """The readings of both, mine first, without those taken out on the side taken; of one that
    was corrected, the version taken."""
    ids = dict.fromkeys(one.id for one in (*states.mine.readings, *states.theirs.readings))
    keys = (Key("reading", one) for one in ids)
    kept = (key for key in keys if is_united(key, desk.sides) or desk.has(key))
    return tuple(desk.model(key, "definition") for key in kept)

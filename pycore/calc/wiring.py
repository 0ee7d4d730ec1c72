"""An output with every zone that hangs on it, as one circuit that instruments can be put to.

Node 0 is the terminals; each zone has a node of its own where its home run leaves them, and
then its points as they hang, so that whatever lies beyond a node stands right behind it.
The wiring is read once from a job; circuits are made from it for the conditions of a
reading: frequency, how the controls stand, how warm the copper is.
"""

from collections.abc import Mapping
from itertools import chain
from typing import Literal, NamedTuple

from pycore.calc import priors
from pycore.calc.fill import Filled, fill
from pycore.calc.lay import Asked, Laid, lay_out, network_of
from pycore.calc.network import TERMINALS, Network, network_of_nodes
from pycore.calc.pairs import Pair, pair_of
from pycore.formulas import cable
from pycore.ground.problems import BadCommand
from pycore.ground.units import true_voltage
from pycore.jobs import Job, Output, Point, Zone

Controls = Literal["open", "set", "override"]
TEST_HZ = 1000.0
DIRECT_HZ = 0.0


class Condition(NamedTuple):
    """Under what a reading is taken. The factors make all loads, or all copper, otherwise."""

    hz: float
    controls: Controls
    conductor_c: float
    load_factor: float = 1.0
    cable_factor: float = 1.0


class Wired(NamedTuple):
    """One entry a node in each tuple; `zones` in order, `starts` their nodes."""

    job: Job
    output: Output
    line_v: float
    zones: tuple[Zone, ...]
    filled: tuple[Filled, ...]
    starts: tuple[int, ...]
    points: tuple[Point | None, ...]
    ids: tuple[str, ...]
    node_of: Mapping[str, int]
    zone_at: tuple[int, ...]
    parents: tuple[int, ...]
    sizes: tuple[int, ...]
    far_m: tuple[float, ...]
    lengths_m: tuple[float, ...]
    spread: tuple[float, ...]
    assumed: tuple[str, ...]

    def fitted(self, node: int) -> str:
        """What is at a node: output, zone, or what is fitted at the point."""
        point = self.points[node]
        return point.fitted.is_ if point else ("zone" if node else "output")

    def laid_at(self, node: int) -> tuple[Laid, int]:
        """The zone's laid line a node belongs to, and its node there."""
        number = self.zone_at[node]
        return self.filled[number].laid, node - self.starts[number]

    def beyond(self, node: int) -> range:
        """A node and everything beyond it."""
        return range(node, node + self.sizes[node])


def output_for(job: Job, where: Mapping[str, str]) -> tuple[Output, str | None]:
    """The output a place hangs on, and its zone; a problem when it is landed on none."""
    outputs = {output.id: output for amplifier in job.amplifiers for output in amplifier.outputs}
    if "output" in where:
        if where["output"] not in outputs:
            raise BadCommand("not_here", where=where, id=where["output"])
        return outputs[where["output"]], None
    wanted = next(iter(where.values()), "")
    for zone in job.zones:
        if wanted == zone.id or any(point.id == wanted for point in zone.line):
            landed = outputs.get(zone.output or zone.page_output or "")
            if landed is None:
                raise BadCommand("meter_not_landed", where={"zone": zone.id}, zone=zone.name)
            return landed, zone.id
    raise BadCommand("not_here", where=where, id=wanted)


def wire(job: Job, output: Output) -> Wired:
    """Read an output with all its zones."""
    line_v = true_voltage(output.line_v)
    pairs = {kind.id: pair_of(kind, job.limits.conductor_c) for kind in job.kinds.cables}
    zones = tuple(zone for zone in job.zones if output.id in (zone.output, zone.page_output))
    filled = tuple(
        fill(lay_out(zone, kinds=job.kinds, pairs=pairs, line_v=line_v), job) for zone in zones
    )
    return _wired(job, output, zones=zones, filled=filled)


def _wired(
    job: Job, output: Output, *, zones: tuple[Zone, ...], filled: tuple[Filled, ...]
) -> Wired:  # fmt: skip
    points: list[Point | None] = [None]
    ids, zone_at, parents, lengths_m, spread = [output.id], [-1], [-1], [0.0], [0.0]
    starts = []
    for number, (zone, one) in enumerate(zip(zones, filled, strict=True)):
        start = len(ids)
        starts.append(start)
        points.extend([None, *one.laid.points])
        ids.extend([zone.id, *(point.id for point in one.laid.points)])
        zone_at.extend([number] * len(one.laid.parents))
        parents.extend(0 if parent < 0 else start + parent for parent in one.laid.parents)
        lengths_m.extend(one.laid.lengths_m)
        spread.extend(one.spread)
    return Wired(
        job=job,
        output=output,
        line_v=true_voltage(output.line_v),
        zones=zones,
        filled=filled,
        starts=tuple(starts),
        points=tuple(points),
        ids=tuple(ids),
        node_of={one: node for node, one in enumerate(ids)},
        zone_at=tuple(zone_at),
        parents=tuple(parents),
        sizes=_sizes(parents),
        far_m=_far_m(parents, lengths_m),
        lengths_m=tuple(lengths_m),
        spread=tuple(spread),
        assumed=tuple(dict.fromkeys(code for one in filled for code in one.assumed)),
    )


def _far_m(parents: list[int], lengths_m: list[float]) -> tuple[float, ...]:
    far_m = [0.0]
    for node in range(1, len(parents)):
        far_m.append(far_m[parents[node]] + lengths_m[node])
    return tuple(far_m)


def _sizes(parents: list[int]) -> tuple[int, ...]:
    sizes = [1] * len(parents)
    for node in range(len(parents) - 1, 0, -1):
        sizes[parents[node]] += sizes[node]
    return tuple(sizes)


def is_live(wired: Wired, number: int, *, controls: Controls) -> bool:
    """Whether a zone hangs on this output in a state: a page may move it elsewhere."""
    zone = wired.zones[number]
    page = (zone.page_output or zone.output) if controls == "override" else zone.output
    return wired.output.id == (page or zone.page_output)


def circuit_of(wired: Wired, condition: Condition) -> Network:
    """The whole output as a circuit under a condition; every zone is in it."""
    parts = [TERMINAL_NODE]
    for start, one in zip(wired.starts, wired.filled, strict=True):
        parts.append(_zone_part(_standing(one.laid, condition), start=start, condition=condition))
    return Network(*(tuple(chain.from_iterable(column)) for column in zip(*parts, strict=True)))


TERMINAL_NODE = network_of_nodes([TERMINALS])


def _standing(laid: Laid, condition: Condition) -> Laid:
    """The zone with its controls as the condition has them and its copper as warm: one that cannot
    be bypassed is left full up with the others bypassed, and loses what it loses."""
    controls = laid.controls
    if condition.controls == "override":
        controls = {node: one for node, one in controls.items() if one[1].override is False}
    if condition.controls != "set":
        full = {"set_db": 0.0, "off": False}
        controls = {
            node: (fitted.model_copy(update=full), facts)
            for node, (fitted, facts) in controls.items()
        }
    return laid._replace(controls=controls, pairs=_at_heat(laid.pairs, condition))


def _at_heat(pairs: list[Pair | None], condition: Condition) -> list[Pair | None]:
    """The same cables with conductors at the condition's temperature and factor."""
    made: dict[int, Pair] = {}
    for pair in pairs:
        if pair is not None and id(pair) not in made:
            ohm = pair.loop_ohm_per_km * _heat_factor(pair, condition.conductor_c)
            made[id(pair)] = pair._replace(loop_ohm_per_km=ohm * condition.cable_factor)
    return [None if pair is None else made[id(pair)] for pair in pairs]


def _heat_factor(pair: Pair, conductor_c: float) -> float:
    """From the temperature a pair was worked out at to `conductor_c` (°C)."""
    heated = next((one for one in pair.steps if "conductor_c" in one.inputs), None)
    was = heated.inputs["conductor_c"].value if heated else 20.0
    return _of_cold(conductor_c) / _of_cold(was if isinstance(was, float) else 20.0)


def _of_cold(conductor_c: float) -> float:
    """How many times its resistance at 20 °C copper has at `conductor_c` (°C)."""
    return cable.heated_ohm_per_km(ohm_per_km=1.0, conductor_c=conductor_c)


def _zone_part(laid: Laid, *, start: int, condition: Condition) -> Network:
    """One zone as a part of the circuit: its nodes count from `start`, where its home run is."""
    made = network_of(laid, Asked(condition.hz, "set"))
    load_s = made.load_s
    if condition.load_factor != 1.0 or condition.hz == DIRECT_HZ:
        load_s = tuple(one * condition.load_factor for one in load_s)
    if condition.hz == DIRECT_HZ:
        loads = enumerate(load_s[1:], start=1)
        load_s = (0j, *(one / winding_of(laid, node) for node, one in loads))
    return Network(
        parents=(0, *(start + parent for parent in made.parents[1:])),
        near_s=(0j, *made.near_s[1:]),
        series_ohm=(0j, *made.series_ohm[1:]),
        far_s=(0j, *made.far_s[1:]),
        load_s=(0j, *load_s[1:]),
        ratio=(1.0, *made.ratio[1:]),
        felt=(1.0, *made.felt[1:]),
    )


def winding_of(laid: Laid, node: int) -> float:
    """The share of its impedance that an ohmmeter finds of what is at a node."""
    direct = getattr(laid.points[node - 1].fitted, "direct_ohm", None)
    return priors.VOICE_COIL if direct is not None else priors.WINDING_USUAL

"""What else is worth knowing of a zone's cable, and is judged by nobody: treble and bass,
other references, the spread between loudspeakers, and the section that wastes most."""

from collections.abc import Iterator
from typing import NamedTuple

from pycore.calc.finding import Finding, FindingValue, Verdict
from pycore.calc.lay import Asked
from pycore.calc.line_loss import Worst, loss_of, worst_of
from pycore.calc.network import spend
from pycore.calc.pairs import Pair
from pycore.calc.solve import BASS_HZ, TREBLE_HZ, Line, Run, run
from pycore.formulas import cable, level, power

# What an ear or a meter tells apart (common practice, no source).
TOLD_APART_DB = 0.1


def more_findings(line: Line) -> Iterator[Finding]:
    """All notes on a zone's cable, from its line in the override state."""
    if not line.laid.heard:
        return
    worst = loss_of(line).value
    yield _treble_finding(line, worst)
    if worst is None or line.value is None:
        return
    yield from _reference_findings(line, worst, value=line.value)
    wasted = most_wasteful(line, line.value)
    if wasted is not None:
        yield _waste_finding(line, wasted)


def _note(line: Line, what: str, *, code: str, verdict: Verdict = "note") -> Finding:
    where = {"zone": line.zone.id}
    return Finding(code, what, where, state=line.state, unit="db", verdict=verdict)


def worst_at(line: Line, hz: float) -> Worst | None:
    """The worst loudspeaker of a zone at another frequency (Hz)."""
    return worst_of(line, run_at(line, hz), nodes=line.laid.heard)


def run_at(line: Line, hz: float) -> Run:
    """A zone solved at another frequency (Hz), with skin effect where that counts."""
    return run(line.laid, Asked(hz, line.state))


def path_to(parents: list[int], node: int) -> list[int]:
    """The nodes from the first section's end to a node."""
    path = []
    while node > 0:
        path.append(node)
        node = parents[node]
    return path[::-1]


def pair_on_the_way(line: Line, node: int) -> Pair | None:
    """The cable that the longest part of the way to a node is made of."""
    metres: dict[int, float] = {}
    for each in path_to(line.laid.parents, node):
        pair = line.laid.pairs[each]
        if pair is not None:
            metres[id(pair)] = metres.get(id(pair), 0.0) + line.laid.lengths_m[each]
    most = max(metres, key=lambda one: metres[one], default=None)
    return next((pair for pair in line.laid.pairs if id(pair) == most), None) if most else None


def load_ohm_of(line: Line) -> float | None:
    """The nominal impedance (ohm) of all a zone's loads, without its cable."""
    load_w = level.balance_w(each_w=tuple(draw.value or 0.0 for draw in line.laid.draws))
    if not load_w:
        return None
    return power.impedance_of_watts_ohm(line_v=line.laid.line_v, load_w=load_w)


def _treble_finding(line: Line, worst: Worst | None) -> Finding:
    """10 kHz beside 1 kHz, and why they differ; 80 Hz in the values."""
    what = "zone_loss_10k_db"
    treble = worst_at(line, TREBLE_HZ) if worst is not None else None
    if worst is None or treble is None:
        return _note(line, what, code="zone_loss_10k_unknown", verdict="unknown")
    bass = worst_at(line, BASS_HZ)
    more_db = level.spread_db(most_db=treble.loss_db, least_db=worst.loss_db)
    pair = pair_on_the_way(line, treble.node)
    own_ohm = own_ohm_of(pair) if pair else None
    load_ohm = load_ohm_of(line)
    heavy = own_ohm is not None and load_ohm is not None and load_ohm < own_ohm
    reason = "same" if abs(more_db) < TOLD_APART_DB else "less" if more_db < 0 else "more"
    code = f"zone_loss_10k_{reason}" + ("_heavy" if reason == "more" and heavy else "")
    values: dict[str, FindingValue] = {
        "point": line.laid.id_of(treble.node),
        "loss_1k_db": worst.loss_db,
        "loss_80_db": bass.loss_db if bass else None,
        "change_db": more_db,
        "own_ohm": own_ohm,
        "load_ohm": load_ohm,
    }
    return _note(line, what, code=code)._replace(value=treble.loss_db, values=values)


def own_ohm_of(pair: Pair) -> float | None:
    """The pair's own impedance (ohm); None of a pair without capacitance."""
    if not pair.capacitance_pf_per_m:
        return None
    return cable.own_impedance_ohm(
        inductance_uh_per_m=pair.inductance_uh_per_m,
        capacitance_pf_per_m=pair.capacitance_pf_per_m,
    )


class References(NamedTuple):
    """The loudspeaker nearest to the amplifier, and the one that loses least."""

    nearest: int
    least: int


def references_of(line: Line, value: Run) -> References:
    """Whom the worst loudspeaker is compared with."""
    at, far_m = value.flow.at, line.laid.far_m
    nearest = min(line.laid.heard, key=lambda node: (far_m[node], node))
    least = max(line.laid.heard, key=lambda node: abs(at[node]))
    return References(nearest, least)


def _reference_findings(line: Line, worst: Worst, *, value: Run) -> Iterator[Finding]:
    """The worst loudspeaker against the nominal volts and the nearest one; the spread."""
    at_v = line.volts_at(value, worst.node)
    point = line.laid.id_of(worst.node)
    if line.terminals_v is not None:
        nominal = _note(line, "zone_loss_nominal_db", code="zone_loss_nominal")
        yield nominal._replace(
            value=level.loss_db(from_v=line.laid.line_v, at_v=at_v),
            values={"point": point, "line_v": line.laid.line_v, "at_v": at_v},
        )
    if len(line.laid.heard) < 2:
        return
    nearest, least = references_of(line, value)
    yield _note(line, "zone_loss_nearest_db", code="zone_loss_nearest")._replace(
        value=level.loss_db(from_v=line.volts_at(value, nearest), at_v=at_v),
        values={"point": point, "near": line.laid.id_of(nearest)},
    )
    yield _note(line, "zone_spread_db", code="zone_spread")._replace(
        value=level.spread_db(most_db=worst.loss_db, least_db=line.loss_at(value, least) or 0.0),
        values={"point": point, "near": line.laid.id_of(least)},
    )


class Wasted(NamedTuple):
    """The section that leaves most watts in its copper, and what that is a part of."""

    node: int
    current_a: float
    series_ohm: float
    section_w: float
    copper_w: float
    in_w: float


def most_wasteful(line: Line, value: Run) -> Wasted | None:
    """The section of a zone that wastes most; None where no cable wastes anything."""
    square = line.reference_v**2
    spent = spend(value.network, value.flow)
    copper_w = level.balance_w(each_w=tuple(each * square for each in spent.copper_w))
    node = max(range(len(spent.copper_w)), key=lambda one: spent.copper_w[one])
    if not copper_w > 0:
        return None
    current_a = abs(value.flow.current(node)) * line.reference_v
    series_ohm = value.network.series_ohm[node].real
    section_w = level.watts_in_copper_w(current_a=current_a, series_ohm=series_ohm)
    return Wasted(node, current_a, series_ohm, section_w, copper_w, spent.in_w * square)


def _waste_finding(line: Line, wasted: Wasted) -> Finding:
    values: dict[str, FindingValue] = {
        "section": line.laid.id_of(wasted.node),
        "copper_w": wasted.copper_w,
        "in_w": wasted.in_w,
        "of_copper_fraction": wasted.section_w / wasted.copper_w,
        "of_all_fraction": wasted.copper_w / wasted.in_w,
    }
    made = _note(line, "zone_wasteful_section", code="zone_wasteful")
    return made._replace(value=wasted.section_w, unit="w", values=values)

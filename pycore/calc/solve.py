"""Every zone of a job solved at 1 kHz in both states, and what arrives at each point.

Zones on one output hang side by side on its terminals, so each is solved by itself; an
amplifier with ohms of its own only lets the volts at those terminals fall, for all alike.
"""

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from typing_extensions import TypedDict

from pycore.calc.finding import State
from pycore.calc.lay import Asked, Laid, lay_out, network_of
from pycore.calc.limits import STATES, output_of
from pycore.calc.network import Flow, Network, solve
from pycore.calc.pairs import Pair, pair_of
from pycore.calc.said import started
from pycore.formulas import level
from pycore.ground.units import true_voltage
from pycore.jobs import Job, Output, Zone

HZ = 1000.0
TREBLE_HZ = 10_000.0
BASS_HZ = 80.0


class PointRow(TypedDict):
    """What arrives at one point; None is not known (or, below a control that is off, no level).

    `watts_w` is what the point draws from the line; `loss_db` is cable alone, against the
    terminals; `level_db` is all that lies between: cable, insertion and setting. Where a section
    farther on is not known its load counts in full: the most that can be lost here.
    """

    zone: str
    point: str
    state: State
    volts_v: float | None
    watts_w: float | None
    loss_db: float | None
    level_db: float | None


class Run(NamedTuple):
    """A network and its solution."""

    network: Network
    flow: Flow


class Line(NamedTuple):
    """A zone solved in one state.

    `value`: with what each point draws, a section that is not known counting as having no
    length (so points short of it lose at most this), a control of unknown form as an
    autotransformer; None where a draw is not one number. `sure`: neither had to be done.
    `low` and `high` bound it: the least load with nothing beyond an unknown section, the
    most load with such controls as pads; `high` None where there is no most.
    """

    zone: Zone
    state: State
    laid: Laid
    output: Output
    value: Run | None
    low: Run
    high: Run | None
    sure: bool
    terminals_v: float | None

    @property
    def reference_v(self) -> float:
        """The volts that losses are told from: the terminals', nominal where not known."""
        return self.laid.line_v if self.terminals_v is None else self.terminals_v

    def volts_at(self, solved: Run, node: int) -> float:
        """Volts (V) at a node, the terminals being at the reference."""
        return abs(solved.flow.at[node]) * self.reference_v

    def loss_at(self, solved: Run, node: int) -> float | None:
        """What cable alone loses (dB) between the terminals and a node, every control being
        bypassed; None where nothing arrives."""
        at_v = self.volts_at(solved, node)
        return level.loss_db(from_v=self.reference_v, at_v=at_v) if at_v > 0 else None


class Lines(NamedTuple):
    """All zones of a job that are landed on an output, by zone and state."""

    job: Job
    pairs: Mapping[str, Pair]
    solved: dict[tuple[str, State], Line]


def run(laid: Laid, asked: Asked) -> Run:
    """Build the network that is asked for and solve it."""
    network = network_of(laid, asked)
    return Run(network, solve(network))


def solve_lines(job: Job) -> Lines:
    """Solve every zone of a job that is landed."""
    conductor_c = job.limits.conductor_c
    said = started(conductor_c, "c", name="conductor_c").origin
    pairs = {kind.id: pair_of(kind, conductor_c, said=said) for kind in job.kinds.cables}
    lines = Lines(job, pairs, {})
    outputs = {output.id: output for amplifier in job.amplifiers for output in amplifier.outputs}
    for zone in job.zones:
        for state in STATES:
            output = outputs.get(output_of(zone, state) or "")
            if output is not None:
                lines.solved[zone.id, state] = _line(lines, zone, output=output, state=state)
    for key, line in lines.solved.items():
        lines.solved[key] = line._replace(terminals_v=_terminals_v(lines, line))
    return lines


def _line(lines: Lines, zone: Zone, *, output: Output, state: State) -> Line:
    line_v = true_voltage(output.line_v)
    other = lines.solved.get((zone.id, "override")) if state == "set" else None
    if other is not None and other.laid.line_v == line_v:
        if not other.laid.controls:
            return other._replace(state=state, output=output)
        laid = other.laid
    else:
        laid = lay_out(zone, kinds=lines.job.kinds, pairs=lines.pairs, line_v=line_v)
    return solve_laid(laid, output=output, state=state)


def solve_laid(laid: Laid, *, output: Output, state: State) -> Line:
    """Solve a zone that is laid out: its value where there is one, and its bounds."""
    draws, controls = laid.draws, laid.controls.values()
    one_number = all(draw.value is not None for draw in draws)
    formed = state == "override" or all(facts.form or fitted.off for fitted, facts in controls)
    exact = one_number and formed and all(draw.low == draw.high for draw in draws)
    bounded = all(draw.high is not None for draw in draws)
    reached = not any(far and draw.high != 0 for far, draw in zip(laid.beyond, draws, strict=True))
    asked = Asked(HZ, state)
    value = run(laid, asked) if one_number else None
    low = high = value
    if value is None or not exact:
        most = asked._replace(bound="high", formless="pad")
        high = run(laid, most) if bounded else None
    if value is None or not exact or not reached:
        low = run(laid, asked._replace(bound="low", severed=not reached))
    assert low is not None
    return Line(
        zone=laid.zone,
        state=state,
        laid=laid,
        output=output,
        value=value,
        low=low,
        high=high,
        sure=reached and formed,
        terminals_v=None,
    )


def on_output(lines: Lines, output: str, *, state: State) -> list[Line]:
    """The solved zones that hang on an output in a state."""
    return [
        line for line in lines.solved.values() if line.output.id == output and line.state == state
    ]


def _terminals_v(lines: Lines, line: Line) -> float | None:
    """Volts at the terminals a zone hangs on; None when they sink by an amount not known."""
    source_ohm = line.output.source_ohm
    if not source_ohm:
        return line.laid.line_v
    load_s = 0j
    for other in on_output(lines, line.output.id, state=line.state):
        if other.value is None or not other.sure:
            return None
        load_s += other.value.flow.out_s[0]
    return level.terminal_v(
        open_v=line.laid.line_v,
        source_ohm=source_ohm,
        conductance_s=load_s.real,
        susceptance_s=load_s.imag,
    )


def point_rows(job: Job) -> list[PointRow]:
    """What arrives at every point of a job, in both states; None is not known."""
    return rows_of(solve_lines(job))


def rows_of(lines: Lines) -> list[PointRow]:
    """The same of lines that are solved already."""
    rows: list[PointRow] = []
    for zone in lines.job.zones:
        for state in STATES:
            line = lines.solved.get((zone.id, state))
            if line is None or line.value is None:
                rows.extend(_row(zone, point.id, state=state) for point in zone.line)
            else:
                rows.extend(line_rows(line, line.value))
    return rows


def _row(zone: Zone, point: str, *, state: State) -> PointRow:
    return {
        "zone": zone.id,
        "point": point,
        "state": state,
        "volts_v": None,
        "watts_w": None,
        "loss_db": None,
        "level_db": None,
    }


def line_rows(line: Line, value: Run) -> Iterator[PointRow]:
    """What arrives at every point of a line by one solution of it."""
    parents, ratio = line.laid.parents, value.network.ratio
    passed = [1.0] * len(parents)
    for node, point in enumerate(line.laid.points, start=1):
        passed[node] = passed[parents[node]] * ratio[parents[node]]
        row = _row(line.zone, point.id, state=line.state)
        if not line.laid.beyond[node]:
            at_v = line.volts_at(value, node)
            if at_v > 0:
                from_v = passed[node] * line.reference_v
                row["loss_db"] = level.loss_db(from_v=from_v, at_v=at_v)
                row["level_db"] = level.level_db(from_v=line.reference_v, at_v=at_v)
            if line.terminals_v is not None:
                load_s = value.network.load_s[node].real
                row["volts_v"] = at_v
                row["watts_w"] = level.watts_at_volts_w(at_v=at_v, conductance_s=load_s)
        yield row

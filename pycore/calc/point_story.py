"""How the numbers at one point came to be: the sections and controls on the way, then the
volts that are left, and what those make of its load."""

from collections.abc import Iterator
from typing import NamedTuple, Protocol

from pycore.calc.finding import Finding
from pycore.calc.line_assumes import assumed
from pycore.calc.line_loss_story import drop_steps, name_of, number, reference
from pycore.calc.line_more import path_to
from pycore.calc.solve import Line, Lines, Run
from pycore.formulas import arrival, level
from pycore.ground.working import Known, Step, Working, computed, step


class Way(NamedTuple):
    """One of the numbers to be told: the solution it is from, and the one its own load is from."""

    solved: Run
    load: Run


class Teller(Protocol):
    """Tells the steps to one number at a node of a solved line."""

    def __call__(self, line: Line, way: Way, *, node: int) -> Iterator[Step]:
        """The steps, the last of which gives the number."""


def point_working(lines: Lines, finding: Finding) -> Working:
    """How a number of `point_findings` came to be; no steps where it is not known."""
    state = finding.state or "override"
    line = lines.solved.get((str(finding.values.get("zone", "")), state))
    tell = TELLERS.get(finding.what)
    if line is None or tell is None or finding.verdict == "unknown":
        return Working((), ())
    node = next(
        node
        for node, point in enumerate(line.laid.points, start=1)
        if point.id == finding.where["point"]
    )
    steps = [made for way in _ways(line, finding) for made in tell(line, way, node=node)]
    return Working(tuple(steps), assumed(line, finding))


def _ways(line: Line, finding: Finding) -> Iterator[Way]:
    """The least and the most where there are such, then the number itself."""
    ends = [(line.low, line.high, finding.low), (line.high, line.low, finding.high)]
    if finding.what != "point_loss_db":  # the more is lost, the less of the others arrives
        ends = [(line.high, line.low, finding.low), (line.low, line.high, finding.high)]
    for solved, load, number_told in ends:
        if solved is not None and number_told is not None:
            yield Way(solved, load or solved)
    if line.value is not None and finding.value is not None:
        yield Way(line.value, line.value)


def _way(line: Line, value: Run, *, node: int) -> Iterator[Step]:
    """The section to the point, then all sections on the way to it together."""
    yield from drop_steps(line, value, node=node, told=set())
    losses = tuple(
        level.section_loss_db(
            series_ohm=value.network.series_ohm[one].real,
            reactance_ohm=value.network.series_ohm[one].imag,
            conductance_s=value.flow.out_s[one].real,
            susceptance_s=value.flow.out_s[one].imag,
        )
        for one in path_to(line.laid.parents, node)
    )
    sections = {"each_db": Known(losses, "db", "solved")}
    yield step("point_path", level.sum_of_losses_db, inputs=sections, point=name_of(line, node))


def _passed_v(line: Line, value: Run, *, node: int) -> float:
    """The terminals' volts with every control on the way at its ratio, before any cable."""
    passed_v = line.reference_v
    for parent in path_to(line.laid.parents, node)[:-1]:
        passed_v *= value.network.ratio[parent]
    return passed_v


def _volts(line: Line, way: Way, *, node: int) -> Iterator[Step]:
    passed_v = _passed_v(line, way.solved, node=node)
    if passed_v == 0:  # a level of nothing is not a number: behind a control that stands off
        nothing = {"from_v": reference(line), "share": Known(0.0, "factor", "typed")}
        yield step("point_off", arrival.volts_behind_control_v, inputs=nothing)
        return
    sections = list(_way(line, way.solved, node=node))
    yield from sections
    lost = sections[-1]
    if passed_v != line.reference_v:
        ratio = {"from_v": reference(line), "at_v": number(passed_v, "v")}
        controls = step("point_controls", level.loss_db, inputs=ratio)
        yield controls
        both = {"each_db": Known((lost.result, controls.result), "db", "computed")}
        lost = step("point_both", level.sum_of_losses_db, inputs=both)
        yield lost
    left = {"from_v": reference(line), "loss_db": computed(lost)}
    yield step("point_volts", arrival.volts_after_loss_v, inputs=left)


def _watts(line: Line, way: Way, *, node: int) -> Iterator[Step]:
    steps = list(_volts(line, way, node=node))
    yield from steps
    load_w = way.load.network.load_s[node].real * line.laid.line_v**2
    nominal = {
        "load_w": Known(load_w, "w", "elsewhere"),
        "line_v": Known(line.laid.line_v, "v", "typed"),
    }
    siemens = step("point_load", level.conductance_of_watts_s, inputs=nominal)
    yield siemens
    there = {"at_v": computed(steps[-1]), "conductance_s": computed(siemens)}
    yield step("point_watts", level.watts_at_volts_w, inputs=there)


def _loss(line: Line, way: Way, *, node: int) -> Iterator[Step]:
    yield from _way(line, way.solved, node=node)


def _level(line: Line, way: Way, *, node: int) -> Iterator[Step]:
    steps = list(_volts(line, way, node=node))
    yield from steps
    volts = {"from_v": reference(line), "at_v": computed(steps[-1])}
    yield step("point_level", level.level_db, inputs=volts)


TELLERS: dict[str, Teller] = {
    "point_volts_v": _volts,
    "point_watts_w": _watts,
    "point_loss_db": _loss,
    "point_level_db": _level,
}

"""How the loss of a zone came to be: its costliest section, the way to the worst
loudspeaker, and the balance of its watts."""

from collections.abc import Iterator

from pycore.calc.line_loss import Loss, Worst, loss_of
from pycore.calc.line_more import path_to
from pycore.calc.network import spend
from pycore.calc.said import entered, started
from pycore.calc.solve import Line, Run
from pycore.formulas import cable, level
from pycore.ground.working import Known, Step, computed, step


def number(value: float, unit: str, *, label: str = "") -> Known:
    """A number of the line solved as a whole."""
    return Known(value=value, unit=unit, origin="solved", label=label)


def reference(line: Line) -> Known:
    """The volts that losses are told from: the nominal ones, or what its amplifier lets through."""
    sunk = line.reference_v != line.laid.line_v
    return Known(line.reference_v, "v", "solved" if sunk else "typed")


def load_of_taps(line: Line) -> Known:
    """All that a line's taps draw without its cable (W); the working of its load tells how."""
    load_w = level.balance_w(each_w=tuple(draw.value or 0.0 for draw in line.laid.draws))
    return Known(load_w, "w", "elsewhere")


def limit_steps(line: Line, limit_db: float) -> Iterator[Step]:
    """The limit said as shares of volts, watts and ohms: the three ten per cents."""
    own = line.zone.loss_db is not None
    said = Known(limit_db, "db", "typed") if own else started(limit_db, "db", name="loss_db")
    limit = {"loss_db": said}
    yield step("limit_volts", level.volts_lost_fraction, inputs=limit)
    yield step("limit_watts", level.watts_lost_fraction, inputs=limit)
    yield step("limit_ohms", level.loop_of_load_fraction, inputs=limit)


def tell_loss(line: Line) -> Iterator[Step]:
    """The loss of a zone: its value, or its low end and then its high one."""
    loss = loss_of(line)
    told: set[int] = set()
    if loss.value is not None and line.value is not None:
        yield from _bound_steps(line, loss)
        yield from _path_steps(line, line.value, worst=loss.value, told=told)
        yield from _balance_steps(line, line.value)
        yield loss_step(line, line.value, node=loss.value.node)
        return
    for worst, solved in ((loss.low, line.low), (loss.high, line.high)):
        if worst is not None and solved is not None:
            yield from _path_steps(line, solved, worst=worst, told=told)
            yield loss_step(line, solved, node=worst.node)


def _bound_steps(line: Line, loss: Loss) -> Iterator[Step]:
    """The least and the most, where the one number told is not the only one it can be."""
    ends = (("line_loss_low", loss.low, line.low), ("line_loss_high", loss.high, line.high))
    if any(worst is None or worst != loss.value for _, worst, _ in ends):
        for code, worst, solved in ends:
            if worst is not None and solved is not None:
                yield loss_step(line, solved, node=worst.node, code=code)


def loss_step(line: Line, solved: Run, *, node: int, code: str = "line_loss") -> Step:
    """From the terminals to a node."""
    volts = {
        "from_v": reference(line),
        "at_v": number(line.volts_at(solved, node), "v"),
    }
    return step(code, level.loss_db, inputs=volts)


def _path_steps(line: Line, solved: Run, *, worst: Worst, told: set[int]) -> Iterator[Step]:
    """The way to the worst loudspeaker: its costliest section, then all sections together."""
    path = path_to(line.laid.parents, worst.node)
    each_db = tuple(_drop_step(line, solved, node=node).result for node in path)
    costliest = path[each_db.index(max(each_db))]
    yield from drop_steps(line, solved, node=costliest, told=told)
    total = {"each_db": Known(each_db, "db", "solved")}
    yield step("line_path", level.sum_of_losses_db, inputs=total)


def drop_steps(line: Line, solved: Run, *, node: int, told: set[int]) -> Iterator[Step]:
    """What a section takes, in the order in which one would do it by hand: the load behind it
    and its current, the section's ohms, the volts across them, the decibels."""
    yield _beyond_step(line, solved, node=node)
    out_s, series_ohm = solved.flow.out_s[node], solved.network.series_ohm[node]
    there = {
        "at_v": number(line.volts_at(solved, node), "v"),
        "conductance_s": number(out_s.real, "s"),
        "susceptance_s": number(out_s.imag, "s"),
    }
    point = name_of(line, node)
    current = step("line_current", level.current_of_volts_a, inputs=there, point=point)
    yield current
    yield from section_steps(line, node, told=told)
    across = {
        "current_a": computed(current),
        "series_ohm": number(series_ohm.real, "ohm"),
        "reactance_ohm": number(series_ohm.imag, "ohm"),
    }
    yield step("line_across", level.volts_across_v, inputs=across, point=point)
    yield _lost_step(line, solved, node=node)


def _lost_step(line: Line, solved: Run, *, node: int) -> Step:
    """A section's decibels by the volts at its ends; behind a control that is off there are
    none, so there by its ohms and what hangs beyond."""
    parent = line.laid.parents[node]
    before_v = line.volts_at(solved, parent) * solved.network.ratio[parent]
    if not before_v > 0:
        return _drop_step(line, solved, node=node)
    volts = {
        "from_v": number(before_v, "v"),
        "at_v": number(line.volts_at(solved, node), "v"),
    }
    return step("line_section", level.loss_db, inputs=volts, point=name_of(line, node))


def _beyond_step(line: Line, solved: Run, *, node: int) -> Step:
    """What hangs at a node and beyond it, by its watts alone: what the cable adds comes on top."""
    inside = {node}
    for each in range(node + 1, len(line.laid.parents)):
        if line.laid.parents[each] in inside:
            inside.add(each)
    square = line.laid.line_v**2
    watts = tuple(solved.network.load_s[each].real * square for each in sorted(inside))
    inputs = {
        "load_w": Known(level.balance_w(each_w=watts), "w", "elsewhere"),
        "line_v": Known(line.laid.line_v, "v", "typed"),
    }
    values = {"point": name_of(line, node)}
    return step("line_beyond", level.conductance_of_watts_s, inputs=inputs, **values)


def _drop_step(line: Line, solved: Run, *, node: int) -> Step:
    series_ohm, out_s = solved.network.series_ohm[node], solved.flow.out_s[node]
    inputs = {
        "series_ohm": number(series_ohm.real, "ohm"),
        "reactance_ohm": number(series_ohm.imag, "ohm"),
        "conductance_s": number(out_s.real, "s"),
        "susceptance_s": number(out_s.imag, "s"),
    }
    return step("line_section", level.section_loss_db, inputs=inputs, point=name_of(line, node))


def name_of(line: Line, node: int) -> str:
    """What the point at a node is called."""
    point = line.laid.points[node - 1]
    return point.fitted.label or point.id


def section_steps(line: Line, node: int, *, told: set[int]) -> Iterator[Step]:
    """The cable of a section, unless it was told before, and the section's ohms."""
    pair = line.laid.pairs[node]
    if pair is None or line.laid.unknown[node]:
        return
    if id(pair) not in told:
        told.add(id(pair))
        yield from pair.steps
    inputs = {
        "loop_ohm_per_km": computed(pair.steps[-1]),
        "length_m": Known(line.laid.lengths_m[node], "m", "typed"),
        "joint_ohm": entered(line.laid.points[node - 1].joint_ohm, "ohm"),
    }
    yield step("line_ohms", cable.section_ohm, inputs=inputs, point=name_of(line, node))


def _balance_steps(line: Line, value: Run) -> Iterator[Step]:
    """Watts into the line, and where they are left: played, in copper, in controls."""
    square = line.reference_v**2
    spent = spend(value.network, value.flow)
    into = {
        "at_v": reference(line),
        "conductance_s": number(value.flow.out_s[0].real, "s"),
    }
    yield step("line_in", level.watts_at_volts_w, inputs=into)
    parts = {
        "line_played": spent.loads_w,
        "line_copper": spent.copper_w,
        "line_controls": spent.controls_w,
    }
    sums: list[float] = []
    for code, each in parts.items():
        watts = tuple(one * square for one in each if one)
        if watts:
            made = step(code, level.balance_w, inputs={"each_w": Known(watts, "w", "solved")})
            sums.append(made.result)
            yield made
    yield step(
        "line_balance", level.balance_w, inputs={"each_w": Known(tuple(sums), "w", "computed")}
    )

"""How the numbers about a line came to be, step by step, by the same equations. The last
step's result is the finding's value; where that lies in a range, the low end comes first,
then the high one."""

from collections.abc import Callable, Iterator

from pycore.calc import line_ohms
from pycore.calc.finding import Finding
from pycore.calc.line_assumes import assumed
from pycore.calc.line_loss import loss_of
from pycore.calc.line_loss_story import (
    limit_steps,
    load_of_taps,
    loss_step,
    name_of,
    number,
    section_steps,
    tell_loss,
)
from pycore.calc.line_more import (
    load_ohm_of,
    most_wasteful,
    own_ohm_of,
    pair_on_the_way,
    references_of,
    run_at,
    worst_at,
)
from pycore.calc.pairs import Pair
from pycore.calc.quietest import quietest_working
from pycore.calc.solve import TREBLE_HZ, Line, Lines, on_output, solve_lines
from pycore.formulas import cable, level, power
from pycore.ground.working import Known, Step, Working, computed, step
from pycore.jobs import Job

Teller = Callable[[Line], Iterator[Step]]


def line_working(job: Job, finding: Finding) -> Working:
    """How a finding of `line_findings` came to be; no steps when it is of another kind."""
    return working_in(solve_lines(job), finding)


def working_in(lines: Lines, finding: Finding) -> Working:
    """The same of lines that are solved already."""
    state = finding.state or "override"
    if finding.what == "output_line_impedance_ohm":
        hanging = [
            one for one in on_output(lines, finding.where["output"], state=state) if one.zone.line
        ]
        codes = [code for line in hanging for code in assumed(line, finding)]
        return Working(tuple(_tell_output(hanging)), tuple(dict.fromkeys(codes)))
    line = lines.solved.get((finding.where.get("zone", ""), state))
    if finding.what == "zone_quietest_db" and line is not None:
        return quietest_working(lines.job, line)
    tell = TELLERS.get(finding.what)
    if line is None or tell is None:
        return Working((), ())
    otherwise = limit_steps(line, finding.limit) if finding.limit is not None else ()
    steps = tuple(tell(line))
    # first how it came to be; what else the limit means stands before the number itself
    return Working((*steps[:-1], *otherwise, *steps[-1:]), assumed(line, finding))


def _tell_treble(line: Line) -> Iterator[Step]:
    worst = worst_at(line, TREBLE_HZ) if loss_of(line).value is not None else None
    if worst is None:
        return
    pair = pair_on_the_way(line, worst.node)
    if pair is not None and own_ohm_of(pair) is not None:
        yield _own_step(pair)
    load_ohm = load_ohm_of(line)
    if load_ohm is not None:
        volts = Known(line.laid.line_v, "v", "typed")
        inputs = {"line_v": volts, "load_w": load_of_taps(line)}
        yield step("line_load", power.impedance_of_watts_ohm, inputs=inputs)
    yield loss_step(line, run_at(line, TREBLE_HZ), node=worst.node)


def _own_step(pair: Pair) -> Step:
    inputs = {
        "inductance_uh_per_m": Known(pair.inductance_uh_per_m, "uh_per_m", pair.said[0]),
        "capacitance_pf_per_m": Known(pair.capacitance_pf_per_m, "pf_per_m", pair.said[1]),
    }
    return step("line_own", cable.own_impedance_ohm, inputs=inputs)


def _tell_nominal(line: Line) -> Iterator[Step]:
    worst = loss_of(line).value
    if worst is not None and line.value is not None:
        volts = {
            "from_v": Known(line.laid.line_v, "v", "typed"),
            "at_v": number(line.volts_at(line.value, worst.node), "v"),
        }
        yield step("line_nominal", level.loss_db, inputs=volts)


def _tell_nearest(line: Line) -> Iterator[Step]:
    worst = loss_of(line).value
    if worst is not None and line.value is not None:
        nearest = references_of(line, line.value).nearest
        volts = {
            "from_v": number(line.volts_at(line.value, nearest), "v"),
            "at_v": number(line.volts_at(line.value, worst.node), "v"),
        }
        yield step("line_nearest", level.loss_db, inputs=volts)


def _tell_spread(line: Line) -> Iterator[Step]:
    worst = loss_of(line).value
    if worst is not None and line.value is not None:
        most = loss_step(line, line.value, node=worst.node)
        least = loss_step(line, line.value, node=references_of(line, line.value).least)
        yield most
        yield least
        both = {"most_db": computed(most), "least_db": computed(least)}
        yield step("line_spread", level.spread_db, inputs=both)


def _tell_waste(line: Line) -> Iterator[Step]:
    wasted = most_wasteful(line, line.value) if line.value is not None else None
    if wasted is not None:
        yield from section_steps(line, wasted.node, told=set())
        inputs = {
            "current_a": number(wasted.current_a, "a"),
            "series_ohm": number(wasted.series_ohm, "ohm"),
        }
        yield step(
            "line_waste", level.watts_in_copper_w, inputs=inputs, point=name_of(line, wasted.node)
        )


def _tell_zone_ohms(line: Line) -> Iterator[Step]:
    value = line_ohms.seen_value(line)
    most, least = line_ohms.seen_most(line), line_ohms.seen_least(line)
    if value is None or (most, least) != (value, value):
        yield from _magnitude_steps(most, code="line_reads_low")
        yield from _magnitude_steps(least, code="line_reads_high")
    if value is not None:
        nominal = load_ohm_of(line) if line.state == "override" else None
        if nominal is not None:
            volts = Known(line.laid.line_v, "v", "typed")
            inputs = {"line_v": volts, "load_w": load_of_taps(line)}
            yield step("line_load", power.impedance_of_watts_ohm, inputs=inputs)
        yield from _magnitude_steps(value, code="line_reads")


def _magnitude_steps(seen_s: complex | None, *, code: str) -> Iterator[Step]:
    if seen_s:
        parts = {
            "conductance_s": number(seen_s.real, "s"),
            "susceptance_s": number(seen_s.imag, "s"),
        }
        yield step(code, level.magnitude_ohm, inputs=parts)


def _tell_output(hanging: list[Line]) -> Iterator[Step]:
    """Its least and its most where it lies in a range, then the number itself."""
    value = tuple(line_ohms.seen_value(line) for line in hanging)
    ends = {
        "line_reads_low": tuple(line_ohms.seen_most(line) for line in hanging),
        "line_reads_high": tuple(line_ohms.seen_least(line) for line in hanging),
    }
    if all(each == value for each in ends.values()):
        ends = {}
    for code, each in {**ends, "line_reads": value}.items():
        known = [one for one in each if one is not None]
        if len(known) < len(each) or not any(known):
            continue
        sums = []
        for part in (tuple(one.real for one in known), tuple(one.imag for one in known)):
            side_by_side = {"each_s": Known(part, "s", "solved")}
            sums.append(step("line_beside", level.sum_of_siemens_s, inputs=side_by_side))
        yield from sums
        parts = {"conductance_s": computed(sums[0]), "susceptance_s": computed(sums[1])}
        yield step(code, level.magnitude_ohm, inputs=parts)


TELLERS: dict[str, Teller] = {
    "zone_loss_db": tell_loss,
    "zone_loss_10k_db": _tell_treble,
    "zone_loss_nominal_db": _tell_nominal,
    "zone_loss_nearest_db": _tell_nearest,
    "zone_spread_db": _tell_spread,
    "zone_wasteful_section": _tell_waste,
    "zone_impedance_ohm": _tell_zone_ohms,
}

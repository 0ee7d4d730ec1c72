"""What an impedance meter should read at 1 kHz, the amplifier disconnected: of each zone
with its cable, and of each output with all its home runs together."""

from collections.abc import Iterator

from pycore.calc.finding import Finding, FindingValue, State
from pycore.calc.limits import STATES
from pycore.calc.solve import Line, Lines, on_output
from pycore.formulas import level
from pycore.jobs import Output

Siemens = complex | None


def reads_ohm(seen_s: Siemens) -> float | None:
    """The magnitude (ohm) of siemens; None where not known, or where nothing is connected."""
    if not seen_s:
        return None
    return level.magnitude_ohm(conductance_s=seen_s.real, susceptance_s=seen_s.imag)


def seen_value(line: Line) -> Siemens:
    """Siemens at a zone's own end, where that is one number."""
    return line.value.flow.out_s[0] if line.value is not None and line.sure else None


def seen_most(line: Line) -> Siemens:
    """The most siemens a zone can have: None when there is no most."""
    return line.high.flow.out_s[0] if line.high is not None else None


def seen_least(line: Line) -> Siemens:
    """The least siemens a zone can have."""
    return line.low.flow.out_s[0]


def ohm_findings(lines: Lines, outputs: list[Output]) -> Iterator[Finding]:
    """What every zone and every output should read, in both states."""
    for line in lines.solved.values():
        if line.zone.line:
            yield zone_ohm_finding(line)
    for output in outputs:
        for state in STATES:
            hanging = [line for line in on_output(lines, output.id, state=state) if line.zone.line]
            if hanging:
                yield _output_finding(output, hanging, state=state)


def zone_ohm_finding(line: Line) -> Finding:
    """What a zone should read with everything of it landed."""
    loaded = any(draw.high != 0 for draw in line.laid.draws)
    value, most, least = seen_value(line), seen_most(line), seen_least(line)
    code = _code("zone_impedance", value, loaded=loaded, between=bool(most and least))
    made = _finding(code, value, most=most, least=least)
    return made._replace(
        what="zone_impedance_ohm",
        where={"zone": line.zone.id},
        state=line.state,
        values=_nominal(line),
    )


def _code(name: str, seen_s: Siemens, *, loaded: bool, between: bool) -> str:
    """Whether a meter reads a number, one between two, only cable, nothing, or nobody knows.

    Nothing: all that is connected hangs behind a control that stands off.
    """
    if not loaded:
        return f"{name}_open"
    if seen_s is None:
        return f"{name}_between" if between else f"{name}_unknown"
    return f"{name}_reads" if seen_s else f"{name}_hidden"


def _nominal(line: Line) -> dict[str, FindingValue]:
    """Without its cable: what adding up the taps alone would promise."""
    nominal = [draw.value for draw in line.laid.draws]
    if (line.state == "set" and line.laid.controls) or None in nominal:
        return {"nominal_ohm": None}
    load_w = level.balance_w(each_w=tuple(value or 0.0 for value in nominal))
    return {"nominal_ohm": line.laid.line_v**2 / load_w if load_w else None}


def _output_finding(output: Output, hanging: list[Line], *, state: State) -> Finding:
    loaded = any(draw.high != 0 for line in hanging for draw in line.laid.draws)
    values, most = [seen_value(line) for line in hanging], [seen_most(line) for line in hanging]
    least = [seen_least(line) for line in hanging]
    value, both = _sum(values), (_sum(most), _sum(least))
    code = _code("output_line", value, loaded=loaded, between=all(both))
    made = _finding(code, value, most=both[0], least=both[1])
    return made._replace(
        what="output_line_impedance_ohm",
        where={"output": output.id},
        state=state,
        values={"zones": len(hanging)},
    )


def _sum(each: list[Siemens]) -> Siemens:
    known = [one for one in each if one is not None]
    if len(known) < len(each):
        return None
    return complex(
        level.sum_of_siemens_s(each_s=tuple(one.real for one in known)),
        level.sum_of_siemens_s(each_s=tuple(one.imag for one in known)),
    )


def _finding(code: str, value: Siemens, *, most: Siemens, least: Siemens) -> Finding:
    return Finding(
        code=code,
        what="",
        where={},
        state=None,
        unit="ohm",
        verdict="unknown" if code.endswith(("_unknown", "_between")) else "note",
        value=reads_ohm(value),
        low=reads_ohm(most),
        high=reads_ohm(least),
    )

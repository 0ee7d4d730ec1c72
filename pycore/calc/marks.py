"""What the marks on taps, controls and panels say about a job, point by point."""

from collections.abc import Iterator

from pycore.calc.draws import Draw, Lookup, draw_when_connected, marked_at_v
from pycore.calc.finding import Finding, Verdict
from pycore.calc.limits import STATES, Loads
from pycore.calc.zone_loads import ZoneLoad
from pycore.formulas import power
from pycore.ground.units import same_voltage
from pycore.jobs import Loudspeaker, LoudspeakerKind, Output, Point, Zone
from pycore.jobs.tree import hanging_order

# Below this a line of transformers wants no programme (common practice, no source).
HIGH_PASS_LEAST_HZ = 70.0


def mark_findings(loads: Loads) -> Iterator[Finding]:
    """Wrong voltage rows, low-impedance selectors, taps not offered, controls no page reaches."""
    lookup = Lookup.of(loads.job.kinds)
    for zone in loads.job.zones:
        lines_v = _volts_of(loads, zone)
        for point in zone.line:
            if lines_v and point.fitted.is_ == "loudspeaker":
                yield from _tap_findings(point, point.fitted, lookup=lookup, lines_v=lines_v)
        asked = loads.asked.get((zone.id, "override"))
        if asked is not None:
            yield from _page_findings(zone, asked)
        elif zone.line:
            yield Finding(
                code="zone_not_landed",
                what="zone_landed",
                where={"zone": zone.id},
                state=None,
                unit="count",
                verdict="unknown",
            )
    for output in loads.outputs.values():
        yield from _panel_findings(output)


def _volts_of(loads: Loads, zone: Zone) -> tuple[float, ...]:
    """The volts a zone's line can stand at, the highest first: a page may come at others."""
    volts = {loads.line_v(zone, state) for state in STATES}
    return tuple(sorted((one for one in volts if one is not None), reverse=True))


def _tap_findings(
    point: Point, fitted: Loudspeaker, *, lookup: Lookup, lines_v: tuple[float, ...]
) -> Iterator[Finding]:
    where = {"point": point.id}
    kind = lookup.kind(fitted)
    tap_at_v = marked_at_v(fitted, kind, line_v=lines_v[0])
    if fitted.direct_ohm is not None:
        yield _direct_finding(fitted, where, line_v=lines_v[0])
    elif tap_at_v is not None:
        other = next(
            (one for one in lines_v if one != tap_at_v and not same_voltage(tap_at_v, one)), None
        )
        if other is not None:
            drawn = draw_when_connected(fitted, lookup, line_v=other)
            yield _voltage_finding(fitted, where, line_v=other, tap_at_v=tap_at_v, drawn=drawn)
    if kind is not None and fitted.direct_ohm is None:
        yield from _offer_findings(fitted, kind, where=where)


def _offer_findings(
    fitted: Loudspeaker, kind: LoudspeakerKind, *, where: dict[str, str]
) -> Iterator[Finding]:
    """A tap its kind does not offer, or its maker does not allow."""
    if fitted.tap_w is None or fitted.tap_at_v is None:
        return
    same = [
        tap
        for tap in kind.taps
        if tap.w == fitted.tap_w and same_voltage(tap.at_v, fitted.tap_at_v)
    ]
    forbidden = any(tap.allowed is False for tap in same)
    if forbidden or not same:
        yield Finding(
            code="tap_not_allowed" if forbidden else "tap_not_offered",
            what="tap_offered",
            where=where,
            state=None,
            unit="w",
            verdict="over" if forbidden else "note",
            value=fitted.tap_w,
            values={"tap_w": fitted.tap_w, "tap_at_v": fitted.tap_at_v, "kind": kind.id},
        )


def _voltage_finding(
    fitted: Loudspeaker, where: dict[str, str], *, line_v: float, tap_at_v: float, drawn: Draw
) -> Finding:
    """One reading of a factor: `drawn` is what it draws on this line when connected."""
    factor = power.voltage_factor(line_v=line_v, tap_at_v=tap_at_v)
    above = factor > 1 and fitted.connected
    below = "voltage_below" if fitted.connected else "voltage_waiting"
    return Finding(
        code="voltage_above" if above else below,
        what="wrong_voltage",
        where=where,
        state=None,
        unit="factor",
        verdict="over" if above else "note",
        value=factor,
        values={
            "line_v": line_v,
            "tap_at_v": tap_at_v,
            "tap_w": fitted.tap_w,
            "drawn_w": drawn.value,
            "change_db": power.level_of_power_ratio_db(factor=factor),
        },
    )


def _direct_finding(fitted: Loudspeaker, where: dict[str, str], *, line_v: float) -> Finding:
    direct_ohm = fitted.direct_ohm or 0.0
    verdict: Verdict = "over" if fitted.connected else "note"
    return Finding(
        code="direct_across_line" if fitted.connected else "direct_waiting",
        what="direct_load_w",
        where=where,
        state=None,
        unit="w",
        verdict=verdict,
        value=power.draw_of_resistance_w(line_v=line_v, direct_ohm=direct_ohm),
        values={"line_v": line_v, "direct_ohm": direct_ohm},
    )


def _page_findings(zone: Zone, asked: ZoneLoad) -> Iterator[Finding]:
    """Below an attenuator that stands off, a page is heard only where it is overridden."""
    if not any(point.fitted.is_ == "attenuator" and point.fitted.off for point in zone.line):
        return
    above: dict[str | None, tuple[str, ...]] = {None: ()}
    for point in hanging_order(zone.line):
        offs = above[point.after]
        fitted = point.fitted
        if fitted.is_ == "attenuator" and fitted.off:
            offs = (*offs, point.id)
        above[point.id] = offs
        if offs and fitted.is_ == "loudspeaker" and fitted.connected:
            yield _page_finding(point, offs, asked=asked)


def _page_finding(point: Point, offs: tuple[str, ...], *, asked: ZoneLoad) -> Finding:
    overridden = [(one, asked.attenuators[one][0].override) for one in offs]
    deaf = next((one for one, override in overridden if override is False), None)
    unsure = next((one for one, override in overridden if override is None), None)
    verdict: Verdict = "over" if deaf else "unknown" if unsure else "ok"
    return Finding(
        code=f"page_{verdict}",
        what="heard_in_page",
        where={"point": point.id},
        state="set",
        unit="count",
        verdict=verdict,
        values={"attenuator": deaf or unsure or offs[0]},
    )


def _panel_findings(output: Output) -> Iterator[Finding]:
    """What the panel prints that is checked by reading, not by arithmetic."""
    low = output.high_pass_hz is not None and output.high_pass_hz < HIGH_PASS_LEAST_HZ
    known = output.high_pass_hz is not None
    code = "high_pass_low" if low else "high_pass_set" if known else "high_pass_not_known"
    yield Finding(
        code=code,
        what="high_pass_hz",
        where={"output": output.id},
        state=None,
        unit="hz",
        verdict="near" if low else "ok" if known else "note",
        value=output.high_pass_hz,
        limit=HIGH_PASS_LEAST_HZ,
    )
    if output.drive == "direct":
        yield _panel_note("drive_direct", "drive", output=output)
    if output.marked_class is not None:
        yield _panel_note("class_marked", "wiring_class", output=output)


def _panel_note(code: str, what: str, *, output: Output) -> Finding:
    return Finding(
        code=code,
        what=what,
        where={"output": output.id},
        state=None,
        unit="count",
        verdict="note",
        values={"marked_class": output.marked_class},
    )

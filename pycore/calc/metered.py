"""What a meter said of a line that must not be touched or connected, as a finding of its place.

Worked out from what was read last there in each way; what nobody has measured is found nowhere.
A line is solved only to see whether it has changed since it was read as too heavy as drawn.
"""

from collections.abc import Iterator

from pycore.calc import priors
from pycore.calc.due import band_then, outdated, was_due
from pycore.calc.finding import Finding
from pycore.calc.foreign import is_fed
from pycore.calc.reading import OHMS, OVER_RANGE, Meant, sort_reading, taken_of
from pycore.calc.site import Given, site_of
from pycore.calc.verdicts import Least, least_of, too_heavy
from pycore.ground.units import true_voltage
from pycore.jobs import Job, Output

METERED, LIVE = "meter_reading", "foreign_v"
# By the code of the reading; the worst first.
CODES = {
    "do_not_connect_short": "meter_short",
    "do_not_connect": "meter_too_low",
    "at_the_limit": "meter_at_limit",
}


def metered_findings(job: Job) -> Iterator[Finding]:
    """One finding for each place whose last readings say: it is not dead, or do not connect."""
    if not job.readings:
        return
    last: dict[str, dict[object, Meant]] = {}
    volts: dict[str, Meant] = {}
    for reading in job.readings:
        one = sort_reading(taken_of(reading), leads_ohm=None)
        if reading.quantity in OHMS:
            last.setdefault(one.taken.place, {})[one.taken.setting] = one
        elif reading.quantity == LIVE and one.value is not None:
            volts[one.taken.place] = one
    for place, where, output in _places(job):
        if place in volts and is_fed(volts[place].value or 0.0):
            yield _live(volts[place], where=where)
        least = least_of(output, true_voltage(output.line_v))
        at_rack = "point" not in where
        said = [(_code(one, least, at_rack=at_rack), one) for one in last.get(place, {}).values()]
        spot = dict([next(iter(where.items()))])
        said = [(code, one) for code, one in said if code and not _before(job, one, spot=spot)]
        worst = [(code, one) for wanted in CODES for code, one in said if code == wanted]
        if worst:
            yield _finding(*worst[0], where=where, output=output)


def _places(job: Job) -> Iterator[tuple[str, dict[str, str], Output]]:
    """Where a line can be measured: id, the places it concerns, the output it hangs on."""
    outputs = {one.id: one for amplifier in job.amplifiers for one in amplifier.outputs}
    for zone in job.zones:
        output = outputs.get(zone.output or zone.page_output or "")
        if output is not None:
            line = {"zone": zone.id, "output": output.id}
            yield zone.id, line, output
            for point in zone.line:
                yield point.id, {"point": point.id, **line}, output
    for output in outputs.values():
        yield output.id, {"output": output.id}, output


def _code(one: Meant, least: Least, *, at_rack: bool) -> str:
    """Any instrument finds a short anywhere; an impedance meter at the rack what is too low."""
    if one.sign == "short":
        return "do_not_connect_short"
    whole = at_rack and one.taken.quantity == "z_1k_ohm"
    heavy = too_heavy(one, least) if whole else None
    return heavy.code if heavy is not None else ""


def _before(job: Job, one: Meant, *, spot: dict[str, str]) -> bool:
    """Whether a reading was due as heavy as it was, of a line that has changed since."""
    then = band_then(one)
    if then is None or not was_due(one, then):
        return False
    return outdated(site_of(job, spot, given=Given(priors.LOAD_PCT, None)), one) is not None


def _live(one: Meant, *, where: dict[str, str]) -> Finding:
    """Volts on a line that should be dead; more than the meter can show is no number."""
    told = one.value is not None and one.value < OVER_RANGE
    return Finding(
        code="meter_live" if told else "meter_live_beyond",
        what=LIVE,
        where=where,
        state=None,
        unit="v",
        verdict="over",
        value=one.value if told else None,
        limit=priors.FOREIGN_NONE_V,
    )


def _finding(code: str, one: Meant, *, where: dict[str, str], output: Output) -> Finding:
    read = one.taken.value
    line_v = true_voltage(output.line_v)
    least = least_of(output, line_v)
    worked_out = least.ohm is not None and not least.printed
    return Finding(
        code=CODES[code],
        what=METERED,
        where=where,
        state=None,
        unit="ohm",
        verdict="over",
        value=max(read, 0.0) if isinstance(read, float) else None,
        limit=least.ohm,
        values={"line_v": line_v, "least_of_w": output.max_w} if worked_out else {},
    )

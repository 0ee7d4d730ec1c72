"""The ask `point_numbers`: what arrives at one point, in a page and as it is set."""

from typing_extensions import TypedDict

from pycore.asks.shown import range_text
from pycore.calc.between import NUMBERS
from pycore.calc.finding import Finding, State
from pycore.calc.points import point_findings
from pycore.calc.ripple import Reach, solve_within
from pycore.edit.change import find_point
from pycore.ground.units import Manner
from pycore.ground.words import say
from pycore.jobs import Closed, Job
from pycore.jobs.base import Id


class PointBody(Closed):
    """A job and one of its points."""

    job: Job
    point: Id


class NumberShown(TypedDict):
    """One number; `finding` opens its working, null where it is not known."""

    shown: str
    finding: str | None


class NumberRow(TypedDict):
    """One number in both states."""

    what: str
    name: str
    override: NumberShown
    set: NumberShown


class PointNumbers(TypedDict):
    """Volts, watts, cable loss and level at a point; `same` where both states agree in all."""

    point: str
    rows: list[NumberRow]
    same: bool


def point_numbers(body: PointBody, manner: Manner) -> PointNumbers:
    """The ask `point_numbers`."""
    zone, point = find_point(body.job, body.point)
    lines = solve_within(body.job, Reach(frozenset((zone.id,))))
    found = {(one.what, one.state): one for one in point_findings(lines, point.id)}
    # a control and a junction draw nothing themselves: what passes is told as the load below
    draws = point.fitted.is_ in ("loudspeaker", "existing")
    names = [name for name in NUMBERS if draws or name != "watts_w"]
    rows = [_row(name, found, manner=manner) for name in names]
    same = all(row["override"]["shown"] == row["set"]["shown"] for row in rows)
    return {"point": point.id, "rows": rows, "same": same}


def _row(
    name: str, found: dict[tuple[str, State | None], Finding], *, manner: Manner
) -> NumberRow:  # fmt: skip
    override, as_set = (
        _shown(found.get((f"point_{name}", state)), manner) for state in ("override", "set")
    )
    return {
        "what": name,
        "name": say("drawing", name, language=manner.language),
        "override": override,
        "set": as_set,
    }


def _shown(finding: Finding | None, manner: Manner) -> NumberShown:
    if finding is None or finding.verdict == "unknown":
        return {"shown": say("face", "not_known", language=manner.language), "finding": None}
    return {"shown": range_text(finding, manner), "finding": finding.id}

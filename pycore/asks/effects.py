"""What a command at one loudspeaker does: to itself, its zone, output, pool, control, far end."""

from collections.abc import Iterator, Sequence
from typing import Literal, NamedTuple

from typing_extensions import TypedDict

from pycore.asks.shown import Bounds, bounds_text, range_text
from pycore.calc.finding import Finding, Verdict
from pycore.calc.parts_of_limit import part_id
from pycore.calc.ripple import Rejudged
from pycore.calc.sound import change_db
from pycore.ground.units import Manner, show
from pycore.ground.words import say
from pycore.jobs import Job, Point, Zone

What = Literal["this", "zone", "output", "pool", "control", "far"]


class Effect(TypedDict):
    """One number as it would be. `share_fraction` is of its limit; null is not known.

    `finding` opens its working, asked with the same command.
    """

    what: What
    name: str
    shown: str
    share_fraction: float | None
    verdict: Verdict
    finding: str


class Trial(NamedTuple):
    """A job before and after a command, and the point it is about."""

    before: Rejudged
    after: Rejudged
    point: str | None

    @property
    def job(self) -> Job:
        """The job as it would be."""
        return self.after.loads.job


def effects_of(trial: Trial, *, manner: Manner) -> list[Effect]:
    """The effects of a command at one point; none of any other."""
    zone = next(
        (zone for zone in trial.job.zones if any(point.id == trial.point for point in zone.line)),
        None,
    )
    return [] if zone is None else list(_effects(trial, zone, manner=manner))


def keeps_all(trial: Trial, effects: Sequence[Effect]) -> bool:
    """Whether every limit the point bears on is known and kept, with its reserve.

    A line without any lengths is not judged by its loss: that is told as not checked.
    """
    found = list(trial.after.findings.values())
    own = [one.verdict for one in found if one.where == {"point": trial.point} and is_mark(one)]
    lost = [
        one.verdict
        for one in found
        if one.what == "zone_loss_db" and one.code != "zone_loss_not_entered"
    ]
    verdicts = [*own, *lost, *(one["verdict"] for one in effects)]
    return "ok" in verdicts and all(one in ("ok", "note") for one in verdicts)


def is_mark(finding: Finding) -> bool:
    """Whether it speaks of a selector and its row, not of who is heard."""
    return finding.what != "heard_in_page"


def _effects(trial: Trial, zone: Zone, *, manner: Manner) -> Iterator[Effect]:
    sound_db = change_db(trial.before.lines, trial.after.lines, point=trial.point or "")
    if sound_db is not None:
        text = show(sound_db, "db", manner=manner)
        more = say("effect", "more", values={"value": text}, language=manner.language)
        opens = f"sound_change_db:{trial.point}"
        yield _effect("this", more if sound_db > 0 else text, finding=opens, manner=manner)
    asked = trial.after.loads.asked.get((zone.id, "override"))
    if asked is not None:
        text = bounds_text(Bounds(*asked.override), "w", manner=manner)
        yield _effect("zone", text, finding=f"zone_load_w:{zone.id}:override", manner=manner)
    found = list(trial.after.findings.values())
    for what, finding in _loads(trial, zone, found=found):
        yield _share(what, finding, manner=manner)
    far = next((one for one in found if _is_loss(one, zone)), None)
    if far is not None and far.value is not None:
        text = range_text(far, manner)
        yield _effect("far", text, verdict=far.verdict, finding=far.id, manner=manner)


def _loads(trial: Trial, zone: Zone, *, found: list[Finding]) -> Iterator[tuple[What, Finding]]:
    """The output, the pool it is in, and the nearest control above the point."""
    output = zone.page_output or zone.output
    amplifier, which = _pool_of(trial.job, output)
    control = _control_above(zone, trial.point)
    wanted: tuple[tuple[What, str, dict[str, str | None], int | None], ...] = (
        ("output", "output_load_w", {"output": output}, None),
        ("pool", "pool_load_w", {"amplifier": amplifier}, which),
        ("control", "attenuator_load_w", {"point": control}, None),
    )
    for what, name, where, number in wanted:
        here = [
            one
            for one in found
            if one.what == name and one.where == where and one.values.get("which") == number
        ]
        hardest = [one for one in here if what == "control" or one.state == "override"]
        if hardest:
            yield what, hardest[0]


def _pool_of(job: Job, output: str | None) -> tuple[str | None, int | None]:
    """The amplifier of an output, and the number of its pool where there are several."""
    for amplifier in job.amplifiers:
        if output in {one.id for one in amplifier.outputs}:
            pools = amplifier.pools or ()
            if not any(output in pool.outputs for pool in pools):
                return (amplifier.id, None) if amplifier.pools is None else (None, None)
            number = next(at for at, pool in enumerate(pools) if output in pool.outputs)
            return amplifier.id, number if len(pools) > 1 else None
    return None, None


def _control_above(zone: Zone, point: str | None) -> str | None:
    """The nearest attenuator between a point and the terminals."""
    points: dict[str | None, Point] = {one.id: one for one in zone.line}
    above = points[point].after if point in points else None
    while above is not None and points[above].fitted.is_ != "attenuator":
        above = points[above].after
    return above


def _is_loss(finding: Finding, zone: Zone) -> bool:
    return finding.what == "zone_loss_db" and finding.where == {"zone": zone.id}


def _share(what: What, finding: Finding, *, manner: Manner) -> Effect:
    """A load as its share of its limit, or in watts where the limit is not known."""
    share, opens = finding.values.get("share"), finding.id
    if isinstance(share, float):
        opens = part_id(finding.id, "share")
        marks = (1.0, float(finding.values["fraction"] or 1.0))
        bounds = Bounds(share, None, None)
        if finding.high is None:
            bounds = Bounds(None, share, None)
        elif finding.low != finding.high:
            bounds = Bounds(None, None, share)
        text = bounds_text(bounds, "fraction", manner=manner, marks=marks)
    else:
        text = range_text(finding, manner)
    made = _effect(what, text, verdict=finding.verdict, finding=opens, manner=manner)
    made["share_fraction"] = share if isinstance(share, float) else None
    return made


def _effect(
    what: What, shown: str, *, finding: str, manner: Manner, verdict: Verdict = "note"
) -> Effect:
    return {
        "what": what,
        "name": say("effect", what, language=manner.language),
        "shown": shown,
        "share_fraction": None,
        "verdict": verdict,
        "finding": finding,
    }

"""How much louder or quieter a loudspeaker becomes: its watts, its sensitivity, its cable."""

from typing import NamedTuple

from pycore.calc.solve import Line, Lines
from pycore.formulas import arrival, power
from pycore.jobs import LoudspeakerKind


class Source(NamedTuple):
    """What one loudspeaker makes its sound of. None is not known, or below a control that is off.

    `sounds_db`: decibels a drawn watt, of its kind; None where the kind does not say.
    """

    kind: str | None
    draw_w: float | None
    loss_db: float | None
    sounds_db: float | None


def change_db(before: Lines, after: Lines, *, point: str) -> float | None:
    """How much louder (dB) a loudspeaker is afterwards with every control bypassed.

    By taps alone where the cable is not known; None where the taps or kinds say too little.
    """
    was, now = _source(before, point), _source(after, point)
    if was is None or now is None or not was.draw_w or not now.draw_w:
        return None
    sounds_db = 0.0
    if was.kind != now.kind:
        if was.sounds_db is None or now.sounds_db is None:
            return None
        sounds_db = now.sounds_db - was.sounds_db
    known = was.loss_db is not None and now.loss_db is not None
    cable_db = (now.loss_db or 0.0) - (was.loss_db or 0.0) if known else 0.0
    return arrival.change_of_sound_db(
        power_db=power.level_of_power_ratio_db(factor=now.draw_w / was.draw_w),
        sensitivity_db=sounds_db,
        cable_db=cable_db,
    )


def _source(lines: Lines, point: str) -> Source | None:
    for (_, state), line in lines.solved.items():
        if state == "override":
            node = next((at for at, one in enumerate(line.laid.points, 1) if one.id == point), 0)
            if node:
                return _source_at(lines, line, node=node)
    return None


def _source_at(lines: Lines, line: Line, *, node: int) -> Source | None:
    fitted = line.laid.points[node - 1].fitted
    if fitted.is_ != "loudspeaker":
        return None
    kind = next((one for one in lines.job.kinds.loudspeakers if one.id == fitted.kind), None)
    loss_db = None
    if line.value is not None and not line.laid.beyond[node]:
        loss_db = line.loss_at(line.value, node)
    draw_w = line.laid.draws[node].value
    return Source(fitted.kind, draw_w, loss_db, sounds_db(kind) if kind else None)


def sounds_db(kind: LoudspeakerKind) -> float | None:
    """Decibels a drawn watt: its sensitivity less what its transformer is said to lose."""
    if kind.sensitivity_db is None:
        return None
    return kind.sensitivity_db - (kind.transformer_loss_db or 0.0)

"""How much louder or quieter a loudspeaker becomes: its watts, its sensitivity, its cable."""

from typing import NamedTuple

from pycore.calc.draws import Draw
from pycore.calc.solve import Line, Lines
from pycore.formulas import arrival, power
from pycore.jobs import Loudspeaker, LoudspeakerKind


class Source(NamedTuple):
    """What one loudspeaker makes its sound of. None is not known, or below a control that is off.

    `sensitivity_db`: decibels a watt, of its kind; None where the kind does not say.
    """

    fitted: Loudspeaker
    line_v: float
    draw: Draw
    loss_db: float | None
    sensitivity_db: float | None
    transformer_loss_db: float

    @property
    def kind(self) -> str | None:
        """What it is."""
        return self.fitted.kind

    @property
    def draw_w(self) -> float | None:
        """Watts it draws (W)."""
        return self.draw.value

    @property
    def sounds_db(self) -> float | None:
        """Decibels a drawn watt."""
        if self.sensitivity_db is None:
            return None
        return arrival.sound_of_watt_db(
            kind_db=self.sensitivity_db, transformer_loss_db=self.transformer_loss_db
        )


def change_db(before: Lines, after: Lines, *, point: str) -> float | None:
    """How much louder (dB) a loudspeaker is afterwards with every control bypassed.

    By taps alone where the cable is not known; None where the taps or kinds say too little.
    """
    was, now = source_of(before, point), source_of(after, point)
    if was is None or now is None or not was.draw_w or not now.draw_w:
        return None
    sounds_db = 0.0
    if was.kind != now.kind:
        if was.sounds_db is None or now.sounds_db is None:
            return None
        sounds_db = arrival.difference_db(would_db=now.sounds_db, now_db=was.sounds_db)
    cable_db = 0.0
    if was.loss_db is not None and now.loss_db is not None:
        cable_db = arrival.difference_db(would_db=now.loss_db, now_db=was.loss_db)
    ratio = power.ratio_of_watts(would_w=now.draw_w, now_w=was.draw_w)
    return arrival.change_of_sound_db(
        power_db=power.level_of_power_ratio_db(factor=ratio),
        sensitivity_db=sounds_db,
        cable_db=cable_db,
    )


def source_of(lines: Lines, point: str) -> Source | None:
    """What a loudspeaker makes its sound of with every control bypassed; None of any other."""
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
    sensitivity_db = kind.sensitivity_db if kind else None
    transformer_loss_db = (kind.transformer_loss_db if kind else None) or 0.0
    return Source(
        fitted=fitted,
        line_v=line.laid.line_v,
        draw=line.laid.draws[node],
        loss_db=loss_db,
        sensitivity_db=sensitivity_db,
        transformer_loss_db=transformer_loss_db,
    )


def sounds_db(kind: LoudspeakerKind) -> float | None:
    """Decibels a watt of its marks: its sensitivity, less what its transformer is said to lose
    where the marks tell what is drawn, not what is delivered."""
    if kind.sensitivity_db is None:
        return None
    lost_db = 0.0 if kind.tap_means == "delivered" else kind.transformer_loss_db or 0.0
    return arrival.sound_of_watt_db(kind_db=kind.sensitivity_db, transformer_loss_db=lost_db)

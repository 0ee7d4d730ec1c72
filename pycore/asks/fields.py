"""Numbers as a person would type them, so that a form can show what stands there now."""

from functools import cache

from pydantic import BaseModel

from pycore.asks.answers import Faces
from pycore.asks.shown import Bounds, bounds_text, marks_of_loss
from pycore.calc.between import Ends, ends_of
from pycore.calc.line_loss import limit_of
from pycore.calc.solve import Line, Lines
from pycore.ground.units import Manner, as_typed, unit_of
from pycore.jobs import Job


def add_fields(faces: Faces, job: Job, *, lines: Lines, manner: Manner) -> None:
    """Write into each face its numbers as typed, and the cable's loss up to each loudspeaker."""
    faces["job"]["fields"] = texts_of(job.limits, manner)
    things = faces["things"]
    for amplifier in job.amplifiers:
        pools = enumerate(amplifier.pools or ())
        things[amplifier.id]["fields"] = {
            f"pools.{number}.{name}": text
            for number, pool in pools
            for name, text in texts_of(pool, manner).items()
        }
        for output in amplifier.outputs:
            things[output.id]["fields"] = texts_of(output, manner)
    for zone in job.zones:
        things[zone.id]["fields"] = texts_of(zone, manner)
        for point in zone.line:
            own = texts_of(point.fitted, manner)
            things[point.id]["fields"] = {**texts_of(point, manner), **own}
    for (_, state), line in lines.solved.items():
        if state == "override":
            marks = marks_of_loss(limit_of(line, job.limits.loss_db))
            _add_losses(faces, line, marks=marks, manner=manner)


def _add_losses(faces: Faces, line: Line, *, marks: tuple[float, ...], manner: Manner) -> None:
    """The cable's loss up to each point of a line: a number, or what it lies between."""
    for point, ends in zip(line.laid.points, ends_of(line), strict=True):
        if ends["loss_db"] != Ends(None):
            bounds = Bounds(*ends["loss_db"])
            text = bounds_text(bounds, "db", manner=manner, marks=marks)
            faces["things"][point.id]["loss"] = text


def texts_of(model: BaseModel, manner: Manner) -> dict[str, str]:
    """Every number of a model that carries a unit, as the parser reads it back."""
    texts: dict[str, str] = {}
    for name, unit in _with_unit(type(model)):
        value = getattr(model, name)
        if isinstance(value, float | int):
            texts[name] = as_typed(value, unit, manner=manner)
    return texts


@cache
def _with_unit(kind: type[BaseModel]) -> tuple[tuple[str, str], ...]:
    """The fields of a model that carry a unit, and which."""
    units = ((name, unit_of(name)) for name in kind.model_fields)
    return tuple((name, unit) for name, unit in units if unit is not None)

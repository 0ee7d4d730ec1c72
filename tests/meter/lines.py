"""Lines to measure on: the two reference lines, and any line as a job."""

from collections.abc import Sequence
from typing import Any

from pycore.jobs import Job
from pycore.jobs.catalogue import DEFAULT_LIMITS


def speaker(
    number: int, *, after: str | None, tap_w: float, at_v: float, **more: Any
) -> dict[str, Any]:
    """A loudspeaker point."""
    fitted: dict[str, Any] = {
        "is": "loudspeaker",
        "label": f"S{number}",
        "connected": True,
        "tap_w": tap_w,
        "tap_at_v": at_v,
    }
    fitted.update(more.pop("fitted", {}))
    return {"id": f"s{number}", "after": after, "fitted": fitted, **more}


def chain(
    count: int, *, tap_w: float, at_v: float, first_m: float, step_m: float
) -> list[dict[str, Any]]:
    """Loudspeakers one behind the other on the cable "pair"."""
    return [
        speaker(
            number,
            after=f"s{number - 1}" if number > 1 else None,
            tap_w=tap_w,
            at_v=at_v,
            length_m=first_m if number == 1 else step_m,
            cable="pair",
        )
        for number in range(1, count + 1)
    ]


def job_of(
    points: Sequence[dict[str, Any]], *, line_v: float, cable: dict[str, Any], **more: Any
) -> Job:
    """A job with one amplifier, one output "out" and one zone "zone"."""
    output = {"id": "out", "name": "Output", "line_v": line_v, **more.pop("output", {})}
    amplifier = {"id": "amp", "name": "Amplifier", "outputs": [output]}
    zone = {"id": "zone", "name": "Zone", "output": "out", "line": list(points)}
    kinds = {"cables": [{"id": "pair", "name": "pair", "metal": "copper", **cable}]}
    kinds.update(more.pop("kinds", {}))
    limits = {**DEFAULT_LIMITS.model_dump(), "conductor_c": 20.0, **more.pop("limits", {})}
    return Job.model_validate_json(
        __import__("json").dumps(
            {
                "format": "rungline-job",
                "version": 1,
                "id": "job",
                "name": "Test",
                "rev": 0,
                "limits": limits,
                "kinds": kinds,
                "amplifiers": [amplifier],
                "zones": [zone, *more.pop("zones", [])],
                **more,
            }
        )
    )


# Line A: 10 × 5 W, 70.7 V, 16 AWG stranded at 20 °C, 30 m and 9 × 10 m; 0.63 µH/m, 63 pF/m.
AWG_16 = {"awg": 16, "stranded": True, "inductance_uh_per_m": 0.63, "capacitance_pf_per_m": 63.0}
# Line B: 40 × 2.5 W, 100 V, 1.5 mm² class 5, 25 m and 39 × 6 m.
MM2_1_5 = {"area_mm2": 1.5, "class": 5, "inductance_uh_per_m": 0.63, "capacitance_pf_per_m": 63.0}


def line_a(**more: Any) -> Job:
    """The first reference line."""
    points = chain(10, tap_w=5.0, at_v=70.7, first_m=30.0, step_m=10.0)
    return job_of(points, line_v=70.7, cable=AWG_16, **more)


def line_b(**more: Any) -> Job:
    """The second reference line."""
    points = chain(40, tap_w=2.5, at_v=100.0, first_m=25.0, step_m=6.0)
    return job_of(points, line_v=100.0, cable=MM2_1_5, **more)

"""Lines for tests: grown at random, told in plain numbers, and made into a job.

A `Stem` says what a circuit solver needs to know, without any of the core's own words or
figures, so that the outside solvers start from the same place and not from our arithmetic.
"""

import json
import random
from typing import Any, NamedTuple

from pycore.jobs import Job

# Loop ohms per kilometre at 20 °C, microhenries and picofarads per metre: five pairs.
CABLES = (
    (106.0, 0.66, 52.0),
    (26.875, 0.63, 63.0),
    (26.6, 0.64, 90.0),
    (10.6, 0.62, 75.0),
    (6.7, 0.61, 180.0),
)
TAPS = (
    (1.25, 70.7),
    (2.5, 70.7),
    (5.0, 70.7),
    (7.5, 70.7),
    (30.0, 70.7),
    (6.0, 100.0),
    (5.0, 25.0),
)
LENGTHS_M = (0.0, 0.01, 0.5, 3.0, 8.0, 8.0, 25.0, 60.0, 400.0)


class Stem(NamedTuple):
    """One point: the stem it hangs on (−1: the terminals), its section, what is fitted."""

    after: int
    length_m: float
    cable: int
    joint_ohm: float
    tap: tuple[float, float] | None
    attenuator: tuple[float, float, str] | None  # setting dB, insertion dB, form
    off: bool = False


def grow(chance: random.Random, count: int, *, controls: bool = True) -> list[Stem]:
    """A line of `count` points that branches, with all that can hang on one."""
    stems: list[Stem] = []
    for number in range(count):
        after = number - 1 if chance.random() < 0.7 else chance.randrange(-1, max(number, 1))
        what = chance.random()
        control = controls and what < 0.08
        stems.append(
            Stem(
                after=min(after, number - 1),
                length_m=chance.choice(LENGTHS_M),
                cable=chance.randrange(len(CABLES)),
                joint_ohm=chance.choice((0.0, 0.0, 0.0, 0.2)),
                tap=None if control or what < 0.2 else chance.choice(TAPS),
                attenuator=(
                    chance.choice((0.0, -3.0, -6.0, -20.0)),
                    chance.choice((0.0, 0.5)),
                    chance.choice(("autotransformer", "autotransformer", "pad")),
                )
                if control
                else None,
                off=control and chance.random() < 0.1,
            )
        )
    return stems


def make_job(
    stems: list[Stem], *, line_v: float = 70.7, source_ohm: float | None = None, **limits: float
) -> Job:
    """The job a line of stems stands for: zone "z" on output "o", points "p0", "p1" and on."""
    return read_job(
        {
            "amplifiers": [amplifier(line_v, source_ohm)],
            "zones": [
                {"id": "z", "name": "Hall", "output": "o", "areas": [], "line": make_line(stems)}
            ],
            "limits": {"loss_db": 0.5, "load_fraction": 0.8, "conductor_c": 20.0, **limits},
            "kinds": {"cables": cable_kinds()},
        }
    )


def read_job(parts: dict[str, Any]) -> Job:
    """A job from what differs; the rest is plain."""
    whole = {
        "format": "rungline-job",
        "version": 1,
        "id": "j",
        "name": "Trial",
        "rev": 0,
        "limits": {"loss_db": 0.5, "load_fraction": 0.8, "conductor_c": 20.0},
        "kinds": {},
        **parts,
    }
    return Job.model_validate_json(json.dumps(whole))


def amplifier(line_v: float, source_ohm: float | None = None) -> dict[str, Any]:
    """One amplifier with one output "o"."""
    output = {"id": "o", "name": "Out", "line_v": line_v, "max_w": 500.0, "source_ohm": source_ohm}
    return {"id": "a", "name": "Rack", "pools": [], "outputs": [output]}


def cable_kinds() -> list[dict[str, Any]]:
    """The pairs of this file as kinds "c0", "c1" and on."""
    return [
        {
            "id": f"c{number}",
            "name": f"pair {number}",
            "loop_ohm_per_km": ohms,
            "metal": "copper",
            "inductance_uh_per_m": inductance,
            "capacitance_pf_per_m": capacitance,
        }
        for number, (ohms, inductance, capacitance) in enumerate(CABLES)
    ]


def make_line(stems: list[Stem], prefix: str = "p") -> list[dict[str, Any]]:
    """The points of a zone."""
    return [
        {
            "id": f"{prefix}{number}",
            "after": None if stem.after < 0 else f"{prefix}{stem.after}",
            "length_m": stem.length_m,
            "cable": f"c{stem.cable}",
            "joint_ohm": stem.joint_ohm,
            "fitted": _fitted(stem, f"S{number}"),
        }
        for number, stem in enumerate(stems)
    ]


def _fitted(stem: Stem, label: str) -> dict[str, Any]:
    if stem.attenuator is not None:
        set_db, insertion_db, form = stem.attenuator
        known = {"set_db": set_db, "insertion_db": insertion_db, "form": form}
        return {"is": "attenuator", "off": stem.off, "label": label, **known}
    if stem.tap is None:
        return {"is": "junction", "label": label}
    tap_w, tap_at_v = stem.tap
    tap = {"tap_w": tap_w, "tap_at_v": tap_at_v}
    return {"is": "loudspeaker", "label": label, "connected": True, **tap}


def speaker(
    number: int, *, length_m: float | None, tap_w: float | None, **more: Any
) -> dict[str, Any]:
    """One loudspeaker of a chain "p0", "p1" and on, on cable "c"; `more` changes its point."""
    fitted = {"is": "loudspeaker", "label": f"S{number}", "connected": True}
    point = {
        "id": f"p{number}",
        "after": f"p{number - 1}" if number else None,
        "length_m": length_m,
        "cable": "c",
        "fitted": {**fitted, "tap_w": tap_w, "tap_at_v": 70.7, **more.pop("fitted", {})},
    }
    return {**point, **more}


def make_chain(
    runs: list[tuple[float, float]],
    *,
    cable: dict[str, Any],
    line_v: float = 70.7,
    conductor_c: float = 20.0,
    loss_db: float = 0.5,
) -> Job:
    """A chain of loudspeakers, (metres in front, watts) each, all on one cable."""
    points = [
        speaker(number, length_m=length_m, tap_w=tap_w, fitted={"tap_at_v": line_v})
        for number, (length_m, tap_w) in enumerate(runs)
    ]
    return read_job(
        {
            "limits": {"loss_db": loss_db, "load_fraction": 0.8, "conductor_c": conductor_c},
            "kinds": {"cables": [{"id": "c", "name": "pair", "metal": "copper", **cable}]},
            "amplifiers": [amplifier(line_v)],
            "zones": [{"id": "z", "name": "Hall", "output": "o", "areas": [], "line": points}],
        }
    )

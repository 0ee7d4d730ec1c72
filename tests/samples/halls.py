"""One zone at a time, and looking up what is told of it."""

from typing import Any, cast

from pycore.calc.finding import Finding
from pycore.calc.line import line_findings
from pycore.calc.solve import point_rows
from pycore.jobs import Job
from tests.samples.lines import amplifier, read_job

PAIR = {"loop_ohm_per_km": 26.875, "inductance_uh_per_m": 0.0, "capacitance_pf_per_m": 0.0}
KIND: dict[str, Any] = {"id": "k", "name": "six", "taps": [{"w": w, "at_v": 70.7} for w in (2, 5)]}


def job_of(points: list[dict[str, Any]], **zone: Any) -> Job:
    """One zone of these points on output "o", with a second output "o2" of 100 V."""
    rack = amplifier(70.7, zone.pop("source_ohm", None))
    rack["outputs"].append({"id": "o2", "name": "Two", "line_v": 100.0})
    limits = {"loss_db": 0.5, "load_fraction": 0.8, "conductor_c": 20.0}
    cables = [{"id": "c", "name": "pair", "metal": "copper", **PAIR}]
    whole = {"id": "z", "name": "Hall", "output": "o", "areas": [], "line": points, **zone}
    kinds = {"cables": cables, "loudspeakers": [KIND]}
    return read_job({"amplifiers": [rack], "zones": [whole], "kinds": kinds, "limits": limits})


def told(job: Job, what: str = "zone_loss_db", *, state: str = "override") -> Finding:
    """The one finding of a kind in a state."""
    (found,) = (one for one in line_findings(job) if (one.what, one.state) == (what, state))
    return found


def row_of(job: Job, point: str, *, state: str = "override") -> dict[str, Any]:
    """The row of a point in a state."""
    (row,) = (one for one in point_rows(job) if (one["point"], one["state"]) == (point, state))
    return cast("dict[str, Any]", row)


def attenuator(after: str | None, **fitted: Any) -> dict[str, Any]:
    """A control "v" with its own section of no length."""
    whole = {"is": "attenuator", "label": "Control", "set_db": -6.0, "off": False, **fitted}
    return {"id": "v", "after": after, "length_m": 0.0, "cable": None, "fitted": whole}

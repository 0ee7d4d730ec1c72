"""A cable of the job as the ohms, inductance and capacitance of its pair, step by step."""

import math
from typing import NamedTuple

from pycore.calc.section import skin_factor
from pycore.formulas import cable, conductors
from pycore.ground.sources import Source
from pycore.ground.working import Equation, Known, Origin, Step, computed, step
from pycore.jobs import CableKind
from pycore.jobs.catalogue_cables import USUAL_CAPACITANCE_PF_PER_M, USUAL_INDUCTANCE_UH_PER_M

METRES_PER_INCH = 0.0254
# Up to here the direct-current resistance is right within 0.3 % for every usual wire.
DIRECT_UP_TO_HZ = 1000.0
# Between these the resistance of copper rises in a straight line, IEC 60228 Annex B.
STRAIGHT_FROM_C, STRAIGHT_TO_C = -20.0, 100.0
# A stranded gauge is taken as seven wires where its wires' own size matters.
WIRES = 7


class Pair(NamedTuple):
    """One cable at its working heat; `steps` tell how its loop resistance came to be, `said` who
    said its inductance and capacitance."""

    loop_ohm_per_km: float
    inductance_uh_per_m: float
    capacitance_pf_per_m: float
    area_mm2: float | None
    steps: tuple[Step, ...]
    assumptions: tuple[str, ...]
    said: tuple[Origin, Origin]

    def series_ohm_per_m(self, hz: float) -> complex:
        """Ohms per metre of route at `hz` (Hz), with skin effect where it counts."""
        ohm_per_m = self.loop_ohm_per_km / 1000
        if hz > DIRECT_UP_TO_HZ:
            ohm_per_m *= skin_factor(hz=hz, ohm_per_m=ohm_per_m / 2)
        return complex(ohm_per_m, 2 * math.pi * hz * self.inductance_uh_per_m * 1e-6)

    def shunt_s_per_m(self, hz: float) -> complex:
        """Siemens per metre between the conductors at `hz` (Hz)."""
        return complex(0.0, 2 * math.pi * hz * self.capacitance_pf_per_m * 1e-12)


class _Tale:
    """A resistance on its way from the kind's data to the loop: its steps, what it assumes."""

    def __init__(self, name: str) -> None:
        self.name = name
        self.steps: list[Step] = []
        self.assumptions: list[str] = []
        self.known = Known(0.0, "ohm_per_km", "computed")

    def go(self, code: str, run: Equation, *, inputs: dict[str, Known]) -> None:
        """Take one more step from what is known so far."""
        made = step(code, run, inputs=inputs, cable=self.name)
        self.steps.append(made)
        self.known = computed(made)


def pair_of(kind: CableKind, conductor_c: float, *, said: Origin = "typed") -> Pair:
    """The pair a kind stands for, its conductors at `conductor_c` (°C), and who said that."""
    tale = _Tale(kind.name)
    if kind.awg is not None:
        area_mm2: float | None = _from_gauge(tale, kind, awg=kind.awg)
    elif kind.area_mm2 is not None:
        area_mm2 = kind.area_mm2
        _from_area(tale, kind, area_mm2=kind.area_mm2)
    else:
        area_mm2 = None
        tale.known = Known(kind.loop_ohm_per_km or 0.0, "ohm_per_km", "catalogue")
        tale.assumptions.append("loop_at_20")
    if kind.metal == "copper_clad_aluminium" and area_mm2 is not None:
        fraction = Known(conductors.CLAD_FRACTION, "fraction", "assumed", cable.CLAD)
        inputs = {"ohm_per_km": tale.known, "conductivity_fraction": fraction}
        tale.go("cable_clad", cable.clad_ohm_per_km, inputs=inputs)
        tale.assumptions.append("clad_lowest")
    heat = {"ohm_per_km": tale.known, "conductor_c": Known(conductor_c, "c", said)}
    tale.go("cable_heat", cable.heated_ohm_per_km, inputs=heat)
    if not STRAIGHT_FROM_C <= conductor_c <= STRAIGHT_TO_C:
        tale.assumptions.append("heat_outside")
    if area_mm2 is not None:
        tale.go("cable_loop", cable.loop_ohm_per_km, inputs={"ohm_per_km": tale.known})
    return _finish(tale, kind, area_mm2=area_mm2)


def _finish(tale: _Tale, kind: CableKind, *, area_mm2: float | None) -> Pair:
    inductance, capacitance = kind.inductance_uh_per_m, kind.capacitance_pf_per_m
    if inductance is None or capacitance is None:
        tale.assumptions.append("pair_usual")
    return Pair(
        loop_ohm_per_km=tale.steps[-1].result,
        inductance_uh_per_m=USUAL_INDUCTANCE_UH_PER_M if inductance is None else inductance,
        capacitance_pf_per_m=USUAL_CAPACITANCE_PF_PER_M if capacitance is None else capacitance,
        area_mm2=area_mm2,
        steps=tuple(tale.steps),
        assumptions=tuple(tale.assumptions),
        said=(
            "assumed" if inductance is None else "catalogue",
            "assumed" if capacitance is None else "catalogue",
        ),
    )


def _from_gauge(tale: _Tale, kind: CableKind, *, awg: int) -> float:
    """Ohms per kilometre at 20 °C of a gauge; gives its copper (mm²)."""
    tale.go(
        "cable_area", cable.area_of_gauge_mm2, inputs={"awg": Known(float(awg), "awg", "catalogue")}
    )
    area_mm2 = tale.steps[-1].result
    tale.go("cable_copper", cable.resistance_of_area_ohm_per_km, inputs={"area_mm2": tale.known})
    if kind.stranded is None:
        tale.assumptions.append("strands_not_known")
    stranded = kind.stranded is not False
    if stranded:
        lay = Known(conductors.LAY_FACTOR, "factor", "table", cable.STRANDING)
        inputs = {"ohm_per_km": tale.known, "lay_factor": lay}
        tale.go("cable_stranded", cable.stranded_ohm_per_km, inputs=inputs)
    if kind.tinned:
        wire_m = cable.diameter_of_gauge_m(awg=awg)
        if stranded:
            wire_m /= WIRES**0.5
            tale.assumptions.append("seven_wires")
        factor, source = tin_factor_of(wire_m)
        tin = Known(factor, "factor", "table", source)
        tale.go(
            "cable_tinned",
            cable.tinned_ohm_per_km,
            inputs={"ohm_per_km": tale.known, "tin_factor": tin},
        )
    return area_mm2


def tin_factor_of(wire_m: float) -> tuple[float, Source]:
    """How much more a tinned wire of `wire_m` (m) resists than a plain one, and the source."""
    rows = conductors.TINNED_ROWS
    inches = wire_m / METRES_PER_INCH
    _, ohm_gram, source = next((row for row in rows if inches > row[0]), rows[-1])
    return ohm_gram / conductors.COPPER_OHM_GRAM, source


def _from_area(tale: _Tale, kind: CableKind, *, area_mm2: float) -> None:
    """Ohms per kilometre at 20 °C of a metric cable: the most its class may have."""
    if kind.strand_class is None:
        tale.assumptions.append("class_not_known")
    fine = kind.strand_class in (None, 5)
    sizes = sorted(conductors.IEC_60228_OHM_PER_KM)
    nearest = max((one for one in sizes if one <= area_mm2 * (1 + 1e-9)), default=sizes[0])
    row = conductors.IEC_60228_OHM_PER_KM[nearest]
    if fine:
        printed, source = row.tinned_5 if kind.tinned else row.plain_5, conductors.IEC_CLASS_5
    elif kind.tinned:
        printed, source = row.tinned_1_2, conductors.IEC_TINNED_1_2
    else:
        printed, source = row.plain_1_2, conductors.IEC_CLASS_1_2
    tale.known = Known(printed, "ohm_per_km", "table", source)
    if abs(nearest - area_mm2) > 1e-9 * area_mm2:
        inputs = {
            "printed_ohm_per_km": tale.known,
            "printed_mm2": Known(nearest, "mm2", "table", source),
            "area_mm2": Known(area_mm2, "mm2", "catalogue"),
        }
        tale.go("cable_between", cable.between_sizes_ohm_per_km, inputs=inputs)
        tale.assumptions.append("size_between")

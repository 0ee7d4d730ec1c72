"""Usual cables for loudspeaker lines, with the source of each figure.

The kinds are generic: a gauge or a nominal area, stranded, plain copper. A job copies one
when it uses it. Which sizes are usual is common practice, no source.
"""

from collections.abc import Mapping

from pycore.ground.sources import PRACTICE, Source
from pycore.jobs.kinds import CableKind

USUAL_AWG = (22, 20, 18, 16, 14, 12, 10)
USUAL_MM2 = (0.5, 0.75, 1.0, 1.5, 2.5, 4.0, 6.0)

# A jacketed pair whose wires lie two diameters apart in an insulation of permittivity 3
# works out at 0.627 µH/m and 63.3 pF/m; that spacing is common practice, no source.
USUAL_INDUCTANCE_UH_PER_M = 0.63
USUAL_CAPACITANCE_PF_PER_M = 63.0
USUAL_SPACING_FACTOR = 2.0
USUAL_PERMITTIVITY_FACTOR = 3.0

PAIR_GEOMETRY = Source(
    "Two parallel round wires, two diameters apart, permittivity 3",
    "the spacing is common practice, no source",
    "practice",
)
GAUGE_SIZES = Source("ASTM B258", "the gauge, by its formula", "text")
NOMINAL_AREAS = Source("IEC 60228", "nominal area and class, table 3", "second hand")

# Where each figure of the kinds below comes from, by family and field.
FIGURE_SOURCES: Mapping[str, Mapping[str, Source]] = {
    "awg": {
        "awg": GAUGE_SIZES,
        "stranded": PRACTICE,
        "tinned": PRACTICE,
        "inductance_uh_per_m": PAIR_GEOMETRY,
        "capacitance_pf_per_m": PAIR_GEOMETRY,
    },
    "mm2": {
        "area_mm2": NOMINAL_AREAS,
        "strand_class": NOMINAL_AREAS,
        "stranded": PRACTICE,
        "tinned": PRACTICE,
        "inductance_uh_per_m": PAIR_GEOMETRY,
        "capacitance_pf_per_m": PAIR_GEOMETRY,
    },
}


def id_of_gauge(awg: int) -> str:
    """The id of the usual cable of a gauge."""
    return f"awg_{awg}"


def id_of_area(area_mm2: float) -> str:
    """The id of the usual cable of a nominal area (mm²)."""
    return f"mm2_{area_mm2:g}".replace(".", "_")


def cable_kinds(names: Mapping[str, str]) -> tuple[CableKind, ...]:
    """The usual cables, thin to thick in each family, named from a words table."""
    gauges = (_gauge(awg, names) for awg in USUAL_AWG)
    areas = (_area(area_mm2, names) for area_mm2 in USUAL_MM2)
    return (*gauges, *areas)


def _gauge(awg: int, names: Mapping[str, str]) -> CableKind:
    one = id_of_gauge(awg)
    return CableKind(
        id=one,
        name=names[one],
        awg=awg,
        stranded=True,
        tinned=False,
        metal="copper",
        inductance_uh_per_m=USUAL_INDUCTANCE_UH_PER_M,
        capacitance_pf_per_m=USUAL_CAPACITANCE_PF_PER_M,
    )


def _area(area_mm2: float, names: Mapping[str, str]) -> CableKind:
    one = id_of_area(area_mm2)
    return CableKind.model_validate(
        {
            "id": one,
            "name": names[one],
            "area_mm2": area_mm2,
            "class": 5,
            "stranded": True,
            "tinned": False,
            "metal": "copper",
            "inductance_uh_per_m": USUAL_INDUCTANCE_UH_PER_M,
            "capacitance_pf_per_m": USUAL_CAPACITANCE_PF_PER_M,
        }
    )

"""Ohms, inductance and capacitance of a pair of conductors. Lengths are one way.

Resistances are direct-current ones of one conductor unless the name says `loop`.
"""

import math

from pycore.ground.sources import Source
from pycore.ground.working import equation

GAUGE = Source("ASTM B258", "diameter of gauge n: 0.005 in × 92^((36 − n) / 39)", "text")
COPPER = Source(
    "IEC 60028", "annealed copper at 20 °C: 1/58 Ω·mm²/m, 0.00393 per kelvin", "second hand"
)
STRANDING = Source(
    "ASTM B496", "concentric lay: 2 % more resistance (ASTM B8 alike, from memory)", "text"
)
TINNING = Source("ASTM B33", "table 2: resistivity of tinned wires by diameter", "text")
TINNING_THIN = Source("ASTM B33", "table 2, wires of 0.002 to 0.0111 in", "memory")
CLAD = Source("copper-clad aluminium", "62 to 68 % of the conductivity of copper", "second hand")
HEAT = Source("IEC 60228", "Annex B: 254.5 / (234.5 + t), the same line", "text")
TWO_WAYS = Source("Two conductors in series", "out and back", "arithmetic")
PAIR = Source("Two parallel round wires", "inductance and capacitance per length", "memory")
TONE = Source("Resistance and reactance in series", "impedance of a shorted pair", "arithmetic")
SURGE = Source("Telegrapher's equations", "impedance of a line without loss", "arithmetic")


@equation("0.000127 * 92 ** ((36 - awg) / 39)", unit="m", source=GAUGE)
def diameter_of_gauge_m(*, awg: float) -> float:
    """Diameter (m) of a solid wire of gauge `awg`: a diameter of 0.127 mm is gauge 36."""
    return float(0.000127 * 92 ** ((36 - awg) / 39))


@equation("pi / 4 * (0.127 * 92 ** ((36 - awg) / 39)) ** 2", unit="mm2", source=GAUGE)
def area_of_gauge_mm2(*, awg: float) -> float:
    """Copper (mm²) in a conductor of gauge `awg`, solid or stranded."""
    return float(math.pi / 4 * (0.127 * 92 ** ((36 - awg) / 39)) ** 2)


@equation("1000 / (58 * area_mm2)", unit="ohm_per_km", source=COPPER)
def resistance_of_area_ohm_per_km(*, area_mm2: float) -> float:
    """Ohms per kilometre at 20 °C of solid copper of `area_mm2` (mm², above zero)."""
    return 1000 / (58 * area_mm2)


@equation("ohm_per_km * lay_factor", unit="ohm_per_km", source=STRANDING)
def stranded_ohm_per_km(*, ohm_per_km: float, lay_factor: float) -> float:
    """Ohms per kilometre of a stranded conductor: its wires are longer than itself."""
    return ohm_per_km * lay_factor


@equation("ohm_per_km * tin_factor", unit="ohm_per_km", source=TINNING)
def tinned_ohm_per_km(*, ohm_per_km: float, tin_factor: float) -> float:
    """Ohms per kilometre of a tinned conductor, from those of a plain one."""
    return ohm_per_km * tin_factor


@equation("ohm_per_km / conductivity_fraction", unit="ohm_per_km", source=CLAD)
def clad_ohm_per_km(*, ohm_per_km: float, conductivity_fraction: float) -> float:
    """Ohms per kilometre of a clad conductor that conducts a fraction of what copper does."""
    return ohm_per_km / conductivity_fraction


@equation("printed_ohm_per_km * printed_mm2 / area_mm2", unit="ohm_per_km", source=COPPER)
def between_sizes_ohm_per_km(
    *, printed_ohm_per_km: float, printed_mm2: float, area_mm2: float
) -> float:
    """Ohms per kilometre of an area (mm²) no table prints, from the nearest one it does."""
    return printed_ohm_per_km * printed_mm2 / area_mm2


@equation("ohm_per_km * (1 + 0.00393 * (conductor_c - 20))", unit="ohm_per_km", source=HEAT)
def heated_ohm_per_km(*, ohm_per_km: float, conductor_c: float) -> float:
    """Ohms per kilometre at `conductor_c` (°C) from those at 20 °C; about −20 to 100 °C."""
    return ohm_per_km * (1 + 0.00393 * (conductor_c - 20))


@equation("2 * ohm_per_km", unit="ohm_per_km", source=TWO_WAYS)
def loop_ohm_per_km(*, ohm_per_km: float) -> float:
    """Ohms per kilometre of route, out and back."""
    return 2 * ohm_per_km


@equation("loop_ohm_per_km * length_m / 1000 + joint_ohm", unit="ohm", source=TWO_WAYS)
def section_ohm(*, loop_ohm_per_km: float, length_m: float, joint_ohm: float) -> float:
    """Ohms of one section, out and back, `length_m` (m) one way, with its joint (ohm)."""
    return loop_ohm_per_km * length_m / 1000 + joint_ohm


@equation("0.4 * (acosh(spacing_factor) + 0.25)", unit="uh_per_m", source=PAIR)
def inductance_of_pair_uh_per_m(*, spacing_factor: float) -> float:
    """Inductance (µH/m); `spacing_factor` (above 1) is spacing of centres over diameter."""
    return 0.4 * (math.acosh(spacing_factor) + 0.25)


@equation(
    "pi * 8.8541878128 * permittivity_factor / acosh(spacing_factor)",
    unit="pf_per_m",
    source=PAIR,
)
def capacitance_of_pair_pf_per_m(*, spacing_factor: float, permittivity_factor: float) -> float:
    """Capacitance (pF/m); `spacing_factor` (above 1) is spacing of centres over diameter."""
    return math.pi * 8.8541878128 * permittivity_factor / math.acosh(spacing_factor)


@equation(
    "sqrt(loop_ohm_per_km ** 2 + (2 * pi * hz * inductance_uh_per_m / 1000) ** 2)",
    unit="ohm_per_km",
    source=TONE,
)
def loop_at_tone_ohm_per_km(
    *, loop_ohm_per_km: float, hz: float, inductance_uh_per_m: float
) -> float:
    """What a shorted pair has (ohm a kilometre of route) for a tone of `hz` (Hz)."""
    return math.hypot(loop_ohm_per_km, 2 * math.pi * hz * inductance_uh_per_m / 1000)


@equation("1000 * sqrt(inductance_uh_per_m / capacitance_pf_per_m)", unit="ohm", source=SURGE)
def own_impedance_ohm(*, inductance_uh_per_m: float, capacitance_pf_per_m: float) -> float:
    """The pair's own impedance (ohm): a load heavier than it loses treble, a lighter one gains."""
    return 1000 * math.sqrt(inductance_uh_per_m / capacitance_pf_per_m)

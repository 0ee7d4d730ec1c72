"""What an instrument at a loudspeaker line should read, and what its reading means."""

import math

from pycore.ground.sources import OHMS_LAW, PRACTICE, RATIO, Source
from pycore.ground.working import equation

BAND = Source(
    "Relative tolerance", "a band by factor: expected / (1 + t) to × (1 + t)", "arithmetic"
)
COHN = Source(
    "Cohn's theorem",
    "an impedance follows each part of it by that part's share of the watts",
    "memory",
)
UNKNOWN = Source(
    "JCGM 100:2008", "4.3.7: half width of equally likely values, √3 deviations", "memory"
)
LOOP = Source("Two conductors in series", "a short ends the loop", "arithmetic")
TWO_ENDS = Source("Two readings of one short", "sum and difference of two loops", "arithmetic")
QUADRATURE = Source("JCGM 100:2008", "5.1.2: independent uncertainties add in squares", "memory")
CAPACITOR = Source("An open pair", "impedance of its own capacitance", "arithmetic")


@equation("read_ohm - leads_ohm", unit="ohm", source=OHMS_LAW)
def without_leads_ohm(*, read_ohm: float, leads_ohm: float) -> float:
    """What lies beyond the test leads (ohm); not above zero when only leads were measured."""
    return read_ohm - leads_ohm


@equation("at_v / current_a", unit="ohm", source=OHMS_LAW)
def ohm_of_volts_and_amperes(*, at_v: float, current_a: float) -> float:
    """Impedance (ohm) from volts across a pair and amperes (above zero) into it, one tone."""
    return at_v / current_a


@equation(
    "meter_fraction + load_fraction * load_share + cable_fraction * (1 - load_share)",
    unit="fraction",
    source=COHN,
)
def whole_tolerance(
    *, meter_fraction: float, load_fraction: float, load_share: float, cable_fraction: float
) -> float:
    """The tolerance (fraction) of a reading against what was worked out for it.

    `load_share` is how far the reading follows its loudspeakers; the rest follows the cable.
    """
    return meter_fraction + load_fraction * load_share + cable_fraction * (1 - load_share)


@equation("expected_ohm / (1 + tolerance_fraction)", unit="ohm", source=BAND)
def band_low_ohm(*, expected_ohm: float, tolerance_fraction: float) -> float:
    """The lowest reading (ohm) that still agrees with what is expected."""
    return expected_ohm / (1 + tolerance_fraction)


@equation("expected_ohm * (1 + tolerance_fraction)", unit="ohm", source=BAND)
def band_high_ohm(*, expected_ohm: float, tolerance_fraction: float) -> float:
    """The highest reading (ohm) that still agrees with what is expected."""
    return expected_ohm * (1 + tolerance_fraction)


@equation(
    "expected_ohm / (1 + tolerance_fraction)"
    " * (lowest_fraction / usual_fraction) ** follows_fraction",
    unit="ohm",
    source=PRACTICE,
)
def band_low_direct_ohm(
    *,
    expected_ohm: float,
    tolerance_fraction: float,
    lowest_fraction: float,
    usual_fraction: float,
    follows_fraction: float,
) -> float:
    """The lowest direct-current reading (ohm) that still agrees: windings may have less than usual.

    `lowest_fraction`, `usual_fraction`: a winding, as a share of the impedance (above zero).
    """
    low_ohm = expected_ohm / (1 + tolerance_fraction)
    return float(low_ohm * (lowest_fraction / usual_fraction) ** follows_fraction)


@equation(
    "expected_ohm * (1 + tolerance_fraction)"
    " * (highest_fraction / usual_fraction) ** follows_fraction",
    unit="ohm",
    source=PRACTICE,
)
def band_high_direct_ohm(
    *,
    expected_ohm: float,
    tolerance_fraction: float,
    highest_fraction: float,
    usual_fraction: float,
    follows_fraction: float,
) -> float:
    """The highest direct-current reading (ohm) that still agrees, as `band_low_direct_ohm`."""
    high_ohm = expected_ohm * (1 + tolerance_fraction)
    return float(high_ohm * (highest_fraction / usual_fraction) ** follows_fraction)


@equation("log(light_ohm / heavy_ohm) / log(1 + more_fraction)", unit="fraction", source=COHN)
def load_share_of_ohms(*, light_ohm: float, heavy_ohm: float, more_fraction: float) -> float:
    """How far (fraction) a reading follows its loudspeakers: `light_ohm` as they are,
    `heavy_ohm` with each drawing `more_fraction` (above zero) more (ohm, above zero)."""
    return math.log(light_ohm / heavy_ohm) / math.log(1 + more_fraction)


@equation("sqrt(3) * load_share * deviation_s / seen_s", unit="fraction", source=UNKNOWN)
def unknown_load_fraction(*, load_share: float, deviation_s: float, seen_s: float) -> float:
    """What taps nobody knows leave open (fraction, either way): `deviation_s` is the standard
    deviation (S) of what the meter sees (`seen_s`, S, above zero) that comes from them."""
    return math.sqrt(3) * load_share * deviation_s / seen_s


@equation("load_fraction + unknown_fraction", unit="fraction", source=PRACTICE)
def load_tolerance(*, load_fraction: float, unknown_fraction: float) -> float:
    """The tolerance (fraction) of loudspeakers, with what unknown taps add to it."""
    return load_fraction + unknown_fraction


@equation("read_ohm / expected_ohm - 1", unit="fraction", source=RATIO)
def deviation_fraction(*, read_ohm: float, expected_ohm: float) -> float:
    """How far (fraction) a reading lies above what is expected (ohm, above zero)."""
    return read_ohm / expected_ohm - 1


@equation("1000 * read_ohm / loop_ohm_per_km", unit="m", source=LOOP)
def short_distance_m(*, read_ohm: float, loop_ohm_per_km: float) -> float:
    """Metres of route to a short without ohms of its own, from its loop (ohm)."""
    return 1000 * read_ohm / loop_ohm_per_km


@equation(
    "route_m / 2 + 1000 * (near_ohm - far_ohm) / (2 * loop_ohm_per_km)", unit="m", source=TWO_ENDS
)
def two_end_short_m(
    *, near_ohm: float, far_ohm: float, route_m: float, loop_ohm_per_km: float
) -> float:
    """Metres from the near end to a short read from both ends (ohm), whatever its own ohms."""
    return route_m / 2 + 1000 * (near_ohm - far_ohm) / (2 * loop_ohm_per_km)


@equation(
    "max(near_ohm + far_ohm - loop_ohm_per_km * route_m / 1000, 0) / 2",
    unit="ohm",
    source=TWO_ENDS,
)
def two_end_fault_ohm(
    *, near_ohm: float, far_ohm: float, route_m: float, loop_ohm_per_km: float
) -> float:
    """The own resistance (ohm) of a short that was read from both ends (ohm): none where they read
    no more than the loop of the whole route."""
    return max(near_ohm + far_ohm - loop_ohm_per_km * route_m / 1000, 0) / 2


@equation(
    "sqrt((1000 * meter_ohm / loop_ohm_per_km) ** 2 + (distance_m * cable_fraction) ** 2)",
    unit="m",
    source=QUADRATURE,
)
def distance_error_m(
    *, meter_ohm: float, loop_ohm_per_km: float, distance_m: float, cable_fraction: float
) -> float:
    """Metres either way: what the meter leaves open (ohm), and what the cable does (fraction)."""
    return math.sqrt((1000 * meter_ohm / loop_ohm_per_km) ** 2 + (distance_m * cable_fraction) ** 2)


@equation("1e12 / (2 * pi * hz * capacitance_pf_per_m * read_ohm)", unit="m", source=CAPACITOR)
def open_pair_m(*, hz: float, capacitance_pf_per_m: float, read_ohm: float) -> float:
    """Metres of pair with nothing on it that read `read_ohm` (ohm) at `hz` (Hz)."""
    return 1e12 / (2 * math.pi * hz * capacitance_pf_per_m * read_ohm)


@equation("load_ohm * winding_fraction", unit="ohm", source=PRACTICE)
def winding_ohm(*, load_ohm: float, winding_fraction: float) -> float:
    """What an ohmmeter finds (ohm) of a loudspeaker: its winding, a fraction of its impedance."""
    return load_ohm * winding_fraction


@equation("cable_m + others_m", unit="m", source=LOOP)
def on_line_m(*, cable_m: float, others_m: float) -> float:
    """Metres to a short on a line: by the cable alone, and what its loudspeakers hide."""
    return cable_m + others_m


@equation("sqrt(error_m ** 2 + windings_m ** 2)", unit="m", source=QUADRATURE)
def error_with_windings_m(*, error_m: float, windings_m: float) -> float:
    """Metres either way, what windings leave open counted too."""
    return math.hypot(error_m, windings_m)


@equation("route_m * far_ohm / (near_ohm + far_ohm)", unit="m", source=CAPACITOR)
def two_end_break_m(*, route_m: float, near_ohm: float, far_ohm: float) -> float:
    """Metres from the near end to a break in a bare pair that was read from both ends (ohm):
    each part is a capacitor as long as it is."""
    return route_m * far_ohm / (near_ohm + far_ohm)


@equation(
    "route_m * near_ohm * far_ohm * meter_fraction * sqrt(2) / (near_ohm + far_ohm) ** 2",
    unit="m",
    source=QUADRATURE,
)
def two_end_break_error_m(
    *, route_m: float, near_ohm: float, far_ohm: float, meter_fraction: float
) -> float:
    """Metres either way for a break read from both ends, each reading off by a fraction."""
    product = route_m * near_ohm * far_ohm * meter_fraction * math.sqrt(2)
    return product / (near_ohm + far_ohm) ** 2


@equation(
    "distance_m * sqrt(meter_fraction ** 2 + cable_fraction ** 2)", unit="m", source=QUADRATURE
)
def open_pair_error_m(*, distance_m: float, meter_fraction: float, cable_fraction: float) -> float:
    """Metres either way for a length told by the capacitance of its pair."""
    return distance_m * math.hypot(meter_fraction, cable_fraction)

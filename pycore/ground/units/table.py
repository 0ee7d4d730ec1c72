"""The table of units: how each is written, and what people may type for it."""

from functools import lru_cache
from typing import Literal, NamedTuple


class Manner(NamedTuple):
    """How the person reading wants numbers: language, length unit, decimal sign, today's date."""

    language: str
    length: Literal["m", "ft"]
    decimal: Literal[".", ","]
    today: str


METRES_PER_FOOT = 0.3048  # exact, international foot
METRES_PER_INCH = 0.0254
KILOMETRES_PER_KILOFOOT = METRES_PER_FOOT

# unit -> {what may be typed: factor to the inner unit}; the empty word is the plain number.
TYPED: dict[str, dict[str, float]] = {
    "w": {"": 1, "w": 1, "watt": 1, "watts": 1, "kw": 1000, "va": 1},
    "v": {"": 1, "v": 1, "volt": 1, "volts": 1, "vrms": 1},
    "a": {"": 1, "a": 1, "amp": 1, "amps": 1, "ma": 0.001},
    "m": {"m": 1, "metre": 1, "metres": 1, "meter": 1, "meters": 1, "cm": 0.01, "mm": 0.001}
    | {"km": 1000, "ft": METRES_PER_FOOT, "foot": METRES_PER_FOOT, "feet": METRES_PER_FOOT}
    | {"'": METRES_PER_FOOT, "′": METRES_PER_FOOT, "in": METRES_PER_INCH, '"': METRES_PER_INCH},
    "ohm": {"": 1, "ohm": 1, "ohms": 1, "ω": 1, "k": 1000, "kohm": 1000, "kω": 1000}
    | {"r": 1, "megohm": 1e6},
    "db": {"": 1, "db": 1},
    "hz": {"": 1, "hz": 1, "khz": 1000},
    "c": {"": 1, "c": 1, "°c": 1, "f": 0, "°f": 0},  # Fahrenheit is not a factor: see read.py
    "mm2": {"": 1, "mm2": 1, "mm²": 1, "mm^2": 1, "sqmm": 1},
    "awg": {"": 1, "awg": 1, "ga": 1, "gauge": 1},
    "deg": {"": 1, "°": 1, "deg": 1, "degrees": 1},
    "pct": {"": 1, "%": 1},
    "fraction": {"": 0.01, "%": 0.01},
    "count": {"": 1, "x": 1, "×": 1, "pcs": 1},
    "ohm_per_km": {"": 1, "ohm/km": 1, "ω/km": 1, "ohm/kft": 1 / KILOMETRES_PER_KILOFOOT}
    | {"ω/kft": 1 / KILOMETRES_PER_KILOFOOT},
    "uh_per_m": {"": 1, "uh/m": 1, "µh/m": 1, "μh/m": 1, "mh/km": 1, "nh/m": 0.001}
    | {"uh/ft": 1 / METRES_PER_FOOT, "µh/ft": 1 / METRES_PER_FOOT, "μh/ft": 1 / METRES_PER_FOOT},
    "pf_per_m": {"": 1, "pf/m": 1, "nf/km": 1, "pf/ft": 1 / METRES_PER_FOOT},
}

# Words in which a capital M is a million and a small one a thousandth.
CAPITALS: dict[str, dict[str, float]] = {
    "ohm": {"M": 1e6, "MΩ": 1e6, "Mohm": 1e6, "Mohms": 1e6}
    | {"mΩ": 1e-3, "mohm": 1e-3, "mohms": 1e-3},
}

# unit -> how it is printed behind the number; a space that never breaks over two lines
WRITTEN = {
    "w": "\u00a0W",
    "v": "\u00a0V",
    "a": "\u00a0A",
    "m": "\u00a0m",
    "ft": "\u00a0ft",
    "ohm": "\u00a0Ω",
    "kilohm": "\u00a0kΩ",
    "megohm": "\u00a0MΩ",
    "db": "\u00a0dB",
    "hz": "\u00a0Hz",
    "c": "\u00a0°C",
    "mm2": "\u00a0mm²",
    "awg": "\u00a0AWG",
    "deg": "°",
    "pct": "\u00a0%",
    "fraction": "\u00a0%",
    "count": "",
    "factor": "",
    "ohm_per_km": "\u00a0Ω/km",
    "uh_per_m": "\u00a0µH/m",
    "pf_per_m": "\u00a0pF/m",
    "s": "\u00a0S",
}


@lru_cache(maxsize=1000)
def unit_of(field: str) -> str | None:
    """The unit a field's name ends in ("points.0.length_m" -> "m"); None when it has none."""
    name = field.rsplit(".", 1)[-1]
    for unit in sorted(WRITTEN, key=len, reverse=True):
        if name == unit or name.endswith("_" + unit):
            return unit
    return None

"""The same line given to ngspice, a circuit simulator: its lossy line is exact as ours is.

Two of its habits are worked around. A resistor of 0 ohm is silently made 1 mohm, so where
there is no length there is no element: the nodes are one. And it prints few digits unless
told otherwise.
"""

import os
import re
import shutil
import subprocess
import tempfile
from pathlib import Path

import pytest

from tests.outside.circuit import Part

PRINTED = re.compile(r"^v\(n(\d+)\) = (\S+),(\S+)$", re.MULTILINE)


def find_ngspice() -> str:
    """The program; without it a test is skipped, loudly, but fails where nobody would see."""
    found = shutil.which("ngspice")
    if found is None:
        said = "ngspice is not here: the lines are not compared with a circuit simulator"
        (pytest.fail if os.environ.get("CI") == "true" else pytest.skip)(said)
    return str(found)


def write_netlist(parts: list[Part], hz: float, *, terminals_v: float) -> str:
    """The circuit in ngspice's own words; node n0 is the terminals, n1 the first stem."""
    lines = ["line", f"vin n0 0 dc 0 ac {terminals_v!r}"]
    for number, part in enumerate(parts, start=1):
        above = part.after + 1
        outgoing = f"d{above}" if above and _has_control(parts[above - 1]) else f"n{above}"
        lines += _section(number, part, outgoing=outgoing)
        if part.load_s:
            lines.append(f"rl{number} n{number} 0 {1 / part.load_s!r}")
        if _has_control(part):
            lines += _control(number, part)
    asked = [f"print v(n{number})" for number in range(1, len(parts) + 1)]
    frequency = [".control", "set numdgt=15", f"ac lin 1 {hz!r} {hz!r}", *asked]
    return "\n".join([*lines, *frequency, "print i(vin)", "quit", ".endc", ".end", ""])


def _has_control(part: Part) -> bool:
    return part.off or (part.volts_ratio, part.amps_ratio) != (1.0, 1.0)


def _section(number: int, part: Part, *, outgoing: str) -> list[str]:
    """Joint, then line; where there is neither, a source of no volts ties the nodes."""
    lines = []
    middle = outgoing
    if part.joint_ohm:
        middle = f"j{number}"
        lines.append(f"rj{number} {outgoing} {middle} {part.joint_ohm!r}")
    if part.length_m:
        values = f"r={part.ohm_per_m!r} l={part.henry_per_m!r} c={part.farad_per_m!r}"
        lines.append(f".model m{number} ltra({values} len={part.length_m!r} rel=1)")
        lines.append(f"o{number} {middle} 0 n{number} 0 m{number}")
    else:
        lines.append(f"v{number} {middle} n{number} 0")
    return lines


def _control(number: int, part: Part) -> list[str]:
    """Volts below are a ratio of those above; amperes above are a ratio of those below."""
    if part.off:
        return [f"rd{number} d{number} 0 1"]
    return [
        f"e{number} e{number} 0 n{number} 0 {part.volts_ratio!r}",
        f"vs{number} e{number} d{number} 0",
        f"f{number} n{number} 0 vs{number} {part.amps_ratio!r}",
    ]


def ask_ngspice(parts: list[Part], *, hz: float, terminals_v: float) -> list[complex]:
    """Volts at every stem, by ngspice."""
    program = find_ngspice()
    with tempfile.TemporaryDirectory() as folder:
        netlist = Path(folder) / "line.cir"
        netlist.write_text(write_netlist(parts, hz, terminals_v=terminals_v))
        done = subprocess.run(
            [program, "-b", str(netlist)], capture_output=True, text=True, check=False, timeout=120
        )
    found = {
        int(number): complex(float(real), float(imaginary))
        for number, real, imaginary in PRINTED.findall(done.stdout)
    }
    assert len(found) == len(parts), done.stdout[-2000:] + done.stderr[-2000:]
    return [found[number] for number in range(1, len(parts) + 1)]

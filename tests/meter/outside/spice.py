"""A faulty line as a netlist for ngspice, and a meter put to it: one ampere, and the volts.

Written from the line's own description (lengths, ohms per metre, watts), not from the core's
circuits. A section is its resistance and inductance with half its capacitance at each end.
"""

import re
import subprocess
import tempfile
from pathlib import Path
from typing import NamedTuple

from tests.outside.ngspice import find_ngspice

PRINTED = re.compile(r"^v\((\w+)\) = (\S+),(\S+)$", re.MULTILINE)
NO_OHM = 1e-7  # a dead short: ngspice makes a resistor of 0 Ω into one of 1 mΩ
LEAK_OHM = 1e13  # so that no node floats
OPEN_FROM_OHM = 1e10


class SpiceLine(NamedTuple):
    """Loudspeakers 1 to n: what each hangs on (0 is the amplifier's end), metres to it, ohms.

    `loop_ohm_per_m`, `henry_per_m`, `farad_per_m` are of the pair. `control`: the number of
    one that is a control instead, an autotransformer without load of its own; it passes `ratio`.
    """

    after: tuple[int, ...]
    metres: tuple[float, ...]
    ohms: tuple[float, ...]
    loop_ohm_per_m: float
    henry_per_m: float
    farad_per_m: float
    control: int = 0
    ratio: float = 1.0


class Injected(NamedTuple):
    """A fault at loudspeaker `at`: dead; load (`ohm` instead); beside (`ohm` more); cut; short
    (`ohm`, `place` along the section); joint (`ohm` in series); cable (`ohm` times as much
    everywhere); series (all loudspeakers one behind the other, the pairs between them in the
    string; for a chain). `at` 0 with any other kind: a line in order."""

    kind: str
    at: int
    ohm: float = 0.0
    place: float = 0.5


HEALTHY = Injected("none", 0)


class MeterAt(NamedTuple):
    """A meter at loudspeaker `at` (0: amplifier's end), outward (its feed lifted) or backward;
    in front of `lifted` loudspeakers the line is opened; `bare`: the one here is unplugged."""

    at: int = 0
    looking: str = "out"
    lifted: frozenset[int] = frozenset()
    bare: bool = False


class Asked(NamedTuple):
    """One reading wanted: a line, what is wrong with it, and where the meter is."""

    line: SpiceLine
    fault: Injected
    meter: MeterAt


def netlist(asked: list[Asked], *, hz: float) -> str:
    """Every reading on a line of its own."""
    lines = ["meter"]
    for copy, (line, fault, meter) in enumerate(asked):
        lines += _copy(line, fault, meter, copy=copy)
    prints = [f"print v(c{copy}n{one.meter.at})" for copy, one in enumerate(asked)]
    control = [".control", "set numdgt=12", f"ac lin 1 {hz!r} {hz!r}", *prints, "quit", ".endc"]
    return "\n".join([*lines, *control, ".end", ""])


def _copy(line: SpiceLine, fault: Injected, meter: MeterAt, *, copy: int) -> list[str]:
    name = f"c{copy}"
    if fault.kind == "cable":
        line = line._replace(loop_ohm_per_m=line.loop_ohm_per_m * fault.ohm)
    lines = [f"i{name} 0 {name}n{meter.at} dc 0 ac 1", f"rleak{name}n0 {name}n0 0 {LEAK_OHM!r}"]
    if fault.kind == "series":
        return [*lines, *_string(line, name)]
    for place, (after, metres) in enumerate(zip(line.after, line.metres, strict=True), start=1):
        node = f"{name}n{place}"
        here = fault if fault.at == place else HEALTHY
        lines += _fitted(line, place, node=node, fault=here, bare=meter.bare and meter.at == place)
        lifted = place in meter.lifted or (meter.looking == "out" and meter.at == place)
        if not lifted and here.kind != "cut":
            near = f"{name}n{after}" + ("low" if after and after == line.control else "")
            lines += _section(line, metres, near=near, node=node, fault=here)
    return lines


def _fitted(
    line: SpiceLine, place: int, *, node: str, fault: Injected, bare: bool
) -> list[str]:  # fmt: skip
    """What is across the pair at a place."""
    lines = [f"rleak{node} {node} 0 {LEAK_OHM!r}"]
    if line.control == place:
        lines += _control(line, node)
    elif fault.kind != "dead" and not bare:
        load_ohm = fault.ohm if fault.kind == "load" else line.ohms[place - 1]
        lines.append(f"rload{node} {node} 0 {load_ohm!r}")
    if fault.kind == "beside":
        lines.append(f"rbeside{node} {node} 0 {fault.ohm!r}")
    return lines


def _control(line: SpiceLine, node: str) -> list[str]:
    """An autotransformer between a node and its low side; nothing at all where it stands off."""
    lines = [f"rleak{node}low {node}low 0 {LEAK_OHM!r}"]
    if line.ratio:
        lines += [
            f"e{node} {node}sense 0 {node} 0 {line.ratio!r}",
            f"v{node} {node}sense {node}low 0",
            f"f{node} {node} 0 v{node} {line.ratio!r}",
        ]
    return lines


def _string(line: SpiceLine, name: str) -> list[str]:
    """Every loudspeaker in series, with the pairs between them, behind the first pair."""
    lines, above = [], f"{name}n0"
    for place, (metres, ohm) in enumerate(zip(line.metres, line.ohms, strict=True), start=1):
        middle, below = f"{name}p{place}", f"{name}q{place}"
        lines.append(f"r{middle} {above} {middle} {line.loop_ohm_per_m * metres!r}")
        lines.append(f"l{middle} {middle} {below} {line.henry_per_m * metres!r}")
        above = f"{name}s{place}" if place < len(line.ohms) else "0"
        lines.append(f"rload{below} {below} {above} {ohm!r}")
    return lines


def _section(
    line: SpiceLine, metres: float, *, near: str, node: str, fault: Injected
) -> list[str]:  # fmt: skip
    """The pair in front of a loudspeaker, in two pieces with whatever is wrong between them."""
    place = fault.place if fault.kind == "short" else 0.5
    middle = f"m{node}"
    joint = fault.ohm if fault.kind == "joint" else 0.0
    first = _piece(line, metres * place, near=near, far=middle, joint=joint)
    second = _piece(line, metres * (1 - place), near=middle, far=node, joint=0.0)
    bridge = (
        [f"rshort{node} {middle} 0 {max(fault.ohm, NO_OHM)!r}"] if fault.kind == "short" else []
    )
    return [*first, *second, *bridge]


def _piece(line: SpiceLine, metres: float, *, near: str, far: str, joint: float) -> list[str]:
    ohm = line.loop_ohm_per_m * metres + joint
    half = line.farad_per_m * metres / 2
    inside = f"x{far}"
    return [
        f"r{far} {near} {inside} {max(ohm, NO_OHM)!r}",
        f"l{far} {inside} {far} {max(line.henry_per_m * metres, 1e-15)!r}",
        f"ca{far} {near} 0 {max(half, 1e-18)!r}",
        f"cb{far} {far} 0 {max(half, 1e-18)!r}",
    ]


AT_ONCE = 300


def read_many(
    line: SpiceLine, faults: list[Injected], meters: list[MeterAt], *, hz: float
) -> list[list[float]]:
    """Ohms at each meter for each fault, by ngspice; an open line reads at least 10 GΩ."""
    asked = [Asked(line, fault, meter) for fault in faults for meter in meters]
    found = read_each(asked, hz=hz)
    each = len(meters)
    return [found[start : start + each] for start in range(0, len(found), each)]


def read_each(asked: list[Asked], *, hz: float) -> list[float]:
    """Ohms of many readings, each on its own line, a few hundred to a run of the program."""
    found: list[float] = []
    for start in range(0, len(asked), AT_ONCE):
        found += _run(asked[start : start + AT_ONCE], hz=hz)
    return found


def read_all(line: SpiceLine, fault: Injected, meters: list[MeterAt], *, hz: float) -> list[float]:
    """The same for one fault."""
    return read_many(line, [fault], meters, hz=hz)[0]


def _run(asked: list[Asked], *, hz: float) -> list[float]:
    program = find_ngspice()
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "meter.cir"
        path.write_text(netlist(asked, hz=hz))
        done = subprocess.run(
            [program, "-b", str(path)], capture_output=True, text=True, check=False, timeout=300
        )
    found = {
        name: abs(complex(float(real), float(imaginary)))
        for name, real, imaginary in PRINTED.findall(done.stdout)
    }
    wanted = [f"c{copy}n{one.meter.at}" for copy, one in enumerate(asked)]
    assert set(wanted) <= set(found), done.stdout[-2000:] + done.stderr[-2000:]
    return [found[name] for name in wanted]

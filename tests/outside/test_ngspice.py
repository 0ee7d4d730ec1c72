"""The core against ngspice's exact lossy line, on lines grown at random."""

import random

import pytest

from pycore.calc.finding import State
from tests.outside.circuit import parts_of
from tests.outside.ngspice import ask_ngspice
from tests.samples.lines import grow
from tests.samples.solved import solve_stems

AGREED = 1e-9
SIZES = (1, 2, 5, 12, 30, 60, 120, 200)


@pytest.mark.parametrize("hz", [50.0, 1000.0, 10_000.0])
@pytest.mark.parametrize("state", ["override", "set"])
def test_every_voltage_agrees_with_a_circuit_simulator(hz: float, state: State) -> None:
    for seed, count in enumerate(SIZES):
        for line_v in (70.7, 100.0):
            stems = grow(random.Random(seed), count)
            ours = solve_stems(stems, hz=hz, state=state, line_v=line_v)
            parts = parts_of(stems, hz=hz, bypassed=state == "override")
            theirs = ask_ngspice(parts, hz=hz, terminals_v=line_v)
            for number, (our, their) in enumerate(zip(ours, theirs, strict=True)):
                assert abs(our - their) <= AGREED * abs(their), (seed, number, our, their)

"""The core against nodal analysis by numpy, on many lines grown at random."""

import random

import pytest

from pycore.calc.finding import State
from tests.outside.circuit import parts_of
from tests.outside.nodal import ask_numpy
from tests.samples.lines import grow
from tests.samples.solved import solve_stems

AGREED = 1e-8


@pytest.mark.parametrize("hz", [50.0, 1000.0, 10_000.0])
@pytest.mark.parametrize("state", ["override", "set"])
def test_every_voltage_agrees_with_nodal_analysis(hz: float, state: State) -> None:
    for seed in range(100, 140):
        chance = random.Random(seed)
        stems = grow(chance, chance.randrange(1, 200 if seed % 8 == 0 else 40))
        ours = solve_stems(stems, hz=hz, state=state, line_v=70.7)
        parts = parts_of(stems, hz=hz, bypassed=state == "override")
        theirs = ask_numpy(parts, hz=hz, terminals_v=70.7)
        for number, (our, their) in enumerate(zip(ours, theirs, strict=True)):
            assert abs(our - their) <= AGREED * 70.7, (seed, number, our, their)
            if abs(their) > 0.1:
                assert abs(our - their) <= AGREED * abs(their), (seed, number, our, their)

"""A first test as one table: the steps in their safe order, what is entered at each, its words."""

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from pycore.calc.bypass import Bypass
from pycore.calc.wiring import Controls
from pycore.jobs.records import Quantity


class Entered(NamedTuple):
    """What is read at a step, and how the controls stand then."""

    quantity: Quantity
    controls: Controls


class TestingStep(NamedTuple):
    """One step. Without `entered` it is only confirmed; `words`: its sentence, by what can be
    bypassed, where that is another one."""

    code: str
    cautions: tuple[str, ...] = ()
    entered: Entered | None = None
    words: Mapping[Bypass, str] = {}

    def words_for(self, bypass: Bypass) -> str:
        """Which sentence tells it."""
        return self.words.get(bypass, self.code)


ORDER = (
    TestingStep("isolated", ("prove_dead", "fire_panel")),
    TestingStep("foreign", ("prove_dead",), Entered("foreign_v", "set")),
    TestingStep("controls"),
    TestingStep("earth", ("earth_test",), Entered("earth_ohm", "open")),
    TestingStep(
        "direct",
        ("leads_null",),
        Entered("dc_ohm", "open"),
        {"all": "direct_override", "some": "direct_some", "full": "direct_full"},
    ),
    TestingStep(
        "impedance_open",
        ("leads_null",),
        Entered("z_1k_ohm", "open"),
        {"all": "impedance_controls", "some": "impedance_some", "full": "impedance_full"},
    ),
)
# Proving that the controls let a page through: only where one can be bypassed.
PAGED = TestingStep(
    "impedance_override",
    ("leads_null",),
    Entered("z_1k_ohm", "override"),
    {"some": "impedance_override_some"},
)
BEFORE_ALL = ORDER[0].cautions


def steps_for(bypass: Bypass) -> Iterator[TestingStep]:
    """The steps of a zone. An ohmmeter needs every control gone: where one stays in, its reading
    is kept as one with the controls full up."""
    for one in ORDER:
        gone = one.code == "direct" and bypass == "all"
        yield one._replace(entered=Entered("dc_ohm", "override")) if gone else one
    if bypass in ("all", "some"):
        yield PAGED

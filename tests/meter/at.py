"""A meter at one place of a job's line, with a change made: what it would read."""

import math

from pycore.calc.effects import NOTHING, Change
from pycore.calc.faults import Fault
from pycore.calc.predict import Scope, expect_all, look
from pycore.calc.probe import Looking, Stand
from pycore.calc.site import Given, Site, site_of
from pycore.calc.wiring import Condition
from pycore.jobs import Job

AT_20 = Condition(1000.0, "open", 20.0)
DIRECT_AT_20 = Condition(0.0, "open", 20.0)


def site_at(job: Job) -> Site:
    """The job's zone "zone", loudspeakers within 10 %."""
    return site_of(job, {"zone": "zone"}, given=Given(10.0, None))


def scope_at(site: Site, place: str, *, looking: Looking, condition: Condition) -> Scope:
    """A meter at a place with nothing lifted."""
    stand = Stand(site.circuits.wired.node_of[place], looking, frozenset(), bare=False)
    return look(
        site.circuits, condition, stand=stand, each_fraction=site.each_fraction, rough=False
    )


def reads(scope: Scope, change: Change = NOTHING) -> float:
    """Ohms, with a change."""
    return math.exp(expect_all(scope, [Fault("any", change.node, change, 1.0)])[0].log_ohm)


def load_change(site: Site, place: str, *, to_w: float, at_v: float) -> Change:
    """A loudspeaker of the job drawing what a tap of `to_w` marked at `at_v` draws."""
    wired = site.circuits.wired
    node = wired.node_of[place]
    laid, own = wired.laid_at(node)
    more_w = to_w * (wired.line_v / at_v) ** 2 - (laid.draws[own].high or 0.0)
    more_s = more_w / wired.line_v**2
    return Change("load", node, more_s, more_s / 0.05)


def strap_change(site: Site, place: str, *, ohm: float) -> Change:
    """A loudspeaker with its selector on low impedance."""
    off = load_change(site, place, to_w=0.0, at_v=70.7)
    return off._replace(one=off.one + 1 / ohm)

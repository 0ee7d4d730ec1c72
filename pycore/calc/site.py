"""What a diagnosis is made of: the output in question, its zones, and what is taken for given."""

from typing import NamedTuple

from pycore.calc import priors
from pycore.calc.circuits import Circuits, Foreign
from pycore.calc.fill import RECTANGLE
from pycore.calc.probe import Stand
from pycore.calc.reading import Taken
from pycore.calc.wiring import DIRECT_HZ, TEST_HZ, Condition, output_for, wire
from pycore.ground.problems import BadCommand
from pycore.jobs import Job


class Given(NamedTuple):
    """What the person said about the meter and the line; all settable.

    `load_pct`: how far loudspeakers may be from nominal. `leads_ohm`: what the test leads
    read by themselves, None when they were nulled.
    """

    load_pct: float
    leads_ohm: float | None


class Site(NamedTuple):
    """The circuits of the output; `zones` are the numbers of those in question."""

    job: Job
    circuits: Circuits
    zones: tuple[int, ...]
    given: Given

    @property
    def each_fraction(self) -> float:
        """The deviation of one loudspeaker by itself."""
        return self.given.load_pct / 100 / RECTANGLE

    @property
    def copper_fraction(self) -> float:
        """The deviation of all copper alike; more where lengths or cables are only stated."""
        unsure_ohm = sum(one.unsure_ohm for one in self.circuits.wired.filled)
        all_ohm = sum(one.all_ohm for one in self.circuits.wired.filled)
        stated = UNSURE_COPPER * unsure_ohm / all_ohm if all_ohm else 0.0
        return priors.CABLE_PCT / 100 / RECTANGLE + stated


UNSURE_COPPER = 0.66  # the deviation (ln) of the stated range of lengths, 3 to 30 m


def site_of(job: Job, where: dict[str, str], *, given: Given) -> Site:
    """The output a place hangs on, with its own zone in question, or all of its zones.

    Raises BadCommand `meter_nothing`, and what `output_for` raises.
    """
    output, zone = output_for(job, where)
    circuits = Circuits(wire(job, output))
    wired = circuits.wired
    numbers = tuple(
        number for number, one in enumerate(wired.zones) if zone is None or one.id == zone
    )
    if not numbers:
        raise BadCommand("meter_nothing", where=where, output=output.name)
    circuits.foreign.extend(_foreign(job, circuits))
    return Site(job, circuits, numbers, given)


def _foreign(job: Job, own: Circuits) -> list[Foreign]:
    """Every landed zone of the job: a line may have been taken for any of them."""
    found = [Foreign(own, start) for start in own.wired.starts]
    for amplifier in job.amplifiers:
        for output in amplifier.outputs:
            if output.id != own.wired.output.id:
                other = Circuits(wire(job, output))
                known = [zone.id for zone in own.wired.zones]
                found.extend(
                    Foreign(other, start)
                    for start in other.wired.starts
                    if other.wired.ids[start] not in known
                )
    return found


def stand_of(site: Site, taken: Taken) -> Stand:
    """Where the meter stood. The place itself among the lifted: what is fitted there is off."""
    wired = site.circuits.wired
    node = _node(site, taken.place)
    lifted = {_node(site, one) for one in taken.lifted if one != taken.place}
    bare = taken.place in taken.lifted and node not in (0, *wired.starts)
    inside = node not in (0, *wired.starts)
    looking = taken.looking if inside else "out"
    return Stand(node, looking, frozenset(lifted), bare=bare)


def _node(site: Site, one: str) -> int:
    node = site.circuits.wired.node_of.get(one)
    if node is None:
        raise BadCommand("not_here", where={"id": one}, id=one)
    return node


def condition_of(site: Site, taken: Taken) -> Condition:
    """Under what a reading was taken; where nobody measured it, as warm as the job says."""
    hz = DIRECT_HZ if taken.quantity == "dc_ohm" else TEST_HZ
    warm_c = site.job.limits.conductor_c if taken.temperature_c is None else taken.temperature_c
    return Condition(hz, taken.controls, warm_c)

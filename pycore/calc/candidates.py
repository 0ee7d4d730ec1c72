"""Where a meter could be put next: only where a person can get at the line, and at what cost."""

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from pycore.calc.priors import Costs
from pycore.calc.probe import Stand
from pycore.calc.reading import Taken
from pycore.calc.site import Site
from pycore.calc.suspects import Suspect
from pycore.calc.wiring import Controls
from pycore.jobs.records import Quantity

BOXES = 14
BOXES_OF_MANY = 5
MANY_NODES = 400
SEGMENT_ENDS = 3
LIKELIEST = 5


class Test(NamedTuple):
    """A reading that could be taken. `opened`: how many other boxes have to be opened for it."""

    place: str
    stand: Stand
    lifted: tuple[str, ...]
    quantity: Quantity
    controls: Controls
    opened: int
    cost: float

    @property
    def setting(self) -> tuple[object, ...]:
        """The same as a reading's: what makes two of them comparable."""
        looking = self.stand.looking
        return self.place, looking, tuple(sorted(self.lifted)), self.quantity, self.controls


class Reach(NamedTuple):
    """What bears on the choice: how controls stand, what each access costs, where one is."""

    controls: Controls
    costs: Costs
    here: str | None


def candidates(
    site: Site, suspects: Sequence[Suspect], *, reach: Reach, taken: Sequence[Taken]
) -> list[Test]:
    """Readings worth thinking of: at the rack, and at boxes that divide the odds evenly or
    are suspected; none that has been taken already."""
    wired = site.circuits.wired
    done = {one.setting for one in taken}
    tests = list(_rack_tests(site, reach))
    boxes = boxes_of(site, suspects)
    for box in boxes:
        tests.extend(_box_tests(site, box, reach=reach, boxes=boxes))
    seen: set[object] = set()
    kept = []
    for test in tests:
        same = test.stand, test.quantity
        if test.setting not in done and same not in seen and wired.ids[test.stand.node]:
            seen.add(same)
            kept.append(test)
    return kept


def _rack_tests(site: Site, reach: Reach) -> Iterator[Test]:
    """A lifted home run, and the output: only there its fuse, relay and plug are in the way."""
    wired = site.circuits.wired
    nodes = [wired.starts[number] for number in site.zones]
    for node in [0, *nodes]:
        stand = Stand(node, "out", frozenset(), bare=False)
        yield _test(site, stand, reach=reach, opened=0)
        if not any(wired.fitted(one) == "attenuator" for one in wired.beyond(node)):
            yield _test(site, stand, reach=reach, opened=0)._replace(quantity="dc_ohm")


def boxes_of(site: Site, suspects: Sequence[Suspect]) -> list[int]:
    """Nodes with a box: those that divide the odds evenly, and the likeliest with their
    neighbours; in order."""
    wired = site.circuits.wired
    inside = [
        node
        for number in site.zones
        for node in wired.beyond(wired.starts[number])
        if wired.points[node] is not None
    ]
    most = BOXES if len(inside) <= MANY_NODES else BOXES_OF_MANY
    if len(inside) <= most:
        return inside
    mass = dict.fromkeys(inside, 0.0)
    for one in suspects:
        if one.key[1] in mass:
            mass[one.key[1]] += one.share
    chosen = set(_even(inside, mass, parts=most))
    local = [one for one in suspects if one.key[1] in mass]
    for one in local[: LIKELIEST if len(inside) <= MANY_NODES else 2]:
        node = one.key[1]
        beyond = node + 1 if wired.sizes[node] > 1 else node
        chosen.update(each for each in (wired.parents[node], node, beyond) if each in mass)
    return sorted(chosen)


def _even(inside: list[int], mass: dict[int, float], *, parts: int) -> list[int]:
    """The nodes at which the summed odds pass each even part; evenly placed without odds."""
    total = sum(mass.values())
    if total < 1e-6:
        return inside[:: max(len(inside) // parts, 1)]
    found, summed = [], 0.0
    for node in inside:
        before = int(summed / total * parts)
        summed += mass[node]
        if int(summed / total * parts) > before:
            found.append(node)
    return found


def _box_tests(site: Site, box: int, *, reach: Reach, boxes: list[int]) -> Iterator[Test]:
    """At one box: outward, backward, what is fitted there alone, and outward up to a box."""
    wired = site.circuits.wired
    beyond = range(box + 1, box + wired.sizes[box])
    hanging = frozenset(node for node in beyond if wired.parents[node] == box)
    yield _test(site, Stand(box, "out", frozenset(), bare=False), reach=reach, opened=0)
    yield _test(site, Stand(box, "back", hanging, bare=False), reach=reach, opened=0)
    if wired.fitted(box) == "loudspeaker":
        yield _test(site, Stand(box, "out", hanging, bare=False), reach=reach, opened=0)
        yield _test(site, Stand(box, "out", hanging, bare=True), reach=reach, opened=0)
    ends = [node for node in boxes if node in beyond and wired.parents[node] != box]
    most = SEGMENT_ENDS if len(wired.ids) <= MANY_NODES else 1
    for end in ends[:most]:
        yield _test(site, Stand(box, "out", frozenset({end}), bare=False), reach=reach, opened=1)


def _test(site: Site, stand: Stand, *, reach: Reach, opened: int) -> Test:
    wired = site.circuits.wired
    place = wired.ids[stand.node]
    lifted = tuple(wired.ids[node] for node in sorted(stand.lifted))
    if stand.bare:
        lifted = (*lifted, place)
    cost = access_cost(site, stand.node, reach=reach) + opened * reach.costs.open_another
    return Test(place, stand, lifted, "z_1k_ohm", reach.controls, opened, cost)


def access_cost(site: Site, node: int, *, reach: Reach) -> float:
    """What it costs to get at a node from where one is."""
    wired, costs = site.circuits.wired, reach.costs
    if wired.ids[node] == reach.here:
        return costs.again
    if wired.points[node] is None:
        return costs.again if _at_rack(site, reach.here) else costs.rack
    return costs.control if wired.fitted(node) == "attenuator" else costs.box


def _at_rack(site: Site, here: str | None) -> bool:
    node = site.circuits.wired.node_of.get(here or "")
    return node is not None and site.circuits.wired.points[node] is None

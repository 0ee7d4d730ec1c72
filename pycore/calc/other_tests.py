"""What could be done next other than measure ohms: listen, volts on a test tone, legs to earth.

Only where it can be done: nothing is played on a line that somebody has not heard, that may be
short or below its least load, or that puts its amplifier into protection.
"""

from collections.abc import Iterator, Sequence

from pycore.calc import priors
from pycore.calc.candidates import Reach, Test, access_cost
from pycore.calc.next_measurement import Next
from pycore.calc.probe import Stand
from pycore.calc.reading import Meant
from pycore.calc.site import Site
from pycore.calc.suspects import Suspect
from pycore.calc.verdicts import least_of
from pycore.calc.weigh import Proof

HARMFUL = ("short", "direct", "extra_low")
NOT_WITH = ("protect_at_once", "protect_on_bass", "protect_after_an_hour")


def may_play(*, proof: Proof, suspects: Sequence[Suspect], meants: Sequence[Meant]) -> bool:
    """Whether the line may be played: somebody has it in use, and nothing speaks against it."""
    in_use = proof.complaint is not None or proof.ears.any
    if not in_use or proof.complaint in NOT_WITH:
        return False
    harmful = sum(one.share for one in suspects if one.key[0] in HARMFUL)
    return harmful <= priors.MOST_ODDS_TO_PLAY and not any(_too_low(proof, one) for one in meants)


def _too_low(proof: Proof, one: Meant) -> bool:
    """Whether a reading at the amplifier's end is below what its output may see."""
    wired = proof.site.circuits.wired
    node = wired.node_of.get(one.taken.place)
    if one.taken.quantity != "z_1k_ohm" or node is None or wired.points[node] is not None:
        return False
    least = least_of(wired.output, wired.line_v).ohm or 0.0
    return one.sign == "short" or (one.value is not None and one.value < least)


def other_tests(
    proof: Proof, boxes: Sequence[int], *, reach: Reach, meants: Sequence[Meant], playable: bool
) -> list[Test]:
    """Everything of that kind that has not been done yet."""
    done = {one.taken.setting for one in meants}
    found: list[Test] = []
    if playable:
        found.extend(_listen(proof, reach=reach))
        found.extend(_volts(proof.site, boxes, reach=reach, meants=meants))
    found.extend(_legs(proof.site, boxes, reach=reach, meants=meants))
    return [one for one in found if one.setting not in done]


def _listen(proof: Proof, *, reach: Reach) -> Iterator[Test]:
    """One look around each zone in question of which not all has been heard."""
    site, cost = proof.site, reach.costs.listen
    wired = site.circuits.wired
    for number in site.zones:
        start = wired.starts[number]
        heard = proof.ears.heard
        speakers = [node for node in wired.beyond(start) if wired.fitted(node) == "loudspeaker"]
        if cost is not None and any(node not in heard for node in speakers):
            stand = Stand(start, "out", frozenset(), bare=False)
            yield Test(wired.ids[start], stand, (), "plays", "set", 0, cost)


def has_near_volts(site: Site, meants: Sequence[Meant], *, controls: str) -> bool:
    """Whether volts were read at the amplifier's end with the controls standing so."""
    ends = {site.circuits.wired.ids[node] for node in (0, *site.circuits.wired.starts)}
    return any(
        one.taken.quantity == "volts"
        and one.taken.place in ends
        and one.taken.controls == controls
        and one.value
        for one in meants
    )


def _volts(
    site: Site, boxes: Sequence[int], *, reach: Reach, meants: Sequence[Meant]
) -> Iterator[Test]:
    """Volts on a test tone at boxes; the tone has to be put on, and read near, only once."""
    if reach.costs.tone is None:
        return
    ready = has_near_volts(site, meants, controls=reach.controls)
    more = 0.0 if ready else reach.costs.tone
    for node in boxes:
        stand = Stand(node, "out", frozenset(), bare=False)
        place = site.circuits.wired.ids[node]
        cost = more + (reach.costs.again if place == reach.here else reach.costs.probe)
        yield Test(place, stand, (), "volts", reach.controls, 0, cost)


def _legs(
    site: Site, boxes: Sequence[int], *, reach: Reach, meants: Sequence[Meant]
) -> Iterator[Test]:
    """Legs to earth at the amplifier's end; where that was bad, beyond boxes, by parts."""
    if reach.costs.earth is None:
        return
    wired = site.circuits.wired
    for number in site.zones:
        start = wired.starts[number]
        stand = Stand(start, "out", frozenset(), bare=False)
        cost = max(reach.costs.earth, access_cost(site, start, reach=reach))
        yield Test(wired.ids[start], stand, (), "earth_ohm", reach.controls, 0, cost)
    low = [one for one in meants if one.taken.quantity == "earth_ohm" and one.value is not None]
    if any((one.value or 0.0) < priors.EARTH_GOOD_OHM for one in low):
        for node in boxes:
            stand = Stand(node, "out", frozenset(), bare=False)
            cost = access_cost(site, node, reach=reach)
            yield Test(wired.ids[node], stand, (), "earth_ohm", reach.controls, 0, cost)


def near_first(site: Site, *, chosen: Next | None, meants: Sequence[Meant]) -> Next | None:
    """Far volts say nothing without near ones: those are asked for first."""
    if chosen is None or chosen.test.quantity != "volts":
        return chosen
    test = chosen.test
    if has_near_volts(site, meants, controls=test.controls):
        return chosen
    wired = site.circuits.wired
    start = wired.starts[wired.zone_at[test.stand.node]]
    near = test._replace(place=wired.ids[start], stand=test.stand._replace(node=start))
    return chosen._replace(test=near, then=test.place)

"""What one change somewhere on the line does to what a meter sees: no second solve.

A change is told by the node it is at, in the numbers of the wiring, so that one list of
changes serves every reading wherever the meter stood.
"""

from typing import Literal, NamedTuple

from pycore.calc.probe import Probe
from pycore.calc.section import Section
from pycore.calc.wiring import Controls

How = Literal[
    "nothing",
    "load",
    "across",
    "cut",
    "short",
    "joint",
    "control",
    "stays",
    "bypass",
    "reverse",
    "series",
    "swap",
    "copper",
]
SHORTEST_OHM = 1e-6
UNREAD = complex("nan")


class Change(NamedTuple):
    """A change. What `one` and `two` are:

    load: siemens more at the node at 1 kHz, and at direct current · across: siemens more,
    whatever the frequency · cut, short: where on the section in front of the node (0 near
    the amplifier, 1 at the node), and the short's ohms · joint: ohms more in that section ·
    control: ratio and share felt of the control there, while it is not bypassed · stays: the same
    of one that never is · bypass: the same while it should be bypassed · reverse: the same while it
    stands as set, for at 0 dB its two ends are alike · series: all loads beyond, one behind the
    other · swap: `one` is the node of the zone that is there instead · copper: factor.
    """

    how: How
    node: int
    one: float = 0.0
    two: float = 0.0


NOTHING = Change("nothing", 0)


def as_met(change: Change, *, controls: Controls) -> Change:
    """A change as it is met with the controls standing so."""
    how = change.how
    if how == "control":
        return NOTHING if controls == "override" else change
    if how == "stays":
        return change._replace(how="control")
    if how == "bypass":
        return change._replace(how="control") if controls == "override" else NOTHING
    if how == "reverse":
        return change._replace(how="control") if controls == "set" else NOTHING
    return change


class Local(NamedTuple):
    """A change as the meter's circuit has it: the new node, what its section then shows,
    and the share of the volts at the section's near end that reaches the node."""

    node: int
    through_s: complex
    passed: complex


def local_of(probe: Probe, change: Change, *, direct: bool) -> Local | None:
    """The change where it happens; None when it is out of the meter's reach."""
    how = change.how
    if how in ("load", "across", "control"):
        return _at_node(probe, change, direct=direct)
    node = probe.section_at[change.node]
    if node < 0:
        return None
    network, out_s = probe.network, probe.flow.out_s[node]
    near_s, series_ohm, far_s = network.near_s[node], network.series_ohm[node], network.far_s[node]
    if how == "joint":
        series_ohm += change.one
        across = 1 + series_ohm * out_s
        return Local(node, near_s + out_s / across, 1 / across)
    place = 1 - change.one if probe.turned[change.node] else change.one
    if how == "cut":
        return Local(node, (near_s + far_s) * place, 0j)
    return shorted(
        Section(near_s, series_ohm, far_s),
        out_s=out_s,
        node=node,
        place=place,
        bridge_s=1 / max(change.two, SHORTEST_OHM),
    )


SECTIONS = ("cut", "short", "joint")


def section_shows(probe: Probe, change: Change, *, node: int) -> complex:
    """What a new node's section shows at its near end with a change of that section itself; the
    same as `local_of` says, for where nothing else is wanted."""
    network, out_s = probe.network, probe.flow.out_s[node]
    near_s, series_ohm, far_s = network.near_s[node], network.series_ohm[node], network.far_s[node]
    how, _, place, ohm = change
    if how == "joint":
        return near_s + out_s / (1 + (series_ohm + place) * out_s)
    if probe.turned[change.node]:
        place = 1 - place
    if how == "cut":
        return (near_s + far_s) * place
    end_s = out_s - far_s * place
    middle_s = near_s * place + far_s * (1 - place) + 1 / max(ohm, SHORTEST_OHM)
    middle_s += end_s / (1 + series_ohm * (1 - place) * end_s)
    return near_s * place + middle_s / (1 + series_ohm * place * middle_s)


def _at_node(probe: Probe, change: Change, *, direct: bool) -> Local | None:
    """A change of what is at a node itself, told by the section in front of it."""
    how = change.how
    at = probe.control_at if how == "control" else probe.node_at
    node = at[change.node]
    if node < 0:
        return None
    out_s = probe.flow.out_s[node]
    if how == "control":
        felt = change.two
        if probe.control_turned[change.node]:
            felt = 1 / felt if felt else 0.0
        out_s += (felt - probe.network.felt[node]) * probe.flow.below_s[node]
    elif probe.stand.bare and node == 0:
        return Local(node, out_s, 1 + 0j)
    else:
        out_s += change.two if direct and how == "load" else change.one
    if node == 0:
        return Local(0, out_s, 1 + 0j)
    across = 1 + probe.network.series_ohm[node] * out_s
    return Local(node, probe.network.near_s[node] + out_s / across, 1 / across)


def shorted(section: Section, *, out_s: complex, node: int, place: float, bridge_s: float) -> Local:
    """A section bridged part of the way along: `place` 0 is its near end, 1 its far end."""
    near_s, series_ohm, far_s = section
    end_s = out_s - far_s * place
    behind = 1 + series_ohm * (1 - place) * end_s
    middle_s = bridge_s + near_s * place + far_s * (1 - place) + end_s / behind
    before = 1 + series_ohm * place * middle_s
    return Local(node, near_s * place + middle_s / before, 1 / (behind * before))


def seen_with(probe: Probe, change: Change, *, direct: bool) -> complex:
    """What the meter sees with one change; UNREAD for one that is not of this kind."""
    how = change.how
    if how == "nothing":
        return probe.flow.out_s[0]
    if how in ("series", "swap", "copper"):
        return UNREAD
    local = local_of(probe, change, direct=direct)
    if local is None:
        return probe.flow.out_s[0]
    if local.node == 0:
        return local.through_s
    return probe.with_through(local.node, local.through_s)


def seen_in_place_of(probe: Probe, node: int, *, out_s: complex) -> complex:
    """What the meter sees when all that is at and beyond a node becomes `out_s` (S).

    UNREAD when the meter stands inside of it.
    """
    new = probe.node_at[node]
    if new < 0:
        return probe.flow.out_s[0]
    if new == 0:
        return out_s if probe.stand.looking == "out" else UNREAD
    if probe.section_at[node] != new:
        return UNREAD
    across = 1 + probe.network.series_ohm[new] * out_s
    return probe.with_through(new, probe.network.near_s[new] + out_s / across)

"""Whether the controls of a line can be got out of a meter's way, as a page gets them out."""

from collections.abc import Iterable
from typing import Literal

from pycore.calc.attenuators import facts_of
from pycore.calc.wiring import Controls
from pycore.jobs import Kinds, Zone

# No control; every one can be bypassed, or nobody knows better; some cannot; none can.
Bypass = Literal["none", "all", "some", "full"]

# How the controls stand where readings at 1 kHz differ by it.
STATES: dict[Bypass, tuple[Controls, ...]] = {
    "none": ("open",),
    "all": ("open", "override", "set"),
    "some": ("open", "override", "set"),
    "full": ("open", "set"),
}
# How they stand for an ohmmeter; nothing where one stays in its way: it then reads a winding.
DIRECT: dict[Bypass, tuple[Controls, ...]] = {
    "none": ("open",),
    "all": ("override",),
    "some": (),
    "full": (),
}


def staying_in(zones: Iterable[Zone], kinds: Kinds) -> list[str]:
    """The ids of the controls that cannot be bypassed: it is written of them, or of their kind."""
    return [
        point.id
        for zone in zones
        for point in zone.line
        if point.fitted.is_ == "attenuator" and facts_of(point.fitted, kinds).override is False
    ]


def bypass_of(zones: Iterable[Zone], kinds: Kinds) -> Bypass:
    """How far the controls of these zones can be bypassed."""
    told = tuple(zones)
    count = sum(point.fitted.is_ == "attenuator" for zone in told for point in zone.line)
    staying = len(staying_in(told, kinds))
    if not count:
        return "none"
    if not staying:
        return "all"
    return "full" if staying == count else "some"

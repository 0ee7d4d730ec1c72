"""Foreign volts: what is found on a lifted line before anything else is put to it.

They say whether a line may be touched and measured at all; of faults they say nothing, so they
are judged here and never weighed. Up to which figure a line counts as dead is common practice,
no source: the volts that can hurt are far more, but what feeds a line has not been switched off.
"""

from collections.abc import Iterable

from pycore.calc import priors
from pycore.calc.reading import Meant
from pycore.calc.site import Site


def is_fed(read_v: float) -> bool:
    """Whether volts are too many for a line that nothing feeds."""
    return read_v > priors.FOREIGN_NONE_V


def is_live(site: Site, meants: Iterable[Meant]) -> bool:
    """Whether the latest foreign volts of any place in question are more than none."""
    wired = site.circuits.wired
    latest: dict[str, Meant] = {}
    for one in sorted(meants, key=lambda each: each.taken.at):
        node = wired.node_of.get(one.taken.place)
        mine = node is not None and (node == 0 or wired.zone_at[node] in site.zones)
        if mine and one.taken.quantity == "foreign_v" and one.value is not None:
            latest[one.taken.place] = one
    return any(is_fed(one.value or 0.0) for one in latest.values())

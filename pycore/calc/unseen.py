"""What readings of impedance cannot see, of this line and with these readings: codes."""

from collections.abc import Sequence

from pycore.calc.reading import Meant
from pycore.calc.site import Site


def cannot_see(site: Site, meants: Sequence[Meant]) -> tuple[str, ...]:
    """What stays unseen, always first."""
    codes = ["wrong_row", "polarity", "damaged_driver"]
    if not any(one.taken.quantity == "earth_ohm" for one in meants):
        codes.append("earthed_leg")
    wired = site.circuits.wired
    controls = any(wired.fitted(node) == "attenuator" for node in range(len(wired.ids)))
    if controls and any(one.taken.controls == "set" for one in meants):
        codes.append("controls_as_set")
    return tuple(codes)

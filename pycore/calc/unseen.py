"""What readings of impedance cannot see, of this line and with these readings: codes."""

from collections.abc import Sequence

from pycore.calc.reading import OHMS, Meant
from pycore.calc.site import Site


def cannot_see(site: Site, meants: Sequence[Meant]) -> tuple[str, ...]:
    """What stays unseen, always first."""
    codes = ["wrong_row", "polarity", "damaged_driver"]
    if not any(one.taken.quantity == "earth_ohm" for one in meants):
        codes.append("earthed_leg")
    if _hidden_by_controls(site, meants):
        codes.append("controls_as_set")
    return tuple(codes)


def _hidden_by_controls(site: Site, meants: Sequence[Meant]) -> bool:
    """Whether the line was read with its controls as they stand, and never past them."""
    wired = site.circuits.wired
    if not any(wired.fitted(node) == "attenuator" for node in range(len(wired.ids))):
        return False
    stood = {one.taken.controls for one in meants if one.taken.quantity in OHMS}
    return stood == {"set"}

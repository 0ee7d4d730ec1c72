"""Whether what was taken from two sides holds together; if not, the problem names the place."""

from pycore.edit.cells import Key
from pycore.edit.desk import Desk
from pycore.ground.problems import BadCommand, BrokenJob
from pycore.jobs import Zone
from pycore.jobs.tree import hanging_order


def check_landing(desk: Desk) -> None:
    """Refuse an output without its amplifier, a zone on an output that is gone, and a point
    without its zone."""
    amplifiers = {key.id for key in desk.keys("amplifier")}
    for key in desk.keys("output"):
        cells = desk.cells(key)
        if cells["amplifier"] not in amplifiers:
            raise _refused("merge_amplifier_gone", key, name=cells["name"])
    outputs = {key.id for key in desk.keys("output")}
    zones = set()
    for key in desk.keys("zone"):
        zones.add(key.id)
        cells = desk.cells(key)
        if not {cells["output"], cells["page_output"]} <= {*outputs, None}:
            raise _refused("merge_output_gone", key, name=cells["name"])
    for key in desk.keys("point"):
        cells = desk.cells(key)
        if cells["hung"][0] not in zones:
            raise _refused("merge_zone_gone", key, name=cells["label"])


def check_hanging(zones: tuple[Zone, ...]) -> None:
    """Refuse a point that hangs on one that is gone or elsewhere, and a line in a ring."""
    for zone in zones:
        own = {point.id: point for point in zone.line}
        for point in zone.line:
            if point.after is not None and point.after not in own:
                key = Key("point", point.id)
                raise _refused("merge_hangs_on_gone", key, name=point.fitted.label)
        try:
            hanging_order(zone.line)
        except BrokenJob as broken:
            ring = Key("point", broken.where["point"])
            raise _refused("merge_in_a_ring", ring, name=own[ring.id].fitted.label) from None


def _refused(code: str, key: Key, *, name: str | None) -> BadCommand:
    return BadCommand(code, where={key.family: key.id}, name=name or key.id)

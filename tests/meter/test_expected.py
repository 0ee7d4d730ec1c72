"""What every box should read: the table made in one go against a meter put to each box."""

import math

import pytest

from pycore.calc.expected import Tolerances, bands, tolerances_of
from pycore.calc.predict import look
from pycore.calc.probe import Stand
from pycore.calc.site import Given, Site, site_of
from pycore.calc.wiring import DIRECT_HZ, TEST_HZ, Condition, Controls
from tests.meter.at import site_at
from tests.meter.lines import line_a
from tests.meter.test_faults import branched

LOOSE = Tolerances(meter=0.05, load=0.1, cable=0.06)


def stand_of_view(site: Site, view: str, node: int) -> Stand:
    """The same view as a meter that is put there."""
    wired = site.circuits.wired
    hanging = frozenset(
        one for one in range(node + 1, node + wired.sizes[node]) if wired.parents[one] == node
    )
    lifted = hanging if view in ("alone", "back") else frozenset()
    looking = "out" if view in ("out", "alone") else "back"
    return Stand(node, "out" if looking == "out" else "back", lifted, bare=False)


@pytest.mark.parametrize("controls", ["open", "set", "override"])
@pytest.mark.parametrize("hz", [TEST_HZ, DIRECT_HZ])
@pytest.mark.parametrize("view", ["out", "alone", "back", "whole"])
def test_the_table_of_boxes_says_what_a_meter_at_each_box_sees(
    controls: Controls, hz: float, view: str
) -> None:
    site = site_of(branched(), {"zone": "zone"}, given=Given(10.0, None))
    condition = Condition(hz, controls, 20.0)
    told = bands(site, condition, tolerances=LOOSE)[view]  # type: ignore[index]
    for node, point in enumerate(site.circuits.wired.points):
        if point is None or site.circuits.wired.zone_at[node] not in site.zones:
            continue
        stand = stand_of_view(site, view, node)
        scope = look(site.circuits, condition, stand=stand, each_fraction=0.1, rough=False)
        seen_s = abs(scope.probe.seen_s)
        if told[node].value is None:
            assert seen_s < 1 / 20_000
        else:
            assert told[node].value == pytest.approx(1 / seen_s, rel=1e-9)


def test_a_band_is_as_wide_as_meter_and_loudspeakers_where_loudspeakers_make_the_reading() -> None:
    site = site_at(line_a())
    told = bands(site, Condition(TEST_HZ, "open", 20.0), tolerances=LOOSE)["alone"][2]
    assert told.value == pytest.approx(999.698, rel=1e-6)
    assert told.tolerance == pytest.approx(0.15, rel=1e-6)
    assert told.low == pytest.approx(999.698 / 1.15, rel=1e-6)
    assert told.high == pytest.approx(999.698 * 1.15, rel=1e-6)


def test_at_direct_current_windings_are_a_stated_range() -> None:
    site = site_at(line_a())
    told = bands(site, Condition(DIRECT_HZ, "open", 20.0), tolerances=LOOSE)["out"][0]
    # 2 to 10 % of the impedance (common practice): 5 % reads 6.54 Ω on this line
    assert told.value == pytest.approx(6.54, abs=0.01)
    assert told.low is not None
    assert told.high is not None
    assert told.low < 3.5 < 10.0 < told.high < 13.0


def test_lengths_that_are_not_known_leave_the_cable_open() -> None:
    job = branched()
    known = site_of(job, {"zone": "zone"}, given=Given(10.0, None))
    zone = job.zones[0]
    line = tuple(point.model_copy(update={"length_m": None}) for point in zone.line)
    zones = (zone.model_copy(update={"line": line}), *job.zones[1:])
    unknown = site_of(
        job.model_copy(update={"zones": zones}), {"zone": "zone"}, given=Given(10.0, None)
    )
    assert "lengths_stated" in unknown.circuits.wired.assumed
    sharp = tolerances_of(known, meter_fraction=0.05).cable
    assert tolerances_of(unknown, meter_fraction=0.05).cable > 5 * sharp


def test_an_output_is_all_its_zones_together_and_a_page_may_move_one_away() -> None:
    job = branched()
    moved = job.zones[1].model_copy(update={"page_output": "second"})
    amplifier = job.amplifiers[0]
    second = amplifier.outputs[0].model_copy(update={"id": "second", "name": "Second"})
    outputs = (amplifier.outputs[0], second)
    job = job.model_copy(
        update={
            "zones": (job.zones[0], moved),
            "amplifiers": (amplifier.model_copy(update={"outputs": outputs}),),
        }
    )
    site = site_of(job, {"output": "out"}, given=Given(10.0, None))
    open_band, page_band = (
        bands(site, Condition(TEST_HZ, controls, 20.0), tolerances=LOOSE)["out"]
        for controls in ("open", "override")
    )
    starts = site.circuits.wired.starts
    both = sum(1 / (open_band[start].value or math.inf) for start in starts)
    assert open_band[0].value == pytest.approx(1 / both, rel=1e-3)
    assert page_band[0].value == pytest.approx(page_band[starts[0]].value, rel=1e-9)

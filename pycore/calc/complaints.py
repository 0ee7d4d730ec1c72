"""From a complaint to what it usually stands for, and the test that decides.

The table is common practice, no source. `families` are faults this tool can work out on
the line; `others` are suspects elsewhere, which only words can name. Codes, no sentences.
"""

from collections.abc import Mapping
from typing import NamedTuple


class Complaint(NamedTuple):
    """What it usually stands for, likeliest first, and the test that decides."""

    families: tuple[str, ...]
    others: tuple[str, ...]
    test: str


COMPLAINTS: Mapping[str, Complaint] = {
    "protect_at_once": Complaint(
        ("short", "direct", "extra_low", "earthed"), ("amplifier_itself",), "each_zone_off"
    ),
    "protect_on_bass": Complaint(
        (), ("no_high_pass", "core_saturates", "row_above_line", "direct_current"), "low_frequency"
    ),
    "protect_after_an_hour": Complaint(
        ("extra", "tap", "extra_low"), ("ventilation",), "watts_by_impedance"
    ),
    "silent_beyond": Complaint(("cut", "head_open", "control_off"), (), "both_ends"),
    "weak_beyond": Complaint(
        ("joint", "control_in", "cable"), ("thin_cable_spliced",), "volts_before_and_after"
    ),
    "zone_silent": Complaint(
        ("head_open", "control_off", "cut", "short"), ("relay",), "with_override"
    ),
    "one_quiet": Complaint(("tap", "dead", "joint"), ("driver_damaged",), "at_that_one"),
    "one_loud_rest_weak": Complaint(("direct", "extra_low"), (), "below_ten_ohm"),
    "hum_with_rain": Complaint(("earthed", "wet"), ("outdoor_box",), "legs_to_earth"),
    "oscillates": Complaint(
        ("head_open",), ("long_open_cable", "coupling_to_microphone"), "with_and_without_load"
    ),
    "crackles": Complaint(("joint", "cut"), ("splice",), "wiggle"),
    "page_not_heard": Complaint(
        ("override_fails", "control_off"), ("override_pair", "no_relay"), "override_pair"
    ),
    "something_wrong": Complaint((), (), "each_zone_off"),
    "louder_after_swap": Complaint((), ("row_below_line",), "line_volts"),
    "quieter_after_swap": Complaint((), ("row_above_line_quiet",), "line_volts"),
}

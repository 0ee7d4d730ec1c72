"""What is taken for granted before anything is measured: stated, and the same for every job.

All figures here are common practice, no source. They set the order of what is looked at
first; readings overrule them. So until a line has a baseline, odds are shown as a ranking.
"""

import math
from collections.abc import Mapping
from typing import NamedTuple

from pycore.ground.sources import PRACTICE
from pycore.jobs import catalogue

SOURCE = PRACTICE

# Of a hundred lines that are tested: how many have nothing wrong, and how many have what.
HEALTHY_UNPROVOKED = 50.0
# With a complaint, or after a reading that says so, something is wrong nearly always.
HEALTHY_WITH_COMPLAINT = 4.0
FAMILY_WEIGHTS: Mapping[str, float] = {
    "dead": 16.0,
    "tap": 18.0,
    "direct": 5.0,
    "extra": 7.0,
    "extra_low": 2.0,
    "cut": 18.0,
    "head_open": 5.0,
    "short": 12.0,
    "joint": 6.0,
    "control_off": 6.0,
    "control_in": 4.0,
    "control_reversed": 1.0,
    "override_fails": 3.0,
    "cable": 4.0,
    "series": 2.0,
    "wrong_zone": 3.0,
    "wet": 2.0,
    "earthed": 3.0,
}
# A complaint makes what it usually stands for this much likelier, the rest not impossible.
NAMED_BY_COMPLAINT = 8.0
# A second, independent fault on the same line, for each fault that was there.
SECOND_FAULT = 0.2

# Tolerances, as limits either way; within them every value is taken as equally likely.
METER_PCT = catalogue.METER_PCT
LOAD_PCT = 10.0
CABLE_PCT = 6.0  # conductors at the least their standard allows, and a few kelvins of heat
REPEAT_PCT = 2.0  # one meter on one line again, against its own baseline
LEAST_PCT = 0.5  # no reading is better than this
MOST_PCT = 100.0  # from here on nothing can be inferred
METER_OHM = 0.1  # last digit and contact, whatever the meter's per cent
# How many degrees of freedom the odds keep, so that no single reading is trusted blindly.
DOUBT_FREEDOM = 8.0

# Ohmmeters read windings: a twentieth of the impedance at 1 kHz, from a fiftieth to a tenth.
WINDING_LOW, WINDING_USUAL, WINDING_HIGH = 0.02, 0.05, 0.10
VOICE_COIL = 0.8  # of a low-impedance loudspeaker's nominal ohms

# What a section is taken for where nobody knows it.
LENGTH_LOW_M, LENGTH_USUAL_M, LENGTH_HIGH_M = 3.0, 10.0, 30.0
AREA_LOW_MM2, AREA_USUAL_MM2, AREA_HIGH_MM2 = 0.75, 1.5, 2.5
COUNT_PCT = 20.0  # "about ten"

# What faults look like.
SHORT_OHM = ((0.0, 0.6), (0.5, 0.25), (3.0, 0.15))
SHORT_PLACES = (0.1, 0.5, 0.9)
JOINT_DB = (0.5, 1.5, 4.0, 12.0)
WET_OHM = (1000.0, 5000.0, 20000.0)
LOW_IMPEDANCE_OHM = (4.0, 8.0, 16.0)
CONTROL_IN_DB = (-6.0, -12.0, -24.0)
CABLE_FACTORS = ((0.63, "thicker"), (1.6, "thinner"), (2.5, "much_thinner"), (1.54, "clad"))

# Legs to earth: a floating line shows megohms; water and dirt less; a touching leg nothing.
EARTH_GOOD_OHM = 1e6
EARTH_BAD_OHM = 1e5
# Foreign volts: what a good meter may show on a line that nothing feeds.
FOREIGN_NONE_V = 1.0


class Costs(NamedTuple):
    """What it costs to take a reading, in units of one walk to the rack; settable.

    None for what cannot be done there at all: `listen`, one look around while it plays; `tone`,
    to put a test tone on the line and read it there; `earth`, the legs to earth. `probe`: volts
    on that tone at a box, where nothing has to be lifted.
    """

    rack: float
    box: float
    control: float
    open_another: float
    again: float
    listen: float | None
    tone: float | None
    probe: float
    earth: float | None


COSTS = Costs(
    rack=1.0,
    box=4.0,
    control=2.0,
    open_another=3.0,
    again=0.5,
    listen=1.5,
    tone=1.0,
    probe=2.0,
    earth=1.0,
)
# The same said in words, as so many times the usual.
EFFORTS: Mapping[str, float] = {"easy": 0.25, "usual": 1.0, "hard": 4.0, "never": math.inf}
# Above this, odds of what may hurt an amplifier that plays keep the line off.
MOST_ODDS_TO_PLAY = 0.2

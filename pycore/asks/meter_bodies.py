"""What the asks of the meter take."""

from typing import Annotated, Final, Literal

from pydantic import Field

from pycore.asks.requests import Text
from pycore.calc.priors import COSTS
from pycore.jobs import CableKind, Closed, Job
from pycore.jobs.base import Celsius, Id, Name, Percent
from pycore.jobs.records import Due, Moment, Quantity, Spot

Controls = Literal["open", "set", "override"]
Complaint = Literal[
    "protect_at_once",
    "protect_on_bass",
    "protect_after_an_hour",
    "silent_beyond",
    "weak_beyond",
    "zone_silent",
    "one_quiet",
    "one_loud_rest_weak",
    "hum_with_rain",
    "oscillates",
    "crackles",
    "page_not_heard",
    "louder_after_swap",
    "quieter_after_swap",
    "something_wrong",
]
Effort = Literal["easy", "usual", "hard", "never"]
Cost = Annotated[float, Field(gt=0, le=1000)] | Effort
LeadOhms = Annotated[float, Field(ge=0, le=100, json_schema_extra={"unit": "ohm"})]
MOST_BUDGET = 5_000_000
BUDGET: Final = 60_000  # weighings: well under a second in a browser
TODAY: Final = "today"


class ReadingIn(Closed):
    """A reading of this visit. `value`: a number, or as it was typed: "201,5", "OL", "well";
    tolerance, temperature and the ohms of leads that were not nulled the same.

    `lifted` names what was taken off: the place itself for what is fitted there, any other
    point for the line in front of it. `tolerance_pct` null or empty: 5 %, common practice.
    `due` comes back with a kept reading and is not looked at: what the job itself keeps counts.
    """

    id: Id
    at: Moment = TODAY
    where: Spot
    looking: Literal["out", "back"] = "out"
    lifted: Annotated[tuple[Id, ...], Field(max_length=500)] = ()
    quantity: Quantity
    value: float | Text
    controls: Controls = "open"
    tolerance_pct: Percent | Text | None = None
    temperature_c: Celsius | Text | None = None
    leads_ohm: LeadOhms | Text | None = None
    instrument: Name = ""
    baseline: bool = False
    due: Due | None = None


class CostsIn(Closed):
    """What each access costs, in walks to the rack, or in a word: so many times the usual, never
    for what cannot be done. What is not said keeps its usual cost.

    `listen` (one look around while it plays), `tone` (to put a test tone on the line and read
    it there) and `earth` (legs to earth) null: not to be asked for. `probe`: volts at a box.
    """

    rack: Cost = COSTS.rack
    box: Cost = COSTS.box
    control: Cost = COSTS.control
    open_another: Cost = COSTS.open_another
    again: Cost = COSTS.again
    listen: Cost | None = COSTS.listen
    tone: Cost | None = COSTS.tone
    probe: Cost = COSTS.probe
    earth: Cost | None = COSTS.earth


class AboutIn(Closed):
    """A line nobody has drawn, as typed: about so many, on one tap, on so many volts."""

    count: Text
    tap_w: Text
    line_v: Text
    amplifier_w: Text = ""


class Resume(Closed):
    """Where a long diagnosis goes on; handed back as it came."""

    next_first: Annotated[int, Field(ge=0, le=1000)]
    firsts: Annotated[int, Field(ge=0, le=1000)]
    kept: Annotated[tuple[tuple[int, int, float], ...], Field(max_length=100)]


class DiagnoseBody(Closed):
    """A job and a place on it (or a bare count), and all that was read, heard and said.

    Baselines are the job's own readings that are marked so. `load_tolerance_pct` null: 10 %.
    `leads_ohm` null: the leads were nulled. `budget`: how much to search before answering.
    """

    job: Job | None = None
    about: AboutIn | None = None
    where: Spot | None = None
    readings: Annotated[tuple[ReadingIn, ...], Field(max_length=200)] = ()
    complaint: Complaint | None = None
    load_tolerance_pct: Percent | None = None
    leads_ohm: LeadOhms | None = None
    costs: CostsIn = CostsIn()
    resume: Resume | None = None
    budget: Annotated[int, Field(ge=1, le=MOST_BUDGET)] = BUDGET


class ShareWorkingBody(DiagnoseBody):
    """A diagnosis, and which of its groups is to be explained, counted from 0."""

    group: Annotated[int, Field(ge=0, le=100)]


class ExpectedBody(Closed):
    """A job and a place (or a bare count): what everything there should read.

    `controls` and `quantity` choose the table of boxes; the amplifier's end is told for all.
    """

    job: Job | None = None
    about: AboutIn | None = None
    where: Spot | None = None
    controls: Controls = "open"
    quantity: Literal["z_1k_ohm", "dc_ohm"] = "z_1k_ohm"
    meter_tolerance_pct: Percent | None = None
    load_tolerance_pct: Percent | None = None


class ExpectedWorkingBody(ExpectedBody):
    """Which band of `expected` is to be explained, or that of a reading.

    `at` is the id of the output, zone or point (null: of `where`); `view` a column of a box,
    heads are "out". With `reading` its own place, looking, lifted, controls and quantity count.
    """

    at: Id | None = None
    view: Literal["out", "alone", "back", "whole"] = "out"
    reading: ReadingIn | None = None


class RecordsBody(Closed):
    """A job and one of its zones or outputs: what was read there on any visit."""

    job: Job
    where: Spot


class FirstTestBody(Closed):
    """A job; `since`: readings taken before that day do not count."""

    job: Job
    since: Moment


class ComplaintBody(Closed):
    """One complaint, or none for the whole table."""

    complaint: Complaint | None = None


class DistanceBody(Closed):
    """A short or a break read from one end or both, as typed; empty is not known.

    On a drawn line, `job` and `where` (a zone), and `far_point`: the box at which `far_ohm` was
    read, the home run lifted. Else on a bare pair: the cable is a kind, or its measured loop
    resistance per kilometre, and `route_m`, its one-way length, is needed with `far_ohm`.
    `conductor_c` is how warm the copper is; empty, as the job's limits say (without a job 30 °C).
    A break is told by impedance at 1 kHz.
    """

    fault: Literal["short", "break"] = "short"
    near_ohm: Text
    far_ohm: Text = ""
    leads_ohm: Text = ""
    route_m: Text = ""
    conductor_c: Text = ""
    tolerance_pct: Text = ""
    quantity: Literal["z_1k_ohm", "dc_ohm"] = "z_1k_ohm"
    cable: CableKind | None = None
    job: Job | None = None
    where: Spot | None = None
    far_point: Id | None = None

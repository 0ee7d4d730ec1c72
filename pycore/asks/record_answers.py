"""The shapes of what is told of kept readings, of a first test, and of distances."""

from typing_extensions import TypedDict

from pycore.asks.answers import StepAnswer
from pycore.asks.meter_answers import ReadingAnswer
from pycore.asks.meter_bodies import Controls
from pycore.jobs.records import Quantity


class RecordAnswer(ReadingAnswer):
    """A kept reading of any visit: when and where, what was measured and how, by what, and
    whether the line is judged against it."""

    at: str
    where: dict[str, str]
    place: str
    what: str
    how: str
    instrument: str
    is_baseline: bool


class BaselineAnswer(TypedDict):
    """What may be made a line's baseline: the ids of readings, and why none may, in words."""

    readings: list[str]
    why: str


class RecordsAnswer(TypedDict):
    """What was read on a line, the newest first. `sharp`: later visits are judged against a
    baseline, within `repeat`. `offers`: by day, what may be made the baseline."""

    records: list[RecordAnswer]
    offers: dict[str, BaselineAnswer]
    sharp: bool
    repeat: str


class TestEntry(TypedDict):
    """What is entered at a step, and how the controls stand."""

    quantity: Quantity
    controls: Controls


class TestStep(TypedDict):
    """One step of a first test. `reading`: what is entered there, null where it is only
    confirmed; `record`: what was entered, judged. `stop`: why nothing more may be done on this
    line for now, from the step that found it on; empty where nothing was found."""

    code: str
    title: str
    words: str
    expects: str
    cautions: list[str]
    reading: TestEntry | None
    record: RecordAnswer | None
    stop: str


class TestedZone(TypedDict):
    """The steps of one zone, or why there are none, and what may be made its baseline."""

    zone: str
    title: str
    problem: str | None
    steps: list[TestStep]
    baseline: BaselineAnswer


class FirstTestAnswer(TypedDict):
    """A first test of a whole job. `readings`: the ids of what was entered; `whole`: nothing
    that is to be entered is missing."""

    zones: list[TestedZone]
    readings: list[str]
    whole: bool
    connect: str


class MeasuredPlace(TypedDict):
    """One place that reads so: where on a drawn line (the thing its section leads to, and the
    share of the section; the error's ends may lie beyond it), and metres from the amplifier
    with the least and the most."""

    point: str | None
    share: float
    low_share: float
    high_share: float
    metres: float
    low: float
    high: float
    shown: str
    range: str
    words: str


class MeasuredDistance(TypedDict):
    """Metres to a short or a break, with the least and the most, a short's own ohms, and the
    steps, for the first of `places`. A line that divides can have several that read alike."""

    metres: float
    low: float
    high: float
    own_ohm: float | None
    shown: str
    range: str
    own_shown: str
    places: list[MeasuredPlace]
    steps: list[StepAnswer]
    assumptions: list[str]

"""The shapes of what the asks of the meter answer."""

from typing import NotRequired

from typing_extensions import TypedDict

from pycore.asks.meter_bodies import Controls, Resume
from pycore.calc.finding import Verdict
from pycore.jobs import Job


class BandAnswer(TypedDict):
    """What a meter should read (ohm; null for an open line), unrounded and ready to print.

    `range` is "88 Ω to 117 Ω", its ends alone are `low_shown` and `high_shown`; `tolerance` the
    whole of it as a fraction.
    """

    value: float | None
    low: float | None
    high: float | None
    tolerance: float
    shown: str
    range: str
    low_shown: str
    high_shown: str


class ReadingAnswer(TypedDict):
    """A reading judged. `position` is the reading within its band as a fraction (0 low end, 1
    high end) for a picture, null where there is none. `mark`: the verdict in a word or two."""

    reading: str
    title: str
    shown: str
    band: BandAnswer | None
    position: float | None
    deviation: str
    verdict: Verdict
    mark: str
    code: str
    words: str
    remedy: str | None
    notes: list[str]


class DistanceAnswer(TypedDict):
    """Metres from the amplifier along the route, from how many ends, and in words."""

    metres: float
    low: float
    high: float
    ends: int
    own_ohm: float | None
    words: str


class SuspectAnswer(TypedDict):
    """One thing that may be wrong. `fault` is its code, `also` a second one where two are
    needed. `inside`: every reading agrees with it. `would_read`: what each reading would be."""

    fault: str
    where: dict[str, str]
    also: NotRequired["SuspectAnswer"]
    short: str
    words: str
    share: float
    inside: bool
    would_read: list[str]
    distance: DistanceAnswer | None


class GroupAnswer(TypedDict):
    """Suspects that nothing tells apart. `rank` is what to print: a word, or a share once the
    line has a baseline; `share` orders them."""

    share: float
    rank: str
    inside: bool
    suspects: list[SuspectAnswer]


class BundleAnswer(TypedDict):
    """Groups led by one kind of fault at several places that nothing read so far tells apart:
    what they say together, the places that lead them, and which of the groups listed they are.
    """

    share: float
    rank: str
    words: str
    fault: str
    places: list[dict[str, str]]
    groups: list[int]


class FamilyAnswer(TypedDict):
    """All suspects of one kind together: at how many places, and how likely together."""

    fault: str
    short: str
    share: float
    rank: str
    count: int


class OutcomeAnswer(TypedDict):
    """What one range of the next reading would mean: the suspects it leaves, likeliest first."""

    low: float
    high: float | None
    shown: str
    share: float
    rank: str
    suspects: list[str]
    more: int


class NextAnswer(TypedDict):
    """The next reading to take, as a reading without its value, and what it would tell."""

    words: str
    where: dict[str, str]
    looking: str
    lifted: list[str]
    quantity: str
    controls: str
    cost: float
    bits: float
    cautions: list[str]
    outcomes: list[OutcomeAnswer]


class ContradictionAnswer(TypedDict):
    """Two readings that exclude each other."""

    readings: list[str]
    words: str


class DiagnoseAnswer(TypedDict):
    """What the readings say. With `done` false the search for two faults goes on: ask again with
    `resume`; `searched` is where the search stands. `next` null: `next_reason` says why. `rest`:
    the share that is not listed."""

    done: bool
    share: float
    resume: Resume | None
    searched: Resume | None
    headline: str
    verdict: Verdict
    reason: str
    expected: list[ReadingAnswer]
    groups: list[GroupAnswer]
    bundles: list[BundleAnswer]
    families: list[FamilyAnswer]
    rest: float
    settled: bool
    odds: str
    next: NextAnswer | None
    next_reason: str
    contradictions: list[ContradictionAnswer]
    cannot_see: list[str]
    assumptions: list[str]
    job: NotRequired[Job]


class HeadAnswer(TypedDict):
    """What the amplifier's end should read in one state, against the least it may see. `how`:
    by what, and how the controls stand; `title`: place and how."""

    where: dict[str, str]
    title: str
    place: str
    how: str
    controls: str
    quantity: str
    band: BandAnswer
    verdict: Verdict
    words: str


class BoxAnswer(TypedDict):
    """What one box should read: outward with its feed lifted, what is fitted there alone,
    backward with what goes on lifted, and all together."""

    point: str
    title: str
    far: str
    out: BandAnswer
    alone: BandAnswer
    back: BandAnswer
    whole: BandAnswer


class ExpectedAnswer(TypedDict):
    """What everything at a place should read, and what comes before the first act on it.
    `controls`: how the controls of this line can stand while it is read."""

    heads: list[HeadAnswer]
    boxes: list[BoxAnswer]
    cautions: list[str]
    cannot_see: list[str]
    assumptions: list[str]
    controls: list[Controls]
    job: NotRequired[Job]


class ComplaintAnswer(TypedDict):
    """A complaint, what it usually stands for, and the test that decides."""

    code: str
    words: str
    suspects: list[str]
    test: str
    cautions: list[str]


class ComplaintsAnswer(TypedDict):
    """The complaints asked for."""

    complaints: list[ComplaintAnswer]

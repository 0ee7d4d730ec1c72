"""The shapes of what comes back: plain dictionaries, from which the page's types are made."""

from typing import Literal, NotRequired

from typing_extensions import TypedDict

from pycore.calc.finding import State, Verdict
from pycore.calc.solve import PointRow
from pycore.jobs import Job


class ShownTexts(TypedDict, total=False):
    """Texts of a finding's numbers; one that is not known is not there."""

    value: str
    low: str
    high: str
    limit: str
    share: str
    left: str


class FindingAnswer(TypedDict):
    """A finding with its words. `value`, `low`, `high`, `limit` are unrounded, in `unit`."""

    id: str
    code: str
    what: str
    where: dict[str, str]
    state: State | None
    value: float | None
    low: float | None
    high: float | None
    unit: str
    verdict: Verdict
    verdict_words: str
    limit: float | None
    values: dict[str, str | float | int | None]
    words: str
    remedy: str | None
    title: str
    shown: ShownTexts
    share_fraction: float | None


LeftBy = Literal["shared", "feeds"]


class Face(TypedDict):
    """How a thing looks in a list; every text is ready to print.

    `finding`, `share_finding`, `left_finding` open the workings of load, share and left,
    `reason_finding` that of what the reason speaks of;
    `left_by` is "shared" where the watts an output shares leave less than its own maximum does, and
    "feeds" where the outputs that share watts can take less than is left of those;
    `row_v` is the line voltage (volts) a loudspeaker's tap is marked for, where that is known.
    """

    title: str
    line: str
    detail: str
    verdict: Verdict
    verdict_words: str
    reason: str
    reason_finding: str | None
    load: str
    limit: str
    share: str
    share_fraction: float | None
    left: str
    finding: str | None
    share_finding: str | None
    left_finding: str | None
    fields: NotRequired[dict[str, str]]
    loss: NotRequired[str]
    left_by: NotRequired[LeftBy]
    row_v: NotRequired[float]


class JobFace(TypedDict):
    """How the whole job looks: its verdict, why, and what nobody has checked."""

    title: str
    line: str
    verdict: Verdict
    headline: str
    reason: str
    not_checked: list[str]
    counts: str
    finding: str | None
    fields: NotRequired[dict[str, str]]


class OfferedTap(TypedDict):
    """A tap and how it is printed."""

    tap_w: float
    shown: str


class RowFace(TypedDict):
    """The taps of one marked voltage; `taps` are those one may turn to, small ones first.

    `at_v` is the mark, `line_v` the voltage of the line it stands for.
    """

    at_v: float
    line_v: float
    shown: str
    text: str
    taps: list[OfferedTap]


class KindFace(TypedDict):
    """One kind: its name as it is printed, its lines, whether it is used, its numbers as typed, the
    rows of its selector; `differs`: the tool comes with one of this id that says otherwise."""

    title: str
    lines: list[str]
    used: str
    in_use: bool
    differs: bool
    fields: dict[str, str]
    rows: list[RowFace]


class KindFaces(TypedDict):
    """The kinds of a job by family and id."""

    loudspeakers: dict[str, KindFace]
    attenuators: dict[str, KindFace]
    cables: dict[str, KindFace]


class Faces(TypedDict):
    """All texts the page's lists need."""

    job: JobFace
    things: dict[str, Face]
    kinds: KindFaces


class Seen(TypedDict):
    """A job looked at: its findings, the table of its points, and its faces."""

    findings: list[FindingAnswer]
    points: list[PointRow]
    faces: Faces


class SeenJob(Seen):
    """The same, with the job itself."""

    job: Job


class ProblemAnswer(TypedDict):
    """What went wrong, where, and what to do."""

    code: str
    values: dict[str, str | float | int]
    words: str
    where: dict[str, str]
    remedy: str | None


class InputAnswer(TypedDict):
    """A number put into a step, and where it came from."""

    name: str
    shown: str
    origin: str
    source: NotRequired[str]


class StepAnswer(TypedDict):
    """One equation, the numbers put in, and what came out."""

    title: str
    formula: str
    put_in: str
    result: str
    inputs: list[InputAnswer]
    source: str
    source_note: str


class WorkingAnswer(TypedDict):
    """How a number came to be."""

    title: str
    result: str
    steps: list[StepAnswer]
    assumptions: list[str]

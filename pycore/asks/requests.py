"""The bodies of the asks, and the head every request carries."""

from typing import Annotated, Final, Literal

from pydantic import BaseModel, ConfigDict, Field, JsonValue

from pycore.ground.units import Manner
from pycore.ground.words import written
from pycore.jobs import Closed, Job
from pycore.jobs.base import Id, Name

Text = Annotated[str, Field(max_length=200)]
Typed = Annotated[dict[Annotated[str, Field(max_length=80)], Text], Field(max_length=400)]
NOTHING_TYPED: Final[dict[str, str]] = {}
RawCommand = Annotated[dict[str, JsonValue], Field(max_length=40)]


class MannerBody(BaseModel):
    """How the person wants numbers; anything else that comes with it is left aside."""

    model_config = ConfigDict(extra="ignore")

    language: Annotated[str, Field(max_length=12)] = "en"
    length: Literal["m", "ft"] = "m"
    decimal: Literal[".", ","] = "."
    today: Annotated[str, Field(max_length=40)] = ""

    def manner(self) -> Manner:
        """The same, as the printer takes it."""
        language = written(self.language, self.decimal)
        return Manner(language, self.length, self.decimal, self.today)


class Head(BaseModel):
    """What every request says first; the body is read later, by its ask."""

    model_config = ConfigDict(extra="ignore")

    n: Annotated[int, Field(ge=0, le=2**53)] = 0
    ask: Annotated[str, Field(max_length=40)]
    manner: MannerBody = MannerBody()


class NothingBody(Closed):
    """An ask that needs nothing."""


class JobBody(Closed):
    """An ask about one job."""

    job: Job


class StartBody(Closed):
    """A new job: its id and name."""

    id: Id
    name: Name


class EditBody(Closed):
    """A job and the command to apply; `typed` are fields of it as the person typed them."""

    job: Job
    command: RawCommand
    typed: Typed = NOTHING_TYPED


class PreviewBody(Closed):
    """A job and the commands to try on it, each by itself."""

    job: Job
    commands: Annotated[tuple[RawCommand, ...], Field(max_length=60)]
    typed: Typed = NOTHING_TYPED


class WorkingBody(Closed):
    """A job and the finding whose number is to be explained.

    With commands or a change it is explained as it would be once they were done; the job
    stays as it is. `typed` are fields of them as the person typed them.
    """

    job: Job
    finding: Annotated[str, Field(max_length=300)]
    commands: Annotated[tuple[RawCommand, ...], Field(max_length=10)] = ()
    change: RawCommand | None = None
    typed: Typed = NOTHING_TYPED


class SavedBody(Closed):
    """A saved text."""

    text: Annotated[str, Field(max_length=8_000_000)]


class TallyOutput(Closed):
    """One output of the tally's amplifier."""

    max_w: Text


class TallyRow(Closed):
    """So many loudspeakers on one tap, as typed; `output` counts from 0."""

    count: Text
    tap_w: Text
    output: Annotated[int, Field(ge=0, le=63)] = 0


class TallyIds(Closed):
    """Ids to use: the job's, and a hand with the first free counter."""

    job: Id
    hand: Annotated[str, Field(pattern=r"^[a-z][a-z0-9]{2}$")]
    next: Annotated[int, Field(ge=0, le=10**9)]


class TallyBody(Closed):
    """A tally as typed; the empty text is not known."""

    line_v: Text
    amplifier_w: Text
    outputs: Annotated[tuple[TallyOutput, ...], Field(max_length=64)] = ()
    rows: Annotated[tuple[TallyRow, ...], Field(max_length=200)] = ()
    ids: TallyIds
    name: Name

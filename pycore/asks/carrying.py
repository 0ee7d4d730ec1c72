"""The bodies of the asks by which jobs travel."""

from typing import Annotated, Final, Literal

from pydantic import Field

from pycore.jobs import Closed, Job

MOST_JOBS = 500
ChangeId = Annotated[str, Field(max_length=120)]
Taken = Annotated[dict[ChangeId, Literal["mine", "theirs"]], Field(max_length=100_000)]
NOTHING_TAKEN: Final[dict[str, Literal["mine", "theirs"]]] = {}


class TextBody(Closed):
    """A text: a link, a message with one, a file."""

    text: Annotated[str, Field(max_length=8_000_000)]


class JobsBody(Closed):
    """Several jobs."""

    jobs: Annotated[tuple[Job, ...], Field(max_length=MOST_JOBS)]


class CompareBody(Closed):
    """Two states of a job, and the one they grew from when it is still kept."""

    mine: Job
    theirs: Job
    base: Job | None = None


class MergeBody(CompareBody):
    """The same, and which side each change is taken from, by the ids `compare` gave."""

    taken: Taken = NOTHING_TAKEN

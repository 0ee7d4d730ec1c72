"""Jobs as a text to keep: JSON that says what it is, and reading it back.

    {"format": "rungline-job", "version": 1, …}                       one job
    {"format": "rungline-jobs", "version": 1, "jobs": [job, …]}       all jobs

A job of an older version climbs `steps`, one numbered step a version.
"""

import json
from typing import Annotated, Final, Literal, NamedTuple

from pydantic import BaseModel, ConfigDict, Field, JsonValue

from pycore.carry.steps import climb
from pycore.ground.plain import plain_line
from pycore.ground.problems import BadText, NewerJob, Problem, TooLarge
from pycore.ground.refusals import read_model
from pycore.jobs import Job
from pycore.jobs.job import FORMAT, VERSION

MOST_CHARACTERS = 4_000_000
# As much as a request can carry back, its quotation marks escaped.
MOST_CHARACTERS_OF_ALL = 6_000_000
MOST_JOBS = 500
# Every field of a job has a colon. So many are far beyond any job, and finding all that is
# wrong in a text of more would keep a phone busy for seconds.
MOST_COLONS = 150_000
LONGEST_NAME = 120
FORMAT_OF_ALL: Final = "rungline-jobs"
VERSION_OF_ALL: Final = 1


class Cover(BaseModel):
    """What a saved text says of itself; everything else is not looked at yet."""

    model_config = ConfigDict(extra="ignore", strict=True)

    format: str | None = None
    version: Annotated[int, Field(ge=0, le=10**9)] | None = None


class AllJobs(BaseModel):
    """A text of several jobs, each still to be read by itself."""

    model_config = ConfigDict(extra="forbid", strict=True, allow_inf_nan=False)

    format: Literal["rungline-jobs"]
    version: int
    jobs: tuple[dict[str, JsonValue], ...]


class Refused(NamedTuple):
    """A job of several that could not be read: its place, what it says its name is, and why."""

    place: int
    name: str
    problem: Problem


class Opened(NamedTuple):
    """The jobs of a text, and those that could not be read: one bad job costs no other."""

    jobs: tuple[Job, ...]
    refused: tuple[Refused, ...]


def save(job: Job) -> str:
    """The job as indented JSON, what is not known left out."""
    return job.model_dump_json(exclude_none=True, indent=1)


def save_all(jobs: tuple[Job, ...]) -> str:
    """Several jobs as one text, a line each.

    Raises TooLarge `jobs_too_large` or `jobs_too_many`: what could not be opened is not saved.
    """
    _refuse_more(len(jobs))
    inner = ",\n".join(job.model_dump_json(exclude_none=True) for job in jobs)
    head = f'"format": "{FORMAT_OF_ALL}", "version": {VERSION_OF_ALL}'
    text = f'{{{head}, "jobs": [\n{inner}\n]}}\n'
    if len(text) > MOST_CHARACTERS_OF_ALL:
        raise TooLarge("jobs_too_large", characters=len(text), most=MOST_CHARACTERS_OF_ALL)
    return text


def open_saved(text: str) -> Job:
    """The job in a saved text.

    Raises BadText (`not_a_job`, `several_jobs` or what is wrong with a field), NewerJob,
    BrokenJob, TooLarge.
    """
    _refuse_longer(text, MOST_CHARACTERS)
    return open_job(text)


def open_all(text: str) -> Opened:
    """The jobs in a text of several, or the one of a single job's text.

    Raises the same problems for the text as a whole; those of one job among several are
    given beside the others.
    """
    _refuse_longer(text, MOST_CHARACTERS_OF_ALL)
    cover = read_model(Cover, text)
    if cover.format != FORMAT_OF_ALL:
        return Opened((open_saved(text),), ())
    if cover.version is not None and cover.version > VERSION_OF_ALL:
        raise NewerJob("jobs_newer", version=cover.version)
    jobs: list[Job] = []
    refused: list[Refused] = []
    every = read_model(AllJobs, text).jobs
    _refuse_more(len(every))
    for place, raw in enumerate(every):
        try:
            jobs.append(open_job(json.dumps(raw)))
        except Problem as problem:
            refused.append(
                Refused(place, plain_line(str(raw.get("name", ""))[:LONGEST_NAME]), problem)
            )
    return Opened(tuple(jobs), tuple(refused))


def open_job(text: str) -> Job:
    """The job in its own text, whatever its version.

    Raises BadText, TooLarge, NewerJob or BrokenJob.
    """
    if text.count(":") > MOST_COLONS:
        raise TooLarge("fields_too_many", most=MOST_COLONS)
    cover = read_model(Cover, text)
    if cover.format == FORMAT_OF_ALL:
        raise BadText("several_jobs")
    if cover.format != FORMAT:
        raise BadText("not_a_job")
    if cover.version is None:
        raise BadText("field_missing", where={"field": "version"}, field="version")
    if cover.version > VERSION:
        raise NewerJob("job_newer", version=cover.version)
    return read_model(Job, climb(text, cover.version, newest=VERSION))


def _refuse_more(count: int) -> None:
    if count > MOST_JOBS:
        raise TooLarge("jobs_too_many", count=count, most=MOST_JOBS)


def _refuse_longer(text: str, most: int) -> None:
    if len(text) > most:
        raise TooLarge("text_too_large", characters=len(text), most=most)

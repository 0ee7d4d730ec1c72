"""A job as a text to keep: JSON that says what it is, and reading it back.

A later version climbs `steps/`, one numbered step a version; version 1 has none yet.
"""

from pydantic import BaseModel, ConfigDict

from pycore.ground.problems import BadText, NewerJob, TooLarge
from pycore.ground.refusals import read_model
from pycore.jobs import Job
from pycore.jobs.job import FORMAT, VERSION

MOST_CHARACTERS = 4_000_000


class Cover(BaseModel):
    """What a saved text says of itself; everything else is not looked at yet."""

    model_config = ConfigDict(extra="ignore", strict=True)

    format: str | None = None
    version: int | None = None


def save(job: Job) -> str:
    """The job as indented JSON, what is not known left out."""
    return job.model_dump_json(exclude_none=True, indent=1)


def open_saved(text: str) -> Job:
    """The job in a saved text.

    Raises BadText (`not_a_job` or what is wrong with a field), NewerJob, BrokenJob, TooLarge.
    """
    if len(text) > MOST_CHARACTERS:
        raise TooLarge("text_too_large", characters=len(text), most=MOST_CHARACTERS)
    cover = read_model(Cover, text)
    if cover.format != FORMAT:
        raise BadText("not_a_job")
    if cover.version is None:
        raise BadText("field_missing", where={"field": "version"}, field="version")
    if cover.version > VERSION:
        raise NewerJob("job_newer", version=cover.version)
    return read_model(Job, text)

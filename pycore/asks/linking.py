"""The asks `write_link`, `read_link` and `prints`.

What they need is imported when they are first asked: the start does not wait for it.
"""

from typing import Annotated

from pydantic import Field
from typing_extensions import TypedDict

from pycore import __version__
from pycore.asks.answers import Faces, FindingAnswer
from pycore.asks.carrying import JobsBody, TextBody
from pycore.asks.requests import JobBody
from pycore.asks.see import see
from pycore.calc.solve import PointRow
from pycore.ground.units import Manner, show
from pycore.ground.words import say
from pycore.jobs import Job

# Messengers cut or refuse links from about here on (common practice, no source).
LONG, VERY_LONG = 2000, 8000


class LinkAnswer(TypedDict):
    """A link's text, to stand behind #; `advice` when it is longer than messengers like, and
    `too_long` when only a file is sure to arrive."""

    text: str
    characters: int
    too_long: bool
    advice: str | None


class LinkedJob(TypedDict):
    """The job of a link, looked at; the version that wrote it, and the print of its content."""

    findings: list[FindingAnswer]
    points: list[PointRow]
    faces: Faces
    job: Job
    made_by: str
    print: str


class PrintsAnswer(TypedDict):
    """The print of each job's content, in the same order: equal content, equal prints."""

    prints: list[str]


class LinkBody(JobBody):
    """A job, and the address its link is to lead to: what is sent is as long as both together."""

    address: Annotated[str, Field(max_length=LONG)] = ""


def write_job_link(body: LinkBody, manner: Manner) -> LinkAnswer:
    """The ask `write_link`."""
    from pycore.carry.link import write_link

    text = write_link(body.job, __version__)
    length = len(body.address) + len(text)
    code = "link_very_long" if length > VERY_LONG else "link_long" if length > LONG else None
    values = {"characters": show(length, "count", manner=manner)}
    advice = None if code is None else say("link", code, values=values, language=manner.language)
    return {
        "text": text,
        "characters": length,
        "too_long": length > VERY_LONG,
        "advice": advice,
    }


def read_job_link(body: TextBody, manner: Manner) -> LinkedJob:
    """The ask `read_link`. It only shows: keeping the job is the page's business."""
    from pycore.carry.link import read_link
    from pycore.carry.prints import print_of

    read = read_link(body.text)
    seen = see(read.job, manner)
    return {**seen, "job": read.job, "made_by": read.made_by, "print": print_of(read.job)}


def prints(body: JobsBody, _manner: Manner) -> PrintsAnswer:
    """The ask `prints`."""
    from pycore.carry.prints import print_of

    return {"prints": [print_of(job) for job in body.jobs]}

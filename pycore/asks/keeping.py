"""The asks `save`, `open_saved`, `save_all` and `open_all`: jobs to text and back."""

from typing_extensions import TypedDict

from pycore.asks.answers import ProblemAnswer, SeenJob
from pycore.asks.carrying import JobsBody, TextBody
from pycore.asks.refused import problem_answer
from pycore.asks.requests import JobBody, SavedBody
from pycore.asks.see import see_job
from pycore.carry.saved import open_all as read_all
from pycore.carry.saved import open_saved as read_saved
from pycore.carry.saved import save as write_saved
from pycore.carry.saved import save_all as write_all
from pycore.ground.units import Manner
from pycore.jobs import Job

SAFE = "abcdefghijklmnopqrstuvwxyz0123456789"


class SavedAnswer(TypedDict):
    """A text to keep and a name for its file."""

    text: str
    file_name: str


class RefusedJob(TypedDict):
    """A job among several that could not be read: its place from 0, its name, and why."""

    place: int
    name: str
    problem: ProblemAnswer


class OpenedJobs(TypedDict):
    """The jobs of a text, and those that could not be read: one bad job costs no other."""

    jobs: list[Job]
    refused: list[RefusedJob]


def save(body: JobBody, _manner: Manner) -> SavedAnswer:
    """The job as text, and a file name any system takes."""
    plain = "".join(sign if sign in SAFE else "-" for sign in body.job.name.lower())
    stem = "-".join(part for part in plain.split("-") if part)[:60] or "job"
    return {"text": write_saved(body.job), "file_name": f"{stem}.rungline.json"}


def open_saved(body: SavedBody, manner: Manner) -> SeenJob:
    """The job in a saved text, looked at."""
    return see_job(read_saved(body.text), manner)


def save_all(body: JobsBody, manner: Manner) -> SavedAnswer:
    """All jobs as one text, and a file name with the day."""
    day = "".join(sign if sign in SAFE else "-" for sign in manner.today[:10].lower()).strip("-")
    file_name = f"rungline-jobs-{day}.json" if day else "rungline-jobs.json"
    return {"text": write_all(body.jobs), "file_name": file_name}


def open_all(body: TextBody, manner: Manner) -> OpenedJobs:
    """The jobs in a text of several, or the one in a single job's text."""
    opened = read_all(body.text)
    return {
        "jobs": list(opened.jobs),
        "refused": [
            RefusedJob(place=one.place, name=one.name, problem=problem_answer(one.problem, manner))
            for one in opened.refused
        ],
    }

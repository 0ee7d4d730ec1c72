"""The asks `save` and `open_saved`: a job to text and back."""

from typing_extensions import TypedDict

from pycore.asks.answers import SeenJob
from pycore.asks.requests import JobBody, SavedBody
from pycore.asks.see import see_job
from pycore.carry.saved import open_saved as read_saved
from pycore.carry.saved import save as write_saved
from pycore.ground.units import Manner

SAFE = "abcdefghijklmnopqrstuvwxyz0123456789"


class SavedAnswer(TypedDict):
    """A text to keep and a name for its file."""

    text: str
    file_name: str


def save(body: JobBody, _manner: Manner) -> SavedAnswer:
    """The job as text, and a file name any system takes."""
    plain = "".join(sign if sign in SAFE else "-" for sign in body.job.name.lower())
    stem = "-".join(part for part in plain.split("-") if part)[:60] or "job"
    return {"text": write_saved(body.job), "file_name": f"{stem}.rungline.json"}


def open_saved(body: SavedBody, manner: Manner) -> SeenJob:
    """The job in a saved text, looked at."""
    return see_job(read_saved(body.text), manner)

"""A whole job in a link: no server, no account. Newer codecs are added; none is ever taken away.

codec 1    `codec1`, a job of version 1
"""

import json
from collections.abc import Callable
from typing import Any, NamedTuple

from pycore.carry import codec1
from pycore.carry.envelope import find, unwrap, wrap
from pycore.carry.saved import open_job
from pycore.ground.plain import plain_line
from pycore.ground.problems import BadText, NewerJob, Problem, TooLarge
from pycore.jobs import Job

NEWEST = 1
LONGEST_VERSION = 40
# number -> how its bytes become the raw job and the version that wrote it
CODECS: dict[int, Callable[[bytes], tuple[dict[str, Any], str]]] = {1: codec1.unpack}


class LinkRead(NamedTuple):
    """The job of a link, and the version of Rungline that wrote it."""

    job: Job
    made_by: str


def write_link(job: Job, made_by: str) -> str:
    """The job as a link's text, to stand behind `#`; `made_by` is the version that writes it.

    Raises TooLarge when the job is too much for any link: then a file carries it.
    """
    raw = job.model_dump(mode="json", by_alias=True, exclude_none=True)
    some = codec1.pack(raw, made_by)
    text = wrap(NEWEST, some)
    try:
        codec1.unpack(some)
    except TooLarge:
        # Few bytes can hold more than a reader makes of them: such a link opens nowhere.
        raise TooLarge("link_too_much") from None
    return text


def read_link(text: str) -> LinkRead:
    """The job in a link, an address with one, or a message with either.

    Raises BadText `not_a_link`, `link_cut`, `link_damaged` or `link_not_sound` (it arrived
    whole, but holds no job that keeps the rules), NewerJob, TooLarge.
    """
    found = find(text)
    if found.codec not in CODECS:
        raise NewerJob("link_newer")
    raw, made_by = CODECS[found.codec](unwrap(found))
    try:
        return LinkRead(open_job(json.dumps(raw)), plain_line(made_by)[:LONGEST_VERSION])
    except (NewerJob, TooLarge):
        raise
    except Problem as problem:
        raise BadText("link_not_sound", where=problem.where, because=problem.code) from None

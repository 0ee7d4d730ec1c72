"""Old jobs climb to the present: one numbered step a version, each tried for ever.

A step reads the text of its own version by that version's kept model, so nothing old is
guessed at, and gives the raw job of the next version. Version 1 is the first: there is no
step yet. The step from version n to n + 1 lies in `from_n.py` with the model it reads.
"""

import json
from collections.abc import Callable, Mapping
from typing import Any, NamedTuple

from pydantic import BaseModel

from pycore.ground.problems import BadText
from pycore.ground.refusals import read_model


class Step(NamedTuple):
    """The kept model of a version, and how a job of it becomes one of the next version."""

    model: type[BaseModel]
    climb: Callable[[Any], dict[str, Any]]


# version -> the step that leaves it
STEPS: Mapping[int, Step] = {}


def climb(text: str, version: int, *, newest: int, steps: Mapping[int, Step] = STEPS) -> str:
    """The text of a job of `version` as the text of one of the newest version.

    Raises BadText `job_too_old` where a step is missing, and what is wrong with a field.
    """
    for at in range(version, newest):
        if at not in steps:
            raise BadText("job_too_old", version=version)
        old = read_model(steps[at].model, text)
        text = json.dumps(steps[at].climb(old))
    return text

"""A job too large for a link."""

import random

from pycore.jobs import Area, Job
from tests.samples.travellers import make_traveller


def make_large() -> Job:
    """A job whose notes no squeezing makes small."""
    chance = random.Random(3)
    areas = tuple(
        Area(id=f"area{number}", name="", notes="".join(chance.choices("abcdefghij", k=4000)))
        for number in range(100)
    )
    small = make_traveller(5, free_labels=False, ticked=False)
    return Job.model_validate({**dict(small), "areas": areas})

"""Readings as they are taken, and the tool asked what they say."""

from collections.abc import Sequence
from typing import Any

from pycore.calc.diagnosis import Diagnosis, Question, Step, diagnose
from pycore.calc.priors import COSTS
from pycore.calc.reading import Taken
from pycore.calc.site import Given
from pycore.jobs import Job

USUAL: dict[str, Any] = {
    "at": "2026-01-01",
    "looking": "out",
    "lifted": (),
    "quantity": "z_1k_ohm",
    "controls": "open",
    "tolerance_pct": 5.0,
    "temperature_c": 20.0,
    "instrument": "meter",
    "baseline": False,
}


def taken(place: str, value: float | str, **more: Any) -> Taken:
    """A reading; each has an id of its own by what it is."""
    fields = {**USUAL, **more}
    name = f"{place}-{fields['quantity']}-{fields['looking']}-{value}"
    return Taken(id=str(fields.pop("id", name)), place=place, value=value, **fields)


def heard(place: str, how: str) -> Taken:
    """How a loudspeaker was heard to play."""
    return taken(place, how, quantity="plays", controls="set")


def told_by(job: Job, readings: Sequence[Taken], **more: Any) -> Diagnosis:
    """What the tool says of these readings."""
    given = Given(more.pop("load_pct", 10.0), more.pop("leads_ohm", None))
    question = Question(
        job,
        more.pop("where", {"zone": "zone"}),
        tuple(readings),
        tuple(more.pop("baselines", ())),
        given,
        more.pop("complaint", None),
        more.pop("costs", COSTS),
    )
    step = Step(more.pop("so_far", None), more.pop("budget", 10**9))
    assert not more
    return diagnose(question, step)


def share_of(told: Diagnosis, family: str, place: str | None = None) -> float:
    """The share of a kind, anywhere or at one place."""
    wired = told.site.circuits.wired
    return sum(
        one.share
        for one in told.suspects
        if one.key[0] == family
        and not one.key[2]
        and (place is None or wired.ids[one.key[1]] == place)
    )


def first_of(told: Diagnosis) -> tuple[str, str]:
    """The likeliest suspect: its kind and place."""
    family, node = told.suspects[0].key[:2]
    return family, told.site.circuits.wired.ids[node]

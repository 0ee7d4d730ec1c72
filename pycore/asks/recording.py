"""The ask `records`: what was read on a line on any visit, judged and in plain words."""

from collections.abc import Iterator, Sequence

from pycore.asks.baselines import offer_of, offer_told
from pycore.asks.meter_bodies import RecordsBody
from pycore.asks.meter_question import place_of
from pycore.asks.meter_readings import UNCONTROLLED, judged_readings
from pycore.asks.meter_tell import Tell
from pycore.asks.record_answers import BaselineAnswer, RecordAnswer, RecordsAnswer
from pycore.calc import priors
from pycore.calc.reading import Meant, sort_reading, taken_of
from pycore.calc.site import Given, Site, site_of
from pycore.ground.units import Manner
from pycore.jobs import Job, Reading


def records(body: RecordsBody, manner: Manner) -> RecordsAnswer:
    """The ask `records`, the newest visit first."""
    where = place_of(body.where)
    site = site_of(body.job, where, given=Given(priors.LOAD_PCT, None))
    tell = Tell(site.circuits.wired, manner)
    told = list(records_on(site, tell))
    told.sort(key=lambda one: one["at"], reverse=True)
    return {
        "records": told,
        "offers": {at: _offer(site, told, at=at, tell=tell) for at in {one["at"] for one in told}},
        "sharp": any(one["is_baseline"] for one in told),
        "repeat": tell.show(priors.REPEAT_PCT, "pct"),
    }


def _offer(
    site: Site, told: Sequence[RecordAnswer], *, at: str, tell: Tell
) -> BaselineAnswer:  # fmt: skip
    """What the readings of one day offer."""
    judged = {one["reading"]: one for one in told if one["at"] == at}
    return offer_told(offer_of(readings_on(site), judged, tell=tell), tell)


def records_on(site: Site, tell: Tell) -> Iterator[RecordAnswer]:
    """Every kept reading of the zones in question and of their output, in the job's order."""
    for reading in readings_on(site):
        meant = _meant(reading)
        baselines = list(_known_before(site.job, reading))
        judged = judged_readings(site, [meant], baselines=baselines, tell=tell)[0]
        yield {
            **judged,
            "at": reading.at,
            "where": reading.where.model_dump(exclude_none=True),
            "place": tell.name(meant.taken.place),
            "what": tell.say("meter_title", reading.quantity),
            "how": _how(reading, tell),
            "instrument": reading.instrument,
            "is_baseline": reading.baseline,
        }


def readings_on(site: Site) -> Iterator[Reading]:
    """The kept readings of the zones in question and of their output."""
    wired = site.circuits.wired
    nodes = {0}
    for number in site.zones:
        start = wired.starts[number]
        nodes.update((start, *wired.beyond(start)))
    places = {wired.ids[node] for node in nodes}
    yield from (one for one in site.job.readings if taken_of(one).place in places)


def _known_before(job: Job, reading: Reading) -> Iterator[Meant]:
    """The baselines a reading can be held against: other ones, not taken later."""
    for one in job.readings:
        if one.baseline and one.id != reading.id and one.at <= reading.at:
            yield _meant(one)


def _meant(reading: Reading) -> Meant:
    return sort_reading(taken_of(reading), leads_ohm=None)


def _how(reading: Reading, tell: Tell) -> str:
    """Which way it looked, what was lifted, and how the controls stood."""
    if reading.quantity in ("plays", *UNCONTROLLED):
        return ""
    controls = tell.say("meter_title", reading.controls)
    names = ", ".join(tell.name(one) for one in reading.lifted)
    code = f"how_{reading.looking}_lifted" if names else f"how_{reading.looking}"
    return tell.say("meter_title", code, controls=controls, names=names)

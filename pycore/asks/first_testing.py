"""The ask `first_test`: every zone in the safe order, what each step should read, what it read."""

from collections.abc import Iterator, Sequence

from pycore.asks.baselines import offer_of, offer_told
from pycore.asks.first_steps import TestingStep, steps_for
from pycore.asks.meter_bodies import FirstTestBody
from pycore.asks.meter_readings import UNCONTROLLED
from pycore.asks.meter_tell import Tell
from pycore.asks.record_answers import (
    BaselineAnswer,
    FirstTestAnswer,
    RecordAnswer,
    TestedZone,
    TestEntry,
    TestStep,
)
from pycore.asks.recording import records_on
from pycore.calc import priors
from pycore.calc.bypass import DIRECT, Bypass, bypass_of, staying_in
from pycore.calc.expected import Band, bands, tolerances_of
from pycore.calc.judged import CHANGED
from pycore.calc.site import Given, Site, site_of
from pycore.calc.wiring import DIRECT_HZ, TEST_HZ, Condition
from pycore.ground.problems import Problem
from pycore.ground.units import Manner
from pycore.ground.words import say
from pycore.jobs import Job, Zone

EXPECTS = ("earth", "foreign")


def first_test(body: FirstTestBody, manner: Manner) -> FirstTestAnswer:
    """The ask `first_test`. A zone that hangs on no output says so and has no steps."""
    zones = [_zone(body.job, one, since=body.since, manner=manner) for one in body.job.zones]
    steps = [step for zone in zones for step in zone["steps"]]
    entered = [step for step in steps if step["reading"] is not None]
    return {
        "zones": zones,
        "readings": [step["record"]["reading"] for step in steps if step["record"] is not None],
        "whole": bool(entered) and all(_done(step) for step in entered),
        "connect": say("meter_run", "connect", language=manner.language),
    }


def _zone(job: Job, zone: Zone, *, since: str, manner: Manner) -> TestedZone:
    try:
        site = site_of(job, {"zone": zone.id}, given=Given(priors.LOAD_PCT, None))
    except Problem as problem:
        texts = {name: str(value) for name, value in problem.values.items()}
        words = say("problem", problem.code, values=texts, language=manner.language)
        nothing: BaselineAnswer = {"readings": [], "why": ""}
        return _tested(zone, [], problem=words, baseline=nothing)
    tell = Tell(site.circuits.wired, manner)
    records = [one for one in records_on(site, tell) if one["at"] >= since]
    steps = list(_steps(site, zone, records=records, tell=tell))
    judged = {step["record"]["reading"]: step["record"] for step in steps if step["record"]}
    offer = offer_told(offer_of(job.readings, judged, tell=tell), tell)
    return _tested(zone, steps, problem=None, baseline=offer)


def _tested(
    zone: Zone, steps: list[TestStep], *, problem: str | None, baseline: BaselineAnswer
) -> TestedZone:
    return {
        "zone": zone.id,
        "title": zone.name,
        "problem": problem,
        "steps": steps,
        "baseline": baseline,
    }


def missing_steps(job: Job, zone: str, *, since: str, manner: Manner) -> list[str]:
    """The titles of the steps of a zone that take a reading and have none since a day."""
    own = next(one for one in job.zones if one.id == zone)
    steps = _zone(job, own, since=since, manner=manner)["steps"]
    return [one["title"] for one in steps if one["reading"] and not _done(one)]


def _done(step: TestStep) -> bool:
    """Whether what is entered at a step was read, of the line as it is."""
    return step["record"] is not None and step["record"]["code"] != CHANGED.code


def _steps(
    site: Site, zone: Zone, *, records: Sequence[RecordAnswer], tell: Tell
) -> Iterator[TestStep]:
    bypass = bypass_of((zone,), site.job.kinds)
    staying = ", ".join(tell.name(one) for one in staying_in((zone,), site.job.kinds))
    stop = ""
    for one in steps_for(bypass):
        reading: TestEntry | None = None
        record = None
        if one.entered is not None:
            reading = {"quantity": one.entered.quantity, "controls": one.entered.controls}
            record = _latest(records, zone.id, reading=reading, job=site.job)
        if record is not None and record["code"] == "foreign_live":
            stop = tell.say("meter_run", "stop")
        words = one.words_for(bypass)
        yield {
            "code": one.code,
            "title": tell.say("meter_run_title", one.code),
            "words": tell.say("meter_run", words, place=zone.name, controls=staying),
            "expects": _expects(site, one, bypass=bypass, tell=tell),
            "cautions": [tell.say("meter_caution", each) for each in one.cautions],
            "reading": reading,
            "record": record,
            "stop": stop,
        }


def _latest(
    records: Sequence[RecordAnswer], zone: str, *, reading: TestEntry, job: Job
) -> RecordAnswer | None:
    """The last record of a step: of this zone's own home run, nothing else lifted."""
    kept = {one.id: one for one in job.readings}
    quantity = reading["quantity"]
    mine = [
        one
        for one in records
        if one["where"] == {"zone": zone}
        and not kept[one["reading"]].lifted
        and kept[one["reading"]].quantity == quantity
        and (quantity in UNCONTROLLED or kept[one["reading"]].controls == reading["controls"])
    ]
    return mine[-1] if mine else None


def _expects(site: Site, one: TestingStep, *, bypass: Bypass, tell: Tell) -> str:
    """What the step should read, in words."""
    if one.code in EXPECTS:
        none_v = tell.show(priors.FOREIGN_NONE_V, "v")
        return tell.say("meter_run", f"{one.code}_expects", none_v=none_v)
    if one.entered is None:
        return ""
    if one.code == "direct" and one.entered.controls not in DIRECT[bypass]:
        return tell.say("meter_run", "direct_hidden")
    hz = DIRECT_HZ if one.code == "direct" else TEST_HZ
    condition = Condition(hz, one.entered.controls, site.job.limits.conductor_c)
    return tell.band(band_at_start(site, condition))["range"]


def band_at_start(site: Site, condition: Condition) -> Band:
    """What the home run of the first zone in question should read under a condition."""
    tolerances = tolerances_of(site, meter_fraction=priors.METER_PCT / 100)
    start = site.circuits.wired.starts[site.zones[0]]
    return bands(site, condition, tolerances=tolerances)["out"][start]

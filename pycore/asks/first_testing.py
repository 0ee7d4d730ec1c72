"""The ask `first_test`: every zone in the safe order, what each step should read, what it read."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Final

from pycore.asks.baselines import offer_of, offer_told
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
from pycore.calc.expected import Band, bands, tolerances_of
from pycore.calc.site import Given, Site, site_of
from pycore.calc.wiring import DIRECT_HZ, TEST_HZ, Condition, Controls
from pycore.ground.problems import Problem
from pycore.ground.units import Manner
from pycore.ground.words import say
from pycore.jobs import Job, Zone
from pycore.jobs.records import Quantity

# What is entered at a step, and how the controls stand then; the rest is only confirmed.
ENTERED: Final[Mapping[str, tuple[Quantity, Controls]]] = {
    "foreign": ("foreign_v", "set"),
    "earth": ("earth_ohm", "open"),
    "direct": ("dc_ohm", "open"),
    "impedance_open": ("z_1k_ohm", "open"),
    "impedance_override": ("z_1k_ohm", "override"),
}
ORDER = ("isolated", "foreign", "controls", "earth", "direct", "impedance_open")
CAUTIONS = {
    "isolated": ("prove_dead", "fire_panel"),
    "foreign": ("prove_dead",),
    "controls": (),
    "earth": ("earth_test",),
    "direct": ("leads_null",),
    "impedance_open": ("leads_null",),
    "impedance_override": ("leads_null",),
}
WITH_CONTROLS = {"direct": "direct_override", "impedance_open": "impedance_controls"}
EXPECTS = ("earth", "foreign")


def first_test(body: FirstTestBody, manner: Manner) -> FirstTestAnswer:
    """The ask `first_test`. A zone that hangs on no output says so and has no steps."""
    zones = [_zone(body.job, one, since=body.since, manner=manner) for one in body.job.zones]
    steps = [step for zone in zones for step in zone["steps"]]
    entered = [step for step in steps if step["reading"] is not None]
    return {
        "zones": zones,
        "readings": [step["record"]["reading"] for step in steps if step["record"] is not None],
        "whole": bool(entered) and all(step["record"] is not None for step in entered),
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
    return [one["title"] for one in steps if one["reading"] and one["record"] is None]


def _steps(
    site: Site, zone: Zone, *, records: Sequence[RecordAnswer], tell: Tell
) -> Iterator[TestStep]:
    attenuated = any(point.fitted.is_ == "attenuator" for point in zone.line)
    more = ("impedance_override",) if attenuated else ()
    stop = ""
    for code in (*ORDER, *more):
        quantity, controls = entered_at(code, attenuated=attenuated)
        reading: TestEntry | None = None
        record = None
        if quantity is not None:
            reading = {"quantity": quantity, "controls": controls}
            record = _latest(records, zone.id, reading=reading, job=site.job)
        if record is not None and record["code"] == "foreign_live":
            stop = tell.say("meter_run", "stop")
        yield {
            "code": code,
            "title": tell.say("meter_run_title", code),
            "words": tell.say("meter_run", words_of(code, attenuated=attenuated), place=zone.name),
            "expects": _expects(site, code=code, controls=controls, tell=tell),
            "cautions": [tell.say("meter_caution", each) for each in CAUTIONS[code]],
            "reading": reading,
            "record": record,
            "stop": stop,
        }


def entered_at(code: str, *, attenuated: bool) -> tuple[Quantity | None, Controls]:
    """What is entered at a step, and how the controls stand; direct current needs them gone."""
    if code not in ENTERED:
        return None, "open"
    quantity, controls = ENTERED[code]
    return quantity, "override" if code == "direct" and attenuated else controls


def words_of(code: str, *, attenuated: bool) -> str:
    """Which sentence tells a step: with controls on the line they have to be got out of the way."""
    return WITH_CONTROLS.get(code, code) if attenuated else code


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


def _expects(site: Site, *, code: str, controls: Controls, tell: Tell) -> str:
    """What the step should read, in words."""
    if code in EXPECTS:
        none_v = tell.show(priors.FOREIGN_NONE_V, "v")
        return tell.say("meter_run", f"{code}_expects", none_v=none_v)
    if code not in ENTERED:
        return ""
    hz = DIRECT_HZ if code == "direct" else TEST_HZ
    return tell.band(band_at_start(site, Condition(hz, controls, site.job.limits.conductor_c)))[
        "range"
    ]


def band_at_start(site: Site, condition: Condition) -> Band:
    """What the home run of the first zone in question should read under a condition."""
    tolerances = tolerances_of(site, meter_fraction=priors.METER_PCT / 100)
    start = site.circuits.wired.starts[site.zones[0]]
    return bands(site, condition, tolerances=tolerances)["out"][start]

"""The asks `expected` and `complaint`: what a line should read, and what a complaint means."""

from collections.abc import Iterator

from pycore.asks.first_steps import BEFORE_ALL
from pycore.asks.meter_answers import (
    BandAnswer,
    BoxAnswer,
    ComplaintAnswer,
    ComplaintsAnswer,
    ExpectedAnswer,
    HeadAnswer,
)
from pycore.asks.meter_bodies import ComplaintBody, ExpectedBody
from pycore.asks.meter_question import given_of, line_of
from pycore.asks.meter_tell import Tell
from pycore.calc import priors
from pycore.calc.bypass import DIRECT, STATES, bypass_of
from pycore.calc.complaints import COMPLAINTS, Complaint
from pycore.calc.expected import VIEWS, Head, Tolerances, bands, heads, tolerances_of
from pycore.calc.finding import Verdict
from pycore.calc.judge import PRINTED
from pycore.calc.site import Site, site_of
from pycore.calc.unseen import cannot_see
from pycore.calc.verdicts import Least, least_of
from pycore.calc.wiring import DIRECT_HZ, TEST_HZ, Condition, Controls, Wired, is_live
from pycore.ground.units import Manner
from pycore.ground.words import say


def expected(body: ExpectedBody, manner: Manner) -> ExpectedAnswer:
    """The ask `expected`."""
    line = line_of(body, manner)
    site = site_of(line.job, line.where, given=given_of(body, line))
    tell = Tell(site.circuits.wired, manner)
    tolerances = tolerances_of(site, meter_fraction=meter_fraction_of(body))
    told = _heads(site, tolerances)
    hz = DIRECT_HZ if body.quantity == "dc_ohm" else TEST_HZ
    condition = Condition(hz, body.controls, site.job.limits.conductor_c)
    answer: ExpectedAnswer = {
        "heads": [_head(site, one, tell=tell) for one in told],
        "boxes": list(_boxes(site, condition, tolerances=tolerances, tell=tell)),
        "cautions": [tell.say("meter_caution", code) for code in BEFORE_ALL],
        "cannot_see": [tell.say("meter_blind", code) for code in cannot_see(site, ())],
        "assumptions": line_assumptions(site, tell=tell, guessed=line.guessed),
        "controls": _stances(site),
    }
    if line.guessed:
        answer["job"] = line.job
    return answer


def _stances(site: Site) -> list[Controls]:
    """How the controls of the zones in question can stand; none can be bypassed that no page
    reaches."""
    zones = [site.circuits.wired.zones[number] for number in site.zones]
    return list(STATES[bypass_of(zones, site.job.kinds)])


def meter_fraction_of(body: ExpectedBody) -> float:
    """The meter's limit either way, as was said or as usual."""
    said = body.meter_tolerance_pct
    pct = priors.METER_PCT if said is None else max(said, priors.LEAST_PCT)
    return min(pct, priors.MOST_PCT - 1) / 100


def _heads(site: Site, tolerances: Tolerances) -> Iterator[Head]:
    """The amplifier's end at 1 kHz and at direct current, in the states that differ."""
    wired = site.circuits.wired
    warm_c = site.job.limits.conductor_c
    bypass = bypass_of(wired.zones, site.job.kinds)
    states = STATES[bypass]
    if bypass == "none" and _moves_in_a_page(wired):
        states = ("open", "override")
    conditions = [Condition(TEST_HZ, state, warm_c) for state in states]
    conditions += [Condition(DIRECT_HZ, state, warm_c) for state in DIRECT[bypass]]
    return heads(site, conditions, tolerances=tolerances)


def _moves_in_a_page(wired: Wired) -> bool:
    """Whether a page brings a zone to this output, or takes one from it."""
    return any(
        is_live(wired, number, controls="override") != is_live(wired, number, controls="open")
        for number in range(len(wired.zones))
    )


def quantity_of(condition: Condition) -> str:
    """What is measured under a condition."""
    return "dc_ohm" if condition.hz == DIRECT_HZ else "z_1k_ohm"


def _head(site: Site, one: Head, *, tell: Tell) -> HeadAnswer:
    wired = site.circuits.wired
    node = wired.node_of[one.place]
    place = tell.say("meter_title", "zone" if node else "output", place=tell.name(one.place))
    how = _how(site, one, tell=tell)
    least = least_of(wired.output, wired.line_v)
    verdict, words = _head_verdict(one, least, tell=tell)
    return {
        "where": tell.where(node),
        "title": tell.say("meter_title", "reading_alone", place=place, quantity=how),
        "place": place,
        "how": how,
        "controls": one.condition.controls,
        "quantity": quantity_of(one.condition),
        "band": tell.band(one.band),
        "verdict": verdict,
        "words": words,
    }


def _how(site: Site, one: Head, *, tell: Tell) -> str:
    """By what it is read; and how the controls stand, where that makes a difference."""
    wired = site.circuits.wired
    quantity = tell.say("meter_title", quantity_of(one.condition))
    if bypass_of(wired.zones, site.job.kinds) == "none" and not _moves_in_a_page(wired):
        return quantity
    controls = tell.say("meter_title", one.condition.controls)
    return tell.say("meter_title", "by_with", quantity=quantity, controls=controls)


def _head_verdict(one: Head, least: Least, *, tell: Tell) -> tuple[Verdict, str]:
    """Whether a line as it is planned is too heavy for its output, however well it is wired."""
    value = one.band.value
    texts = {
        "place": tell.name(one.place),
        "value": tell.band(one.band)["shown"],
        "limit": tell.show(least.ohm or 0.0, "ohm"),
    }
    if value is None or least.ohm is None or quantity_of(one.condition) == "dc_ohm":
        code = "expected_load" if value is not None else "expected_open"
        return "note", tell.say("meter_title", code, **texts)
    if value < least.ohm * PRINTED:
        return "over", tell.say("meter_verdict", "do_not_connect", **texts)
    return "ok", tell.say("meter_title", "expected_load", **texts)


def _boxes(
    site: Site, condition: Condition, *, tolerances: Tolerances, tell: Tell
) -> Iterator[BoxAnswer]:
    """Every box of the zones in question."""
    wired = site.circuits.wired
    views = bands(site, condition, tolerances=tolerances)
    for number in site.zones:
        for node in wired.beyond(wired.starts[number]):
            if wired.points[node] is None:
                continue
            told: dict[str, BandAnswer] = {view: tell.band(views[view][node]) for view in VIEWS}
            yield {
                "point": wired.ids[node],
                "title": tell.name(wired.ids[node]),
                "far": tell.show(wired.far_m[node], "m"),
                "out": told["out"],
                "alone": told["alone"],
                "back": told["back"],
                "whole": told["whole"],
            }


def line_assumptions(site: Site, *, tell: Tell, guessed: bool) -> list[str]:
    """What is taken for granted of a line that is measured."""
    codes = [*site.circuits.wired.assumed, "windings", "home_run_lifted"]
    said = [tell.say("meter_assumed", code) for code in codes]
    load = tell.show(site.given.load_pct, "pct")
    said.append(tell.say("meter_assumed", "load_tolerance", load_pct=load))
    if guessed:
        count = tell.show(priors.COUNT_PCT, "pct")
        said.append(tell.say("meter_assumed", "count_about", count_pct=count))
    return said


def complaint(body: ComplaintBody, manner: Manner) -> ComplaintsAnswer:
    """The ask `complaint`: one, or the whole table."""
    wanted = COMPLAINTS if body.complaint is None else {body.complaint: COMPLAINTS[body.complaint]}
    return {"complaints": [_complaint(code, one, manner=manner) for code, one in wanted.items()]}


def _complaint(code: str, one: Complaint, *, manner: Manner) -> ComplaintAnswer:
    language = manner.language
    suspects = [say("fault_short", family, language=language) for family in one.families]
    suspects += [say("complaint_other", other, language=language) for other in one.others]
    return {
        "code": code,
        "words": say("complaint", code, language=language),
        "suspects": suspects,
        "test": say("complaint_test", one.test, language=language),
        "cautions": [say("meter_caution", each, language=language) for each in BEFORE_ALL],
    }

"""The ask `diagnose`: what readings and ears say, and the next reading to take."""

import math

from pycore.asks.meter_answers import (
    ContradictionAnswer,
    DiagnoseAnswer,
    FamilyAnswer,
    GroupAnswer,
    SuspectAnswer,
)
from pycore.asks.meter_aside import changed_words, with_aside
from pycore.asks.meter_bodies import DiagnoseBody, Resume
from pycore.asks.meter_headline import Headline, headline_of, of_rough_count
from pycore.asks.meter_next import next_answer, why_no_next
from pycore.asks.meter_question import Line, line_of, question_of, step_of
from pycore.asks.meter_readings import judged_readings, reading_named
from pycore.asks.meter_tell import Tell
from pycore.asks.meter_together import MOST_GROUPS, has_baseline, rank_of, told_together
from pycore.calc import priors
from pycore.calc.agreement import AGREES, misfit
from pycore.calc.diagnosis import Diagnosis, Question, diagnose
from pycore.calc.distances import distance_of
from pycore.calc.reading import sort_reading
from pycore.calc.site import Site
from pycore.calc.suspects import Suspect
from pycore.calc.unseen import cannot_see
from pycore.ground.units import Manner

MOST_MEMBERS = 8


def diagnose_line(body: DiagnoseBody, manner: Manner) -> DiagnoseAnswer:
    """The ask `diagnose`."""
    line = line_of(body, manner)
    question = question_of(body, line, manner=manner)
    told = diagnose(question, step_of(body))
    tell = Tell(told.site.circuits.wired, manner)
    baselines = [sort_reading(one, leads_ohm=None) for one in question.baselines]
    read = (*told.meants, *told.before)
    readings = judged_readings(told.site, read, baselines=baselines, tell=tell)
    for one in readings:
        one["notes"].extend(_more_notes(told, one["reading"], tell=tell))
    readings = with_aside(readings, told, order=[one.id for one in question.taken], tell=tell)
    bundles = told_together(told, tell)
    groups = _groups(told, tell, leads=0 in bundles[0]["groups"])
    headline = headline_of(told, readings, groups=groups, bundles=bundles, tell=tell)
    if line.guessed:
        headline = of_rough_count(headline, tell=tell)
    answer = _answer(told, headline, tell=tell)
    answer["expected"], answer["groups"], answer["bundles"] = readings, groups, bundles
    answer["rest"] = max(0.0, 1 - sum(group["share"] for group in groups))
    answer["assumptions"] = _assumptions(question, told, line=line, tell=tell)
    if line.guessed:
        answer["job"] = line.job
    return answer


def _answer(told: Diagnosis, headline: Headline, *, tell: Tell) -> DiagnoseAnswer:
    """Everything that needs no more looking up."""
    progress = told.progress
    searched = None
    if progress is not None:
        searched = Resume(
            next_first=progress.next_first, firsts=progress.firsts, kept=progress.kept
        )
    upcoming = None if headline.verdict == "ok" and up_a_ladder(told) else next_answer(told, tell)
    return {
        "done": told.done,
        "share": progress.next_first / progress.firsts if progress and progress.firsts else 1.0,
        "resume": None if told.done else searched,
        "searched": searched,
        "headline": headline.words,
        "verdict": headline.verdict,
        "reason": headline.reason,
        "expected": [],
        "groups": [],
        "bundles": [],
        "families": _families(told, tell),
        "rest": 0.0,
        "settled": told.settled,
        "odds": tell.say("meter", "with_baseline" if has_baseline(told) else "ranking"),
        "next": upcoming,
        "next_reason": why_no_next(told, tell) if upcoming is None else "",
        "contradictions": _contradictions(told, tell),
        "cannot_see": [
            tell.say("meter_blind", code) for code in cannot_see(told.site, told.meants)
        ],
        "assumptions": [],
    }


def up_a_ladder(told: Diagnosis) -> bool:
    """Whether the next thing to do is at a box: nobody climbs for a line that is as expected."""
    wired = told.site.circuits.wired
    return told.next is not None and wired.points[told.next.test.stand.node] is not None


def _groups(told: Diagnosis, tell: Tell, *, leads: bool) -> list[GroupAnswer]:
    """The groups listed. `leads`: the first of them is in the first bundle too."""
    groups: list[GroupAnswer] = []
    for place, group in enumerate(told.groups[:MOST_GROUPS]):
        suspects = [
            _suspect(told, told.suspects[number], tell=tell)
            for number in group.suspects[:MOST_MEMBERS]
        ]
        groups.append(
            {
                "share": group.share,
                "rank": rank_of(told, group.share, first=leads and not place, tell=tell),
                "inside": any(one["inside"] for one in suspects),
                "suspects": suspects,
            }
        )
    return groups


def _suspect(told: Diagnosis, suspect: Suspect, *, tell: Tell) -> SuspectAnswer:
    best = suspect.variants[0]
    fault = told.weighed.faults[best]
    distance = None
    if lengths_known(told.site, fault.node, cable=fault.family == "short"):
        distance = distance_of(told.site, suspect, evidence=told.proof.evidence)
    answer: SuspectAnswer = {
        "fault": fault.family,
        "where": tell.where(fault.node),
        "short": tell.short(fault),
        "words": tell.fault(fault),
        "share": suspect.share,
        "inside": misfit(told.weighed.rows[best], told.proof.shared) <= AGREES,
        "would_read": _would_read(told, best, tell=tell),
        "distance": tell.distance(distance) if distance is not None else None,
    }
    if fault.also is not None:
        answer["also"] = {
            **answer,
            "fault": fault.also.family,
            "where": tell.where(fault.also.node),
            "distance": None,
        }
    return answer


def lengths_known(site: Site, node: int, *, cable: bool) -> bool:
    """Whether every section from the amplifier to a node has a length, and where it matters a
    cable: else metres say nothing."""
    wired = site.circuits.wired
    while node > 0:
        point = wired.points[node]
        if point is not None and (point.length_m is None or (cable and point.cable is None)):
            return False
        node = wired.parents[node]
    return True


def _would_read(told: Diagnosis, variant: int, *, tell: Tell) -> list[str]:
    """What each reading would be with a fault, in the order of the evidence."""
    shown = []
    for one, each in zip(told.proof.evidence, told.weighed.expected[variant], strict=True):
        if one.kind == "volts":
            near_v = (one.meant.value or 0.0) / math.exp(one.log_read)
            shown.append(_would_show(min(math.exp(each.log_ohm), 1.0), near_v, tell=tell))
        elif each.log_ohm > LOG_OPEN:
            shown.append(tell.say("meter_title", "open_line"))
        else:
            shown.append(tell.show(math.exp(each.log_ohm), "ohm"))
    return shown


def _would_show(share: float, near_v: float, *, tell: Tell) -> str:
    """Volts as they would be read; a share of the near ones where none arrived."""
    return tell.show(share * near_v, "v") if near_v else tell.show(share, "fraction")


LOG_OPEN = 9.9


def _families(told: Diagnosis, tell: Tell) -> list[FamilyAnswer]:
    """Suspects of one kind together, so that a long list can be folded."""
    shares: dict[str, float] = {}
    counts: dict[str, int] = {}
    for one in told.suspects:
        family = "two" if one.key[2] else one.key[0]
        shares[family] = shares.get(family, 0.0) + one.share
        counts[family] = counts.get(family, 0) + 1
    ordered = sorted(shares, key=lambda family: -shares[family])
    return [
        {
            "fault": family,
            "short": tell.say("fault_short", family),
            "share": shares[family],
            "rank": rank_of(told, shares[family], first=not place, tell=tell),
            "count": counts[family],
        }
        for place, family in enumerate(ordered)
        if shares[family] > 1e-4
    ]


def _contradictions(told: Diagnosis, tell: Tell) -> list[ContradictionAnswer]:
    titles = {one.taken.id: reading_named(one, tell) for one in told.meants}
    found: list[ContradictionAnswer] = [
        {"readings": [one.then.taken.id, one.now.taken.id], "words": changed_words(one, tell)}
        for one in told.aside
    ]
    for pair in told.contradictions:
        code = "contradiction_same" if pair.same else "contradiction"
        words = tell.say("meter", code, one=titles[pair.one], other=titles[pair.other])
        found.append({"readings": [pair.one, pair.other], "words": words})
    return found


def _more_notes(told: Diagnosis, reading: str, *, tell: Tell) -> list[str]:
    """Why a reading was not weighed, or how it was taken."""
    own = next((one.notes for one in told.meants if one.taken.id == reading), ())
    made = told.collected.notes.get(reading, ())
    return [tell.say("meter_note", code) for code in made if code not in own]


def _assumptions(question: Question, told: Diagnosis, *, line: Line, tell: Tell) -> list[str]:
    """What was taken for granted."""
    said = [tell.say("meter_assumed", code) for code in told.site.circuits.wired.assumed]
    load = tell.show(question.given.load_pct, "pct")
    said.append(tell.say("meter_assumed", "load_tolerance", load_pct=load))
    if any(one.quantity == "dc_ohm" for one in question.taken):
        said.append(tell.say("meter_assumed", "windings"))
    if any(one.looking == "back" for one in question.taken):
        said.append(tell.say("meter_assumed", "home_run_lifted"))
    if line.guessed:
        count = tell.show(priors.COUNT_PCT, "pct")
        said.append(tell.say("meter_assumed", "count_about", count_pct=count))
    if told.alike.zones:
        percent = tell.signed(math.expm1(told.alike.bias))
        said.append(tell.say("meter", "alike", percent=percent))
    if not told.one_explains:
        said.append(tell.say("meter", "two_needed"))
    said.append(tell.say("meter_assumed", "priors"))
    return said

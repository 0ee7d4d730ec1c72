"""The ask `preview`: what each of some commands would do, the job left as it is."""

from collections.abc import Mapping
from typing import Any

from typing_extensions import TypedDict

from pycore.asks.answers import FindingAnswer, ProblemAnswer
from pycore.asks.editing import command_of
from pycore.asks.effects import Effect, Trial, effects_of, is_mark, keeps_all
from pycore.asks.faces import speaks_for
from pycore.asks.names import names_of
from pycore.asks.refused import problem_answer
from pycore.asks.requests import PreviewBody
from pycore.asks.shown import shown_finding
from pycore.calc.finding import Verdict, worst
from pycore.calc.ripple import Reach, Rejudged, reach_of, rejudge
from pycore.edit import Command, apply
from pycore.ground.problems import Problem
from pycore.ground.units import Manner
from pycore.jobs import Job


class LoadChange(TypedDict):
    """One load before and after a command."""

    what: str
    where: dict[str, str]
    title: str
    shown_before: str
    shown_after: str
    share_before: float | None
    share_after: float | None
    verdict: Verdict


class Option(TypedDict):
    """What a command would do: a problem, or the loads it changes and the verdict on them.

    `effects` are told of commands at one loudspeaker, in the order a person asks for them;
    `keeps`: every limit it bears on is known and kept.
    """

    verdict: Verdict
    words: str
    problem: ProblemAnswer | None
    loads: list[LoadChange]
    effects: list[Effect]
    keeps: bool


class PreviewAnswer(TypedDict):
    """One option for each command, in the same order."""

    options: list[Option]


def preview(body: PreviewBody, manner: Manner) -> PreviewAnswer:
    """What each command would do, each tried by itself; the job is unchanged."""
    tries = Tries(body.job, manner)
    options = []
    for raw in body.commands:
        try:
            options.append(tries.option(command_of(raw, body.typed, manner=manner)))
        except Problem as problem:
            options.append(_refused(problem, manner))
    return {"options": options}


class Tries:
    """One job on which commands are tried; what they reach is judged once as it is now."""

    def __init__(self, job: Job, manner: Manner) -> None:
        self.job = job
        self.manner = manner
        self._now: dict[Reach, Rejudged] = {}

    def option(self, command: Command) -> Option:
        """What a command would do. Raises the problem when it does not fit."""
        job = apply(self.job, command)
        reach = reach_of(self.job, job)
        if reach not in self._now:
            self._now[reach] = rejudge(self.job, reach)
        before = self._now[reach]
        after = rejudge(job, reach, base=before)
        names = names_of(job, language=self.manner.language)
        changed = self._changed(before, after, names=names)
        trial = Trial(before, after, getattr(command, "point", None))
        judged = [*self._marks(trial, names), *(now for _, now in changed if speaks_for(now))]
        verdict = worst([now["verdict"] for now in judged])
        words = next((now["words"] for now in judged if now["verdict"] == verdict), "")
        loads = [
            _change(was, now)
            for was, now in changed
            if now["unit"] == "w" and now["state"] == "override"
        ]
        effects = effects_of(trial, manner=self.manner)
        return {
            "verdict": verdict,
            "words": words,
            "problem": None,
            "loads": loads,
            "effects": effects,
            "keeps": keeps_all(trial, effects),
        }

    def _marks(self, trial: Trial, names: Mapping[str, str]) -> list[FindingAnswer]:
        """What stays wrong at the point itself, such as its row, whether or not it changes."""
        return [
            shown_finding(finding, names, manner=self.manner)
            for finding in trial.after.findings.values()
            if finding.where == {"point": trial.point}
            and is_mark(finding)
            and finding.verdict == "over"
        ]

    def _changed(
        self, before: Rejudged, after: Rejudged, *, names: Mapping[str, str]
    ) -> list[tuple[FindingAnswer | None, FindingAnswer]]:
        """The findings whose numbers a command changes, before and after."""
        pairs = [
            (before.findings.get(one), finding)
            for one, finding in after.findings.items()
            if before.findings.get(one) != finding
        ]
        told: list[tuple[FindingAnswer | None, FindingAnswer]] = []
        for was, now in pairs:
            if was is not None and _numbers(was) == _numbers(now):
                continue
            shown = None if was is None else shown_finding(was, names, manner=self.manner)
            told.append((shown, shown_finding(now, names, manner=self.manner)))
        return told


def _refused(problem: Problem, manner: Manner) -> Option:
    refused = problem_answer(problem, manner)
    return {
        "verdict": "unknown",
        "words": refused["words"],
        "problem": refused,
        "loads": [],
        "effects": [],
        "keeps": False,
    }


def _change(before: FindingAnswer | None, after: FindingAnswer) -> LoadChange:
    return {
        "what": after["what"],
        "where": after["where"],
        "title": after["title"],
        "shown_before": before["shown"].get("value", "") if before else "",
        "shown_after": after["shown"].get("value", ""),
        "share_before": before["share_fraction"] if before else None,
        "share_after": after["share_fraction"],
        "verdict": after["verdict"],
    }


def _numbers(finding: Any) -> tuple[object, ...]:
    return tuple(getattr(finding, name) for name in ("code", "value", "low", "high", "limit"))

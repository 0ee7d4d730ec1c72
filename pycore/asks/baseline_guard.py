"""Refuses a command that would make a baseline of readings that are not in order.

It is looked at here, in the core, whatever a page offers.
"""

from collections.abc import Mapping, Sequence

from pycore.asks.baselines import fits, hinders, offer_of, red_said
from pycore.asks.first_testing import missing_steps
from pycore.asks.meter_tell import Tell
from pycore.asks.record_answers import RecordAnswer
from pycore.asks.recording import readings_on, records_on
from pycore.calc import priors
from pycore.calc.reading import taken_of
from pycore.calc.site import Given, site_of
from pycore.edit import Command
from pycore.edit.measuring import MarkBaseline
from pycore.ground.problems import BadCommand
from pycore.ground.units import Manner
from pycore.jobs import Job, Reading

FIELD = {"field": "readings"}


def guard_baselines(before: Job, after: Job, *, command: Command, manner: Manner) -> None:
    """Look at every reading that became a baseline by a command.

    Raises BadCommand: something read last on that line that day is red, or what is marked
    cannot be judged; of a first test also, that a zone still lacks readings.
    """
    known = {one.id for one in before.readings if one.baseline}
    made = [one for one in after.readings if one.baseline and one.id not in known]
    for line, at in dict.fromkeys((_line(after, one), one.at) for one in made):
        own = [one for one in made if one.at == at and _line(after, one) == line]
        _guard_visit(after, dict([line]), at=at, made=own, manner=manner)
        since = command.first_test_since if isinstance(command, MarkBaseline) else None
        if since is not None and line[0] == "zone":
            _guard_test(after, line[1], since=since, manner=manner)


def _guard_visit(
    job: Job, where: dict[str, str], *, at: str, made: Sequence[Reading], manner: Manner
) -> None:
    """One line on one day."""
    site = site_of(job, where, given=Given(priors.LOAD_PCT, None))
    tell = Tell(site.circuits.wired, manner)
    judged = {one["reading"]: one for one in records_on(site, tell) if one["at"] == at}
    red = [*offer_of(readings_on(site), judged, tell=tell).red, *_red(made, judged, tell=tell)]
    if red:
        names = "; ".join(dict.fromkeys(red))
        raise BadCommand("baseline_not_in_order", where=FIELD, names=names)
    unfit = [judged[one.id]["title"] for one in made if not fits(one, judged[one.id])]
    if unfit:
        raise BadCommand("baseline_not_judged", where=FIELD, names="; ".join(unfit))


def _red(
    made: Sequence[Reading], judged: Mapping[str, RecordAnswer], *, tell: Tell
) -> list[str]:  # fmt: skip
    """What is marked though it is red itself, and was measured again since."""
    return [
        red_said(taken_of(one), judged[one.id], tell=tell)
        for one in made
        if hinders(one, judged[one.id])
    ]


def _guard_test(job: Job, zone: str, *, since: str, manner: Manner) -> None:
    """A zone of a first test has a reading at every step that takes one."""
    steps = missing_steps(job, zone, since=since, manner=manner)
    if steps:
        name = next(one.name for one in job.zones if one.id == zone)
        raise BadCommand("baseline_not_whole", where=FIELD, zone=name, steps=", ".join(steps))


def _line(job: Job, reading: Reading) -> tuple[str, str]:
    """The zone a reading was taken on, or the output, as a place of the job."""
    where = reading.where
    if where.output is not None:
        return "output", where.output
    holds = (zone.id for zone in job.zones for one in zone.line if one.id == where.point)
    return "zone", where.zone or next(holds, "")

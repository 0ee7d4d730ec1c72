"""Kept readings judged for a paper: each by what its line had to read when it was read."""

from typing import NamedTuple

from pycore.calc import priors
from pycore.calc.expected import Band
from pycore.calc.judged import CHANGED, judged
from pycore.calc.reading import Meant, sort_reading, taken_of
from pycore.calc.site import Given, Site, site_of
from pycore.ground.problems import Problem
from pycore.jobs import Job, Reading

UNJUDGED = ("heard", "noted")


class Outcome(NamedTuple):
    """By what a verdict is called (a code, empty where nothing is judged), and its band."""

    mark: str
    band: Band | None


class Judging:
    """Judges the readings of a job; what a line is made of is worked out once."""

    def __init__(self, job: Job) -> None:
        self._job = job
        self._zones = {point.id: zone.id for zone in job.zones for point in zone.line}
        self._sites: dict[str, Site | None] = {}

    def of(self, reading: Reading) -> Outcome:
        """How a reading is judged; its line may hang on nothing, then it is not."""
        site = self._site(reading)
        if site is None:
            return Outcome("unknown", None)
        told = judged(site, _meant(reading), baselines=self._before(reading))
        if told.verdict.code in UNJUDGED:
            return Outcome("", None)
        return Outcome(CHANGED.code if told.verdict is CHANGED else told.mark, told.band)

    def _site(self, reading: Reading) -> Site | None:
        where = reading.where
        zone = where.zone or self._zones.get(where.point or "")
        place = {"zone": zone} if zone else where.model_dump(exclude_none=True)
        one = next(iter(place.values()))
        if one not in self._sites:
            try:
                self._sites[one] = site_of(self._job, place, given=Given(priors.LOAD_PCT, None))
            except Problem:  # said of its zone at the head of the paper
                self._sites[one] = None
        return self._sites[one]

    def _before(self, reading: Reading) -> list[Meant]:
        """The baselines a reading can be held against: other ones, not taken later."""
        return [
            _meant(one)
            for one in self._job.readings
            if one.baseline and one.id != reading.id and one.at <= reading.at
        ]


def _meant(reading: Reading) -> Meant:
    return sort_reading(taken_of(reading), leads_ohm=None)

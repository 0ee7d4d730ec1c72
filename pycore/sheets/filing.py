"""Readings that are kept already, each put into the line of the test sheet it belongs to."""

from collections.abc import Mapping
from typing import Final, NamedTuple

from pycore.calc.probe import Looking
from pycore.calc.reading import OVER_RANGE, taken_of
from pycore.calc.wiring import Controls
from pycore.ground.units import show
from pycore.ground.words import say
from pycore.jobs import Job, Reading
from pycore.jobs.records import Quantity
from pycore.sheets.judging import Judging
from pycore.sheets.tables import Cell
from pycore.sheets.wording import Words

UNITS: Final[Mapping[Quantity, str]] = {"volts": "v", "foreign_v": "v", "amps": "a"}
UNCONTROLLED: Final = ("plays", "foreign_v", "earth_ohm")


class Wanted(NamedTuple):
    """What a line is for: a quantity, and how the controls stand (None: that is all one)."""

    quantity: Quantity
    controls: Controls | None


class Filing:
    """What is kept of a job, the newest first; it remembers what found a line of its own."""

    def __init__(self, job: Job, words: Words) -> None:
        self.words = words
        self._judging = Judging(job)
        self._kept = sorted(job.readings, key=lambda one: one.at, reverse=True)
        self._filed: set[str] = set()

    def line(
        self,
        place: str,
        wanted: Wanted,
        *,
        looking: Looking | None = None,
        says_how: bool = False,
    ) -> Cell:
        """The newest reading of a line with those before it; without any, a line to write on.

        `looking`: None takes every reading, whichever way the instrument looked.
        """
        found = [
            one
            for one in self._kept
            if taken_of(one).place == place
            and one.quantity == wanted.quantity
            and wanted.controls in (None, one.controls)
            and looking in (None, one.looking)
        ]
        self._filed.update(one.id for one in found)
        if not found:
            return Cell("", is_line=True)
        newest, *before = found
        within = self.by(newest, says_how=says_how)
        for one in before:
            texts = {"value": self.shown(one), "by": self.by(one, says_how=says_how)}
            mark = self.judged(one).mark
            code = "kept_before_judged" if mark else "kept_before"
            within = self.words.say(code, newer=within, mark=mark, **texts)
        return self.judged(newest)._replace(value=_number(newest), within=within)

    def others(self) -> list[Reading]:
        """What found no line, the newest first."""
        return [one for one in self._kept if one.id not in self._filed]

    def judged(self, reading: Reading) -> Cell:
        """A reading with its mark in words, and what it should have read where that is known."""
        mark, band = self._judging.of(reading)
        cell = Cell(self.shown(reading))
        if not mark:
            return cell
        told = say("meter_mark", mark, language=self.words.manner.language)
        if band is None:
            return cell._replace(mark=told, judged=told)
        due = self.words.cell(band).within
        judged = self.words.say("kept_judged", mark=told, range=due)
        return cell._replace(mark=told, judged=judged, low=band.low, high=band.high)

    def shown(self, reading: Reading) -> str:
        """What the instrument showed, or how it was heard to play."""
        language = self.words.manner.language
        if isinstance(reading.value, str):
            return say("meter_heard", reading.value, language=language)
        if reading.value >= OVER_RANGE:
            return self.words.title("over_range")
        return show(reading.value, UNITS.get(reading.quantity, "ohm"), manner=self.words.manner)

    def by(self, reading: Reading, *, says_how: bool = False) -> str:
        """When it was taken and by what, with the way the instrument looked where it is asked."""
        texts = {"at": reading.at, "instrument": reading.instrument}
        told = self.words.say("kept_by" if reading.instrument.strip() else "kept_on", **texts)
        how = self.how(reading) if says_how else ""
        return self.words.say("kept_how", how=how, by=told) if how else told

    def how(self, reading: Reading) -> str:
        """Which way it looked, what was lifted, and how the controls stood."""
        if reading.quantity in UNCONTROLLED:
            return ""
        names = ", ".join(self.words.names.get(one, "") for one in reading.lifted)
        code = f"how_{reading.looking}_lifted" if names else f"how_{reading.looking}"
        texts = {"controls": self.words.title(reading.controls), "names": names}
        return say("meter_title", code, values=texts, language=self.words.manner.language)


def _number(reading: Reading) -> float | None:
    value = reading.value
    return None if isinstance(value, str) or value >= OVER_RANGE else value

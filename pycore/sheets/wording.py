"""How things are called and how numbers are shown on a sheet."""

from collections.abc import Mapping
from typing import NamedTuple

from pycore.calc.expected import Band
from pycore.ground.units import Manner, show
from pycore.ground.words import say
from pycore.sheets.tables import Cell


class Words(NamedTuple):
    """How things are called and numbers shown on one sheet."""

    names: Mapping[str, str]
    manner: Manner

    def say(self, code: str, **values: str) -> str:
        """A sentence of the sheet."""
        return say("meter_sheet", code, values=values, language=self.manner.language)

    def caution(self, code: str) -> str:
        """A caution before the act."""
        return say("meter_caution", code, language=self.manner.language)

    def title(self, code: str) -> str:
        """What a quantity or a state of the controls is called."""
        return say("meter_title", code, language=self.manner.language)

    def ohms(self, value: float) -> str:
        """A number of ohms."""
        return show(value, "ohm", manner=self.manner)

    def cell(self, band: Band) -> Cell:
        """A band as a cell."""
        low = self.ohms(band.low or 0.0)
        if band.value is None or band.high is None:
            ends = {"low": low}
            within = say("meter_title", "at_least", values=ends, language=self.manner.language)
            return Cell(self.say("open_from"), None, within, band.low, None)
        ends = {"low": low, "high": self.ohms(band.high)}
        within = say("meter_title", "band", values=ends, language=self.manner.language)
        return Cell(self.ohms(band.value), band.value, within, band.low, band.high)

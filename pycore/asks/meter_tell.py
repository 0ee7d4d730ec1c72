"""Faults, places, bands and tests in words: every sentence from the table, none from pieces."""

import math
from collections.abc import Mapping

from pycore.asks.meter_answers import BandAnswer, DistanceAnswer
from pycore.asks.names import names_of
from pycore.calc.candidates import Test
from pycore.calc.distances import Distance
from pycore.calc.expected import Band
from pycore.calc.faults import Fault
from pycore.calc.listening import Pattern
from pycore.calc.next_measurement import Next
from pycore.calc.wiring import Wired
from pycore.ground.units import Manner, show, show_typed, unit_of
from pycore.ground.words import has, say

OTHER = ("plays", "volts", "earth_ohm")
MARKED = ("tap_w", "tap_at_v", "direct_ohm", "set_db")
AT_START = ("series", "earthed")  # said of a whole line with a sentence of their own
HEADS = ("output", "zone")


class Tell:
    """One job's wiring, told in one manner."""

    def __init__(self, wired: Wired, manner: Manner) -> None:
        self.wired = wired
        self.manner = manner
        self.names = names_of(wired.job, language=manner.language)

    def say(self, table: str, code: str, **values: str) -> str:
        """A sentence of a table."""
        return say(table, code, values=values, language=self.manner.language)

    def show(self, value: float, unit: str) -> str:
        """A number for reading."""
        return show(value, unit, manner=self.manner)

    def since(self, one: str) -> str:
        """What a section begins at: a box, or the amplifier's end."""
        if self.wired.points[self.wired.node_of[one]] is None:
            return self.say("meter_title", "amplifier")
        return self.name(one)

    def signed(self, fraction: float) -> str:
        """A deviation, with its sign also where it is above."""
        shown = self.show(round(fraction, 3), "fraction")
        return f"+{shown}" if round(fraction, 3) > 0 else shown

    def name(self, one: str) -> str:
        """What an id is called."""
        return self.names.get(one, one)

    def where(self, node: int) -> dict[str, str]:
        """A node as a place of the job."""
        kind = self.wired.fitted(node)
        return {kind if kind in HEADS else "point": self.wired.ids[node]}

    def fault(self, fault: Fault) -> str:
        """A fault in one sentence, or two faults in two."""
        first = self._one(fault)
        if fault.also is None:
            return first
        return self.say("fault", "two", first=first, second=self._one(fault.also))

    def _one(self, fault: Fault) -> str:
        detail = dict(fault.detail)
        code = fault.family
        if code == "cable":
            code = f"cable_{detail['which']}"
        if code == "healthy":
            return self.say("fault", code)
        node = fault.node
        if code in AT_START and self.wired.points[node] is None:
            code = f"{code}_line"
        before = self.wired.ids[max(self.wired.parents[node], 0)]
        texts = {"place": self.name(self.wired.ids[node]), "before": self.since(before)}
        texts.update((name, self._detail(name, value)) for name, value in detail.items())
        return self.say("fault", code, **texts)

    def _detail(self, name: str, value: float | str) -> str:
        if isinstance(value, str):
            return self.name(value)
        unit = unit_of(name) or "factor"
        if name in MARKED:
            return show_typed(value, unit, manner=self.manner)
        return self.show(value, unit)

    def short(self, fault: Fault) -> str:
        """A fault in a word or two."""
        return self.say("fault_short", fault.family if fault.also is None else "two")

    def band(self, band: Band) -> BandAnswer:
        """A band ready to print."""
        low = self.show(band.low or 0.0, "ohm")
        high = self.show(band.high, "ohm") if band.high is not None else ""
        if band.value is None:
            shown = self.say("meter_title", "open_line")
            told = self.say("meter_title", "at_least", low=low)
        else:
            shown = self.show(band.value, "ohm")
            told = self.say("meter_title", "band", low=low, high=high)
        return {
            "value": band.value,
            "low": band.low,
            "high": band.high,
            "tolerance": band.tolerance,
            "shown": shown,
            "range": told,
            "low_shown": low,
            "high_shown": high,
        }

    def test(self, upcoming: Next) -> str:
        """A reading to take, in one sentence."""
        test = upcoming.test
        stand = test.stand
        place = self.name(test.place)
        if test.quantity in OTHER:
            rack = self.wired.points[stand.node] is None
            code = f"{test.quantity}_near" if rack else test.quantity
            return self.say("meter_test", code, place=place, ends=self.name(upcoming.then))
        if self.wired.points[stand.node] is None:
            code = rack_code(test) if stand.node else f"{rack_code(test)}_all"
            return self.say("meter_test", code, place=place)
        ends = [node for node in stand.lifted if self.wired.parents[node] != stand.node]
        if stand.looking == "back":
            code = "back" if stand.lifted else "whole"
        elif stand.bare:
            code = "bare"
        elif ends:
            code = "segment"
        else:
            code = "alone" if stand.lifted else "out"
        names = ", ".join(self.name(self.wired.ids[node]) for node in ends)
        return self.say("meter_test", code, place=place, ends=names)

    def heard(self, pattern: Pattern) -> str:
        """How the loudspeakers of a zone would play, in one sentence."""
        own, others = (self.say("meter_plays", one) for one in (pattern.own, pattern.others))
        if pattern.own == pattern.beyond == pattern.others:
            return self.say("meter_would_sound", "all", own=own)
        place = self.name(self.wired.ids[pattern.node])
        code = "one" if pattern.beyond == pattern.others else "from"
        return self.say("meter_would_sound", code, place=place, own=own, others=others)

    def range(self, low_ohm: float, high_ohm: float) -> str:
        """A range of readings, open above or not."""
        texts = {"low": self.show(low_ohm, "ohm")}
        if math.isinf(high_ohm):
            return self.say("meter_outcome", "open", **texts)
        return self.say("meter_outcome", "range", high=self.show(high_ohm, "ohm"), **texts)

    def distance(self, distance: Distance) -> DistanceAnswer:
        """A distance with its error, in words."""
        texts: Mapping[str, str] = {
            "metres": self.show(distance.metres, "m"),
            "low": self.show(distance.low_m, "m"),
            "high": self.show(distance.high_m, "m"),
            "since": self.since(distance.since),
            "since_m": self.show(distance.since_m, "m"),
            "own_ohm": self.show(distance.own_ohm or 0.0, "ohm"),
        }
        code = ("distance_section", "distance_one", "distance_two")[distance.ends]
        if distance.ends and self.wired.points[self.wired.node_of[distance.since]] is None:
            code = f"{code}_start"
        return {
            "metres": distance.metres,
            "low": distance.low_m,
            "high": distance.high_m,
            "ends": distance.ends,
            "own_ohm": distance.own_ohm,
            "words": self.say("meter", code, **texts),
        }

    def said_if(self, table: str, code: str, **values: str) -> str | None:
        """A sentence of a table, where there is one for the code."""
        return self.say(table, code, **values) if has(table, code) else None


def rack_code(test: Test) -> str:
    """Which sentence asks for a reading at the amplifier's end."""
    return "rack_dc" if test.quantity == "dc_ohm" else "rack_1k"

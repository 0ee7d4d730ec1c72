"""The ask `what_if`: the job with one thing otherwise, before and after side by side."""

import json
from collections.abc import Mapping
from typing import Annotated, Any, Literal

from pydantic import Field, TypeAdapter
from typing_extensions import TypedDict

from pycore.asks.editing import filled, said_as_typed
from pycore.asks.names import names_of
from pycore.asks.requests import NOTHING_TYPED, RawCommand, Typed
from pycore.asks.shown import shown_finding
from pycore.calc import whatif
from pycore.calc.finding import Finding, Verdict
from pycore.edit.runs import RunSize
from pycore.ground.problems import BadText
from pycore.ground.refusals import read_kind
from pycore.ground.units import Manner, show_typed
from pycore.ground.words import say
from pycore.jobs import Closed, Job
from pycore.jobs.base import Id, Volts, Watts

# What is compared, and in this order: what burns or trips before what is only quieter.
COMPARED = (
    "output_load_w",
    "pool_load_w",
    "output_impedance_ohm",
    "attenuator_load_w",
    "wrong_rows_count",
    "zone_loss_db",
    "zone_loss_10k_db",
    "zone_spread_db",
    "zone_impedance_ohm",
)


class OtherVoltage(Closed):
    """An output driven at another line voltage, every tap left as it stands."""

    is_: Literal["voltage"] = Field(alias="is")
    output: Id
    line_v: Volts

    def change(self) -> whatif.Change:
        """As the calculation takes it."""
        return whatif.OtherVoltage(self.output, self.line_v)


class OtherTap(Closed):
    """Every loudspeaker of a zone on another tap."""

    is_: Literal["tap"] = Field(alias="is")
    zone: Id
    tap_w: Watts
    tap_at_v: Volts

    def change(self) -> whatif.Change:
        """As the calculation takes it."""
        return whatif.OtherTap(self.zone, self.tap_w, self.tap_at_v)


class MoreAtEnd(Closed):
    """More loudspeakers at the far end; without a length each as far as the last one."""

    is_: Literal["more"] = Field(alias="is")
    zone: Id
    run: RunSize
    tap_w: Watts
    tap_at_v: Volts
    cable: Id | None = None

    def change(self) -> whatif.Change:
        """As the calculation takes it."""
        return whatif.MoreAtEnd(
            zone=self.zone,
            how_many=self.run.count,
            tap_w=self.tap_w,
            tap_at_v=self.tap_at_v,
            length_m=self.run.length_m,
            cable=self.cable,
        )


Wanted = Annotated[OtherVoltage | OtherTap | MoreAtEnd, Field(discriminator="is_")]
WANTED: TypeAdapter[Wanted] = TypeAdapter(Wanted)
TAGS = frozenset(("voltage", "tap", "more"))


class WhatIfBody(Closed):
    """A job and what would be otherwise; `typed` are fields of it as the person typed them."""

    job: Job
    change: RawCommand
    typed: Typed = NOTHING_TYPED


class WhatIfRow(TypedDict):
    """One number before and after; empty where it is only in one of them.

    The findings open the workings: of the second, asked with the same change.
    """

    title: str
    before: str
    after: str
    verdict_before: Verdict
    verdict_after: Verdict
    finding_before: str | None
    finding_after: str | None


class WhatIfAnswer(TypedDict):
    """What would be otherwise, in words, and every judged number that would change."""

    title: str
    caution: str
    rows: list[WhatIfRow]
    same: str


def what_if(body: WhatIfBody, manner: Manner) -> WhatIfAnswer:
    """The ask `what_if`."""
    wanted = wanted_of(body.change, body.typed, manner=manner)
    told = whatif.what_if(body.job, wanted.change())
    names = names_of(body.job, language=manner.language)
    rows = []
    for pair in (*told.compared, told.wrong_rows):
        some = pair.after or pair.before
        if some is None or some.what not in COMPARED or some.state == "set":
            continue
        row = _row(pair, names=names, manner=manner)
        if (row["before"], row["verdict_before"]) != (row["after"], row["verdict_after"]):
            rows.append((COMPARED.index(some.what), row))
    rows.sort(key=lambda one: one[0])
    language = manner.language
    voltage = isinstance(wanted, OtherVoltage)
    return {
        "title": _title(wanted, names=names, manner=manner),
        "caution": say("what_if", "caution", language=language) if voltage else "",
        "rows": [row for _, row in rows],
        "same": "" if rows else say("what_if", "same", language=language),
    }


def wanted_of(change: Mapping[str, Any], typed: Mapping[str, str], *, manner: Manner) -> Wanted:
    """The change a page asks about, with what was typed put in, validated like any outside text.

    Raises BadText, said of what was typed.
    """
    raw = filled(change, typed, manner=manner)
    try:
        return read_kind(WANTED, json.dumps(raw), tags=TAGS)
    except BadText as problem:
        raise said_as_typed(problem, typed, manner=manner) from None


def _row(pair: whatif.Compared, *, names: dict[str, str], manner: Manner) -> WhatIfRow:
    def shown(finding: Finding | None) -> tuple[str, str, Verdict]:
        if finding is None:
            return "", "", "note"
        told = shown_finding(finding, names, manner=manner)
        return told["title"], told["shown"].get("value", ""), told["verdict"]

    was, now = shown(pair.before), shown(pair.after)
    return {
        "title": now[0] or was[0],
        "before": was[1],
        "after": now[1],
        "verdict_before": was[2],
        "verdict_after": now[2],
        "finding_before": pair.before.id if pair.before else None,
        "finding_after": pair.after.id if pair.after else None,
    }


def _title(wanted: Wanted, *, names: dict[str, str], manner: Manner) -> str:
    if isinstance(wanted, OtherVoltage):
        line_v = show_typed(wanted.line_v, "v", manner=manner)
        values = {"output": names.get(wanted.output, ""), "line_v": line_v}
        return say("what_if", "voltage", values=values, language=manner.language)
    if isinstance(wanted, OtherTap):
        tap_w = show_typed(wanted.tap_w, "w", manner=manner)
        values = {"zone": names.get(wanted.zone, ""), "tap_w": tap_w}
        return say("what_if", "tap", values=values, language=manner.language)
    values = {"n": str(wanted.run.count), "zone": names.get(wanted.zone, "")}
    return say("what_if", "more", values=values, language=manner.language)

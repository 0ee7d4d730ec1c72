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
from pycore.ground.words import kind_name, say
from pycore.jobs import CableKind, Closed, Job
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


# So many loudspeakers are named, the others counted.
MOST_NAMED = 6


class OtherVoltage(Closed):
    """An output driven at another line voltage, every tap left as it stands."""

    is_: Literal["voltage"] = Field(alias="is")
    output: Id
    line_v: Volts

    def change(self) -> whatif.Change:
        """As the calculation takes it."""
        return whatif.OtherVoltage(self.output, self.line_v)

    def command(self, _job: Job) -> dict[str, Any]:
        """The command that does it."""
        changes = {"line_v": self.line_v}
        return {"do": "change_output", "output": self.output, "changes": changes}


class OtherTap(Closed):
    """Every loudspeaker of a zone on another tap."""

    is_: Literal["tap"] = Field(alias="is")
    zone: Id
    tap_w: Watts
    tap_at_v: Volts

    def change(self) -> whatif.OtherTap:
        """As the calculation takes it."""
        return whatif.OtherTap(self.zone, self.tap_w, self.tap_at_v)

    def command(self, _job: Job) -> dict[str, Any]:
        """The command that does it."""
        return {"do": "set_taps", **self.model_dump(exclude={"is_"})}


class OtherCable(Closed):
    """Another cable through a zone, or through its home runs alone."""

    is_: Literal["cable"] = Field(alias="is")
    zone: Id
    sections: Literal["all", "home_run"]
    kind: CableKind

    def change(self) -> whatif.Change:
        """As the calculation takes it."""
        return whatif.OtherCable(self.zone, self.sections, self.kind)

    def command(self, _job: Job) -> dict[str, Any]:
        """The command that does it."""
        kind = self.kind.model_dump(by_alias=True, exclude_none=True)
        return {"do": "set_cable", "zone": self.zone, "sections": self.sections, "kind": kind}


class MoreAtEnd(Closed):
    """More loudspeakers at the far end; without a length each as far as the last one."""

    is_: Literal["more"] = Field(alias="is")
    zone: Id
    run: RunSize
    tap_w: Watts
    tap_at_v: Volts
    cable: Id | None = None

    def command(self, job: Job) -> dict[str, Any]:
        """The command that does it, but for the ids, which the page has."""
        like = whatif.like_the_last(job, self.change())
        return {
            "do": "add_run",
            "zone": self.zone,
            "run": {"count": self.run.count, "length_m": like.length_m},
            "ids": None,
            "after": like.after,
            "splice": False,
            "cable": like.cable,
            "fitted": like.fitted.model_dump(by_alias=True, exclude_none=True),
        }

    def change(self) -> whatif.MoreAtEnd:
        """As the calculation takes it."""
        return whatif.MoreAtEnd(
            zone=self.zone,
            how_many=self.run.count,
            tap_w=self.tap_w,
            tap_at_v=self.tap_at_v,
            length_m=self.run.length_m,
            cable=self.cable,
        )


Wanted = Annotated[OtherVoltage | OtherTap | OtherCable | MoreAtEnd, Field(discriminator="is_")]
WANTED: TypeAdapter[Wanted] = TypeAdapter(Wanted)
TAGS = frozenset(("voltage", "tap", "cable", "more"))


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
    """What would be otherwise, in words, and every judged number that would change.

    `left`: which loudspeakers stay as they are, and why. `command` does what is shown; the page
    puts in the ids of what is added. Null where the job is like that already.
    """

    title: str
    caution: str
    left: str
    rows: list[WhatIfRow]
    same: str
    command: dict[str, Any] | None


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
    there = told.job == body.job
    return {
        "title": _title(wanted, names=names, manner=manner),
        "caution": say("what_if", "caution", language=language) if voltage else "",
        "left": _left(body.job, wanted, manner=manner),
        "rows": [row for _, row in rows],
        "same": "" if rows else say("what_if", "there" if there else "same", language=language),
        "command": None if there else wanted.command(body.job),
    }


def _left(job: Job, wanted: Wanted, *, manner: Manner) -> str:
    """Which loudspeakers have no such tap, by name; empty where all have it."""
    if not isinstance(wanted, OtherTap):
        return ""
    points = whatif.left_alone(job, wanted.change())
    if not points:
        return ""
    names = names_of(job, language=manner.language)
    named = [names[point.id] for point in points[:MOST_NAMED]]
    if len(points) > MOST_NAMED:
        values = {"n": str(len(points) - MOST_NAMED)}
        named.append(say("what_if", "left_more", values=values, language=manner.language))
    tap_w = show_typed(wanted.tap_w, "w", manner=manner)
    values = {"list": ", ".join(named), "tap_w": tap_w}
    return say("what_if", "left", values=values, language=manner.language)


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
    if isinstance(wanted, OtherCable):
        cable = kind_name(wanted.kind.name, language=manner.language)
        values = {"zone": names.get(wanted.zone, ""), "cable": cable}
        return say("what_if", f"cable_{wanted.sections}", values=values, language=manner.language)
    values = {"n": str(wanted.run.count), "zone": names.get(wanted.zone, "")}
    return say("what_if", "more", values=values, language=manner.language)

"""The tap schedule: what hangs on every line, on which tap, and how each of it is known.

It is for whoever takes a job over: nothing in it is a reading, and it certifies nothing.
"""

from collections.abc import Iterator, Mapping

from pycore.asks.answers import Seen
from pycore.asks.point_lines import point_line
from pycore.asks.see import see
from pycore.ground.units import Manner, show_length
from pycore.ground.words import say
from pycore.jobs import Job, Point, Zone
from pycore.jobs.tree import hanging_order
from pycore.sheets.around import head_table, signature
from pycore.sheets.tables import Cell, Head, Sheet, Table
from pycore.sheets.wording import Words

OF_A_KIND = ("loudspeaker", "attenuator")
NOTHING = "–"  # there is nothing to be known
COLUMNS = ("box", "behind", "stands", "kind", "section", "loss", "known")


def tap_schedule(job: Job, *, names: Mapping[str, str], manner: Manner) -> Sheet:
    """The schedule of a whole job. What is wrong with it comes first, in the findings' words."""
    words = Words(names, manner)
    seen = see(job, manner)
    wrong = dict.fromkeys(one["words"] for one in seen["findings"] if one["verdict"] == "over")
    tables = [
        head_table(job, words),
        *(_zone(one, job=job, words=words, seen=seen) for one in job.zones),
    ]
    return Sheet(
        words.say("schedule_title", job=job.name),
        tuple(wrong),
        (*tables, signature(words, "schedule_sign")),
        tuple(_notes(seen, words)),
    )


def _notes(seen: Seen, words: Words) -> Iterator[str]:
    """What whoever works by it has to know first, and what nobody has checked."""
    yield words.caution("prove_dead")
    yield words.say("schedule_says")
    unchecked = seen["faces"]["job"]["not_checked"]
    if unchecked:
        listed = {"list": ", ".join(unchecked)}
        yield say("page", "not_checked", values=listed, language=words.manner.language)
    yield words.say("not_for")


def _zone(zone: Zone, *, job: Job, words: Words, seen: Seen) -> Table:
    """A zone with what hangs on it, in the order in which it was hung."""
    face = seen["faces"]["things"][zone.id]
    output = words.names.get(zone.output or "", "") or words.say("schedule_no_output")
    heads = tuple(Head(words.say(f"schedule_{one}")) for one in COLUMNS)
    rows = tuple(_row(point, job=job, words=words, seen=seen) for point in hanging_order(zone.line))
    notes = tuple(one for one in (face["reason"],) if one)
    return Table(words.say("schedule_zone", zone=zone.name, output=output), heads, rows, notes)


def _row(point: Point, *, job: Job, words: Words, seen: Seen) -> tuple[Cell, ...]:
    """A point: what is not known of it is a line to write on. A junction is of no kind, and only
    a loudspeaker has a tap that is known in some way."""
    names = words.names
    is_ = point.fitted.is_
    kind = names.get(getattr(point.fitted, "kind", None) or "", "")
    before = names.get(point.after or "", "") or words.say("schedule_terminals")
    told = (
        before,
        point_line(point, words.manner),
        kind if is_ in OF_A_KIND else NOTHING,
        _section(point, words),
        seen["faces"]["things"][point.id].get("loss", ""),
        _known(point, job=job, words=words) if is_ == "loudspeaker" else NOTHING,
    )
    return (Cell(names.get(point.id, "")), *(_text(text) for text in told))


def _text(text: str) -> Cell:
    return Cell(text) if text else Cell("", is_line=True)


def _section(point: Point, words: Words) -> str:
    """How long the cable to it is, and which."""
    if point.length_m is None:
        return words.names.get(point.cable or "", "")
    length = show_length(point.length_m, manner=words.manner)
    return " · ".join(filter(None, (length, words.names.get(point.cable or "", ""))))


def _known(point: Point, *, job: Job, words: Words) -> str:
    """How its tap is known, and who ticked it when."""
    seen = getattr(point.fitted, "seen", None)
    told = [words.say(f"schedule_{seen}")] if seen else []
    ticks = (one for one in job.ticks if one.point == point.id)
    told += (words.say("schedule_ticked", at=one.at, initials=one.initials) for one in ticks)
    return "; ".join(one.strip() for one in told)

"""What a zone asks of its output, in both states, and what each attenuator carries."""

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from pycore.calc.attenuators import AttenuatorFacts, facts_of, share_felt
from pycore.calc.draws import NOTHING, Draw, Lookup, draw_of
from pycore.jobs import Attenuator, Kinds, Point, Zone
from pycore.jobs.tree import hanging_order

Share = tuple[float, float]
WHOLE: Share = (1.0, 1.0)


class Part(NamedTuple):
    """A point as its output feels it: its draw, and the attenuators above with their share."""

    point: Point
    draw: Draw
    share: Share
    attenuators: tuple[str, ...]


class ZoneLoad(NamedTuple):
    """The draws of a zone at one line voltage; the `end_` fields describe its far end."""

    override: Draw
    set: Draw
    attenuators: dict[str, tuple[AttenuatorFacts, Draw]]
    loudspeakers: int
    unknown_taps: int
    end_share: Share
    end_attenuators: tuple[str, ...]


def parts_of(zone: Zone, kinds: Kinds, *, lookup: Lookup, line_v: float) -> Iterator[Part]:
    """Every point of a zone in hanging order, with what it draws at `line_v` (V)."""
    above: dict[str | None, tuple[Share, tuple[str, ...]]] = {None: (WHOLE, ())}
    for point in hanging_order(zone.line):
        share, attenuators = above[point.after]
        if point.fitted.is_ == "attenuator":
            share = _below(point.fitted, kinds, share=share)
            attenuators = (*attenuators, point.id)
        above[point.id] = share, attenuators
        yield Part(point, draw_of(point.fitted, lookup, line_v=line_v), share, attenuators)


def _below(fitted: Attenuator, kinds: Kinds, *, share: Share) -> Share:
    least, most = share_felt(fitted, facts_of(fitted, kinds))
    return share[0] * least, share[1] * most


def load_of_zone(zone: Zone, kinds: Kinds, *, lookup: Lookup, line_v: float) -> ZoneLoad:
    """Add up a zone whose line stands at `line_v` (V)."""
    alike: dict[tuple[Draw, Share, tuple[str, ...]], int] = {}
    facts: dict[str, AttenuatorFacts] = {}
    count = unknown = 0
    end: tuple[Share, tuple[str, ...]] = (WHOLE, ())
    for part in parts_of(zone, kinds, lookup=lookup, line_v=line_v):
        fitted = part.point.fitted
        end = part.share, part.attenuators
        if fitted.is_ == "attenuator":
            facts[part.point.id] = facts_of(fitted, kinds)
        count += fitted.is_ == "loudspeaker"
        unknown += part.draw.value is None
        key = (part.draw, part.share, part.attenuators)
        alike[key] = alike.get(key, 0) + 1
    full, as_set, carried = _added(alike, facts)
    audited = {one: (facts[one], carried[one]) for one in facts}
    return ZoneLoad(full, as_set, audited, count, unknown, *end)


def _added(
    alike: dict[tuple[Draw, Share, tuple[str, ...]], int], attenuators: Iterable[str]
) -> tuple[Draw, Draw, dict[str, Draw]]:
    """The load at full level, as the controls stand, and below each of them.

    Most loudspeakers of a zone draw alike: so many of one draw are added at once.
    """
    full = as_set = NOTHING
    carried = dict.fromkeys(attenuators, NOTHING)
    for (draw, share, above), count in alike.items():
        full = full.plus(draw, count)
        as_set = as_set.plus(draw if share == WHOLE else draw.between(*share), count)
        for attenuator in above:
            carried[attenuator] = carried[attenuator].plus(draw, count)
    return full, as_set, carried

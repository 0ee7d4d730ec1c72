"""What would help a line that no cable makes right: split it, feed it from the middle, or
raise its voltage. Each is tried on the whole line with the thickest cable allowed."""

from typing import Literal, NamedTuple

from pycore.calc.lay import lay_out
from pycore.calc.line_more import path_to
from pycore.calc.pairs import Pair
from pycore.calc.trial import Trial, worst_with
from pycore.jobs import Point
from pycore.jobs.catalogue import LINE_VOLTS

Way = Literal["split", "feed_middle", "higher_voltage"]
# Places along the way to the worst loudspeaker that are tried for a second feed.
MOST_PLACES = 12


class Rescue(NamedTuple):
    """One way out: what the worst loudspeaker then loses, and whether that passes.

    `point` and `run_m`: where a home run of its own lands and how long it is; `line_v`: the
    higher voltage. Every tap, control and the wiring class must be redone for that.
    """

    way: Way
    cable: str
    loss_db: float
    passes: bool
    point: str | None = None
    run_m: float | None = None
    line_v: float | None = None


def rescues_of(trial: Trial, cable: str, *, pair: Pair) -> tuple[Rescue, ...]:
    """The ways out with a cable, the best first."""
    tried = [
        _best_feed(trial, cable, pair=pair, way="split"),
        _best_feed(trial, cable, pair=pair, way="feed_middle"),
        _higher(trial, cable, pair=pair),
    ]
    found = [one for one in tried if one is not None]
    return tuple(sorted(found, key=lambda one: one.loss_db))


def _best_feed(trial: Trial, cable: str, *, pair: Pair, way: Way) -> Rescue | None:
    """The place along the way to the worst loudspeaker where a feed helps most."""
    every = dict.fromkeys(range(1, len(trial.laid.parents)), pair)
    worst = worst_with(trial, every)
    if worst is None:
        return None
    path = path_to(trial.laid.parents, worst.node)
    blocked = next((at for at, node in enumerate(path) if node in trial.laid.controls), len(path))
    places = path[1:blocked]
    step = max(1, -(-len(places) // MOST_PLACES))
    tried = [_fed_at(trial, path, node=node, way=way) for node in places[::step]]
    found: list[Rescue] = []
    for relaid, point, run_m in tried:
        after = worst_with(relaid, every)
        if after is not None:
            passes = trial.passes(after)
            found.append(Rescue(way, cable, after.loss_db, passes, point=point, run_m=run_m))
    return min(found, key=lambda one: one.loss_db, default=None)


def _fed_at(trial: Trial, path: list[int], *, node: int, way: Way) -> tuple[Trial, str, float]:
    """The zone with a home run landed at a node.

    Split: a second one, as long as the way there, and the section before it taken out.
    From the middle: the only one, as long as it is now, the way before it fed backward.
    """
    laid = trial.laid
    points = {point.id: point for point in laid.points}
    here = laid.points[node - 1]
    if way == "split":
        run_m = laid.far_m[node]
        points[here.id] = _hung(here, after=None, length_m=run_m)
    else:
        run_m = laid.lengths_m[path[0]]
        points[here.id] = _hung(here, after=None, length_m=run_m)
        before = path[: path.index(node)]
        for near, far in zip(before, path[1 : len(before) + 1], strict=True):
            point, beyond = laid.points[near - 1], laid.points[far - 1]
            length_m = laid.lengths_m[far]
            points[point.id] = _hung(point, after=beyond.id, length_m=length_m)
    zone = laid.zone.model_copy(update={"line": tuple(points.values())})
    relaid = lay_out(zone, kinds=trial.kinds, pairs=trial.pairs, line_v=laid.line_v)
    return trial._replace(laid=relaid), here.id, run_m


def _hung(point: Point, *, after: str | None, length_m: float) -> Point:
    return point.model_copy(update={"after": after, "length_m": length_m})


def _higher(trial: Trial, cable: str, *, pair: Pair) -> Rescue | None:
    """The same watts on taps of the next higher usual line voltage."""
    line_v = next((one for one in LINE_VOLTS if one > trial.laid.line_v * 1.001), None)
    if line_v is None:
        return None
    raised = trial._replace(laid=trial.laid._replace(line_v=line_v))
    after = worst_with(raised, dict.fromkeys(range(1, len(raised.laid.parents)), pair))
    if after is None:
        return None
    return Rescue("higher_voltage", cable, after.loss_db, trial.passes(after), line_v=line_v)

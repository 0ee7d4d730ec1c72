"""Walking a line: parents before children, every fault named."""

from collections.abc import Iterable

from pycore.ground.problems import BrokenJob
from pycore.jobs.zones import Point


def children_of(points: Iterable[Point]) -> dict[str | None, list[Point]]:
    """The points that hang directly on each point; None for those on the terminals."""
    children: dict[str | None, list[Point]] = {None: []}
    for point in points:
        children.setdefault(point.after, []).append(point)
    return children


def hanging_order(points: tuple[Point, ...]) -> tuple[Point, ...]:
    """The points as they hang, each after the one it hangs on, branch by branch.

    Raises BrokenJob `orphan` (it hangs on nothing in this zone) or `loop` (it hangs on
    itself by way of others), with the point named. Iterative: lines may be 2,000 long.
    """
    known = {point.id for point in points}
    for point in points:
        if point.after is not None and point.after not in known:
            where = {"point": point.id}
            raise BrokenJob("orphan", where=where, point=called(point, points), after=point.after)
    children = children_of(points)
    order: list[Point] = []
    waiting = list(reversed(children[None]))
    while waiting:
        point = waiting.pop()
        order.append(point)
        waiting.extend(reversed(children.get(point.id, ())))
    if len(order) < len(points):
        reached = {point.id for point in order}
        lost = next(point for point in points if point.id not in reached)
        ringed = _on_the_loop(points, lost)
        raise BrokenJob("loop", where={"point": ringed.id}, point=called(ringed, points))
    return tuple(order)


def called(point: Point, points: tuple[Point, ...]) -> str:
    """What a sentence calls a point: its label, or its number in the list where it has none."""
    return point.fitted.label or f"#{points.index(point) + 1}"


def _on_the_loop(points: tuple[Point, ...], lost: Point) -> Point:
    """A point that is on the loop itself, not only below it."""
    known = {point.id: point for point in points}
    at = lost
    for _ in points:
        at = known[at.after] if at.after is not None else at
    return at


def below(points: tuple[Point, ...], point_id: str) -> tuple[str, ...]:
    """The ids of everything that hangs on a point, near first."""
    children = children_of(points)
    found: list[str] = []
    waiting = [point_id]
    while waiting:
        hanging = [child.id for child in children.get(waiting.pop(), ())]
        found.extend(hanging)
        waiting.extend(hanging)
    return tuple(found)

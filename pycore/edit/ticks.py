"""Which ticks still stand: a tick is for one tap at one point, and dies with it."""

from pycore.jobs import Job, Point, Tick


def living_ticks(job: Job) -> tuple[Tick, ...]:
    """The ticks of a job that are still true."""
    if not job.ticks:
        return ()
    points = {point.id: point for zone in job.zones for point in zone.line}
    return tuple(tick for tick in job.ticks if _still_true(tick, points.get(tick.point)))


def _still_true(tick: Tick, point: Point | None) -> bool:
    if point is None or point.fitted.is_ != "loudspeaker":
        return False
    fitted = point.fitted
    same_tap = (fitted.tap_w, fitted.tap_at_v) == (tick.tap_w, tick.tap_at_v)
    return same_tap and fitted.direct_ohm is None

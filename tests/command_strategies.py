"""Commands on a job: most fit it, some name things that are not there or break a rule."""

from collections.abc import Callable
from typing import Any

from hypothesis import strategies as st

from pycore.jobs import Job
from tests.strategies import CABLES, LINE_V, MOST_W, NAMES, TAP_W, Book, Raw, controls, fitted

NO_SUCH = ("nobody",)


class Things:
    """The ids of a job's things, one that is not there among them."""

    def __init__(self, job: Job) -> None:
        self.job = job
        outputs = [output.id for one in job.amplifiers for output in one.outputs]
        points = [point.id for zone in job.zones for point in zone.line]
        self.amplifiers = st.sampled_from([*(one.id for one in job.amplifiers), *NO_SUCH])
        self.outputs = st.sampled_from([*outputs, *NO_SUCH])
        self.zones = st.sampled_from([*(one.id for one in job.zones), *NO_SUCH])
        self.points = st.sampled_from([*points, *points, *NO_SUCH])
        self.kinds = st.sampled_from(
            [*(one.id for one in job.kinds.loudspeakers), *(one["id"] for one in CABLES), *NO_SUCH]
        )


NEW_IDS = st.sampled_from(("new1", "new2", "k7f1", "k7f3"))
SIZES = st.one_of(TAP_W, st.none(), st.just(-1.0), st.just(1e12))


@st.composite
def of_whole(draw: st.DrawFn, things: Things) -> Raw:
    """The job's name, limits and kinds."""
    kind = {"id": draw(NEW_IDS), "name": draw(NAMES), "taps": [{"w": 5.0, "at_v": draw(LINE_V)}]}
    control = {"id": "a0", "name": "control", **draw(controls(Book(sure=False)))}
    return draw(
        st.sampled_from(
            (
                {"do": "change_job", "changes": {"name": draw(NAMES), "place": "Quay 4"}},
                {"do": "set_limits", "changes": {"load_fraction": 0.7, "thinnest_mm2": None}},
                {"do": "set_limits", "changes": {"loss_db": draw(SIZES)}},
                {"do": "use_kind", "family": "loudspeakers", "kind": kind},
                {"do": "use_kind", "family": "attenuators", "kind": control},
                {"do": "use_kind", "family": "cables", "kind": CABLES[0]},
                {"do": "drop_kind", "family": "loudspeakers", "kind": draw(things.kinds)},
                {"do": "drop_kind", "family": "cables", "kind": draw(things.kinds)},
            )
        )
    )


@st.composite
def of_supply(draw: st.DrawFn, things: Things) -> Raw:
    """Amplifiers and outputs."""
    amplifier, output, new = draw(things.amplifiers), draw(things.outputs), draw(NEW_IDS)
    before = draw(st.none() | things.outputs)
    own = {"id": new, "name": "new", "line_v": draw(LINE_V), "max_w": draw(MOST_W)}
    pools = draw(st.sampled_from((None, [], [{"w": 100.0, "outputs": [output]}])))
    return draw(
        st.sampled_from(
            (
                {"do": "add_amplifier", "amplifier": {"id": new, "name": "A", "outputs": [own]}},
                {"do": "change_amplifier", "amplifier": amplifier, "changes": {"pools": pools}},
                {"do": "move_amplifier", "amplifier": amplifier, "before": None},
                {"do": "remove_amplifier", "amplifier": amplifier},
                {"do": "add_output", "amplifier": amplifier, "output": own, "before": before},
                {"do": "change_output", "output": output, "changes": {"max_w": draw(SIZES)}},
                {"do": "move_output", "output": output, "amplifier": amplifier, "before": before},
                {"do": "remove_output", "output": output},
            )
        )
    )


@st.composite
def of_zones(draw: st.DrawFn, things: Things) -> Raw:
    """Zones."""
    zone, output = draw(things.zones), draw(st.none() | things.outputs)
    new = {"id": draw(NEW_IDS), "name": draw(NAMES), "output": output}
    return draw(
        st.sampled_from(
            (
                {"do": "add_zone", "zone": new},
                {"do": "change_zone", "zone": zone, "changes": {"output": output}},
                {"do": "change_zone", "zone": zone, "changes": {"page_output": output}},
                {"do": "move_zone", "zone": zone, "before": draw(st.none() | things.zones)},
                {"do": "remove_zone", "zone": zone},
            )
        )
    )


@st.composite
def of_hanging(draw: st.DrawFn, things: Things) -> Raw:
    """What hangs where."""
    point, after = draw(things.points), draw(st.none() | things.points)
    zone, splice = draw(things.zones), draw(st.booleans())
    known: Raw = {"loudspeakers": [], "attenuators": []}
    new: Raw = {"id": draw(NEW_IDS), "after": after, "length_m": 3.0}
    new["fitted"] = {**draw(fitted(Book(sure=False), known)), "label": ""}
    second = {**new, "id": "new9", "after": new["id"]}
    move = {"do": "move_point", "point": point, "zone": zone, "after": after, "splice": splice}
    return draw(
        st.sampled_from(
            (
                {"do": "add_points", "zone": zone, "points": [new], "splice": splice},
                {"do": "add_points", "zone": zone, "points": [new, second], "splice": splice},
                {**move, "junction": draw(st.none() | NEW_IDS)},
                {"do": "remove_point", "point": point, "tail": "join"},
                {"do": "remove_point", "point": point, "tail": "cut"},
            )
        )
    )


@st.composite
def of_fitting(draw: st.DrawFn, things: Things) -> Raw:
    """What stands at one point."""
    point = draw(things.points)
    fields = {"length_m": draw(SIZES), "cable": draw(st.none() | things.kinds), "label": "x"}
    fields |= {"direct_ohm": 8.0, "rated_w": draw(SIZES), "override": True, "ohm": 120.0}
    named = draw(st.lists(st.sampled_from(sorted(fields)), max_size=2, unique=True))
    changes = {name: fields[name] for name in named}
    return draw(
        st.sampled_from(
            (
                {"do": "change_point", "point": point, "changes": changes},
                {"do": "set_tap", "point": point, "tap_w": draw(SIZES), "tap_at_v": draw(LINE_V)},
                {
                    "do": "set_taps",
                    "zone": draw(things.zones),
                    "tap_w": draw(SIZES),
                    "tap_at_v": draw(LINE_V),
                },
                {"do": "connect", "point": point},
                {"do": "disconnect", "point": point},
                {"do": "set_attenuator", "point": point, "set_db": -3.0, "off": None},
                {"do": "set_attenuator", "point": point, "off": draw(st.booleans())},
            )
        )
    )


FAMILIES: tuple[Callable[[Things], st.SearchStrategy[Any]], ...] = (
    of_whole,
    of_supply,
    of_zones,
    of_hanging,
    of_hanging,
    of_fitting,
)


def commands(job: Job) -> st.SearchStrategy[Raw]:
    """Any command, as the page would write it."""
    things = Things(job)
    return st.one_of([family(things) for family in FAMILIES])

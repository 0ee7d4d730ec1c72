"""Jobs as people could draw them, and commands on them, for the laws to be tried on."""

import json
from typing import Any

from hypothesis import strategies as st

from pycore.ground.units import Manner
from pycore.jobs import Job

Raw = dict[str, Any]

MANNERS = st.builds(
    Manner,
    language=st.just("en"),
    length=st.sampled_from(("m", "ft")),
    decimal=st.sampled_from((".", ",")),
    today=st.just("2026-11-25"),
)
LINE_V = st.sampled_from((25.0, 70.0, 70.7, 71.0, 100.0))
TAP_W = st.sampled_from((0.0, 0.25, 1.0, 2.5, 5.0, 6.0, 7.5, 10.0, 30.0, 60.0))
MOST_W = st.sampled_from((10.0, 30.0, 60.0, 120.0, 240.0, 500.0))
LENGTH_M = st.sampled_from((0.0, 1.0, 8.5, 30.0, 120.0))
NAMES = st.sampled_from(("Hall", "Quay", "East stair", "Üst kat", "長廊", "<b>&"))


class Book:
    """Ids as a page makes them, and whether everything of the job is known."""

    def __init__(self, *, sure: bool) -> None:
        self.used = 0
        self.sure = sure

    def new(self) -> str:
        """An id that no other thing of the job has."""
        self.used += 1
        return f"k7f{self.used}"

    def maybe(self, some: st.SearchStrategy[Any]) -> st.SearchStrategy[Any]:
        """A thing; in a job of which not everything is known, perhaps nothing."""
        return some if self.sure else st.none() | some


@st.composite
def loudspeaker_kinds(draw: st.DrawFn, book: Book, number: int) -> Raw:
    """A loudspeaker with one or two rows of taps, and perhaps a low-impedance position."""
    rows = draw(st.lists(LINE_V, min_size=1, max_size=2, unique=True))
    taps: list[Raw] = [
        {"w": tap_w, "at_v": at_v, "allowed": draw(st.sampled_from((None, True, False)))}
        for at_v in rows
        for tap_w in draw(st.lists(TAP_W, min_size=1, max_size=3, unique=True))
    ]
    if draw(st.booleans()):
        taps.append({"ohm": 8.0, "at_v": rows[0]})
    means = draw(st.sampled_from((None, "drawn", "delivered")))
    loss_db = draw(book.maybe(st.sampled_from((0.0, 0.5, 1.2))))
    name = f"ceiling {number}"
    return {"id": f"c{number}", "name": name, "taps": taps, "tap_means": means} | {
        "transformer_loss_db": loss_db
    }


@st.composite
def controls(draw: st.DrawFn, book: Book) -> Raw:
    """What is known of an attenuator, as a kind or as one fitted says it."""
    return {
        "rated_w": draw(book.maybe(MOST_W)),
        "rated_at_v": draw(book.maybe(LINE_V)),
        "insertion_db": draw(book.maybe(st.sampled_from((0.0, 0.5, 1.0)))),
        "form": draw(book.maybe(st.sampled_from(("autotransformer", "pad")))),
        "override": draw(book.maybe(st.booleans())),
    }


CABLES: list[Raw] = [
    {"id": "w16", "name": "16 AWG", "awg": 16, "metal": "copper", "stranded": True},
    {"id": "w15", "name": "1.5 mm²", "area_mm2": 1.5, "class": 2, "metal": "copper"},
    {"id": "wm", "name": "old pair", "loop_ohm_per_km": 42.0, "metal": "copper"},
]


@st.composite
def kinds(draw: st.DrawFn, book: Book) -> Raw:
    """The kinds a job uses."""
    loudspeakers = [draw(loudspeaker_kinds(book, n)) for n in range(draw(st.integers(0, 2)))]
    attenuators = [
        {"id": f"a{n}", "name": f"control {n}", **draw(controls(book))}
        for n in range(draw(st.integers(0, 1)))
    ]
    return {"loudspeakers": loudspeakers, "attenuators": attenuators, "cables": CABLES}


def _ids(some: list[Raw]) -> list[str | None]:
    return [one["id"] for one in some] or [None]


@st.composite
def fitted(draw: st.DrawFn, book: Book, known: Raw) -> Raw:
    """A loudspeaker most often; else a control, a junction, or a part nobody has drawn."""
    label = f"p {book.used}"
    which = draw(st.sampled_from(("loudspeaker",) * 5 + ("attenuator", "existing", "junction")))
    if which == "loudspeaker":
        return draw(loudspeakers(book, known, label))
    if which == "attenuator":
        kind = draw(book.maybe(st.sampled_from(_ids(known["attenuators"]))))
        stands = {"set_db": draw(st.sampled_from((0.0, -6.0, -24.0))), "off": draw(st.booleans())}
        return {"is": which, "kind": kind, "label": label, **stands, **draw(controls(book))}
    if which == "existing":
        ohm, w = draw(book.maybe(st.sampled_from((60.0, 120.0)))), draw(st.none() | TAP_W)
        return {"is": which, "ohm": ohm, "w": w, "label": label}
    return {"is": which, "label": label}


@st.composite
def loudspeakers(draw: st.DrawFn, book: Book, known: Raw, label: str) -> Raw:
    """On a tap of its kind, on any tap, on one nobody could see, or straight across the line."""
    kind = draw(st.none() | st.sampled_from(_ids(known["loudspeakers"])))
    return {
        "is": "loudspeaker",
        "kind": kind,
        "tap_w": draw(st.one_of(TAP_W, TAP_W, book.maybe(TAP_W))),
        "tap_at_v": draw(st.one_of(LINE_V, LINE_V, book.maybe(LINE_V))),
        "direct_ohm": draw(st.sampled_from((None,) * 7 + (8.0,))),
        "label": label,
        "connected": draw(st.sampled_from((True, True, True, False))),
    }


@st.composite
def lines(draw: st.DrawFn, book: Book, known: Raw, most_points: int) -> list[Raw]:
    """A tree of points, written in any order."""
    points: list[Raw] = []
    for _ in range(draw(st.integers(0, most_points))):
        last = [points[-1]["id"]] * 3 if points else []
        after = draw(st.sampled_from([None, *last, *(one["id"] for one in points)]))
        point = {"id": book.new(), "after": after, "fitted": draw(fitted(book, known))}
        point["length_m"] = draw(book.maybe(LENGTH_M))
        point["cable"] = draw(book.maybe(st.sampled_from(("w16", "w15", "wm"))))
        point["joint_ohm"] = draw(st.sampled_from((None, None, 0.05)))
        points.append(point)
    return draw(st.permutations(points)) if draw(st.booleans()) else points


@st.composite
def amplifiers(draw: st.DrawFn, book: Book) -> Raw:
    """An amplifier whose outputs share watts, share none, or nobody knows."""
    outputs: list[Raw] = []
    for number in range(draw(st.integers(1, 3))):
        output = {"id": book.new(), "name": f"{number + 1}", "line_v": draw(LINE_V)}
        output["max_w"] = draw(st.one_of(MOST_W, book.maybe(MOST_W)))
        output["min_load_ohm"] = draw(st.none() | st.sampled_from((20.0, 50.0, 83.3)))
        output["high_pass_hz"] = draw(book.maybe(st.sampled_from((40.0, 100.0))))
        outputs.append(output)
    own = [one["id"] for one in outputs]
    pools: list[Raw] | None = draw(book.maybe(st.just([])))
    if draw(st.booleans()):
        cut = draw(st.integers(0, len(own)))
        other_w = draw(st.none() | TAP_W)
        shares = [own] if draw(st.booleans()) else [own[:cut], own[cut:]]
        pools = [{"w": draw(MOST_W), "outputs": some, "other_w": other_w} for some in shares]
    return {"id": book.new(), "name": draw(NAMES), "pools": pools, "outputs": outputs}


@st.composite
def raw_jobs(draw: st.DrawFn, most_points: int = 6, *, sure: bool = False) -> Raw:
    """A whole job as plain data; `sure`: one in which everything that can be known is."""
    book = Book(sure=sure or draw(st.booleans()))
    known = draw(kinds(book))
    supply = [draw(amplifiers(book)) for _ in range(draw(st.sampled_from((1, 1, 2, 0))))]
    outputs = [output["id"] for one in supply for output in one["outputs"]]
    zones: list[Raw] = []
    for _ in range(draw(st.sampled_from((1, 2, 3, 0)))):
        landed = draw(st.sampled_from([*outputs, *outputs, None]))
        page = draw(st.sampled_from([None, None, None, *outputs]))
        zone = {"id": book.new(), "name": draw(NAMES), "output": landed, "page_output": page}
        zone["line"] = draw(lines(book, known, most_points))
        zones.append(zone)
    limits = {"loss_db": 0.5, "load_fraction": draw(st.sampled_from((0.5, 0.8, 1.0)))}
    return {
        "format": "rungline-job",
        "version": 1,
        "id": "k7f0",
        "name": draw(NAMES),
        "rev": draw(st.integers(0, 50)),
        "limits": {**limits, "conductor_c": 30.0},
        "kinds": known,
        "amplifiers": supply,
        "zones": zones,
        "ticks": [draw(ticks(point)) for zone in zones for point in zone["line"][:1]],
    }


@st.composite
def ticks(draw: st.DrawFn, point: Raw) -> Raw:
    """A tick on a point, true of its tap or not."""
    tap_w = point["fitted"].get("tap_w") or draw(TAP_W)
    tap_at_v = point["fitted"].get("tap_at_v") or draw(LINE_V)
    taps = {"tap_w": tap_w, "tap_at_v": tap_at_v}
    return {"point": point["id"], **taps, "at": "2026-11-25T10:00", "initials": "RK"}


def jobs(most_points: int = 6, *, sure: bool = False) -> st.SearchStrategy[Job]:
    """A whole job that keeps its own rules."""
    return raw_jobs(most_points, sure=sure).map(made_job)


def made_job(raw: Raw) -> Job:
    """The job of plain data; lists become the tuples the models ask for."""
    return Job.model_validate_json(words_of(raw))


def words_of(raw: Any) -> str:
    """Plain data as the text that comes through the door."""
    return json.dumps(raw)

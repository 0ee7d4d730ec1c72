"""The tables of codec 1: every field of a job, in the order in which they are written.

Only ever add a field behind the last of its table, and a choice behind the last of its
choices: then what is written already reads as it did.
"""

from typing import Any

from pycore.carry.codec1.coders import (
    Choices,
    Either,
    Ids,
    Meant,
    Moments,
    Notes,
    Numbers,
    Texts,
    Wholes,
    known_kinds,
    known_places,
)
from pycore.carry.codec1.nested import HangsOn, Many, One, Several, point_before
from pycore.carry.codec1.stock import STOCK
from pycore.carry.codec1.table import Cells, Context, Field, Table, Usual, always, id_of
from pycore.carry.codec1.texts import Hint

NUMBERS, TEXTS, FLAGS, MOMENTS = Numbers(), Texts(), Choices(False, True), Moments()
PLACES = Meant(known_places)
MARKS = {"loudspeaker": "", "attenuator": "A", "junction": "J", "existing": "E"}
LONGEST_NAME = 110
FAMILIES = ("cables", "loudspeakers", "attenuators")


def keep_places(context: Context) -> None:
    """From here on these rows can be meant by their ids.

    Raises BadText `link_damaged` for a row without one.
    """
    for row in context.rows:
        context.desk.keep_place(row)


def of_stock(family: str, name: str) -> Usual:
    """What the catalogue's own kind has in a field, for the rows that began as one of it."""

    def usual(context: Context) -> list[Any]:
        places = [row.get("stock", 0) for row in context.rows]
        return [STOCK[family][place - 1].get(name) if place else None for place in places]

    return usual


def kind_table(family: str, *fields: Field) -> Table:
    """A table of kinds: first which of the catalogue each began as."""

    def keep_kinds(context: Context) -> None:
        context.desk.kinds[family] = [id_of(row) for row in context.rows]

    first = (
        Field("stock", Choices(*range(len(STOCK[family]) + 1)), always(0)),
        Field("id", Ids(), of_stock(family, "id"), keep_kinds),
        Field("name", TEXTS, of_stock(family, "name")),
    )
    rest = (field._replace(usual=of_stock(family, field.name)) for field in fields)
    return Table(*first, *rest)


def usual_by_fitted(**usual: Any) -> Usual:
    """What is usual by what is fitted there."""
    return lambda context: [usual.get(row.get("is", "")) for row in context.rows]


def labels_expected(cells: Cells) -> list[Hint | None]:
    """The labels a zone gives its points: its name, a mark for what it is, and a number."""
    context, hints = cells.context, list[Hint | None]()
    for at in cells.at:
        points = context.above
        zone = {} if points is None else points.parent(context.parents[at])
        series = 0 if points is None else points.parents[context.parents[at]]
        mark = MARKS[context.rows[at].get("is", "loudspeaker")]
        hints.append(Hint(series, f"{zone.get('name', '')[:LONGEST_NAME]} {mark}"))
    return hints


def tap_of_the_point(name: str) -> Usual:
    """The tap on which the ticked loudspeaker stands."""

    def usual(context: Context) -> list[Any]:
        points = [context.desk.rows.get(row.get("point", ""), {}) for row in context.rows]
        return [point.get("fitted", {}).get(name) for point in points]

    return usual


FORM = Choices("autotransformer", "pad")
SENSE = Choices("power_bypasses", "loss_bypasses")

CABLES = kind_table(
    "cables",
    Field("awg", Wholes()),
    Field("area_mm2", NUMBERS),
    Field("class", Wholes()),
    Field("loop_ohm_per_km", NUMBERS),
    Field("stranded", FLAGS),
    Field("tinned", FLAGS),
    Field("metal", Choices("copper", "copper_clad_aluminium")),
    Field("inductance_uh_per_m", NUMBERS),
    Field("capacitance_pf_per_m", NUMBERS),
)
TAPS = Table(
    Field("w", NUMBERS),
    Field("ohm", NUMBERS),
    Field("at_v", NUMBERS),
    Field("position", TEXTS),
    Field("allowed", FLAGS),
)
LOUDSPEAKERS = kind_table(
    "loudspeakers",
    Field("mount", TEXTS),
    Field("rated_w", NUMBERS),
    Field("taps", Many(TAPS)),
    Field("tap_means", Choices("drawn", "delivered")),
    Field("transformer_loss_db", NUMBERS),
    Field("sensitivity_db", NUMBERS),
    Field("coverage_h_deg", NUMBERS),
    Field("coverage_v_deg", NUMBERS),
)
ATTENUATORS = kind_table(
    "attenuators",
    Field("rated_w", NUMBERS),
    Field("rated_at_v", NUMBERS),
    Field("insertion_db", NUMBERS),
    Field("form", FORM),
    Field("override", FLAGS),
    Field("override_sense", SENSE),
)
KINDS = Table(
    Field("cables", Many(CABLES), always([])),
    Field("loudspeakers", Many(LOUDSPEAKERS), always([])),
    Field("attenuators", Many(ATTENUATORS), always([])),
)
LIMITS = Table(
    Field("loss_db", NUMBERS, always(0.5)),
    Field("load_fraction", NUMBERS, always(0.8)),
    Field("conductor_c", NUMBERS, always(30.0)),
    Field("thinnest_mm2", NUMBERS),
    Field("thickest_mm2", NUMBERS),
)
OUTPUTS = Table(
    Field("id", Ids(), then=keep_places),
    Field("name", TEXTS),
    Field("line_v", NUMBERS),
    Field("max_w", NUMBERS),
    Field("min_load_ohm", NUMBERS),
    Field("source_ohm", NUMBERS),
    Field("drive", Choices("isolated", "direct")),
    Field("marked_class", TEXTS),
    Field("high_pass_hz", NUMBERS),
)
POOLS = Table(
    Field("w", NUMBERS),
    Field("outputs", Several(PLACES), always([])),
    Field("other_w", NUMBERS),
)
AMPLIFIERS = Table(
    Field("id", Ids(), then=keep_places),
    Field("name", TEXTS),
    Field("outputs", Many(OUTPUTS), always([])),
    Field("pools", Many(POOLS)),
)
AREAS = Table(
    Field("id", Ids(), then=keep_places),
    Field("name", TEXTS),
    Field("notes", Notes(), always("")),
)
FITTED = Table(
    Field("is", Choices("loudspeaker", "attenuator", "existing", "junction")),
    Field("kind", Meant(known_kinds("loudspeakers", "attenuators"))),
    Field("tap_w", NUMBERS),
    Field("tap_at_v", NUMBERS),
    Field("planned_tap_w", NUMBERS),
    Field("direct_ohm", NUMBERS),
    Field("label", Texts(labels_expected)),
    Field("connected", FLAGS, usual_by_fitted(loudspeaker=True)),
    Field("seen", Choices("drawing", "found", "set", "checked")),
    Field("x_m", NUMBERS),
    Field("y_m", NUMBERS),
    Field("z_m", NUMBERS),
    Field("rated_w", NUMBERS),
    Field("rated_at_v", NUMBERS),
    Field("insertion_db", NUMBERS),
    Field("form", FORM),
    Field("override", FLAGS),
    Field("override_sense", SENSE),
    Field("set_db", NUMBERS, usual_by_fitted(attenuator=0.0)),
    Field("off", FLAGS, usual_by_fitted(attenuator=False)),
    Field("ohm", NUMBERS),
    Field("hz", NUMBERS),
    Field("w", NUMBERS),
)
POINTS = Table(
    Field("id", Ids(), then=keep_places),
    Field("after", HangsOn(), point_before),
    Field("length_m", NUMBERS),
    Field("cable", Meant(known_kinds("cables"))),
    Field("joint_ohm", NUMBERS),
    Field("fitted", One(FITTED)),
)
ZONES = Table(
    Field("id", Ids(), then=keep_places),
    Field("name", TEXTS),
    Field("output", PLACES),
    Field("page_output", PLACES),
    Field("loss_db", NUMBERS),
    Field("areas", Several(PLACES), always([])),
    Field("line", Many(POINTS), always([])),
)
SPOTS = Table(Field("output", PLACES), Field("zone", PLACES), Field("point", PLACES))
DUES = Table(Field("value", NUMBERS), Field("low", NUMBERS), Field("high", NUMBERS))
READINGS = Table(
    Field("id", Ids()),
    Field("at", MOMENTS),
    Field("where", One(SPOTS)),
    Field("looking", Choices("out", "back")),
    Field("lifted", Several(PLACES), always([])),
    Field(
        "quantity",
        Choices("z_1k_ohm", "dc_ohm", "volts", "amps", "earth_ohm", "plays", "foreign_v"),
    ),
    Field("value", Either("well", "weak", "silent", "loud", "distorted")),
    Field("controls", Choices("open", "set", "override")),
    Field("tolerance_pct", NUMBERS),
    Field("temperature_c", NUMBERS),
    Field("instrument", TEXTS),
    Field("baseline", FLAGS),
    Field("due", One(DUES)),
)
TICKS = Table(
    Field("point", PLACES),
    Field("tap_w", NUMBERS, tap_of_the_point("tap_w")),
    Field("tap_at_v", NUMBERS, tap_of_the_point("tap_at_v")),
    Field("at", MOMENTS),
    Field("initials", TEXTS),
)
JOB = Table(
    Field("version", Wholes(), always(1)),
    Field("id", Ids()),
    Field("name", TEXTS),
    Field("place", TEXTS, always("")),
    Field("notes", Notes(), always("")),
    Field("rev", Wholes()),
    Field("saved_at", MOMENTS),
    Field("base", One(Table(Field("rev", Wholes()), Field("print", TEXTS)))),
    Field("limits", One(LIMITS)),
    Field("kinds", One(KINDS)),
    Field("amplifiers", Many(AMPLIFIERS), always([])),
    Field("areas", Many(AREAS), always([])),
    Field("zones", Many(ZONES), always([])),
    Field("readings", Many(READINGS), always([])),
    Field("ticks", Many(TICKS), always([])),
)

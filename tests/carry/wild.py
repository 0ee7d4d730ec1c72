"""Any job at all: every field of every model, at its bounds as well, made from the schema.

A field added to a model is in here by itself. What rules a job keeps as a whole (one id one
thing, lines are trees, nothing dangles) is put right afterwards.
"""

from collections.abc import Iterable
from functools import cache
from typing import Any, Literal

from hypothesis import strategies as st

from pycore.ground.plain import plain_line
from pycore.jobs import Job
from tests.strategies import made_job

Raw = dict[str, Any]
SCHEMA: Raw = Job.model_json_schema(by_alias=True, mode="validation")
FEW = 3
NO_SURROGATES: tuple[Literal["Cs"]] = ("Cs",)
ID_SIGNS = "abcxyzABCXYZ0123456789_-"
# Texts of every script, with what makes trouble: controls, overrides, markup, digits at the end.
TROUBLE = st.sampled_from(
    ("\u202eabc", "<script>x</script>", "=1+1", "a\x00b", "", " ", "7", "007", "Hall 12", "خ 3")
)


def texts(schema: Raw) -> st.SearchStrategy[str]:
    """A text within its bounds, and now and then at the longest it may be."""
    least, most = schema.get("minLength", 0), schema.get("maxLength", 40)
    some = st.text(st.characters(exclude_categories=NO_SURROGATES), min_size=least, max_size=12)
    some = some.map(lambda text: text[:most])
    longest = st.sampled_from("a9é").map(lambda sign: sign * most)
    trouble = TROUBLE.filter(lambda text: len(text) <= most)
    # what is unseen goes on the way in, and enough has to be left
    return st.one_of(some, trouble, longest).filter(lambda text: len(plain_line(text)) >= least)


def ids() -> st.SearchStrategy[str]:
    """An id as a page makes it, or any other that is allowed."""
    made = st.integers(0, 10**9).map(lambda number: f"k7f{number}")
    return made | st.text(ID_SIGNS, min_size=1, max_size=40)


def numbers(schema: Raw) -> st.SearchStrategy[float]:
    """A number within its bounds: typed ones, odd ones, and the bounds themselves."""
    inside = "exclusiveMinimum" in schema
    least = float(schema["exclusiveMinimum"] if inside else schema.get("minimum", -1e12))
    most = float(schema.get("maximum", 1e12))
    if schema["type"] == "integer":
        return st.integers(int(least), int(min(most, 1e9)))

    def fits(number: float) -> bool:
        return (least < number if inside else least <= number) and number <= most

    typed = st.integers(0, 2000).map(lambda tenths: tenths / 10)
    feet = st.integers(0, 300).map(lambda number: number * 0.3048)
    bounds = st.sampled_from([most] if inside else [least, most])
    odd = st.floats(least, most, exclude_min=inside, allow_nan=False)
    return st.one_of(typed.filter(fits), feet.filter(fits), odd, bounds)


def values(schema: Raw) -> st.SearchStrategy[Any]:
    """Anything that one part of the schema allows."""
    if "$ref" in schema:
        return models(schema["$ref"].rsplit("/", 1)[-1])
    if "const" in schema:
        return st.just(schema["const"])
    if "enum" in schema:
        return st.sampled_from(schema["enum"])
    for several in ("anyOf", "oneOf"):
        if several in schema:
            return st.one_of([values(each) for each in schema[several]])
    return of_type(schema)


def of_type(schema: Raw) -> st.SearchStrategy[Any]:
    """Anything of a plain type."""
    kind = schema["type"]
    if kind == "array":
        most = min(FEW, schema.get("maxItems", FEW))
        return st.lists(values(schema["items"]), max_size=most)
    if kind == "string":
        return ids() if "pattern" in schema else texts(schema)
    if kind == "null":
        return st.none()
    return st.booleans() if kind == "boolean" else numbers(schema)


@cache
def models(name: str) -> st.SearchStrategy[Raw]:
    """A model's raw data; fields that may be left out sometimes are."""
    schema = SCHEMA["$defs"][name] if name else SCHEMA
    needed = set(schema.get("required", ()))
    fields = {key: values(each) for key, each in schema["properties"].items()}
    return st.fixed_dictionaries(
        {key: each for key, each in fields.items() if key in needed},
        optional={key: each for key, each in fields.items() if key not in needed},
    )


@st.composite
def wild_jobs(draw: st.DrawFn) -> Job:
    """A job that keeps its rules, and anything else it may."""
    raw: Raw = draw(models(""))
    put_right(raw, draw)
    return made_job(raw)


def put_right(raw: Raw, draw: st.DrawFn) -> None:
    """Make the raw job keep the rules that no schema can say."""
    put_kinds_right(raw["kinds"], draw)
    used: set[str] = set()
    for amplifier in give_ids(raw.get("amplifiers", []), used, draw):
        own = [one["id"] for one in give_ids(amplifier.get("outputs", []), used, draw)]
        for pool in amplifier.get("pools") or ():
            takes_one = draw(st.booleans())
            pool["outputs"] = [own.pop()] if own and takes_one else []
    give_ids(raw.get("areas", []), used, draw)
    for zone in give_ids(raw.get("zones", []), used, draw):
        put_zone_right(zone, raw, used, draw)
    for reading in give_ids(raw.get("readings", []), set(), draw):
        keep_one(reading["where"], ("output", "zone", "point"), fallback={"zone": "gone"})
        reading["value"] = "weak" if reading["quantity"] == "plays" else 80.5


def put_kinds_right(kinds: Raw, draw: st.DrawFn) -> None:
    """Say each cable and each tap in one way."""
    for family in ("cables", "loudspeakers", "attenuators"):
        give_ids(kinds.get(family, []), set(), draw)
    for cable in kinds.get("cables", ()):
        keep_one(cable, ("awg", "area_mm2", "loop_ohm_per_km"), fallback={"awg": 18})
    for kind in kinds.get("loudspeakers", ()):
        for tap in kind["taps"]:
            keep_one(tap, ("w", "ohm"), fallback={"w": 5.0})


def put_zone_right(zone: Raw, raw: Raw, used: set[str], draw: st.DrawFn) -> None:
    """Land a zone on what is there, and hang its points on each other."""
    outputs = [one["id"] for amp in raw.get("amplifiers", ()) for one in amp.get("outputs", ())]
    for end in ("output", "page_output"):
        zone[end] = draw(st.sampled_from([None, *outputs]))
    zone["areas"] = [one["id"] for one in raw.get("areas", ()) if draw(st.booleans())]
    hung: list[str | None] = [None]
    for point in give_ids(zone.get("line", []), used, draw):
        point["after"] = draw(st.sampled_from(hung))
        hung.append(point["id"])
        point["cable"] = draw(st.sampled_from([None, *known(raw, "cables")]))
        family = {"loudspeaker": "loudspeakers", "attenuator": "attenuators"}
        if point["fitted"]["is"] in family:
            kinds = known(raw, family[point["fitted"]["is"]])
            point["fitted"]["kind"] = draw(st.sampled_from([None, *kinds]))
    if "line" in zone:
        zone["line"] = draw(st.permutations(zone["line"]))


def known(raw: Raw, family: str) -> Iterable[str]:
    """The kinds of a family."""
    return [kind["id"] for kind in raw["kinds"].get(family, ())]


def give_ids(things: list[Raw], used: set[str], draw: st.DrawFn) -> list[Raw]:
    """Give each thing an id that nothing else has."""
    for thing in things:
        while thing["id"] in used:
            thing["id"] = draw(ids())
        used.add(thing["id"])
    return things


def keep_one(thing: Raw, names: tuple[str, ...], *, fallback: Raw) -> None:
    """Leave exactly one of some fields; where there is none, put one in."""
    there = [name for name in names if thing.get(name) is not None]
    for name in names:
        if name not in there[:1]:
            thing.pop(name, None)
    if not there:
        thing.update(fallback)

"""A job that breaks a rule of its own is refused, and the place is named."""

import json

import pytest

from pycore.carry.saved import MOST_CHARACTERS, open_saved
from pycore.ground.problems import BadText, BrokenJob, NewerJob, Problem, TooLarge
from pycore.ground.words import ENGLISH, places_in
from tests.drawn import Raw, chain, output, raw_job, speaker, zone


def refused(raw: Raw | str) -> Problem:
    """Why a saved text is not opened."""
    with pytest.raises(Problem) as why:
        open_saved(raw if isinstance(raw, str) else json.dumps(raw))
    return why.value


def hall(*points: Raw) -> Raw:
    """A job with one zone of these points."""
    return raw_job([output(max_w=60.0)], {"id": "hall", "name": "Hall", "line": list(points)})


def point(point_id: str, after: str | None) -> Raw:
    """A loudspeaker hung somewhere."""
    return {"id": point_id, "after": after, "fitted": speaker(5.0)}


def test_a_point_on_nothing_is_an_orphan() -> None:
    why = refused(hall(point("a", None), point("b", "gone")))
    assert (why.code, why.where, why.values["after"]) == ("orphan", {"point": "b"}, "gone")


def test_a_point_on_a_point_of_another_zone_is_an_orphan() -> None:
    raw = hall(point("a", None))
    raw["zones"].append({"id": "quay", "name": "Quay", "line": [point("b", "a")]})
    assert refused(raw).where == {"point": "b"}


@pytest.mark.parametrize(
    "ring",
    [
        [("a", "a")],
        [("a", "b"), ("b", "a")],
        [("t", None), ("a", "c"), ("b", "a"), ("c", "b")],
        [("leaf", "a"), ("a", "b"), ("b", "a")],
    ],
)
def test_a_ring_names_a_point_that_is_on_it(ring: list[tuple[str, str | None]]) -> None:
    why = refused(hall(*(point(one, after) for one, after in ring)))
    assert (why.code, isinstance(why, BrokenJob)) == ("loop", True)
    assert why.where["point"] in "abc"


@pytest.mark.parametrize(
    ("place", "twice"),
    [
        ("point and point", hall(point("a", None), point("a", None))),
        ("point and zone", hall(point("hall", None))),
        ("output and zone", raw_job([output("x")], {"id": "x", "name": "x"})),
        ("outputs", raw_job([output("x"), output("x")])),
    ],
)
def test_one_id_is_one_thing(place: str, twice: Raw) -> None:
    why = refused(twice)
    assert why.code == "id_twice", place
    assert why.where == {"id": why.values["id"]}


def test_a_sentence_of_a_damaged_text_names_things_as_a_person_knows_them() -> None:
    nameless = hall(point("k7f12", None), point("k7f12", None))
    assert (refused(nameless).values["one"], refused(nameless).values["other"]) == (
        "Hall #1",
        "Hall #2",
    )
    unhung = refused(hall(point("k7f13", None), point("k7f14", "gone")))
    assert unhung.values["point"] == "#2"
    for code in ("id_twice", "pool_unknown", "output_unknown", "area_unknown", "kind_unknown"):
        assert not {"id", "area", "kind"} & set(places_in(ENGLISH["problem"][code]))


def test_kinds_of_two_families_may_share_an_id_and_of_one_may_not() -> None:
    ceiling = {"id": "k", "name": "k", "taps": []}
    kinds: Raw = {"loudspeakers": [ceiling], "attenuators": [{"id": "k", "name": "k"}]}
    assert open_saved(json.dumps(raw_job([], kinds=kinds))).kinds.attenuators[0].id == "k"
    kinds["loudspeakers"].append(ceiling)
    assert refused(raw_job([], kinds=kinds)).values["family"] == "loudspeaker"


@pytest.mark.parametrize(
    ("code", "raw"),
    [
        ("output_unknown", raw_job([], zone("hall", output="gone"))),
        ("output_unknown", raw_job([output()], zone("hall", page_output="gone"))),
        ("area_unknown", raw_job([output()], zone("hall", areas=["gone"]))),
        ("kind_unknown", raw_job([output()], zone("hall", speaker(5.0, kind="gone")))),
        ("pool_unknown", raw_job([output()], pools=[{"w": 9.0, "outputs": ["gone"]}])),
        ("pool_twice", raw_job([output()], pools=[{"w": 9.0, "outputs": ["o1", "o1"]}])),
    ],
)
def test_what_a_job_speaks_of_is_in_it(code: str, raw: Raw) -> None:
    why = refused(raw)
    assert (why.code, bool(why.where)) == (code, True)


def test_a_kind_of_the_other_family_is_not_a_kind_for_this() -> None:
    kinds = {"attenuators": [{"id": "k", "name": "k"}]}
    assert refused(raw_job([output()], zone("a", speaker(5.0, kind="k")), kinds=kinds)).code == (
        "kind_unknown"
    )


@pytest.mark.parametrize(
    "cable",
    [{}, {"awg": 16, "area_mm2": 1.5}, {"area_mm2": 1.5, "loop_ohm_per_km": 20.0}],
)
def test_a_cable_is_said_one_way(cable: Raw) -> None:
    kinds = {"cables": [{"id": "w", "name": "w", "metal": "copper", **cable}]}
    assert refused(raw_job([], kinds=kinds)).code == "cable_said_twice"


def test_a_reading_is_heard_or_measured_as_its_quantity_asks() -> None:
    reading: Raw = {"id": "r", "at": "2026-11-25", "where": {"zone": "hall"}, "looking": "out"}
    reading |= {"quantity": "plays", "controls": "open", "tolerance_pct": 5.0}
    reading |= {"instrument": "ears", "baseline": False}
    for quantity, value in (("plays", 5.0), ("volts", "well")):
        raw = raw_job([], readings=[{**reading, "quantity": quantity, "value": value}])
        assert refused(raw).code == "reading_value"
    opened = open_saved(json.dumps(raw_job([], readings=[{**reading, "value": "weak"}])))
    assert opened.readings[0].value == "weak"


def test_a_newer_job_is_refused_kindly_whatever_else_is_in_it() -> None:
    for more in ({}, {"rooms": [1, 2]}, {"limits": {"loss_db": "half", "new": 1}}):
        why = refused({**raw_job([]), "version": 2, **more})
        assert isinstance(why, NewerJob)
        assert (why.code, why.values["version"]) == ("job_newer", 2)


@pytest.mark.parametrize(
    "text", ["", "{", "[]", "null", "7", '"job"', "\x00", "{}", '{"format":"other","version":1}']
)
def test_what_is_no_job_says_so(text: str) -> None:
    why = refused(text)
    assert isinstance(why, BadText)
    assert why.code in ("text_unread", "not_a_job", "object_expected")


def test_a_job_without_its_version_is_told_what_is_missing() -> None:
    raw = raw_job([])
    del raw["version"]
    why = refused(raw)
    assert (why.code, why.where) == ("field_missing", {"field": "version"})


@pytest.mark.parametrize(
    ("path", "value", "code"),
    [
        ("max_w", -1.0, "number_too_small"),
        ("max_w", 1e12, "number_too_large"),
        ("max_w", "60", "number_expected"),
        ("line_v", 0.0, "number_too_small"),
        ("line_v", None, "number_expected"),
        ("name", 7, "text_expected"),
        ("name", "x" * 200, "text_too_long"),
        ("id", "a b", "id_unread"),
        ("id", "", "text_too_short"),
        ("drive", "valve", "not_a_choice"),
        ("colour", "red", "field_unknown"),
    ],
)
def test_a_field_out_of_bounds_is_named_by_its_path(path: str, value: object, code: str) -> None:
    raw = raw_job([{**output(max_w=60.0), path: value}])
    why = refused(raw)
    assert why.code == code
    assert why.where == {"field": f"amplifiers.0.outputs.0.{path}"}


def test_what_is_fitted_is_named_without_the_choice_that_was_made() -> None:
    why = refused(hall(*chain("p", {**speaker(5.0), "tap_w": -5.0})))
    assert why.where == {"field": "zones.0.line.0.fitted.tap_w"}
    why = refused(hall(*chain("p", {**speaker(5.0), "is": "lamp"})))
    assert (why.code, why.where) == ("not_a_choice", {"field": "zones.0.line.0.fitted.is"})
    assert why.values["given"] == "lamp"


def test_a_text_larger_than_any_job_is_not_read() -> None:
    assert isinstance(refused("x" * (MOST_CHARACTERS + 1)), TooLarge)


def test_a_text_of_more_fields_than_any_job_is_not_read() -> None:
    keys = ",".join(f'"a{number}":1' for number in range(160_000))
    assert refused('{"format":"rungline-job","version":1,' + keys + "}").code == "fields_too_many"


def test_a_text_full_of_faults_is_refused_as_a_whole() -> None:
    keys = ",".join(f'"a{number}":1' for number in range(2000))
    why = refused('{"format":"rungline-job","version":1,' + keys + "}")
    assert why.code == "faults_too_many"

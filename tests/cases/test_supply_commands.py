"""Commands for amplifiers, their outputs, and zones, one by one."""

import pytest

from pycore.ground.problems import BadCommand, BrokenJob, Problem
from pycore.jobs import Job
from tests.drawn import Raw, done, drawn, output, speaker, zone

OUTPUTS = [output("o1", max_w=120.0), output("o2", max_w=60.0)]
POOLS = [{"w": 150.0, "outputs": ["o1", "o2"]}]


def two_outputs() -> Job:
    """An amplifier with two outputs that share watts, a zone on each."""
    zones = (zone("hall", speaker(5.0)), zone("quay", speaker(5.0), output="o2"))
    return drawn(OUTPUTS, *zones, pools=POOLS)


def refused(job: Job, **command: object) -> Problem:
    """Why a command does not fit a job, which is unchanged."""
    before = job.model_dump_json()
    with pytest.raises((BadCommand, BrokenJob)) as why:
        done(job, **command)
    assert job.model_dump_json() == before
    return why.value


def outputs_of(job: Job) -> dict[str, list[str]]:
    """The outputs of each amplifier in their order."""
    return {one.id: [output.id for output in one.outputs] for one in job.amplifiers}


def landed(job: Job) -> dict[str, str | None]:
    """The output each zone hangs on."""
    return {one.id: one.output for one in job.zones}


def test_an_amplifier_is_added_moved_changed_and_removed() -> None:
    job = done(two_outputs(), do="add_amplifier", amplifier={"id": "b", "name": "B"})
    assert (outputs_of(job), job.rev) == ({"amp": ["o1", "o2"], "b": []}, 1)
    job = done(job, do="move_amplifier", amplifier="b", before="amp")
    assert list(outputs_of(job)) == ["b", "amp"]
    job = done(job, do="change_amplifier", amplifier="b", changes={"name": "Spare", "pools": []})
    assert (job.amplifiers[0].name, job.amplifiers[0].pools) == ("Spare", ())
    job = done(job, do="change_amplifier", amplifier="b", changes={"pools": None})
    assert job.amplifiers[0].pools is None
    job = done(job, do="remove_amplifier", amplifier="b")
    assert list(outputs_of(job)) == ["amp"]


def test_zones_of_a_removed_amplifier_stay_and_hang_nowhere() -> None:
    job = done(two_outputs(), do="remove_amplifier", amplifier="amp")
    assert landed(job) == {"hall": None, "quay": None}
    assert [len(one.line) for one in job.zones] == [1, 1]


def test_an_output_is_added_last_or_before_another() -> None:
    new = output("o3", max_w=30.0)
    job = done(two_outputs(), do="add_output", amplifier="amp", output=new)
    assert outputs_of(job) == {"amp": ["o1", "o2", "o3"]}
    job = done(two_outputs(), do="add_output", amplifier="amp", output=new, before="o1")
    assert outputs_of(job) == {"amp": ["o3", "o1", "o2"]}


def test_a_new_output_shares_the_watts_that_all_others_share() -> None:
    new = output("o3", max_w=30.0)
    job = done(two_outputs(), do="add_output", amplifier="amp", output=new)
    assert [pool.outputs for pool in job.amplifiers[0].pools or ()] == [("o1", "o2", "o3")]
    parted = [{"w": 150.0, "outputs": ["o1"]}]
    job = drawn(OUTPUTS, pools=parted)
    job = done(job, do="add_output", amplifier="amp", output=new)
    assert [pool.outputs for pool in job.amplifiers[0].pools or ()] == [("o1",)]


def test_an_output_added_twice_is_refused() -> None:
    why = refused(two_outputs(), do="add_output", amplifier="amp", output=output("o1"))
    assert (why.code, why.where) == ("id_twice", {"id": "o1"})


def test_an_output_is_changed_field_by_field() -> None:
    job = done(
        two_outputs(), do="change_output", output="o1", changes={"max_w": None, "line_v": 100.0}
    )
    changed = job.amplifiers[0].outputs[0]
    assert (changed.max_w, changed.line_v, changed.name) == (None, 100.0, "o1")
    why = refused(job, do="change_output", output="o1", changes={"line_v": None})
    assert (why.code, why.where) == ("cannot_be_unknown", {"field": "changes.line_v"})


def test_an_output_that_goes_to_another_amplifier_leaves_its_pool() -> None:
    job = done(two_outputs(), do="add_amplifier", amplifier={"id": "b", "name": "B"})
    job = done(job, do="move_output", output="o2", amplifier="b")
    assert outputs_of(job) == {"amp": ["o1"], "b": ["o2"]}
    pools = job.amplifiers[0].pools
    assert pools is not None
    assert pools[0].outputs == ("o1",)
    assert landed(job) == {"hall": "o1", "quay": "o2"}


def test_an_output_moves_within_its_amplifier_and_stays_in_its_pool() -> None:
    job = done(two_outputs(), do="move_output", output="o2", amplifier="amp", before="o1")
    assert outputs_of(job) == {"amp": ["o2", "o1"]}
    assert job.amplifiers[0].pools == two_outputs().amplifiers[0].pools


def test_a_removed_output_leaves_its_zones_nowhere_and_its_pool_smaller() -> None:
    job = done(two_outputs(), do="change_zone", zone="hall", changes={"page_output": "o2"})
    job = done(job, do="remove_output", output="o2")
    assert landed(job) == {"hall": "o1", "quay": None}
    assert job.zones[0].page_output is None
    pools = job.amplifiers[0].pools
    assert pools is not None
    assert pools[0].outputs == ("o1",)


def test_a_zone_is_added_moved_changed_and_removed() -> None:
    new = {"id": "loft", "name": "Loft", "output": "o1", "line": []}
    job = done(two_outputs(), do="add_zone", zone=new)
    job = done(job, do="move_zone", zone="loft", before="hall")
    assert [one.id for one in job.zones] == ["loft", "hall", "quay"]
    changes = {"name": "Attic", "output": None, "loss_db": 1.0}
    job = done(job, do="change_zone", zone="loft", changes=changes)
    assert (job.zones[0].name, job.zones[0].output, job.zones[0].loss_db) == ("Attic", None, 1.0)
    job = done(job, do="remove_zone", zone="loft")
    assert [one.id for one in job.zones] == ["hall", "quay"]


@pytest.mark.parametrize(
    ("command", "code", "where"),
    [
        ({"do": "remove_amplifier", "amplifier": "x"}, "not_here", {"amplifier": "x"}),
        ({"do": "change_output", "output": "x", "changes": {}}, "not_here", {"output": "x"}),
        ({"do": "move_zone", "zone": "hall", "before": "x"}, "not_here", {"id": "x"}),
        ({"do": "remove_zone", "zone": "x"}, "not_here", {"zone": "x"}),
        ({"do": "remove_point", "point": "x", "tail": "cut"}, "not_here", {"point": "x"}),
        (
            {"do": "change_zone", "zone": "hall", "changes": {"output": "x"}},
            "output_unknown",
            {"zone": "hall"},
        ),
        (
            {"do": "change_amplifier", "amplifier": "amp", "changes": {"name": None}},
            "cannot_be_unknown",
            {"field": "changes.name"},
        ),
        (
            {
                "do": "change_amplifier",
                "amplifier": "amp",
                "changes": {"pools": [{"w": 1.0, "outputs": ["x"]}]},
            },
            "pool_unknown",
            {"amplifier": "amp"},
        ),
        ({"do": "add_zone", "zone": {"id": "hall", "name": "H"}}, "id_twice", {"id": "hall"}),
    ],
)
def test_what_does_not_fit_is_refused_by_name(command: Raw, code: str, where: Raw) -> None:
    why = refused(two_outputs(), **command)
    assert (why.code, why.where) == (code, where)

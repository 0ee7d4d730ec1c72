"""The walk along a line against networkx, which knows trees from their definition.

Loops and things that hang on nothing are tried as they come from a broken file: each point
hangs on any other at random. networkx has no part in how the core walks, or in the matrix of
`nodal.py`, whose nodes are numbered in the order in which the stems were grown.
"""

import itertools
import random

import networkx as nx
import pytest

from pycore.calc.lay import lay_out
from pycore.calc.line_more import path_to
from pycore.calc.pairs import pair_of
from pycore.ground.problems import BrokenJob
from pycore.jobs import Junction, Point, Zone
from pycore.jobs.tree import below, hanging_order
from tests.samples.lines import grow, make_job

ROOT = "terminals"


def hung(afters: dict[str, str | None]) -> tuple[Point, ...]:
    """Points that hang so, whether that can be or not."""
    fitted = Junction.model_construct(is_="junction", label="")
    return tuple(
        Point.model_construct(
            id=name, after=after, length_m=1.0, cable=None, joint_ohm=None, fitted=fitted
        )
        for name, after in afters.items()
    )


def graph_of(points: tuple[Point, ...]) -> nx.DiGraph:
    """The line as a directed graph, each section as long as it is."""
    graph = nx.DiGraph()
    graph.add_node(ROOT)
    for point in points:
        graph.add_edge(point.after or ROOT, point.id, length_m=point.length_m or 0.0)
    return graph


def shuffled(seed: int) -> Zone:
    """A line grown at random, its points written down in no order at all."""
    chance = random.Random(seed)
    zone = make_job(grow(chance, chance.randrange(1, 40))).zones[0]
    points = list(zone.line)
    chance.shuffle(points)
    return zone.model_copy(update={"line": tuple(points)})


def test_a_line_is_taken_exactly_when_it_is_a_tree_from_the_terminals() -> None:
    codes: set[str] = set()
    for seed in range(600):
        chance = random.Random(seed)
        names = [f"p{number}" for number in range(chance.randrange(1, 7))]
        choices = [None, None, *names, *(["nobody"] if chance.random() < 0.2 else [])]
        points = hung({name: chance.choice(choices) for name in names})
        graph = graph_of(points)
        fits = "nobody" not in graph and nx.is_arborescence(graph)
        try:
            order = hanging_order(points)
        except BrokenJob as problem:
            assert not fits, points
            codes.add(problem.code)
            named = problem.where["point"]
            if problem.code == "loop":
                assert any(named in loop for loop in nx.simple_cycles(graph))
            else:
                assert list(graph.predecessors(named)) == ["nobody"]
        else:
            assert fits, points
            assert {point.id for point in order} == set(names)
            codes.add("tree")
    assert codes == {"loop", "orphan", "tree"}


@pytest.mark.parametrize("seed", range(60))
def test_points_come_branch_by_branch_and_each_after_what_it_hangs_on(seed: int) -> None:
    points = shuffled(seed).line
    order = [point.id for point in hanging_order(points)]
    # networkx walks the branches in the order in which their edges were written down
    assert order == list(nx.dfs_preorder_nodes(graph_of(points), ROOT))[1:]
    at = {name: number for number, name in enumerate([ROOT, *order])}
    assert all(at[above] < at[name] for above, name in graph_of(points).edges)


@pytest.mark.parametrize("seed", range(60))
def test_what_goes_silent_is_what_can_be_reached_from_there(seed: int) -> None:
    points = shuffled(seed).line
    graph = graph_of(points)
    for point in points:
        found = below(points, point.id)
        assert len(found) == len(set(found))
        assert set(found) == nx.descendants(graph, point.id)


@pytest.mark.parametrize("seed", range(60))
def test_the_way_to_a_point_and_its_metres_are_those_of_the_shortest_path(seed: int) -> None:
    zone = shuffled(seed)
    job = make_job(grow(random.Random(seed), 1))
    pairs = {kind.id: pair_of(kind, 30.0) for kind in job.kinds.cables}
    laid = lay_out(zone, kinds=job.kinds, pairs=pairs, line_v=70.7)
    graph = graph_of(zone.line)
    far_m = nx.single_source_dijkstra_path_length(graph, ROOT, weight="length_m")
    for node, point in enumerate(laid.points, start=1):
        way = nx.shortest_path(graph, ROOT, point.id)
        assert [laid.points[one - 1].id for one in path_to(laid.parents, node)] == way[1:]
        assert laid.far_m[node] == pytest.approx(far_m[point.id])
    pairs_of_ways = itertools.pairwise([0, *path_to(laid.parents, len(laid.points))])
    assert all(laid.parents[far] == near for near, far in pairs_of_ways)

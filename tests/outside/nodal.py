"""The same line as one matrix of nodal equations, solved by numpy: no tree, no order."""

import numpy as np

from tests.outside.circuit import Part


def ask_numpy(parts: list[Part], *, hz: float, terminals_v: float) -> list[complex]:
    """Volts at every stem by nodal analysis. Where there is no length two nodes are one."""
    node_of, count = _number_nodes(parts)
    size = count + sum(_passes(part) for part in parts)
    matrix = np.zeros((size, size), dtype=complex)
    right = np.zeros(size, dtype=complex)
    extra = count
    for number, part in enumerate(parts):
        here, outgoing = node_of[number]
        matrix[here, here] += part.load_s
        if _passes(part):
            _put_control(matrix, part, nodes=(here, outgoing, extra))
            extra += 1
        elif part.off:
            matrix[outgoing, outgoing] += 1.0
        above = 0 if part.after < 0 else node_of[part.after][1]
        _put_section(matrix, part, hz=hz, ends=(above, here))
    matrix[0, :] = 0
    matrix[0, 0], right[0] = 1.0, terminals_v
    solved = np.linalg.solve(matrix, right)
    return [complex(solved[node_of[number][0]]) for number in range(len(parts))]


def _passes(part: Part) -> bool:
    return not part.off and (part.volts_ratio, part.amps_ratio) != (1.0, 1.0)


def _number_nodes(parts: list[Part]) -> tuple[list[tuple[int, int]], int]:
    """The node of each stem and of the outgoing side of its control; 0 is the terminals."""
    nodes: list[tuple[int, int]] = []
    count = 1
    for part in parts:
        above = 0 if part.after < 0 else nodes[part.after][1]
        here = above
        if part.length_m or part.joint_ohm:
            here, count = count, count + 1
        outgoing = here
        if part.off or _passes(part):
            outgoing, count = count, count + 1
        nodes.append((here, outgoing))
    return nodes, count


def _put_section(matrix: np.ndarray, part: Part, *, hz: float, ends: tuple[int, int]) -> None:
    """A joint and an exact line as a chain matrix, then as admittances between its ends."""
    if not part.length_m and not part.joint_ohm:
        return
    omega = 2j * np.pi * hz
    series = part.ohm_per_m + omega * part.henry_per_m
    shunt = omega * part.farad_per_m
    gamma, own_ohm = np.sqrt(series * shunt), np.sqrt(series / shunt)
    angle = gamma * part.length_m
    line = np.array(
        [
            [np.cosh(angle), own_ohm * np.sinh(angle)],
            [np.sinh(angle) / own_ohm, np.cosh(angle)],
        ]
    )
    a, b, _, d = (np.array([[1, part.joint_ohm], [0, 1]]) @ line).ravel()
    near, far = ends
    matrix[near, near] += d / b
    matrix[near, far] -= 1 / b
    matrix[far, near] -= 1 / b
    matrix[far, far] += a / b


def _put_control(matrix: np.ndarray, part: Part, *, nodes: tuple[int, int, int]) -> None:
    """A control by its amperes below: the last unknown, with the ratio of volts as its row."""
    above, below, amperes = nodes
    matrix[above, amperes] += part.amps_ratio
    matrix[below, amperes] -= 1.0
    matrix[amperes, below] += 1.0
    matrix[amperes, above] -= part.volts_ratio
